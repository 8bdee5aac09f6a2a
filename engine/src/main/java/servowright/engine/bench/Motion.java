package servowright.engine.bench;

import java.util.Arrays;
import java.util.stream.IntStream;
import servowright.engine.encoder.Angles;
import servowright.engine.numeric.Statistics;

/**
 * Which rows of a run were taken in motion, in which direction, and how fast.
 *
 * @param rows      numbers of the rows in motion
 * @param direction 1 forwards and −1 back, one for each of them
 * @param speed     median of their speed, radians per second, or per row without times
 */
record Motion(int[] rows, double[] direction, double speed) {
    /** Rows over which a speed is taken, as a share of all. */
    private static final int SHARE = 400;

    /** Rows that move at {@code least} to {@code most} of the usual speed along a path of whole turns counted. */
    static Motion of(double[] path, double[] seconds, double least, double most) {
        int reach = Math.max(1, path.length / SHARE);
        double[] speeds = IntStream.range(0, path.length)
                .mapToDouble(i -> speed(path, seconds, Math.max(0, i - reach), Math.min(path.length - 1, i + reach)))
                .toArray();
        double[] sizes =
                Arrays.stream(speeds).map(Math::abs).filter(Double::isFinite).toArray();
        double usual = sizes.length == 0 ? 0 : Statistics.quantile(sizes, 0.75);
        int[] rows = IntStream.range(0, path.length)
                .filter(i -> usual > 0 && Math.abs(speeds[i]) >= least * usual && Math.abs(speeds[i]) <= most * usual)
                .toArray();
        double[] direction =
                Arrays.stream(rows).mapToDouble(i -> Math.signum(speeds[i])).toArray();
        double[] kept =
                Arrays.stream(rows).mapToDouble(i -> Math.abs(speeds[i])).toArray();
        return new Motion(rows, direction, kept.length == 0 ? 0 : Statistics.median(kept));
    }

    private static double speed(double[] path, double[] seconds, int from, int to) {
        double span = seconds.length > 0 ? seconds[to] - seconds[from] : to - from;
        return span > 0 ? (path[to] - path[from]) / span : Double.NaN;
    }

    /** Whether both directions are there. */
    boolean bothWays() {
        return Arrays.stream(direction).distinct().count() > 1;
    }

    /** Whether a reading runs against a path; steps between runs do not count. */
    static boolean against(double[] path, double[] read) {
        double followed = 0;
        for (int i = 1; i < path.length; i++) {
            double step = path[i] - path[i - 1];
            if (Math.abs(step) < Math.PI / 2) {
                followed += Math.signum(step) * Angles.wrapped(read[i] - read[i - 1]);
            }
        }
        return followed < 0;
    }
}
