package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.motion.DrivenFit;
import servowright.engine.numeric.SmoothWindows;
import servowright.engine.numeric.Statistics;
import servowright.engine.quantity.Quantity;

/**
 * How a shaft moved under its current, from stretches of a recording.
 *
 * @param two      dry and viscous drag
 * @param three    with a term that grows with the square of speed
 * @param shadow   share by which noise of the current may make the acceleration per ampere too small
 * @param seconds  middle of each stretch
 * @param observed mean acceleration of each stretch, rad/s²
 */
@SuppressWarnings("ArrayRecordComponent") // compared by identity on purpose, as in Trace
record DrivenRun(DrivenFit two, DrivenFit three, double shadow, double[] seconds, double[] observed) {
    private static final int STRETCHES = 400;
    private static final int LEAST_SAMPLES = 16;

    /** Windows in one swing of the current, there and back. */
    private static final int SHORT = 8;

    private static final double STANDSTILL = 0.03;
    private static final double SEEN = 2;
    private static final double LESS_LEFT = 0.97;
    private static final double MOST_LEFT = 0.3;

    /** Fits the run, or says why it carries no answer. */
    static Outcome<DrivenRun> of(BenchTest test, Trace amp, Trace speed) {
        SmoothWindows windows = windows(amp, speed);
        double top = Arrays.stream(speed.values()).map(Math::abs).max().orElse(0);
        double[] sizes = windows.leastSizes(speed.values());
        int[] turning = IntStream.range(0, windows.count())
                .filter(k -> sizes[k] > STANDSTILL * top)
                .toArray();
        double[] observed = picked(windows.slopes(speed.values()), turning);
        double[] amps = picked(windows.means(amp.values()), turning);
        double[] speeds = picked(windows.means(speed.values()), turning);
        Optional<DrivenFit> two =
                turning.length == 0 ? Optional.empty() : DrivenFit.of(observed, amps, speeds, turning, false);
        Optional<DrivenFit> three =
                turning.length == 0 ? Optional.empty() : DrivenFit.of(observed, amps, speeds, turning, true);
        if (two.isEmpty() || three.isEmpty() || !follows(two.get(), observed)) {
            return Outcome.missing(
                    "a speed that follows the current in " + test.id(),
                    "let the current change, forward and back, while the free shaft turns");
        }
        double shadow = noise(amp.values()) * windows.noiseShare() / Math.max(1e-30, Statistics.variance(amps));
        return Outcome.answer(
                new DrivenRun(two.get(), three.get(), shadow, picked(windows.middles(), turning), observed),
                Working.NONE);
    }

    /** Windows of a four-hundredth of the recording, but short against the swings of the current. */
    static SmoothWindows windows(Trace amp, Trace speed) {
        int swing = 2 * amp.count() / (swings(amp.values()) + 1);
        int samples = Math.min(amp.count() / STRETCHES, swing / SHORT);
        return SmoothWindows.over(speed.seconds(), Math.max(LEAST_SAMPLES, samples));
    }

    /** How often the signal passes from well above its mean to well below it, or back. */
    private static int swings(double[] values) {
        double mean = Statistics.mean(values);
        double well = Statistics.standardDeviation(values) / 2;
        int swings = 0;
        int side = 0;
        for (double value : values) {
            int now = value > mean + well ? 1 : value < mean - well ? -1 : side;
            swings += now != side && side != 0 ? 1 : 0;
            side = now;
        }
        return swings;
    }

    /** Variance of what changes from sample to sample. */
    private static double noise(double[] values) {
        double sum = 0;
        for (int i = 1; i < values.length; i++) {
            sum += (values[i] - values[i - 1]) * (values[i] - values[i - 1]);
        }
        return sum / (2 * (values.length - 1));
    }

    private static boolean follows(DrivenFit fit, double[] observed) {
        double left = fit.fit().residualSd();
        double all = Statistics.rootMeanSquare(observed);
        return Math.abs(fit.perAmp()) > 2 * SEEN * fit.standardError(0) && left < MOST_LEFT * all;
    }

    static double[] picked(double[] values, int[] rows) {
        return Arrays.stream(rows).mapToDouble(i -> values[i]).toArray();
    }

    /** Whether the third term stands out, or the drag bends in another way. */
    boolean curved() {
        return Math.abs(three.perRadian()) > SEEN * three.standardError(three.bothWays() ? 4 : 3)
                || three.fit().residualSumOfSquares() < LESS_LEFT * two.fit().residualSumOfSquares();
    }

    /**
     * Whether even three terms may not follow the drag: where they leave nothing but noise of the speed, which returns with the other sign,
     * they do.
     */
    boolean bends() {
        return curved() && !three.returning();
    }

    DrivenFit best() {
        return curved() ? three : two;
    }

    List<Phrase> details() {
        List<Phrase> details = new ArrayList<>();
        details.add(terms("two terms", two));
        details.add(terms("three terms", three));
        details.add(Phrase.of(chosen()));
        return details;
    }

    private String chosen() {
        if (!curved()) {
            return "two terms were taken: a third does not stand out of the scatter";
        }
        return bends()
                ? "three terms were taken: the drag bends, and the difference to two terms widens the result"
                : "three terms were taken: the drag bends, and they follow it to within the scatter";
    }

    private static Phrase terms(String name, DrivenFit fit) {
        double g = fit.perAmp();
        return Phrase.of(
                        name
                                + ": {g} per ampere; drag {a} and {b} at one radian per second; explains {r} of the acceleration")
                .with("g", Quantity.of(g, "rad/s2"), "rad/s2")
                .with("a", Quantity.of(fit.constantRadPerS2() / g, "A"), "A")
                .with("b", Quantity.of(fit.perSecond() / g, "A"), "mA")
                .with("r", Quantity.number(fit.fit().rSquaredAboutZero()), "%");
    }

    List<Curve> curves() {
        return PointCurves.of(
                "acceleration",
                curved() ? "three terms" : "two terms",
                seconds,
                observed,
                best().fit().residuals().toArray(),
                "s",
                "rad/s2");
    }

    /** What the time stamps show: gaps and uneven steps. */
    static Optional<Phrase> stamps(Trace trace) {
        double[] t = trace.seconds();
        double usual = trace.spanS() / (t.length - 1);
        double least = Double.POSITIVE_INFINITY;
        double most = 0;
        int gaps = 0;
        for (int i = 1; i < t.length; i++) {
            double step = t[i] - t[i - 1];
            gaps += step > 3 * usual ? 1 : 0;
            least = Math.min(least, step);
            most = Math.max(most, step);
        }
        if (most < 1.05 * usual) {
            return Optional.empty();
        }
        return Optional.of(
                Phrase.of("samples follow each other by {least} to {most}, {gaps} gaps; the time stamps were used")
                        .with("least", Quantity.of(least, "s"), "ms")
                        .with("most", Quantity.of(most, "s"), "ms")
                        .with("gaps", gaps));
    }
}
