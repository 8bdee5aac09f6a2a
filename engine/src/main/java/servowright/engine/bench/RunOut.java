package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Working;
import servowright.engine.motion.RunOutFit;
import servowright.engine.quantity.Quantity;
import servowright.engine.recording.DropOuts;

/**
 * The stretch of a recorded speed in which the shaft runs out, with both drag models fitted to it.
 *
 * @param trace   the stretch, speed counted positive
 * @param two     speed-independent and speed-proportional term
 * @param three   with a term that grows with the square of speed
 * @param remarks what was found and how it was handled
 */
record RunOut(Trace trace, RunOutFit two, RunOutFit three, List<Phrase> remarks) {
    /** The stretch begins where the speed last stands above this share of its highest. */
    private static final double FROM = 0.98;

    /** It ends here: near standstill friction is larger than any of the models. */
    private static final double TO = 0.05;

    /** A smaller fall cannot tell the terms apart. */
    private static final double LEAST_FALL = 0.3;

    /** More samples are brought to means of neighbours: that many carry all that the terms need. */
    private static final int MOST = 50_000;

    /** Standard errors of the third term from which it counts as seen. */
    private static final double SEEN = 2;

    /** It also counts where the model with it leaves less than this share of the squares: scatter alone takes 1/n. */
    private static final double LESS_LEFT = 0.98;

    /** Means over stretches this many times as far from 0, squared, as scatter alone would put them. */
    private static final double BENDS = 2;

    private static final int STRETCHES = 32;

    RunOut {
        remarks = List.copyOf(remarks);
    }

    /** Finds and fits the run-out, or says why there is none. */
    static Outcome<RunOut> of(Trace recorded) {
        List<Phrase> remarks = new ArrayList<>(recorded.remarks());
        double[] speeds = repaired(recorded, remarks);
        int start = start(speeds);
        int end = start;
        while (end < speeds.length && speeds[end] > TO * speeds[start]) {
            end++;
        }
        if (end - start < Trace.FEWEST || speeds[end - 1] > (1 - LEAST_FALL) * speeds[start]) {
            return Outcome.missing(
                    "a run-out in " + recorded.channel() + ": its speed falls by less than a third",
                    "bring the shaft to speed, take the drive away, and record until it stands");
        }
        Trace trace = recorded.with(speeds).part(start, end).thinned(MOST);
        Optional<RunOutFit> two = RunOutFit.of(trace.seconds(), trace.values(), false);
        Optional<RunOutFit> three = RunOutFit.of(trace.seconds(), trace.values(), true);
        if (two.isEmpty() || three.isEmpty() || !(two.get().slowingRadPerS2(speeds[end - 1]) > 0)) {
            return Outcome.missing(
                    "a shaft that slows down by itself in " + recorded.channel(),
                    "record the speed after the drive was taken away");
        }
        return Outcome.answer(new RunOut(trace, two.get(), three.get(), remarks), Working.NONE);
    }

    /** Whether the third term stands out of the scatter, or the drag bends in another way. */
    boolean curved() {
        return Math.abs(three.perRadian()) > SEEN * three.fit().standardError(3)
                || three.fit().fit().residualSumOfSquares()
                        < LESS_LEFT * two.fit().fit().residualSumOfSquares();
    }

    /**
     * Whether even the model taken leaves residuals that bend slowly: means over stretches that are farther from 0 than
     * scatter explains. Then the drag is neither of the two models, and their difference says how far off they may be.
     */
    boolean bends() {
        double[] rest = best().fit().fit().residuals().toArray();
        double variance = Arrays.stream(rest).map(r -> r * r).average().orElse(0);
        double sum = 0;
        for (int b = 0; b < STRETCHES; b++) {
            int from = (int) ((long) rest.length * b / STRETCHES);
            int to = (int) ((long) rest.length * (b + 1) / STRETCHES);
            double mean = Arrays.stream(rest, from, to).average().orElse(0);
            sum += (to - from) * mean * mean;
        }
        return sum > BENDS * STRETCHES * variance;
    }

    /** The model that the recording supports. */
    RunOutFit best() {
        return curved() ? three : two;
    }

    double highest() {
        return trace.values()[0];
    }

    double lowest() {
        return trace.values()[trace.count() - 1];
    }

    private static double[] repaired(Trace recorded, List<Phrase> remarks) {
        double[] speeds = recorded.values();
        List<Integer> lost = DropOuts.find(speeds);
        if (!lost.isEmpty()) {
            speeds = DropOuts.repaired(speeds, lost);
            remarks.add(Phrase.of("{count} single samples of 0, the first at {second}, were replaced by the mean of "
                            + "their neighbours")
                    .with("count", lost.size())
                    .with("second", Quantity.of(recorded.seconds()[lost.get(0)], "s"), "s"));
        }
        double sum = Arrays.stream(speeds).sum();
        if (sum < 0) {
            remarks.add(Phrase.of("the speed is negative; it was counted the other way round"));
            return Arrays.stream(speeds).map(w -> -w).toArray();
        }
        return speeds;
    }

    private static int start(double[] speeds) {
        double top = Arrays.stream(speeds).max().orElse(0);
        int start = speeds.length - 1;
        while (start > 0 && speeds[start] < FROM * top) {
            start--;
        }
        return start;
    }
}
