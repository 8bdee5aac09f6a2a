package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import servowright.engine.numeric.Statistics;

/**
 * Stretches of a record that each follow one step.
 *
 * @param from first sample of each stretch
 * @param to   sample behind each stretch
 */
record StepEdges(List<Integer> from, List<Integer> to) {
    private static final double UPPER = 0.7;
    private static final double LOWER = 0.3;
    private static final double OUTER = 0.02;
    private static final double ONSET = 0.05;
    private static final int STAYS = 4;
    private static final int FEWEST = 16;

    StepEdges {
        from = List.copyOf(from);
        to = List.copyOf(to);
    }

    int count() {
        return from.size();
    }

    /** Stretches between the edges of a voltage that jumps between two levels. */
    static StepEdges ofVoltage(double[] volts) {
        double low = Statistics.quantile(volts, OUTER);
        double high = Statistics.quantile(volts, 1 - OUTER);
        double span = high - low;
        List<Integer> edges = new ArrayList<>();
        boolean up = volts[0] > low + UPPER * span;
        for (int i = 1; i < volts.length; i++) {
            boolean nowUp = up ? volts[i] > low + LOWER * span : volts[i] > low + UPPER * span;
            if (nowUp != up) {
                edges.add(i);
                up = nowUp;
            }
        }
        return between(edges, volts.length);
    }

    /** The one stretch behind the place where a current leaves its first level for good. */
    static StepEdges ofCurrent(double[] amps) {
        int few = Math.max(3, amps.length / 50);
        double first = Statistics.median(Arrays.copyOf(amps, few));
        double last = Statistics.median(Arrays.copyOfRange(amps, amps.length - few, amps.length));
        double threshold = ONSET * Math.abs(last - first);
        for (int i = 0; i + STAYS < amps.length; i++) {
            boolean stays = true;
            for (int k = 0; k < STAYS; k++) {
                stays &= (amps[i + k] - first) * Math.signum(last - first) > threshold;
            }
            if (stays) {
                return between(List.of(Math.max(0, i - 1)), amps.length);
            }
        }
        return new StepEdges(List.of(), List.of());
    }

    private static StepEdges between(List<Integer> edges, int count) {
        List<Integer> from = new ArrayList<>();
        List<Integer> to = new ArrayList<>();
        for (int k = 0; k < edges.size(); k++) {
            int end = k + 1 < edges.size() ? edges.get(k + 1) : count;
            if (end - edges.get(k) >= FEWEST) {
                from.add(edges.get(k));
                to.add(end);
            }
        }
        return new StepEdges(from, to);
    }
}
