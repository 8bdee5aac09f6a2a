package servowright.engine.motor;

import servowright.engine.quantity.HookUp;
import servowright.engine.quantity.Require;

/**
 * From resistances read at the terminals to the phase of the equivalent star. It does not matter whether the winding is
 * star or delta inside, only how it was contacted.
 */
public final class WindingResistance {

    private WindingResistance() {}

    /**
     * Phase resistance of the equivalent star: (reading − leads) / {2, 3/2, 1}.
     *
     * <p><b>Source.</b> Two phases in series; one in series with two in parallel. <b>Valid for</b> three equal phases.
     *
     * @param readingOhm what the meter showed
     * @param leadOhm    resistance of the test leads in the loop, 0 for four-wire
     */
    public static double phaseOhm(double readingOhm, HookUp hookUp, double leadOhm) {
        Require.positive("resistance reading", readingOhm, "ohm");
        Require.notNegative("lead resistance", leadOhm, "ohm");
        return Require.positive("resistance reading less leads", readingOhm - leadOhm, "ohm") / hookUp.perPhase();
    }

    /** What a meter shows on a winding of given phase resistance, leads included. */
    public static double expectedReadingOhm(double phaseOhm, HookUp hookUp, double leadOhm) {
        Require.positive("phase resistance", phaseOhm, "ohm");
        return phaseOhm * hookUp.perPhase() + Require.notNegative("lead resistance", leadOhm, "ohm");
    }

    /** Resistance of one coil if the winding is delta inside: three times the phase of the equivalent star. */
    public static double deltaCoilOhm(double phaseOhm) {
        return 3 * Require.positive("phase resistance", phaseOhm, "ohm");
    }

    /**
     * Resistance at another temperature, {@link Conductor}.
     *
     * @param ohm        resistance at {@code fromKelvin}
     * @param fromKelvin winding temperature while it was read
     * @param toKelvin   winding temperature asked for
     */
    public static double atTemperature(double ohm, double fromKelvin, double toKelvin, Conductor conductor) {
        return Require.positive("resistance", ohm, "ohm") * conductor.resistanceFactor(fromKelvin, toKelvin);
    }

    /**
     * The three phases of the equivalent star from the three pairs of terminals.
     *
     * @param aOhm          phase a, (ab + ca − bc) / 2; b and c in turn
     * @param bOhm          phase b
     * @param cOhm          phase c
     * @param meanOhm       mean phase resistance, (ab + bc + ca) / 6
     * @param pairSpread    largest less smallest reading, over their mean
     * @param phaseSpread   largest less smallest phase, over their mean: about twice the pair spread for one odd phase
     */
    public record ThreePhases(
            double aOhm, double bOhm, double cOhm, double meanOhm, double pairSpread, double phaseSpread) {}

    /**
     * Splits three terminal readings. Three terminals always have one equivalent star, so this needs no symmetry.
     *
     * @throws IllegalArgumentException if one reading exceeds the sum of the others, which no winding can show
     */
    public static ThreePhases fromThreePairs(double abOhm, double bcOhm, double caOhm) {
        Require.positive("resistance a to b", abOhm, "ohm");
        Require.positive("resistance b to c", bcOhm, "ohm");
        Require.positive("resistance c to a", caOhm, "ohm");
        double a = Require.positive("phase a (ab + ca − bc over 2)", (abOhm + caOhm - bcOhm) / 2, "ohm");
        double b = Require.positive("phase b (ab + bc − ca over 2)", (abOhm + bcOhm - caOhm) / 2, "ohm");
        double c = Require.positive("phase c (bc + ca − ab over 2)", (bcOhm + caOhm - abOhm) / 2, "ohm");
        double mean = (a + b + c) / 3;
        return new ThreePhases(a, b, c, mean, spread(abOhm, bcOhm, caOhm) / (2 * mean), spread(a, b, c) / mean);
    }

    /**
     * The same motor contacted both ways.
     *
     * @param fromTwoTerminalsOhm  phase resistance from the reading between two terminals
     * @param fromOneAgainstTwoOhm phase resistance from the reading of one terminal against the two others joined
     * @param relativeDifference   second over first, less 1: 0 for sound readings, +1/3 if one reading was really made
     *                             with the other hook-up, +7/9 if the two were exchanged
     */
    public record BothHookUps(double fromTwoTerminalsOhm, double fromOneAgainstTwoOhm, double relativeDifference) {}

    /** Compares two hook-ups of one winding. */
    public static BothHookUps compare(double twoTerminalsOhm, double oneAgainstTwoOhm) {
        double first = phaseOhm(twoTerminalsOhm, HookUp.TWO_TERMINALS, 0);
        double second = phaseOhm(oneAgainstTwoOhm, HookUp.ONE_AGAINST_TWO, 0);
        return new BothHookUps(first, second, second / first - 1);
    }

    /**
     * Resistance from two points of a voltage against current line.
     *
     * @param ohm              slope
     * @param offsetVolt       voltage at zero current: dead time, device drop or offset
     * @param firstPointOhm    what the first point alone would give
     * @param secondPointOhm   what the second point alone would give
     */
    public record Slope(double ohm, double offsetVolt, double firstPointOhm, double secondPointOhm) {}

    /**
     * Two currents take out a constant voltage error, which one current turns into a resistance error offset / current.
     *
     * <p><b>Valid for</b> currents of one sign, at which the error is the same; both points at one winding temperature.
     */
    public static Slope fromTwoCurrents(double firstAmp, double firstVolt, double secondAmp, double secondVolt) {
        Require.positive("first current", firstAmp, "A");
        Require.positive("second current less first", secondAmp - firstAmp, "A");
        Require.finite("first voltage", firstVolt, "V");
        Require.finite("second voltage", secondVolt, "V");
        double ohm = (secondVolt - firstVolt) / (secondAmp - firstAmp);
        return new Slope(ohm, firstVolt - ohm * firstAmp, firstVolt / firstAmp, secondVolt / secondAmp);
    }

    /**
     * Winding temperature from the rise of its resistance.
     *
     * @param windingKelvin t₂ = (R₂/R₁)(k + t₁) − k
     * @param riseKelvin    above the coolant at the end of the run
     */
    public record ByResistance(double windingKelvin, double riseKelvin) {}

    /**
     * Temperature of the winding by resistance.
     *
     * <p><b>Source.</b> IEC 60034-1, temperature rise by the resistance method (formula seen as quoted in an instrument
     * manual's appendix).
     *
     * @param coldOhm       resistance before the run
     * @param coldKelvin    winding temperature before the run
     * @param hotOhm        resistance right after the run, through the same terminals
     * @param coolantKelvin coolant or room temperature at the end of the run
     */
    public static ByResistance temperature(
            double coldOhm, double coldKelvin, double hotOhm, double coolantKelvin, Conductor conductor) {
        Require.positive("cold resistance", coldOhm, "ohm");
        Require.positive("hot resistance", hotOhm, "ohm");
        Require.positive("coolant temperature", coolantKelvin, "K");
        double perKelvin = conductor.relativePerKelvin(coldKelvin);
        double winding = coldKelvin + (hotOhm / coldOhm - 1) / perKelvin;
        return new ByResistance(winding, winding - coolantKelvin);
    }

    private static double spread(double x, double y, double z) {
        return Math.max(x, Math.max(y, z)) - Math.min(x, Math.min(y, z));
    }
}
