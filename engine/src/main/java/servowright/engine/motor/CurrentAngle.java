package servowright.engine.motor;

import java.util.Optional;
import java.util.OptionalDouble;
import servowright.engine.quantity.Require;

/**
 * How a phase current of given length is best split between d and q: for most torque per ampere, or to reach a speed the
 * voltage would not allow otherwise.
 *
 * @param dAmp d current, peak
 * @param qAmp q current, peak, not negative
 */
public record CurrentAngle(double dAmp, double qAmp) {

    /**
     * Most torque per ampere.
     *
     * <p><b>Formula.</b> i_d = [λ − √(λ² + 8 ΔL² I²)] / (4 ΔL) with ΔL = L_q − L_d, computed in the form without
     * cancellation −2 ΔL I² / (λ + √(λ² + 8 ΔL² I²)), which is 0 without saliency; i_q = √(I² − i_d²). <b>Valid for</b>
     * constant inductances; saturation moves the best angle. <b>Source.</b> Maximum of T = (3/2) p [λ + (L_d − L_q) i_d] i_q
     * on the circle, derived; Morimoto et al., IEEE Trans. IA 26(5) 1990 (recalled).
     *
     * @param phasePeakAmp length of the current
     */
    public static CurrentAngle mostTorquePerAmpere(Winding winding, double phasePeakAmp) {
        Require.notNegative("phase current (peak)", phasePeakAmp, "A");
        double flux = winding.fluxWeberPeak();
        double salient = (winding.dHenry() - winding.qHenry()) * phasePeakAmp;
        double d = 2 * salient * phasePeakAmp / (flux + Math.sqrt(flux * flux + 8 * salient * salient));
        return onCircle(d, phasePeakAmp);
    }

    /**
     * The split that uses the whole current and just the voltage there is, with the resistance left out.
     *
     * <p><b>Formula.</b> (λ + L_d i_d)² + L_q² (I² − i_d²) = (V/ω_e)², the root between −I and the point of most torque per
     * ampere; below the base speed that point itself. Empty above the speed where i_q reaches 0: the whole current cannot
     * be used there (a smaller one may, if {@link #characteristicAmp} is below it). <b>Valid</b> while ω L is well above R.
     *
     * @param phasePeakAmp  length of the current
     * @param phasePeakVolt voltage limit
     * @param mechRadPerS   shaft speed, above 0
     */
    public static Optional<CurrentAngle> weakenedField(
            Winding winding, double phasePeakAmp, double phasePeakVolt, double mechRadPerS) {
        Require.positive("voltage limit (phase peak)", phasePeakVolt, "V");
        Require.positive("shaft speed", mechRadPerS, "rad/s");
        CurrentAngle best = mostTorquePerAmpere(winding, phasePeakAmp);
        Winding ideal = winding.withPhaseOhm(0);
        if (OperatingPoint.of(ideal, best.dAmp, best.qAmp, mechRadPerS).phasePeakVolt() <= phasePeakVolt) {
            return Optional.of(best);
        }
        if (OperatingPoint.of(ideal, -phasePeakAmp, 0, mechRadPerS).phasePeakVolt() > phasePeakVolt) {
            return Optional.empty();
        }
        double linked = phasePeakVolt / (winding.polePairs() * mechRadPerS);
        double ld = winding.dHenry();
        double lq = winding.qHenry();
        double flux = winding.fluxWeberPeak();
        double a = ld * ld - lq * lq;
        double b = 2 * flux * ld;
        double c = flux * flux + lq * lq * phasePeakAmp * phasePeakAmp - linked * linked;
        // The root at which the voltage rises with i_d, in the form that also holds for a = 0.
        double d = -2 * c / (b + Math.sqrt(Math.max(0, b * b - 4 * a * c)));
        return Optional.of(onCircle(Math.max(d, -phasePeakAmp), phasePeakAmp));
    }

    /** Current that cancels the magnet flux, λ / L_d, phase peak; also the short-circuit current at high speed. */
    public static double characteristicAmp(Winding winding) {
        return winding.fluxWeberPeak() / Require.positive("d inductance", winding.dHenry(), "H");
    }

    /**
     * Highest mechanical speed with the whole current weakening the field, V / (p (λ − L_d I)), rad/s, resistance left
     * out. Empty if the current reaches the characteristic one: then voltage sets no limit.
     */
    public static OptionalDouble topMechRadPerS(Winding winding, double phasePeakAmp, double phasePeakVolt) {
        Require.notNegative("phase current (peak)", phasePeakAmp, "A");
        Require.positive("voltage limit (phase peak)", phasePeakVolt, "V");
        double left = winding.fluxWeberPeak() - winding.dHenry() * phasePeakAmp;
        return left > 0 ? OptionalDouble.of(phasePeakVolt / (winding.polePairs() * left)) : OptionalDouble.empty();
    }

    private static CurrentAngle onCircle(double dAmp, double length) {
        // Adding zero turns a negative zero into a plain one.
        return new CurrentAngle(dAmp + 0.0, Math.sqrt(Math.max(0, (length - dAmp) * (length + dAmp))));
    }
}
