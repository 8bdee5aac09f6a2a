package servowright.engine.power;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import servowright.engine.quantity.Require;

/**
 * Which switch of a three-phase bridge stays open or shorted, from the signs that the phase currents take.
 *
 * <p><b>Rule.</b> With all switches at work each phase current takes both signs. A leg whose upper switch stays open gives its phase no
 * positive current, one whose lower switch stays open no negative one, while the other phases still alternate. A leg that is
 * shorted to one rail drives a steady current: no phase alternates, its own has one sign and the others the opposite. <b>Valid for</b> a turning motor,
 * sampled at any rate, long enough to see every position of the current; offsets well below the band. <b>Source.</b> Kirchhoff's laws
 * of the bridge, derived; signs alone cannot always tell one switch from another.
 *
 * @param above share of samples above the band, per phase
 * @param below share of samples below it
 */
@SuppressWarnings("ArrayRecordComponent") // compared by identity on purpose: shares of one recording
public record BridgeSigns(double[] above, double[] below) {
    /** A sign that fewer samples show is never taken. */
    private static final double NEVER = 0.03;

    /** A sign that more samples show is taken. */
    private static final double TAKEN = 0.1;

    /** One switch of the bridge that would explain the signs. */
    public record Suspect(int leg, boolean upper, boolean shorted) {}

    /**
     * Counts signs.
     *
     * @param band below this size a current counts as none, A
     * @param amp  the three phase currents
     */
    public static BridgeSigns of(double band, double[]... amp) {
        Require.positive("band", band, "A");
        double[] above = new double[amp.length];
        double[] below = new double[amp.length];
        for (int k = 0; k < amp.length; k++) {
            above[k] = Arrays.stream(amp[k]).filter(i -> i > band).count() / (double) amp[k].length;
            below[k] = Arrays.stream(amp[k]).filter(i -> i < -band).count() / (double) amp[k].length;
        }
        return new BridgeSigns(above, below);
    }

    /** Whether every phase takes both signs. */
    public boolean healthy() {
        return IntStream.range(0, above.length).allMatch(k -> above[k] > TAKEN && below[k] > TAKEN);
    }

    /** 1 for a phase with positive currents only, -1 with negative ones only, 0 otherwise. */
    public int only(int phase) {
        boolean positive = above[phase] > TAKEN && below[phase] < NEVER;
        boolean negative = below[phase] > TAKEN && above[phase] < NEVER;
        return positive ? 1 : negative ? -1 : 0;
    }

    /** Switches of which one, open or shorted, explains the signs; empty where none does. */
    public List<Suspect> suspects() {
        boolean alternates = IntStream.range(0, above.length).anyMatch(k -> above[k] > TAKEN && below[k] > TAKEN);
        List<Suspect> found = new ArrayList<>();
        for (int k = 0; k < above.length; k++) {
            int sign = only(k);
            int phase = k;
            boolean alone = IntStream.range(0, above.length)
                    .filter(other -> other != phase)
                    .noneMatch(other -> only(other) == sign);
            if (sign != 0 && alternates) {
                found.add(new Suspect(k, sign < 0, false));
            } else if (sign != 0 && alone) {
                found.add(new Suspect(k, sign > 0, true));
            }
        }
        return found;
    }
}
