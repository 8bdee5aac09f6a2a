package servowright.engine.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class StampsTest {
    private static double[] even(double start, double interval, int count, double resolution) {
        double[] stamps = new double[count];
        for (int i = 0; i < count; i++) {
            double time = start + i * interval;
            stamps[i] = resolution > 0 ? Math.rint(time / resolution) * resolution : time;
        }
        return stamps;
    }

    @Test
    void sees_through_rounding_to_the_digits_printed() {
        Stamps.Even found =
                Stamps.even(even(-0.004688, 1.00097751e-5, 1024, 1e-8), 1e-8).orElseThrow();
        assertThat(found.interval()).isCloseTo(1.00097751e-5, within(1e-12));
        assertThat(found.rowsPerStamp()).isEqualTo(1);
    }

    @Test
    void sees_through_stamps_with_fewer_digits_than_rows() {
        Stamps.Even found = Stamps.even(even(0, 2.5e-4, 2000, 1e-3), 1e-3).orElseThrow();
        assertThat(found.interval()).isCloseTo(2.5e-4, within(1e-9));
        assertThat(found.rowsPerStamp()).isEqualTo(4);
    }

    @Test
    void sees_through_stamps_that_each_stand_for_two_rows() {
        double[] stamps = new double[2000];
        for (int i = 0; i < stamps.length; i++) {
            stamps[i] = -6 + Math.floorDiv(i, 2) * 1.2e-3;
        }
        Stamps.Even found = Stamps.even(stamps, 1e-5).orElseThrow();
        assertThat(found.rowsPerStamp()).isEqualTo(2);
        assertThat(found.interval()).isCloseTo(6e-4, within(1e-12));
        assertThat(found.start()).isEqualTo(-6);
    }

    @Test
    void does_not_call_jitter_even() {
        long seed = 20_240_611;
        Random random = new Random(seed);
        double[] stamps = even(0, 1e-3, 500, 0);
        for (int i = 0; i < stamps.length; i++) {
            stamps[i] += 5e-5 * random.nextGaussian();
        }
        assertThat(Stamps.even(stamps, 1e-6)).as("seed %d", seed).isEmpty();
    }

    @Test
    void does_not_call_a_gap_even() {
        double[] stamps = even(0, 1e-3, 500, 0);
        for (int i = 250; i < stamps.length; i++) {
            stamps[i] += 6e-3;
        }
        assertThat(Stamps.even(stamps, 1e-6)).isEmpty();
        Stamps.Steps gaps = Stamps.gaps(stamps);
        assertThat(gaps.count()).isEqualTo(1);
        assertThat(gaps.first()).isEqualTo(250);
        assertThat(gaps.largest()).isCloseTo(7e-3, within(1e-12));
    }

    @Test
    void counts_repeats_and_steps_back() {
        double[] stamps = {0, 1, 1, 2, 1.5, 3, 3, 4};
        assertThat(Stamps.repeats(stamps).count()).isEqualTo(2);
        assertThat(Stamps.backward(stamps)).isEqualTo(new Stamps.Steps(1, 4, 0.5));
        assertThat(Stamps.even(stamps, 0.1)).isEmpty();
    }

    @Test
    void finds_where_the_time_starts_anew() {
        double[] stamps = new double[30];
        for (int i = 0; i < stamps.length; i++) {
            stamps[i] = i % 10 * 0.1;
        }
        assertThat(Stamps.segmentStarts(stamps)).containsExactly(0, 10, 20);
    }

    @Test
    void one_step_back_in_the_middle_is_no_new_segment() {
        double[] stamps = even(0, 0.1, 30, 0);
        stamps[20] = 1.85;
        assertThat(Stamps.segmentStarts(stamps)).containsExactly(0);
    }

    @Test
    void too_few_or_standing_stamps_are_not_even() {
        assertThat(Stamps.even(new double[] {0, 1}, 0)).isEmpty();
        assertThat(Stamps.even(new double[] {1, 1, 1, 1}, 0)).isEmpty();
        assertThat(Stamps.typicalStep(new double[] {1, 1})).isNaN();
    }

    @Test
    void the_shortest_number_within_a_tolerance() {
        assertThat(Stamps.shortestWithin(7.9999999997e-7, 1e-15)).isEqualTo(8e-7);
        assertThat(Stamps.shortestWithin(-4e-14, 1e-12)).isZero();
    }
}
