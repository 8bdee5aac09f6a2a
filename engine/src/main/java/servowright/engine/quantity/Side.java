package servowright.engine.quantity;

/** On which side of the gear a torque, speed or inertia is meant. */
public enum Side {
    MOTOR("motor side"),
    LOAD("load side");

    private final String words;

    Side(String words) {
        this.words = words;
    }

    /** The words people write in square brackets behind the figure. */
    public String words() {
        return words;
    }
}
