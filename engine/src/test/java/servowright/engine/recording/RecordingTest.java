package servowright.engine.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class RecordingTest {
    private static final double[] RAMP = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9};

    private static Recording ramp(Clock clock) {
        return new Recording("ramp", "00", clock, List.of(new Channel("a", Optional.empty(), RAMP)), List.of());
    }

    private static double[] samples(Recording recording) {
        return recording.channel("a").orElseThrow().samples();
    }

    @Test
    void cuts_from_the_first_to_the_last_time_inside() {
        Recording cut = ramp(Clock.uniform(-0.2, 0.1, 10)).cut(0.05, 0.41);
        assertThat(samples(cut)).containsExactly(3, 4, 5, 6);
        assertThat(cut.clock().timeS(0)).isCloseTo(0.1, within(1e-12));
    }

    @Test
    void a_window_beside_the_record_leaves_no_rows() {
        assertThat(ramp(Clock.uniform(0, 0.1, 10)).cut(5, 6).count()).isZero();
    }

    @Test
    void means_over_blocks_keep_the_middle_of_each_block_as_its_time() {
        Recording thin = ramp(Clock.uniform(0, 0.1, 10)).every(3);
        assertThat(samples(thin)).containsExactly(1, 4, 7);
        assertThat(thin.clock().timeS(0)).isCloseTo(0.1, within(1e-12));
        assertThat(thin.clock().intervalS()).isCloseTo(0.3, within(1e-12));
    }

    @Test
    void means_over_blocks_do_not_reach_over_the_start_of_a_segment() {
        double[] stampsS = {0, 1, 2, 3, 0, 1, 2, 3, 4, 5};
        Recording thin =
                ramp(new StampedClock(stampsS, List.of(0, 4), Optional.empty())).every(3);
        assertThat(samples(thin)).containsExactly(1, 5, 8);
        assertThat(thin.clock().segmentStarts()).containsExactly(0, 1);
        assertThat(thin.clock().timeS(1)).isEqualTo(1);
    }

    @Test
    void takes_one_segment_out() {
        double[] stampsS = {0, 1, 2, 3, 0, 1, 2, 3, 4, 5};
        Recording two = ramp(new StampedClock(stampsS, List.of(0, 4), Optional.empty()));
        assertThat(two.segmentCount()).isEqualTo(2);
        assertThat(samples(two.segment(1))).containsExactly(4, 5, 6, 7, 8, 9);
        assertThat(two.clock().intervalS()).isEqualTo(1);
        assertThat(two.clock().distinct()).isEqualTo(6);
        assertThatThrownBy(() -> two.cut(0, 1)).hasMessageContaining("2 segments");
    }

    @Test
    void resamples_by_straight_lines_over_uneven_stamps() {
        double[] stampsS = {0, 1, 3, 4, 5, 6, 7, 8, 9, 10};
        Recording even = ramp(Clock.stamped(stampsS)).resampled(0.5, 1, 4);
        assertThat(samples(even)).containsExactly(0.5, 1.25, 1.75, 2.5);
    }

    @Test
    void refuses_to_resample_where_nothing_is_known() {
        Recording recording = ramp(Clock.uniform(0, 1, 10));
        assertThatThrownBy(() -> recording.resampled(0, 1, 11)).hasMessageContaining("within the recording");
        assertThatThrownBy(() -> recording.resampled(-1, 1, 3)).hasMessageContaining("within the recording");
    }

    @Test
    void refuses_channels_of_another_length_and_names_given_twice() {
        Channel a = new Channel("a", Optional.empty(), RAMP);
        assertThatThrownBy(() -> new Recording("r", "", Clock.order(9), List.of(a), List.of()))
                .hasMessageContaining("10 samples");
        assertThatThrownBy(() -> new Recording("r", "", Clock.order(10), List.of(a, a), List.of()))
                .hasMessageContaining("two channels");
    }

    @Test
    void an_order_has_no_time() {
        Clock order = Clock.order(3);
        assertThat(order.timed()).isFalse();
        assertThat(order.intervalS()).isNaN();
        assertThatThrownBy(() -> order.timeS(0)).isInstanceOf(IllegalStateException.class);
    }

    @Test
    void refuses_stamps_that_are_not_numbers() {
        assertThatThrownBy(() -> Clock.stamped(new double[] {0, Double.NaN})).hasMessageContaining("finite");
        assertThatThrownBy(() -> Clock.uniform(0, Double.NaN, 1)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void a_spread_leaves_out_what_is_no_number() {
        Spread spread = Spread.of(new double[] {1, Double.NaN, 3, Double.POSITIVE_INFINITY});
        assertThat(spread).isEqualTo(new Spread(2, 1, 3, 2));
        assertThat(Spread.of(new double[] {Double.NaN}).mean()).isNaN();
    }
}
