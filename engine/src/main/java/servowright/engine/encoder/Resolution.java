package servowright.engine.encoder;

import servowright.engine.quantity.Require;

/**
 * The steps of a digital angle and what they do to a speed taken from differences.
 *
 * <p><b>Source.</b> Rounding error spread evenly over one step: variance q²/12. <b>Validity.</b> The angle crosses more than a
 * step per sample, or noise of half a step stirs it; slower, the error is a tone at the rate of the steps.
 *
 * @param countsPerTurn different readings in one turn
 */
public record Resolution(double countsPerTurn) {

    public Resolution {
        Require.within("counts per turn", 1, 1L << 40, countsPerTurn, "");
    }

    public static Resolution ofBits(int bits) {
        Require.within("bits", 1, 40, bits, "");
        return new Resolution(Math.scalb(1.0, bits));
    }

    public double stepRad() {
        return 2 * Math.PI / countsPerTurn;
    }

    /** Root mean square of the rounding, q/√12. */
    public double roundingRad() {
        return stepRad() / Math.sqrt(12);
    }

    /** Smallest speed other than 0 that a difference over a time can show, q/T. */
    public double speedStep(double second) {
        return stepRad() / Require.positive("time between the readings", second, "s");
    }

    /** Root mean square of the speed from rounding at both ends, q/(√6 T). */
    public double speedNoise(double second) {
        return differenced(roundingRad(), second);
    }

    /** Root mean square of a speed from a difference of two readings with noise: σ √2/T. */
    public static double differenced(double noiseRad, double second) {
        Require.notNegative("noise", noiseRad, "rad");
        return noiseRad * Math.sqrt(2) / Require.positive("time between the readings", second, "s");
    }

    /** The same with a low-pass of one pole behind it, σ ω_c √(2/(2 − ω_c T)): nearly independent of T. */
    public static double differencedAndFiltered(double noiseRad, double second, double cornerRadPerSecond) {
        Require.notNegative("noise", noiseRad, "rad");
        double share = Require.positive("corner", cornerRadPerSecond, "rad/s")
                * Require.positive("time between the readings", second, "s");
        Require.within("corner times sample time", 0, 1, share, "");
        return noiseRad * cornerRadPerSecond * Math.sqrt(2 / (2 - share));
    }

    /**
     * Largest electrical error when the counts of one electrical turn are cut to a whole number, over one mechanical turn:
     * the fraction lost times p − 1, radians electrical.
     */
    public double truncationElectricalRad(int polePairs) {
        double each = countsPerTurn / Require.atLeast("pole pairs", 1, polePairs);
        return truncationCounts(polePairs) * 2 * Math.PI / each;
    }

    /** The same in counts. */
    public double truncationCounts(int polePairs) {
        double each = countsPerTurn / Require.atLeast("pole pairs", 1, polePairs);
        return (each - Math.floor(each)) * (polePairs - 1);
    }

    /**
     * Turns after which an angle kept in a floating-point number of {@code significandBits} (24 for single precision) steps
     * wider than this resolution.
     */
    public double turnsInFloat(int significandBits) {
        Require.within("bits of the significand", 2, 60, significandBits, "");
        // In radians the numbers from 2^e to 2^(e+1) are 2^(e+1-bits) apart; the first e with a wider step ends it.
        int exponent = (int) Math.floor(Math.log(stepRad()) / Math.log(2)) + significandBits;
        return Math.scalb(1.0, exponent) / (2 * Math.PI);
    }

    /** Turns after which a signed counter of that many bits begins again. */
    public double turnsInCounter(int bits) {
        Require.within("bits of the counter", 2, 64, bits, "");
        return Math.scalb(1.0, bits - 1) / countsPerTurn;
    }
}
