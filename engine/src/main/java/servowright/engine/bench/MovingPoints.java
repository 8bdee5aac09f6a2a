package servowright.engine.bench;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import servowright.engine.machine.BenchTest;
import servowright.engine.numeric.SmoothWindows;
import servowright.engine.recording.Recording;

/**
 * Speed and current of a shaft whose speed never settles, as means over short stretches, with the acceleration of each.
 *
 * @param points        speed and current
 * @param accelerations mean of dω/dt, rad/s²
 */
@SuppressWarnings("ArrayRecordComponent") // compared by identity on purpose, as in Trace
record MovingPoints(Points points, double[] accelerations) {
    private static final int STRETCHES = 400;
    private static final int LEAST_SAMPLES = 8;
    private static final int FEWEST = 64;

    /** Stretches in which the shaft turns faster than a share of its top speed; empty when there are too few. */
    static Optional<MovingPoints> of(BenchTest test, Recording recording, Points all, double leastShare) {
        Optional<Trace> speed = Points.trace(test, recording, Wanted.SPEED).found();
        Optional<Trace> amp = Points.trace(test, recording, Wanted.CURRENT).found();
        if (speed.isEmpty() || amp.isEmpty() || speed.get().count() != amp.get().count()) {
            return Optional.empty();
        }
        double[] radPerS = speed.get().values();
        SmoothWindows windows =
                SmoothWindows.over(speed.get().seconds(), Math.max(LEAST_SAMPLES, radPerS.length / STRETCHES));
        double top = Arrays.stream(radPerS).map(Math::abs).max().orElse(0);
        double[] sizes = windows.leastSizes(radPerS);
        int[] turning = IntStream.range(0, windows.count())
                .filter(k -> sizes[k] > leastShare * top)
                .toArray();
        if (turning.length < FEWEST) {
            return Optional.empty();
        }
        double[] x = DrivenRun.picked(windows.means(radPerS), turning);
        double[] y = DrivenRun.picked(windows.means(amp.get().values()), turning);
        Points points = new Points(x, y, new double[x.length], new double[x.length], true, all.said(), all.remarks());
        return Optional.of(new MovingPoints(points, DrivenRun.picked(windows.slopes(radPerS), turning)));
    }
}
