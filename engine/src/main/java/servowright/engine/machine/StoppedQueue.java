package servowright.engine.machine;

/** What becomes of commands that wait in the host while the axes are stopped. */
public enum StoppedQueue {
    KEPT("kept"),
    DROPPED("dropped");

    private final String words;

    StoppedQueue(String words) {
        this.words = words;
    }

    /** As it is written. */
    public String words() {
        return words;
    }
}
