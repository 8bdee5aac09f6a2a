package servowright.engine.encoder;

import servowright.engine.quantity.Require;

/**
 * Time on the wire of an angle that is clocked out bit by bit. Signals travel {@value #SECOND_PER_METRE} s per metre of
 * common cable (trade tables).
 */
public final class SerialLine {
    private static final double SECOND_PER_METRE = 5e-9;

    private SerialLine() {}

    /**
     * Fastest clock of a line whose data are taken half a clock after they were asked for: 1/(2 (2 L t + t_d)), Hz.
     *
     * <p>An upper bound: with drivers of 0.3 µs it gives 385, 217 and 116 kHz at 100, 200 and 400 m, where published tables
     * (seen) ask for 300, 200 and 100 kHz, and 625 kHz at 50 m, where they ask for 400 kHz.
     *
     * @param driverSecond drivers and receivers of the round trip, or the time the sensor needs to answer
     */
    public static double fastestClockHertz(double lengthMetre, double driverSecond) {
        double trip = 2 * Require.notNegative("length", lengthMetre, "m") * SECOND_PER_METRE;
        return 1 / (2 * (trip + Require.positive("delay of drivers", driverSecond, "s")));
    }

    /**
     * Time of one synchronous serial frame: one clock more than bits, and the pause in which the sensor lets go.
     *
     * @param pauseSecond usually 10 to 30 µs
     */
    public static double synchronousFrameSecond(int bits, double clockHertz, double pauseSecond) {
        Require.atLeast("bits", 1, bits);
        return (bits + 1) / Require.positive("clock", clockHertz, "Hz")
                + Require.notNegative("pause", pauseSecond, "s");
    }

    /**
     * Time of one frame with acknowledge, start, one zero, position, error and warning bit and a check of six bits; the
     * acknowledge lasts as long as the sensor processes. The delay of the line is measured in each frame and costs the clock
     * nothing.
     *
     * @param timeoutSecond of the line at the end
     */
    public static double checkedFrameSecond(
            int positionBits, double clockHertz, double processingSecond, double timeoutSecond) {
        Require.atLeast("bits of the position", 1, positionBits);
        int overhead = 2 + 1 + 1 + 2 + 6;
        return (overhead + positionBits) / Require.positive("clock", clockHertz, "Hz")
                + Require.notNegative("processing time", processingSecond, "s")
                + Require.notNegative("time-out", timeoutSecond, "s");
    }

    /** Check of six bits, polynomial x⁶ + x + 1, start 0, inverted, over the bits of position, error and warning. */
    public static int checkOfSix(long data, int bits) {
        Require.within("bits of the data", 1, 63, bits, "");
        int remainder = 0;
        for (int i = bits - 1; i >= 0; i--) {
            int top = ((remainder >> 5) & 1) ^ (int) ((data >> i) & 1);
            remainder = ((remainder << 1) & 0x3F) ^ (top == 1 ? 0x03 : 0);
        }
        return ~remainder & 0x3F;
    }

    /** Widest step between two readings that motion and noise explain, ω T + 5 σ; beyond it a reading is refused. */
    public static double widestStepRad(double fastestRadPerSecond, double second, double noiseRad) {
        return Require.notNegative("speed", fastestRadPerSecond, "rad/s")
                        * Require.positive("time between the readings", second, "s")
                + 5 * Require.notNegative("noise", noiseRad, "rad");
    }
}
