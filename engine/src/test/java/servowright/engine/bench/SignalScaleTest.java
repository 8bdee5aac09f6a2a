package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import servowright.engine.capture.Frame;
import servowright.engine.capture.Signal;
import servowright.engine.capture.SignalTrace;

/** Speeds against positions of invented motion, whose scales are known. */
class SignalScaleTest {
    private static final double COUNT = 2 * Math.PI / 4096;

    private final SplittableRandom random = new SplittableRandom(909);

    /** Ten seconds of a swing, position in counts of 16 bits and speed in tenths, jittering in time. */
    private Optional<SignalScale> swing(double speedScale, double meant, double offset, double size) {
        Signal position = new Signal("position", 0x181, 0, 16, false, false, COUNT, 0);
        Signal speed = new Signal("speed", 0x182, 0, 16, false, true, speedScale, 0);
        SignalTrace x = new SignalTrace(position);
        SignalTrace v = new SignalTrace(speed);
        for (int k = 0; k < 2000; k++) {
            double t = 0.005 * k + random.nextDouble() * 0.0004;
            double angle = offset + size * Math.sin(3 * t);
            x.frame(frame(t, 0x181, Math.round(angle / COUNT)));
            v.frame(frame(t + 0.0002, 0x182, Math.round(3 * size * Math.cos(3 * t) / meant)));
        }
        return SignalScale.of(x, v);
    }

    private static Frame frame(double t, int id, long count) {
        Frame frame = new Frame().start(Math.round(t * 1e9), 0, id, 0);
        frame.data()[0] = (byte) count;
        frame.data()[1] = (byte) (count >> 8);
        return frame.sized(2);
    }

    @Test
    void finds_one_where_both_are_scaled_right() {
        SignalScale scale = swing(0.01, 0.01, 30, 10).orElseThrow();
        assertThat(scale.ratio().si()).isCloseTo(1, within(0.003));
        assertThat(scale.ratio().standardUncertainty()).isBetween(1e-7, 0.01);
    }

    @Test
    void finds_turns_per_minute_taken_for_radians_per_second() {
        SignalScale scale = swing(0.1, 0.1 * 2 * Math.PI / 60, 30, 10).orElseThrow();
        assertThat(scale.ratio().si()).isCloseTo(60 / (2 * Math.PI), within(0.03));
    }

    @Test
    void unwinds_a_position_that_runs_over() {
        SignalScale scale = swing(0.01, 0.01, 65536 * COUNT, 10).orElseThrow();
        assertThat(scale.ratio().si()).isCloseTo(1, within(0.003));
    }

    @Test
    void says_nothing_without_motion() {
        assertThat(swing(0.01, 0.01, 30, COUNT)).isEmpty();
        SignalTrace nothing = new SignalTrace(new Signal("n", 1, 0, 8, false, false, 1, 0));
        assertThat(SignalScale.of(nothing, nothing)).isEmpty();
    }
}
