package servowright.engine.bus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class CycleLoadTest {
    /** Eight axes with 8-byte frames at 1 Mbit/s: cycle 1776 to 2160 us, 563 to 463 Hz (recomputed from the frame lengths). */
    @Test
    void eight_axes_with_eight_bytes_each_way() {
        CycleLoad least = new CycleLoad(111e-6, 111e-6, 0);
        CycleLoad most = new CycleLoad(135e-6, 135e-6, 0);
        assertThat(least.cycleSecond(8)).isCloseTo(1776e-6, within(1e-15));
        assertThat(1 / most.cycleSecond(8)).isCloseTo(463, within(0.1));
        assertThat(least.load(8, 500)).isCloseTo(0.888, within(1e-12));
        assertThat(most.load(8, 500)).isCloseTo(1.08, within(1e-12));
    }

    /** 1 kHz with a 55-bit frame once a cycle: (1000 - 55)/270 gives three axes, 953/222 four (recomputed). */
    @Test
    void a_cycle_holds_whole_axes() {
        assertThat(new CycleLoad(135e-6, 135e-6, 55e-6).mostAxes(1000)).isEqualTo(3);
        assertThat(new CycleLoad(111e-6, 111e-6, 47e-6).mostAxes(1000)).isEqualTo(4);
        assertThat(new CycleLoad(135e-6, 135e-6, 55e-6).mostAxes(4000)).isZero();
        assertThat(new CycleLoad(100e-6, 100e-6, 0).mostAxes(1000)).isEqualTo(5);
    }

    @Test
    void refuses_frames_without_length_and_cycles_without_rate() {
        assertThatThrownBy(() -> new CycleLoad(0, 0, 1e-3)).hasMessageContaining("time of both");
        assertThatThrownBy(() -> new CycleLoad(1e-4, Double.NaN, 0)).hasMessageContaining("reply");
        assertThatThrownBy(() -> new CycleLoad(1e-4, 1e-4, 0).load(1, 0)).hasMessageContaining("cycle rate");
        assertThatThrownBy(() -> new CycleLoad(1e-4, 1e-4, 0).cycleSecond(0)).hasMessageContaining("axes");
    }
}
