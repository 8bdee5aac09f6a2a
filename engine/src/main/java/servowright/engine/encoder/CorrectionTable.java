package servowright.engine.encoder;

import java.util.stream.IntStream;
import servowright.engine.numeric.Values;
import servowright.engine.quantity.Require;

/**
 * What is to be taken off a reading, at evenly spaced readings of one turn, with mean zero.
 *
 * @param correctionRad at reading 2π i / n
 */
public record CorrectionTable(Values correctionRad) {

    private static final int CHECKED_PER_ENTRY = 16;

    /** How a drive reads between two entries. */
    public enum Reading {
        NEAREST,
        LINEAR
    }

    public CorrectionTable {
        Require.atLeast("number of entries", 4, correctionRad.size());
    }

    /** From a fitted series; a table of measured means would carry more noise, see {@link #noiseAgainstSeries}. */
    public static CorrectionTable of(HarmonicError error, int entries) {
        Require.atLeast("number of entries", 4, entries);
        HarmonicError ripple = new HarmonicError(0, error.ripples());
        return new CorrectionTable(Values.of(IntStream.range(0, entries)
                .mapToDouble(i -> 2 * Math.PI * i / entries)
                .map(read -> read - ripple.trueRad(read))
                .toArray()));
    }

    /** What is taken off at a reading. */
    public double atRad(double readRad, Reading reading) {
        int n = correctionRad.size();
        double place = readRad / (2 * Math.PI) * n;
        if (reading == Reading.NEAREST) {
            return correctionRad.at(Math.floorMod(Math.round(place), n));
        }
        double below = Math.floor(place);
        double share = place - below;
        return (1 - share) * correctionRad.at(Math.floorMod((long) below, n))
                + share * correctionRad.at(Math.floorMod((long) below + 1, n));
    }

    /** Largest error that the table leaves of a series, sought between its entries. */
    public double residueRad(HarmonicError error, Reading reading) {
        HarmonicError ripple = new HarmonicError(0, error.ripples());
        int steps = CHECKED_PER_ENTRY * correctionRad.size();
        return IntStream.range(0, steps)
                .mapToDouble(i -> 2 * Math.PI * i / steps)
                .map(read -> Math.abs(read - ripple.trueRad(read) - atRad(read, reading)))
                .max()
                .orElse(0);
    }

    /**
     * Largest residue of one harmonic of amplitude A and order k in a table of N entries: A (1 − cos(πk/N)) read linearly,
     * 2 A sin(πk/2N) read at the nearest entry.
     */
    public static double residueRad(double amplitudeRad, int order, int entries, Reading reading) {
        Require.notNegative("amplitude", amplitudeRad, "rad");
        Require.atLeast("entries for the order", 2 * order, entries);
        double half = Math.PI * order / (2 * entries);
        return reading == Reading.NEAREST ? 2 * amplitudeRad * Math.sin(half) : amplitudeRad * (1 - Math.cos(2 * half));
    }

    /** Variance of a table of measured means over that of a series with orders up to K from the same samples. */
    public static double noiseAgainstSeries(int entries, int orders) {
        Require.atLeast("number of orders", 1, orders);
        return entries / (2.0 * orders + 1);
    }
}
