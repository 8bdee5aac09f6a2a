package servowright.engine.recording;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

class DefectsTest {
    private static double[] counter(int count, double step, double modulus, double lowest) {
        double[] counts = new double[count];
        for (int i = 0; i < count; i++) {
            counts[i] = lowest + (i * step) % modulus;
        }
        return counts;
    }

    @Test
    void a_sixteen_bit_counter_is_recognised_and_counted_on() {
        double[] counts = counter(1000, 171, 65_536, 0);
        CounterWrap wrap = CounterWrap.find(counts).orElseThrow();
        assertThat(wrap.modulus()).isEqualTo(65_536);
        assertThat(wrap.count()).isEqualTo(2);
        assertThat(wrap.first()).isEqualTo(384); // 384 * 171 = 65664, the first count beyond 65536
        double[] whole = CounterWrap.unwrapped(counts, wrap.modulus());
        assertThat(whole[999]).isEqualTo(999 * 171.0);
    }

    @Test
    void a_signed_counter_that_runs_down_is_recognised_too() {
        double[] counts = new double[3000];
        for (int i = 0; i < counts.length; i++) {
            counts[i] = (short) (-40 * i);
        }
        CounterWrap wrap = CounterWrap.find(counts).orElseThrow();
        assertThat(wrap.modulus()).isEqualTo(65_536);
        assertThat(CounterWrap.unwrapped(counts, 65_536)[2999]).isEqualTo(-40 * 2999.0);
    }

    @Test
    void noise_and_square_waves_are_no_counters() {
        long seed = 7;
        Random random = new Random(seed);
        double[] noise = random.ints(2000, 0, 256).asDoubleStream().toArray();
        assertThat(CounterWrap.find(noise)).as("seed %d", seed).isEmpty();
        double[] halves = {0, 0.5, 255.5, 0};
        assertThat(CounterWrap.find(halves)).isEmpty();
    }

    @Test
    void single_zeros_on_a_fast_decay_are_drop_outs() {
        double[] speed = new double[2000];
        for (int i = 0; i < speed.length; i++) {
            speed[i] = 1500 * Math.exp(-i / 3000.0);
        }
        double[] clean = speed.clone();
        speed[300] = 0;
        speed[900] = 0;
        assertThat(DropOuts.find(speed)).containsExactly(300, 900);
        assertThat(DropOuts.repaired(speed, DropOuts.find(speed))[300]).isBetween(clean[301], clean[299]);
    }

    @Test
    void zeros_of_a_signal_that_passes_zero_are_none() {
        double[] wave = new double[1000];
        for (int i = 0; i < wave.length; i++) {
            wave[i] = Math.rint(20 * Math.sin(i * 0.05)) / 10;
        }
        assertThat(DropOuts.find(wave)).isEmpty();
        double[] quantised = {0.02, 0, 0.02, 0.02, 0, 0.02, -0.02, 0, 0.02, 0};
        assertThat(DropOuts.find(quantised)).isEmpty();
    }

    @Test
    void a_wave_cut_off_at_the_top_is_saturated() {
        double[] wave = new double[2000];
        for (int i = 0; i < wave.length; i++) {
            wave[i] = Math.min(9.5, 10 * Math.sin(i * 0.02));
        }
        Saturation found = Saturation.find(wave).orElseThrow();
        assertThat(found.level()).isEqualTo(9.5);
        assertThat(found.first()).isEqualTo(63); // asin(0.95) / 0.02 = 62.66
    }

    @Test
    void whole_waves_square_waves_and_resting_signals_are_not() {
        double[] wave = new double[2000];
        double[] square = new double[2000];
        double[] pulses = new double[2000];
        for (int i = 0; i < wave.length; i++) {
            wave[i] = 10 * Math.sin(i * 0.02);
            square[i] = Math.signum(wave[i]);
            pulses[i] = Math.max(0, wave[i]);
        }
        assertThat(Saturation.find(wave)).isEmpty();
        assertThat(Saturation.find(square)).isEmpty();
        assertThat(Saturation.find(pulses)).isEmpty();
    }
}
