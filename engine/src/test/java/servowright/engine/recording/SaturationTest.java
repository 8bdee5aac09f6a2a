package servowright.engine.recording;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Signals that stand at an extreme: some were cut off there, others rest, are held, or are read in steps. All invented. */
class SaturationTest {
    private static final int COUNT = 3000;

    private static double[] of(IntToDoubleFunction f) {
        return IntStream.range(0, COUNT).mapToDouble(f).toArray();
    }

    private static double[] noisy(double sigma, IntToDoubleFunction f) {
        Random random = new Random(5);
        return of(i -> f.applyAsDouble(i) + sigma * random.nextGaussian());
    }

    private static double[] inSteps(double step, double... values) {
        return Arrays.stream(values).map(v -> step * Math.rint(v / step)).toArray();
    }

    private static double[] atMost(double limit, double... values) {
        return Arrays.stream(values).map(v -> Math.min(v, limit)).toArray();
    }

    private static double wave(int i) {
        return 10 * Math.sin(i * 0.02);
    }

    @Test
    void finds_a_measured_signal_that_is_cut_off_for_most_of_the_time() {
        assertThat(Saturation.find(atMost(-5, noisy(0.1, SaturationTest::wave))))
                .get()
                .matches(Saturation::sure);
        assertThat(Saturation.find(inSteps(0.08, atMost(3, noisy(0.1, SaturationTest::wave)))))
                .get()
                .matches(Saturation::sure);
    }

    @Test
    void finds_a_measured_signal_that_is_cut_off_once_for_long() {
        double[] ramp = atMost(20, noisy(0.1, i -> 0.01 * i));
        Saturation found = Saturation.find(ramp).orElseThrow();
        assertThat(found.sure()).isTrue();
        assertThat(found.level()).isEqualTo(20);
        assertThat(found.first()).isBetween(1970, 2030);
        assertThat(found.count()).isBetween(970L, 1030L);
        double[] stuck = noisy(0.1, SaturationTest::wave);
        Arrays.fill(stuck, 1000, 1700, 11);
        assertThat(Saturation.find(stuck)).get().matches(Saturation::sure);
    }

    @Test
    void doubts_a_smooth_signal_that_stands_still_once() {
        Optional<Saturation> profile = Saturation.find(of(i -> Math.min(10, 0.01 * Math.min(i, COUNT - i)) * 1.0));
        assertThat(profile).get().matches(s -> !s.sure());
    }

    /** A shaft that comes to rest, commands in steps, a slow reading in steps, one that settles, a current held with its noise. */
    @Test
    void takes_no_signal_for_cut_off_that_rests_is_held_or_is_read_in_steps() {
        assertThat(Saturation.find(noisy(0.2, i -> Math.max(0, 500 - 0.3 * i)))).isEmpty();
        assertThat(Saturation.find(of(i -> Math.max(0, 500 - 0.3 * i)))).isEmpty();
        assertThat(Saturation.find(of(i -> Math.floor(i / 300.0)))).isEmpty();
        assertThat(Saturation.find(of(i -> Math.floor(i / 60.0) % 7 * 1.3 + Math.floor(i / 420.0) % 5)))
                .isEmpty();
        assertThat(Saturation.find(inSteps(0.1, of(i -> 300 + 40 * Math.sin(i * 0.0021)))))
                .isEmpty();
        assertThat(Saturation.find(inSteps(0.1, noisy(0.03, i -> 300 + 40 * Math.sin(i * 0.0021)))))
                .isEmpty();
        assertThat(Saturation.find(inSteps(2.0 / 256, of(i -> -Math.expm1(-i / 200.0)))))
                .isEmpty();
        assertThat(Saturation.find(inSteps(2.0 / 256, noisy(0.002, i -> -Math.expm1(-i / 200.0)))))
                .isEmpty();
        assertThat(Saturation.find(noisy(0.05, i -> Math.min(5, wave(i))))).isEmpty();
        assertThat(Saturation.find(inSteps(0.05, noisy(0.05, i -> Math.min(5, wave(i))))))
                .isEmpty();
    }

    /** A converter of 8 bits on a whole wave: the top step lasts 2.41 times the next at most (geometry of a parabola, worked out here). */
    @Test
    void takes_no_whole_wave_for_cut_off_in_any_resolution() {
        for (double step : new double[] {0.3, 0.08, 0.02, 0.001}) {
            for (double top = 9.3; top < 10; top += 0.037) {
                double size = top;
                assertThat(Saturation.find(inSteps(step, of(i -> size * Math.sin(i * 0.004)))))
                        .as("%s in %s", size, step)
                        .isEmpty();
            }
        }
    }

    @Test
    void counts_0_as_a_limit_of_a_wave_only() {
        double[] half = Arrays.stream(noisy(0.1, SaturationTest::wave))
                .map(v -> Math.max(0, v))
                .toArray();
        assertThat(Saturation.find(half)).isEmpty();
        assertThat(Saturation.ofWave(half)).get().matches(Saturation::sure);
        assertThat(Saturation.ofWave(noisy(0.1, SaturationTest::wave))).isEmpty();
    }
}
