package servowright.engine.motor;

import servowright.engine.quantity.Require;

/**
 * The three terminals joined while the shaft is turned from outside.
 *
 * <p><b>Formula.</b> With v_d = v_q = 0: i_d = −ω_e² L_q λ / D, i_q = −ω_e R λ / D, D = R² + ω_e² L_d L_q. At high speed the
 * current tends to λ/L_d. <b>Valid for</b> settled current; the first peak after joining at speed can be about twice as
 * high. <b>Source.</b> Rotor-frame voltage equations with zero voltage, derived; test as in IEEE Std 1812 (scope seen).
 *
 * @param dAmp              d current, peak, negative
 * @param qAmp              q current, peak, against the direction of rotation
 * @param brakeNewtonMetre  torque that brakes the shaft, positive
 */
public record ShortCircuit(double dAmp, double qAmp, double brakeNewtonMetre) {

    /** Short circuit at a shaft speed; speed of either sign, not 0 with a winding of no resistance. */
    public static ShortCircuit of(Winding winding, double mechRadPerS) {
        double electric = winding.polePairs() * Require.finite("shaft speed", mechRadPerS, "rad/s");
        double r = winding.phaseOhm();
        double flux = winding.fluxWeberPeak();
        double determinant = Require.positive(
                "R² + ω² Ld Lq", r * r + electric * electric * winding.dHenry() * winding.qHenry(), "ohm²");
        double d = -electric * electric * winding.qHenry() * flux / determinant;
        double q = -electric * r * flux / determinant;
        return new ShortCircuit(d, q, Math.abs(winding.torqueNewtonMetre(d, q)));
    }

    /** Length of the current, phase peak. */
    public double phasePeakAmp() {
        return Math.hypot(dAmp, qAmp);
    }

    /**
     * Speed and size of the largest braking torque.
     *
     * @param mechRadPerS      R / (p L)
     * @param brakeNewtonMetre (3/2) p λ² / (2 L)
     */
    public record Peak(double mechRadPerS, double brakeNewtonMetre) {}

    /** Largest braking torque of a winding without saliency; above and below its speed the brake is weaker. */
    public static Peak peak(double phaseOhm, double phaseHenry, double fluxWeberPeak, int polePairs) {
        Require.positive("phase resistance", phaseOhm, "ohm");
        Require.positive("phase inductance", phaseHenry, "H");
        Require.positive("flux linkage (phase peak)", fluxWeberPeak, "Wb");
        Require.atLeast("pole pairs", 1, polePairs);
        return new Peak(
                phaseOhm / (polePairs * phaseHenry), 0.75 * polePairs * fluxWeberPeak * fluxWeberPeak / phaseHenry);
    }
}
