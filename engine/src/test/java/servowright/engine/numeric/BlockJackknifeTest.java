package servowright.engine.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class BlockJackknifeTest {
    private static final int COUNT = 1000;

    private static double[] times() {
        double[] t = new double[COUNT];
        Arrays.setAll(t, i -> i / 100.0);
        return t;
    }

    /** Share of 400 runs whose 95 % interval for the slope holds the truth; errors with the given lag-one correlation. */
    private static double coverage(double correlation) {
        double[] t = times();
        int held = 0;
        for (int run = 0; run < 400; run++) {
            Random random = new Random(8100 + run);
            double[] y = new double[COUNT];
            double error = 0;
            for (int i = 0; i < COUNT; i++) {
                error = correlation * error + random.nextGaussian();
                y[i] = 3 + 2 * t[i] + error;
            }
            BlockJackknife fit = BlockJackknife.of(Design.line(t), y, 20).orElseThrow();
            double k = Quantile.coverageFactor(0.95, fit.degreesOfFreedom());
            held += Math.abs(fit.parameter(1) - 2) <= k * fit.standardError(1) ? 1 : 0;
        }
        return held / 400.0;
    }

    @Test
    void intervals_hold_the_truth_as_often_as_they_say() {
        assertThat(coverage(0)).as("white, seed 8100").isBetween(0.92, 0.98);
        assertThat(coverage(0.7)).as("dependent, seed 8100").isBetween(0.92, 0.98);
    }

    /** The plain way: fit once more without each stretch. */
    @Test
    void agrees_with_fits_that_leave_each_stretch_out() {
        Random random = new Random(3);
        double[] t = times();
        double[] y = Arrays.stream(t).map(x -> 1 - x + random.nextGaussian()).toArray();
        double[] slopes = new double[10];
        for (int b = 0; b < 10; b++) {
            int from = b * COUNT / 10;
            int to = from + COUNT / 10;
            slopes[b] = LinearFit.of(Design.line(without(t, from, to)), without(y, from, to))
                    .parameter(1);
        }
        double expected = Math.sqrt(Statistics.variance(slopes) * 9 * 9 / 10);
        BlockJackknife fit = BlockJackknife.of(Design.line(t), y, 10).orElseThrow();
        assertThat(fit.standardError(1)).isCloseTo(expected, within(1e-9 * expected));
    }

    private static double[] without(double[] values, int from, int to) {
        double[] rest = new double[values.length - (to - from)];
        System.arraycopy(values, 0, rest, 0, from);
        System.arraycopy(values, to, rest, from, values.length - to);
        return rest;
    }

    @Test
    void has_no_answer_when_one_stretch_alone_carries_a_parameter() {
        double[] step = new double[COUNT];
        Arrays.fill(step, 0, 20, 1);
        double[] ones = new double[COUNT];
        Arrays.fill(ones, 1);
        double[] y = times();
        assertThat(BlockJackknife.of(Design.ofColumns(ones, step), y, 20)).isEmpty();
        assertThat(BlockJackknife.of(Design.ofColumns(ones, ones), y, 20)).isEmpty();
        assertThat(BlockJackknife.of(Design.line(new double[] {1, 2, 3}), new double[] {1, 2, 3}, 3))
                .isEmpty();
        assertThatIllegalArgumentException().isThrownBy(() -> BlockJackknife.of(Design.line(y), y, 1));
    }
}
