package servowright.engine.control;

import servowright.engine.quantity.Require;

/**
 * Proportional and integral gain of a current controller whose zero cancels the winding's time constant.
 *
 * <p><b>Formula.</b> K_p = L ω_c, K_i = R ω_c, so that the open loop is ω_c/s with a delay T_d; phase margin 90° − ω_c T_d.
 * L and R are those of the phase of the equivalent star; line-to-line figures double both gains and with them ω_c.
 * <b>Valid for</b> ω_c T_d below about 1, a winding without saturation, no voltage limit. <b>Source.</b> Pole-zero
 * cancellation, derived; rule as commonly practised for motor drives.
 *
 * @param voltPerAmp       K_p
 * @param voltPerAmpSecond K_i
 * @param phaseMarginRad   phase margin
 */
public record CurrentLoop(double voltPerAmp, double voltPerAmpSecond, double phaseMarginRad) {

    /**
     * Gains for a crossover.
     *
     * @param phaseHenry        inductance of one phase of the equivalent star
     * @param phaseOhm          its resistance
     * @param crossoverRadPerS  ω_c, where the open loop has gain 1
     * @param delaySecond       T_d, usually 1.5 switching periods: one to compute, half for the pulse to act
     */
    public static CurrentLoop of(double phaseHenry, double phaseOhm, double crossoverRadPerS, double delaySecond) {
        Require.positive("phase inductance", phaseHenry, "H");
        Require.positive("phase resistance", phaseOhm, "ohm");
        Require.positive("crossover", crossoverRadPerS, "rad/s");
        Require.notNegative("delay", delaySecond, "s");
        return new CurrentLoop(
                phaseHenry * crossoverRadPerS,
                phaseOhm * crossoverRadPerS,
                Math.PI / 2 - crossoverRadPerS * delaySecond);
    }

    /** Highest crossover in rad/s that keeps a phase margin: (90° − margin) / T_d. */
    public static double crossoverRadPerS(double phaseMarginRad, double delaySecond) {
        Require.within("phase margin", 0, Math.PI / 2, phaseMarginRad, "rad");
        return (Math.PI / 2 - phaseMarginRad) / Require.positive("delay", delaySecond, "s");
    }

    /** Crossover that a proportional gain gives on a winding, K_p / L, rad/s: what gains found in a drive mean. */
    public static double crossoverOfGainRadPerS(double voltPerAmp, double phaseHenry) {
        Require.positive("proportional gain", voltPerAmp, "V/A");
        return voltPerAmp / Require.positive("phase inductance", phaseHenry, "H");
    }
}
