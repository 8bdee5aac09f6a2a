package servowright.engine.motor;

import java.util.stream.IntStream;
import servowright.engine.numeric.TurnMeans;

/** Samples of one sense of rotation, gathered in parts of a turn. */
final class TurnSamples {
    private final double[] rad;
    private final int[] rows;
    private final double[] means;
    private final int[] part;
    private final int[] counts;

    TurnSamples(double[] rad, double[] samples, int[] rows, int parts) {
        this.rad = rad;
        this.rows = rows;
        this.means = TurnMeans.of(rad, samples, rows, parts);
        this.part = new int[rows.length];
        this.counts = new int[parts];
        for (int i = 0; i < rows.length; i++) {
            part[i] = TurnMeans.part(rad[rows[i]], parts);
            counts[part[i]]++;
        }
    }

    /** Mean of each part; not a number where no sample fell. */
    double[] means() {
        return means;
    }

    int[] filled() {
        return IntStream.range(0, means.length)
                .filter(k -> !Double.isNaN(means[k]))
                .toArray();
    }

    /** Mean of cos nθ and of sin nθ of the samples in each part: exact however the samples lie within it. */
    double[][] waves(int order) {
        double[][] sums = new double[2][means.length];
        for (int i = 0; i < rows.length; i++) {
            double angle = order * rad[rows[i]];
            sums[0][part[i]] += Math.cos(angle);
            sums[1][part[i]] += Math.sin(angle);
        }
        for (int k = 0; k < means.length; k++) {
            sums[0][k] /= counts[k];
            sums[1][k] /= counts[k];
        }
        return sums;
    }
}
