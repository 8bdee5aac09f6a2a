package servowright.engine.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static servowright.engine.capture.Frames.MS;
import static servowright.engine.capture.Frames.data;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Numbers inside the data of a message. */
class SignalTest {
    private static Signal signal(int start, int bits, boolean highFirst, boolean signed) {
        return new Signal("s", 0x181, start, bits, highFirst, signed, 1, 0);
    }

    /** Whole bytes against the platform's own way of reading them. */
    @Test
    void reads_whole_bytes_in_both_orders() {
        SplittableRandom random = new SplittableRandom(77);
        for (int run = 0; run < 200; run++) {
            Frame frame = data(0, 0x181, 0, 0, 0, 0, 0, 0, 0, 0);
            byte[] bytes = new byte[8];
            random.nextBytes(bytes);
            System.arraycopy(bytes, 0, frame.data(), 0, 8);
            ByteBuffer little = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
            ByteBuffer big = ByteBuffer.wrap(bytes);
            assertThat(signal(16, 32, false, true).count(frame)).isEqualTo(little.getInt(2));
            assertThat(signal(16, 32, true, true).count(frame)).isEqualTo(big.getInt(2));
            assertThat(signal(8, 16, false, false).count(frame)).isEqualTo(little.getShort(1) & 0xffff);
            assertThat(signal(0, 64, true, true).count(frame)).isEqualTo(big.getLong(0));
        }
    }

    /** 0xABC in the upper twelve of sixteen bits, and in the lower twelve. */
    @Test
    void reads_numbers_that_begin_within_a_byte() {
        Frame frame = data(0, 0x181, 0xab, 0xcd);
        assertThat(signal(0, 12, true, false).count(frame)).isEqualTo(0xabc);
        assertThat(signal(4, 12, true, false).count(frame)).isEqualTo(0xbcd);
        assertThat(signal(4, 12, false, false).count(frame)).isEqualTo(0xcda);
        assertThat(signal(4, 12, false, true).count(frame)).isEqualTo(0xcda - 0x1000);
    }

    @Test
    void applies_scale_and_offset_and_knows_where_it_runs_over() {
        Signal celsius = new Signal("t", 0x181, 0, 8, false, false, 1, -40 + 273.15);
        assertThat(celsius.value(data(0, 0x181, 61))).isCloseTo(294.15, within(1e-9));
        assertThat(new Signal("x", 0x181, 0, 16, false, true, -0.5, 0).span()).isEqualTo(32768);
    }

    @Test
    void is_not_in_frames_that_are_too_short_or_of_another_kind() {
        Signal s = signal(8, 16, false, true);
        assertThat(s.in(data(0, 0x181, 1, 2))).isFalse();
        assertThat(s.in(data(0, 0x181, 1, 2, 3))).isTrue();
        assertThat(s.in(data(0, 0x182, 1, 2, 3))).isFalse();
        assertThat(s.in(data(0, 0x181, 1, 2, 3).marked(Frame.EXTENDED))).isFalse();
    }

    @Test
    void keeps_fewer_values_the_longer_a_capture_gets() {
        SignalTrace trace = new SignalTrace(signal(0, 32, false, false));
        for (int k = 0; k < 200_000; k++) {
            trace.frame(data(k * MS, 0x181, k & 0xff, k >>> 8 & 0xff, k >>> 16, 0));
        }
        double[] t = trace.atS();
        double[] v = trace.values();
        assertThat(t.length).isBetween(32_000, 65_536);
        for (int k = 0; k < t.length; k++) {
            assertThat(v[k]).isCloseTo(t[k] * 1000, within(1e-6));
        }
    }
}
