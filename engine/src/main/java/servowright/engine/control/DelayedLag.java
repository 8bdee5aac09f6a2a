package servowright.engine.control;

import servowright.engine.quantity.Require;

/**
 * A first-order lag with a delay: what remains of most drives when only their slowest part counts.
 *
 * <p><b>Formula.</b> H(jω) = K e^{−jωT} / (1 + jωτ): amplitude ratio |K| / √(1 + (ωτ)²), phase −ωT − atan(ωτ), less half a turn for
 * a negative K. In time τ dy/dt = −y + K u(t − T). <b>Valid for</b> one dominant time constant; parts that are several times faster
 * count as delay. <b>Source.</b> K. J. Åström, T. Hägglund, "PID Controllers: Theory, Design, and Tuning", 2nd ed. 1995, chapter 2,
 * three-parameter model (recalled).
 *
 * @param gain        K, output per input at standstill of both
 * @param tauSecond   τ
 * @param delaySecond T
 */
public record DelayedLag(double gain, double tauSecond, double delaySecond) {
    public DelayedLag {
        Require.finite("gain", gain, "");
        Require.positive("time constant", tauSecond, "s");
        Require.notNegative("delay", delaySecond, "s");
    }

    /** Amplitude of the output over that of the input at an angular frequency in rad/s. */
    public double ratio(double radPerS) {
        return Math.abs(gain) / Math.hypot(1, Require.notNegative("frequency", radPerS, "rad/s") * tauSecond);
    }

    /** Phase of the output against the input at an angular frequency in rad/s, not wrapped, rad. */
    public double phaseRad(double radPerS) {
        double lag = radPerS * delaySecond + Math.atan(radPerS * tauSecond);
        return gain < 0 ? -Math.PI - lag : -lag;
    }

    /** Angular frequency at which the ratio has fallen to 1/√2 of K, rad/s. */
    public double cornerRadPerS() {
        return 1 / tauSecond;
    }
}
