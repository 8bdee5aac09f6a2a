package servowright.engine.bus;

import servowright.engine.quantity.Require;

/**
 * Levels of the bus lines at a receiver whose ground lies off the sender's.
 *
 * <p><b>Formula.</b> The dominant high line comes at V_H + shift, the low line at V_L - shift; both must stay in the receiver's common
 * mode range. <b>Valid for</b> steady shifts and those far slower than a bit. <b>Source.</b> levels from transceiver data sheets that
 * quote ISO 11898-2 (seen): typically 3.5 V and 1.5 V dominant, range -2 to +7 V; -12 to +12 V in the 2016 edition (recalled).
 *
 * @param highest highest level of a line at the receiver, V
 * @param lowest  lowest level of a line at the receiver, V
 * @param room    distance to the nearer end of the range, V; negative beyond it
 */
public record CommonMode(double highest, double lowest, double room) {
    /** Usual dominant levels, V. */
    private static final double HIGH = 3.5;

    private static final double LOW = 1.5;

    /** Range of the common mode a receiver takes. */
    public enum Range {
        ORDINARY(-2, 7),
        WIDE(-12, 12);

        private final double least;
        private final double most;

        Range(double least, double most) {
            this.least = least;
            this.most = most;
        }
    }

    /**
     * Levels with a ground shift of either sign.
     *
     * @param shiftVolt largest voltage between the grounds of two nodes, V
     */
    public static CommonMode of(double shiftVolt, Range range) {
        Require.notNegative("ground shift", shiftVolt, "V");
        double highest = HIGH + shiftVolt;
        double lowest = LOW - shiftVolt;
        return new CommonMode(highest, lowest, Math.min(range.most - highest, lowest - range.least));
    }

    /** Largest ground shift a receiver takes, V. */
    public static double mostShift(Range range) {
        return Math.min(range.most - HIGH, LOW - range.least);
    }
}
