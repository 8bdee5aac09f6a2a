package servowright.engine.machine;

/** How a drive makes its three voltages. */
public enum Modulation {
    /** Full use of the supply: phase peak up to supply / sqrt 3. */
    SPACE_VECTOR("space vector"),
    /** Plain sine: phase peak up to supply / 2. */
    SINUSOIDAL("sine");

    private final String words;

    Modulation(String words) {
        this.words = words;
    }

    /** As it is written. */
    public String words() {
        return words;
    }
}
