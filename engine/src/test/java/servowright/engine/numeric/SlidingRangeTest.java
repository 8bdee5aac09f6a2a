package servowright.engine.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Ranges of neighbourhoods against each of them sorted. */
class SlidingRangeTest {
    private static final long SEED = 11;

    @Test
    void agrees_with_sorting_every_neighbourhood() {
        Random random = new Random(SEED);
        for (int n : new int[] {1, 2, 5, 40, 333}) {
            double[] x = random.doubles(n, -1, 1).map(v -> Math.rint(6 * v)).toArray();
            for (int reach : new int[] {0, 1, 2, 17}) {
                double[] ranges = SlidingRange.of(x, reach);
                assertThat(ranges).as("seed " + SEED).hasSize(Math.max(0, n - 2 * reach));
                for (int i = 0; i < ranges.length; i++) {
                    double[] near = Arrays.copyOfRange(x, i, i + 2 * reach + 1);
                    Arrays.sort(near);
                    assertThat(ranges[i]).isEqualTo(near[near.length - 1] - near[0]);
                }
            }
        }
    }

    @Test
    void refuses_a_neighbourhood_that_reaches_nowhere() {
        assertThatIllegalArgumentException().isThrownBy(() -> SlidingRange.of(new double[] {1}, -1));
    }
}
