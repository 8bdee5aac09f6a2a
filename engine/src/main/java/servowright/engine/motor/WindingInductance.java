package servowright.engine.motor;

import servowright.engine.quantity.HookUp;
import servowright.engine.quantity.Require;

/**
 * Inductance of the winding from readings at the terminals: a voltage step, an alternating current, a time constant.
 * "Loop" means what was contacted; {@link #phaseHenry} leads from there to the phase of the equivalent star.
 */
public final class WindingInductance {

    private WindingInductance() {}

    /**
     * Phase inductance of the equivalent star: reading / {2, 3/2, 1}.
     *
     * <p><b>Valid for</b> a winding whose inductance does not depend on the rotor angle. With saliency the reading between
     * two terminals runs from 2 L_d to 2 L_q over the angle, so one reading gives a value somewhere between.
     */
    public static double phaseHenry(double loopHenry, HookUp hookUp) {
        return Require.positive("inductance reading", loopHenry, "H") / hookUp.perPhase();
    }

    /**
     * Result of a step test.
     *
     * @param loopHenry   inductance of the loop
     * @param linkedWeber flux linkage change, the integral of the voltage across the inductance alone
     * @param currentAmp  current change from the first to the last sample, above zero
     */
    public record Step(double loopHenry, double linkedWeber, double currentAmp) {}

    /**
     * From the rise of the current after a voltage step on the locked rotor.
     *
     * <p><b>Formula.</b> L = ∫(V − R i) dt / (i_end − i_start), the integral by the trapezoid rule. If the record reaches
     * the settled current I∞ = V/R this is R ∫(1 − i/I∞) dt. It averages noise, where a fitted slope does not.
     * <b>Valid for</b> a rotor that does not move, constant V and R; sampling slower than τ/3 errs by more than 1 %, since
     * the trapezoid rule is off by (h/τ)²/12. <b>Source.</b> Flux-linkage method, from Faraday's law.
     *
     * @param seconds  times, rising
     * @param amps     currents at these times
     * @param stepVolt voltage across the loop
     * @param loopOhm  resistance of the loop with source, leads and shunt
     */
    public static Step fromRise(double[] seconds, double[] amps, double stepVolt, double loopOhm) {
        Require.positive("voltage step", stepVolt, "V");
        Require.positive("loop resistance", loopOhm, "ohm");
        double linked = integral(seconds, amps, stepVolt, -loopOhm);
        return step(linked, amps[amps.length - 1] - amps[0]);
    }

    /**
     * From the decay of the current through a freewheeling diode.
     *
     * <p><b>Formula.</b> L = ∫(R i + V_diode) dt / (i_start − i_end). Leaving the drop out makes L too small by
     * V_diode t / Δi. <b>Valid</b> while current flows; end the record before it stops.
     *
     * @param diodeVolt forward drop of the freewheeling path, 0 for a switch
     */
    public static Step fromDecay(double[] seconds, double[] amps, double loopOhm, double diodeVolt) {
        Require.positive("loop resistance", loopOhm, "ohm");
        Require.notNegative("diode drop", diodeVolt, "V");
        double linked = integral(seconds, amps, diodeVolt, loopOhm);
        return step(linked, amps[0] - amps[amps.length - 1]);
    }

    /** Current after a step: i = (V/R)(1 − exp(−t R/L)), in ampere. */
    public static double riseAmp(double second, double stepVolt, double loopOhm, double loopHenry) {
        Require.notNegative("time", second, "s");
        return stepVolt / loopOhm * -Math.expm1(-second * loopOhm / Require.positive("inductance", loopHenry, "H"));
    }

    /**
     * Current during freewheeling: i = (I₀ + V_diode/R) exp(−t R/L) − V_diode/R, and zero once the diode blocks.
     *
     * @param startAmp current when the voltage was taken away
     */
    public static double decayAmp(double second, double startAmp, double loopOhm, double loopHenry, double diodeVolt) {
        Require.notNegative("time", second, "s");
        double target = diodeVolt / loopOhm;
        double falling = Math.exp(-second * loopOhm / Require.positive("inductance", loopHenry, "H"));
        return Math.max(0, (startAmp + target) * falling - target);
    }

    /**
     * An impedance reading on the locked rotor.
     *
     * @param loopHenry   inductance of the loop
     * @param seriesOhm   resistance at that frequency, iron loss included
     * @param impedanceOhm length of the impedance
     * @param angleRad    phase of the voltage before the current
     */
    public record Impedance(double loopHenry, double seriesOhm, double impedanceOhm, double angleRad) {}

    /**
     * From voltage, current and power: Z = V/I, R = P/I², L = √(Z² − R²)/ω, all RMS.
     *
     * @param watt power by wattmeter; or I² times a known resistance
     */
    public static Impedance fromAlternatingCurrent(double rmsVolt, double rmsAmp, double watt, double hertz) {
        Require.positive("voltage (RMS)", rmsVolt, "V");
        Require.positive("current (RMS)", rmsAmp, "A");
        Require.notNegative("power", watt, "W");
        Require.positive("frequency", hertz, "Hz");
        double z = rmsVolt / rmsAmp;
        double r = watt / (rmsAmp * rmsAmp);
        double x = Math.sqrt(Require.positive("impedance squared less resistance squared", z * z - r * r, "ohm²"));
        return new Impedance(x / (2 * Math.PI * hertz), r, z, Math.atan2(x, r));
    }

    /** Impedance that a loop shows at a frequency. */
    public static Impedance expectedImpedance(double loopHenry, double seriesOhm, double hertz) {
        Require.positive("inductance", loopHenry, "H");
        Require.notNegative("resistance", seriesOhm, "ohm");
        double x = 2 * Math.PI * Require.positive("frequency", hertz, "Hz") * loopHenry;
        return new Impedance(loopHenry, seriesOhm, Math.hypot(seriesOhm, x), Math.atan2(x, seriesOhm));
    }

    /** From a time constant: L = τ R. The resistance is that of the whole loop, shunt and source included. */
    public static double fromTimeConstant(double tauSecond, double loopOhm) {
        return Require.positive("time constant", tauSecond, "s") * Require.positive("loop resistance", loopOhm, "ohm");
    }

    /** Frequency above which a winding is more inductance than resistance: R / (2π L), in Hz. */
    public static double cornerHertz(double ohm, double henry) {
        return Require.positive("resistance", ohm, "ohm") / (2 * Math.PI * Require.positive("inductance", henry, "H"));
    }

    private static Step step(double linkedWeber, double currentAmp) {
        Require.positive("current change", currentAmp, "A");
        return new Step(
                Require.positive("flux linkage change", linkedWeber, "Wb") / currentAmp, linkedWeber, currentAmp);
    }

    /** Integral of volt + ohm · i over the record. */
    private static double integral(double[] seconds, double[] amps, double volt, double ohm) {
        Require.atLeast("samples", 2, seconds.length);
        if (seconds.length != amps.length) {
            throw new IllegalArgumentException(
                    "as many currents as times are needed: " + amps.length + " and " + seconds.length);
        }
        double sum = 0;
        for (int i = 1; i < seconds.length; i++) {
            double interval = Require.positive("time step", seconds[i] - seconds[i - 1], "s");
            sum += interval * (volt + ohm * (amps[i] + amps[i - 1]) / 2);
        }
        return Require.finite("flux linkage change", sum, "Wb");
    }
}
