package servowright.engine.machine;

/** Shape of a duty over time. */
public enum Profile {
    /** Speed up, run, slow down, rest; again and again. */
    TRAPEZOID("trapezoid"),
    /** Speed up to the middle of the way, slow down, rest; again and again. */
    TRIANGLE("triangle"),
    /** Run at one speed, or hold at standstill when the speed is not given. */
    STEADY("steady");

    private final String words;

    Profile(String words) {
        this.words = words;
    }

    /** As it is written. */
    public String words() {
        return words;
    }
}
