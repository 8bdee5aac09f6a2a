package servowright.engine.bus;

import servowright.engine.quantity.Require;

/**
 * Lengths that go with a bit rate by usage, for the rates people use. Between two rates the row of the higher one counts.
 *
 * <p><b>Source.</b> trunk: public reprint of CiA DS-102 V2.0 (seen). Stubs: rules in use as reprinted in public fieldbus manuals (seen);
 * their sum is five times the longest in every row. The stub that ISO 11898-2 allows at 1 Mbit/s and 40 m is 0.3 m (seen).
 *
 * @param bitsPerSecond highest rate of the row, bit/s
 * @param trunkMetre    longest trunk, m
 * @param stubMetre     longest stub, m
 */
public record BusPractice(double bitsPerSecond, double trunkMetre, double stubMetre) {
    private static final BusPractice[] ROWS = {
        new BusPractice(50e3, 1000, 55),
        new BusPractice(125e3, 500, 22),
        new BusPractice(250e3, 250, 11),
        new BusPractice(500e3, 100, 5.5),
        new BusPractice(800e3, 50, 2.5),
        new BusPractice(1e6, 25, 1.5)
    };
    private static final double STUBS_TOGETHER = 5;

    /** The row of a rate, up to 1 Mbit/s; a rate below the lowest row takes that. */
    public static BusPractice at(double bitsPerSecond) {
        Require.within("bit rate", 1, 1e6, bitsPerSecond, "bit/s");
        for (BusPractice row : ROWS) {
            if (bitsPerSecond <= row.bitsPerSecond) {
                return row;
            }
        }
        throw new IllegalStateException("the rows end above 1 Mbit/s");
    }

    /** Longest sum of all stubs, m. */
    public double stubsMetre() {
        return STUBS_TOGETHER * stubMetre;
    }
}
