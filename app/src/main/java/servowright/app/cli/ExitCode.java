package servowright.app.cli;

/** What the program tells its caller when it ends. */
public enum ExitCode {
    /** Nothing fails. */
    FINE(0),
    /** Something fails. */
    FAILS(1),
    /** The input was refused. */
    REFUSED(2),
    /** The program itself went wrong. */
    BROKEN(3);

    private final int number;

    ExitCode(int number) {
        this.number = number;
    }

    public int number() {
        return number;
    }
}
