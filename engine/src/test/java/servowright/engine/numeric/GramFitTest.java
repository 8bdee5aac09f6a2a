package servowright.engine.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The quick fit against the careful one. */
class GramFitTest {
    private static final long SEED = 12;

    @Test
    void agrees_with_the_careful_fit() {
        Random random = new Random(SEED);
        int n = 500;
        double[] ones = new double[n];
        Arrays.fill(ones, 1);
        double[] fast = random.doubles(n, -3, 5).toArray();
        double[] slow = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            slow[i] = 1e4 * Math.exp(-i / 90.0);
            y[i] = 2.5 * fast[i] - 3e-4 * slow[i] + 7 + random.nextGaussian();
        }
        GramFit quick = GramFit.of(y, fast, slow, ones).orElseThrow();
        LinearFit careful = LinearFit.of(Design.ofColumns(fast, slow, ones), y);
        for (int j = 0; j < 3; j++) {
            double p = careful.parameter(j);
            assertThat(quick.parameters()[j]).as("seed " + SEED).isCloseTo(p, within(1e-9 * Math.abs(p)));
        }
        assertThat(quick.residualSumOfSquares()).isCloseTo(careful.residualSumOfSquares(), within(1e-6));
    }

    @Test
    void finds_nothing_where_columns_depend_on_each_other_or_are_empty() {
        double[] x = {1, 2, 3, 4};
        double[] twice = {2, 4, 6, 8};
        assertThat(GramFit.of(x, x, twice)).isEmpty();
        assertThat(GramFit.of(x, new double[4])).isEmpty();
    }
}
