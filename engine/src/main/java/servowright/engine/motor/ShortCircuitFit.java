package servowright.engine.motor;

import java.util.Optional;
import servowright.engine.numeric.NonlinearFit;
import servowright.engine.quantity.Require;

/**
 * Inductance from the currents of a motor that is turned with its terminals joined.
 *
 * <p><b>Formula.</b> I = ω λ/√(R² + (ω L)²), ω electrical, least squares in L; for one reading L = √((ω λ/I)² − R²)/ω.
 * <b>Valid for</b> settled currents and L_d near L_q; at speeds with ω L well above R the current is λ/L_d whatever L_q is.
 * Slow readings say nothing of L. <b>Source.</b> {@link ShortCircuit}; test as in IEEE Std 1812 (scope seen). An open- and a
 * short-circuit test of a salient rotor yield L_d alone: Rallabandi, Taran, Ionel, Zhou, IEEE Transactions on Industry
 * Applications 55 (2019) 2649 (abstract seen).
 *
 * @param henry         inductance on the magnet axis, per phase
 * @param standardHenry standard deviation of it from the scatter of the currents; 0 for one reading
 * @param restsAmp      measured less fitted current, phase peak
 */
@SuppressWarnings("ArrayRecordComponent") // read, never written to
public record ShortCircuitFit(double henry, double standardHenry, double[] restsAmp) {
    /** The last speed must have the reactance at this share of the resistance or more. */
    private static final double LEAST_REACTANCE = 0.3;

    /**
     * Fits; empty when a current is larger than the resistance alone allows, or the speeds are too low to show L.
     *
     * @param mechRadPerS speeds, above 0
     * @param amp         currents, phase peak, above 0
     * @param phaseOhm    resistance of the winding as warm as it was
     */
    public static Optional<ShortCircuitFit> of(
            double[] mechRadPerS, double[] amp, double phaseOhm, double fluxWeberPeak, int polePairs) {
        Require.atLeast("readings", 1, amp.length);
        Require.positive("flux linkage (phase peak)", fluxWeberPeak, "Wb");
        Require.notNegative("phase resistance", phaseOhm, "ohm");
        int fastest = 0;
        for (int i = 1; i < amp.length; i++) {
            fastest = mechRadPerS[i] > mechRadPerS[fastest] ? i : fastest;
        }
        double electric = Require.atLeast("pole pairs", 1, polePairs)
                * Require.positive("shaft speed", mechRadPerS[fastest], "rad/s");
        double impedance = electric * fluxWeberPeak / Require.positive("current", amp[fastest], "A");
        double reactance = Math.sqrt(impedance * impedance - phaseOhm * phaseOhm);
        if (!(reactance > LEAST_REACTANCE * phaseOhm)) {
            return Optional.empty();
        }
        double start = reactance / electric;
        if (amp.length == 1) {
            return Optional.of(new ShortCircuitFit(start, 0, new double[1]));
        }
        NonlinearFit fit = NonlinearFit.of(
                x -> currents(mechRadPerS, Math.abs(x[0]), phaseOhm, fluxWeberPeak, polePairs), amp, start);
        return fit.status().converged()
                ? Optional.of(new ShortCircuitFit(
                        Math.abs(fit.parameter(0)),
                        fit.standardError(0),
                        fit.residuals().toArray()))
                : Optional.empty();
    }

    private static double[] currents(
            double[] mechRadPerS, double henry, double phaseOhm, double fluxWeberPeak, int polePairs) {
        double[] amp = new double[mechRadPerS.length];
        Winding winding = new Winding(phaseOhm, henry, henry, fluxWeberPeak, polePairs);
        for (int i = 0; i < amp.length; i++) {
            amp[i] = ShortCircuit.of(winding, mechRadPerS[i]).phasePeakAmp();
        }
        return amp;
    }
}
