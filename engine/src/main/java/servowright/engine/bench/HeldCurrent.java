package servowright.engine.bench;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import servowright.engine.known.Phrase;
import servowright.engine.motion.DrivenFit;
import servowright.engine.numeric.SmoothWindows;
import servowright.engine.quantity.Quantity;

/**
 * A current that stands still at a limit: held there by its controller, or cut off by its sensor. Only the shaft can tell. It is
 * fitted where the current moves freely, and must accelerate as that fit says where the current stands still.
 */
final class HeldCurrent {
    /** A stretch of equal samples that is no chance. */
    private static final int STRETCH = 4;

    private static final int FEWEST = 32;

    /** A current that is missing by less than this many standard uncertainties, or by this share, is not missing. */
    private static final double SEEN = 3;

    private static final double SHARE = 0.01;

    private HeldCurrent() {}

    /** What to say where the current is held at its limit; empty where it is cut off, or where the shaft cannot tell. */
    static Optional<Phrase> remark(Trace amp, Trace speed) {
        SmoothWindows windows = DrivenRun.windows(amp, speed);
        double[] still = windows.means(still(amp.values()));
        double[] least = windows.leastSizes(speed.values());
        int[] free = IntStream.range(0, windows.count())
                .filter(k -> still[k] == 0 && least[k] > 0)
                .toArray();
        int[] held = IntStream.range(0, windows.count())
                .filter(k -> still[k] > 1 - 1e-9 && least[k] > 0)
                .toArray();
        if (free.length < FEWEST || held.length == 0) {
            return Optional.empty();
        }
        double[] slopes = windows.slopes(speed.values());
        double[] amps = windows.means(amp.values());
        double[] speeds = windows.means(speed.values());
        return DrivenFit.of(
                        DrivenRun.picked(slopes, free),
                        DrivenRun.picked(amps, free),
                        DrivenRun.picked(speeds, free),
                        free,
                        false)
                .filter(f -> !missing(f, held, slopes, amps, speeds))
                .map(f -> Phrase.of(
                                "the current stands at its limit in {share} of the recording, and the shaft moves as that current"
                                        + " moves it: it was held there")
                        .with("share", Quantity.number(held.length / (double) windows.count()), "%"));
    }

    /** Whether the shaft asks for more current than was read, or less, on average where it stands still. */
    private static boolean missing(DrivenFit fit, int[] held, double[] slopes, double[] amps, double[] speeds) {
        int terms = fit.covariance().size();
        double[] gradient = new double[terms];
        double missing = 0;
        double level = 0;
        for (int k : held) {
            double side = Math.signum(amps[k]);
            double[] row = row(terms, amps[k], speeds[k]);
            double predicted = 0;
            for (int j = 0; j < terms; j++) {
                predicted += row[j] * fit.fit().parameter(j);
                gradient[j] += side * row[j] / held.length;
            }
            missing += side * (slopes[k] - predicted) / held.length;
            level += Math.abs(amps[k]) / held.length;
        }
        double scatter = fit.fit().residualSd() / Math.sqrt(held.length);
        double standard = Math.sqrt(scatter * scatter + fit.covariance().varianceOf(gradient));
        return Math.abs(missing) > Math.max(SEEN * standard, SHARE * level * Math.abs(fit.perAmp()));
    }

    /** What the terms of the fit are multiplied by. */
    private static double[] row(int terms, double amp, double speed) {
        double[] row = {amp, -Math.signum(speed), -speed, 1};
        return Arrays.copyOf(row, terms);
    }

    /** 1 where the current stands at its largest or its least value, and 0 elsewhere. */
    private static double[] still(double[] amps) {
        double most = Arrays.stream(amps).max().orElseThrow();
        double least = Arrays.stream(amps).min().orElseThrow();
        double[] still = new double[amps.length];
        int from = 0;
        for (int i = 1; i <= amps.length; i++) {
            if (i == amps.length || amps[i] != amps[from]) {
                boolean limit = amps[from] == most || amps[from] == least;
                Arrays.fill(still, from, i, limit && i - from >= STRETCH ? 1 : 0);
                from = i;
            }
        }
        return still;
    }
}
