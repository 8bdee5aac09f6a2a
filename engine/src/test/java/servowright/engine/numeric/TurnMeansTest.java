package servowright.engine.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Against waves whose amplitude is put in, and sin x / x of a wave averaged over a part (elementary integral). */
class TurnMeansTest {
    private static double[] waves(double[] angles) {
        return IntStream.range(0, angles.length)
                .mapToDouble(i -> 3 + 0.7 * Math.cos(5 * angles[i] + 1) + 0.2 * Math.sin(40 * angles[i]))
                .toArray();
    }

    private static int[] all(double[] values) {
        return IntStream.range(0, values.length).toArray();
    }

    private static double[] turns(int count, double turns) {
        return IntStream.range(0, count)
                .mapToDouble(i -> -2 + turns * 2 * Math.PI * i / count)
                .toArray();
    }

    @Test
    void finds_amplitudes_with_the_smoothing_undone() {
        double[] angles = turns(100_000, 3);
        double[] means = TurnMeans.of(angles, waves(angles), all(angles), 200);
        double[] amplitudes = TurnMeans.amplitudes(means, 60);
        assertThat(TurnMeans.filled(means)).isEqualTo(1);
        assertThat(amplitudes[5]).isCloseTo(0.7, within(1e-4));
        assertThat(amplitudes[40]).isCloseTo(0.2, within(1e-3));
        assertThat(amplitudes[7]).isCloseTo(0, within(1e-3));
        assertThat(TurnMeans.smoothing(40, 200)).isCloseTo(Math.sin(0.2 * Math.PI) / (0.2 * Math.PI), within(1e-15));
        assertThat(TurnMeans.smoothing(0, 200)).isEqualTo(1);
    }

    @Test
    void bridges_parts_without_a_sample() {
        double[] angles = turns(100_000, 1);
        int[] some = IntStream.range(0, angles.length)
                .filter(i -> TurnMeans.part(angles[i], 200) % 20 > 1)
                .toArray();
        double[] means = TurnMeans.of(angles, waves(angles), some, 200);
        assertThat(TurnMeans.filled(means)).isCloseTo(0.9, within(1e-12));
        assertThat(TurnMeans.amplitudes(means, 60)[5]).isCloseTo(0.7, within(0.02));
        assertThat(TurnMeans.filled(TurnMeans.of(angles, angles, new int[0], 10)))
                .isZero();
        assertThatThrownBy(() -> TurnMeans.of(angles, angles, new int[0], 0)).hasMessageContaining("part");
    }

    @Test
    void tells_the_way_out_from_the_way_back() {
        double[] outAndBack = {0, 1, 2, 1.8, 3, 4, 4.1, 3, 2, 2.2, 1, 0, 1, 2};
        assertThat(Reversals.senses(outAndBack, 0.9)).containsExactly(1, 1, 1, 1, 1, 1, 1, -1, -1, -1, -1, -1, 1, 1);
        double[] down = {0, -1, -2, -3};
        assertThat(Reversals.senses(down, 0.9)).containsOnly(-1);
        assertThat(Reversals.senses(new double[] {0, 0.1, 0}, 0.9)).containsOnly(0);
        assertThatThrownBy(() -> Reversals.senses(down, 0)).hasMessageContaining("way back");
    }
}
