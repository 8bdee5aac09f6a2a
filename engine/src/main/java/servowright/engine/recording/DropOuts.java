package servowright.engine.recording;

import java.util.ArrayList;
import java.util.List;

/**
 * Single samples that read exactly 0 between two neighbours that agree with each other and are far from 0: what a lost
 * transfer or a missed pulse leaves in a log.
 */
public final class DropOuts {
    /** Neighbours are far from 0 when they are this many typical steps away from it. */
    private static final double FAR = 10;

    /** Neighbours agree when they differ by less than this part of their size. */
    private static final double AGREE = 0.1;

    private DropOuts() {}

    /** The rows with a drop-out, from 0, rising. */
    public static List<Integer> find(double[] samples) {
        List<Integer> rows = new ArrayList<>();
        double far = Double.NaN;
        for (int i = 1; i + 1 < samples.length; i++) {
            if (samples[i] == 0 && samples[i - 1] * samples[i + 1] > 0) {
                far = Double.isNaN(far) ? FAR * typicalChange(samples) : far;
                double before = samples[i - 1];
                double after = samples[i + 1];
                double size = Math.min(Math.abs(before), Math.abs(after));
                if (size > far && Math.abs(after - before) < AGREE * size) {
                    rows.add(i);
                }
            }
        }
        return rows;
    }

    /** The samples with each drop-out replaced by the mean of its neighbours. */
    public static double[] repaired(double[] samples, List<Integer> rows) {
        double[] repaired = samples.clone();
        for (int row : rows) {
            repaired[row] = (samples[row - 1] + samples[row + 1]) / 2;
        }
        return repaired;
    }

    /** Mean size of a change from sample to sample, over an even selection of rows. */
    private static double typicalChange(double[] samples) {
        int stride = Math.max(1, samples.length / 4096);
        double sum = 0;
        int n = 0;
        for (int i = 1; i < samples.length; i += stride) {
            double change = Math.abs(samples[i] - samples[i - 1]);
            if (Double.isFinite(change)) {
                sum += change;
                n++;
            }
        }
        return n == 0 ? 0 : sum / n;
    }
}
