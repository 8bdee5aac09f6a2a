package servowright.engine.encoder;

import java.util.EnumSet;
import java.util.Set;
import servowright.engine.numeric.Values;
import servowright.engine.quantity.Require;

/**
 * What one slow turn of the shaft by hand shows of an absolute sensor, before anything is powered.
 *
 * @param turns read, above 0 when the count rises
 * @param codesSeenShare share of the code range that was passed through, 1 when all of it was
 * @param largestStep largest step between two samples, turns
 * @param signalSwing (most − least)/(most + least) of the field read, NaN if it was not
 * @param faults what is wrong, none when the sensor is fit to be calibrated
 */
public record HandTurn(double turns, double codesSeenShare, double largestStep, double signalSwing, Set<Fault> faults) {

    /** Departure from one turn that a hand may make. */
    private static final double TURN_SLACK = 0.06;

    /** Share of the codes that must be passed; a hand is not even. */
    private static final double CODES_NEEDED = 0.98;

    private static final double WIDEST_STEP = 0.125;
    private static final double WIDEST_SWING = 0.05;
    private static final int BINS = 64;

    /** What a hand turn can find. */
    public enum Fault {
        /** About no turn: the magnet is magnetised along its axis, is loose, or is not there. */
        STANDS_STILL,
        /** Whole turns, but not one: more than one pole pair, or a wrong number of counts per turn. */
        WRONG_RATIO,
        /** Not a whole number of turns: the magnet slips, or the turn was not one. */
        SLIPS,
        /** The count falls: reversed. Not a fault of its own, but a sign to be set. */
        REVERSED,
        /** Parts of the code range never came: codes are missing, or the reading jumps over them. */
        MISSING_CODES,
        /** The field swings more than a placed magnet makes it: far off centre, chipped, or iron nearby. */
        FIELD_SWINGS
    }

    public HandTurn {
        faults = Set.copyOf(faults);
    }

    /**
     * From counts of one turn; {@code magnitudes} may be empty if the sensor does not tell the field.
     *
     * @param counts in the order taken, slow enough that none is more than an eighth of a turn from the next
     */
    public static HandTurn of(int[] counts, int countsPerTurn, Values magnitudes) {
        Require.atLeast("number of counts", 16, counts.length);
        double[] rad = Angles.unwrapped(Angles.ofCounts(counts, countsPerTurn));
        double turns = (rad[rad.length - 1] - rad[0]) / (2 * Math.PI);
        double largest = 0;
        for (int i = 1; i < rad.length; i++) {
            largest = Math.max(largest, Math.abs(rad[i] - rad[i - 1]) / (2 * Math.PI));
        }
        double share = seen(rad, countsPerTurn);
        double swing = swing(magnitudes);
        Set<Fault> faults = EnumSet.noneOf(Fault.class);
        double made = Math.abs(turns);
        if (made < 0.5) {
            faults.add(Fault.STANDS_STILL);
        } else if (Math.abs(made - Math.rint(made)) > TURN_SLACK) {
            faults.add(Fault.SLIPS);
        } else if (Math.rint(made) != 1) {
            faults.add(Fault.WRONG_RATIO);
        }
        if (turns < -0.5) {
            faults.add(Fault.REVERSED);
        }
        if (made >= 0.5 && (share < CODES_NEEDED || largest > WIDEST_STEP)) {
            faults.add(Fault.MISSING_CODES);
        }
        if (swing > WIDEST_SWING) {
            faults.add(Fault.FIELD_SWINGS);
        }
        return new HandTurn(turns, share, largest, swing, faults);
    }

    /** Share of equal parts of the code range in which a count lay; parts narrower than a step count as seen. */
    private static double seen(double[] unwrapped, int countsPerTurn) {
        int bins = Math.min(BINS, countsPerTurn);
        boolean[] hit = new boolean[bins];
        double bin = 2 * Math.PI / bins;
        double mean = Math.abs(unwrapped[unwrapped.length - 1] - unwrapped[0]) / (unwrapped.length - 1);
        for (int i = 0; i < unwrapped.length; i++) {
            mark(hit, unwrapped[i] / bin);
            boolean small = i > 0 && Math.abs(unwrapped[i] - unwrapped[i - 1]) < Math.max(bin, 4 * mean);
            if (small) {
                fill(hit, unwrapped[i - 1] / bin, unwrapped[i] / bin);
            }
        }
        int seen = 0;
        for (boolean one : hit) {
            seen += one ? 1 : 0;
        }
        return (double) seen / bins;
    }

    private static void fill(boolean[] hit, double from, double to) {
        for (double place = Math.min(from, to); place < Math.max(from, to); place++) {
            mark(hit, place);
        }
    }

    private static void mark(boolean[] hit, double place) {
        hit[Math.floorMod((long) Math.floor(place), hit.length)] = true;
    }

    private static double swing(Values magnitudes) {
        if (magnitudes.size() == 0) {
            return Double.NaN;
        }
        double least = magnitudes.stream().min().orElseThrow();
        double most = magnitudes.stream().max().orElseThrow();
        return (most - least) / (most + least);
    }
}
