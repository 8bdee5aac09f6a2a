package servowright.engine.bus;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import servowright.engine.bus.ErrorState.Mode;

class ErrorStateTest {
    private static ErrorState times(int n, UnaryOperator<ErrorState> what) {
        ErrorState s = ErrorState.FRESH;
        for (int i = 0; i < n; i++) {
            s = what.apply(s);
        }
        return s;
    }

    /** 32 failures in a row from nothing: warning at 12, passive at 16, off at 32 (rules recalled, counts computed). */
    @Test
    void a_sender_is_off_after_thirty_two_failures_in_a_row() {
        assertThat(times(11, ErrorState::sendingFailed).mode()).isEqualTo(Mode.ACTIVE);
        assertThat(times(12, ErrorState::sendingFailed).mode()).isEqualTo(Mode.WARNING);
        assertThat(times(16, ErrorState::sendingFailed).mode()).isEqualTo(Mode.PASSIVE);
        assertThat(times(31, ErrorState::sendingFailed).mode()).isEqualTo(Mode.PASSIVE);
        assertThat(times(32, ErrorState::sendingFailed).mode()).isEqualTo(Mode.BUS_OFF);
    }

    /** A node alone stays at 128 whatever it repeats: seen in the field. */
    @Test
    void a_node_alone_never_leaves_the_bus() {
        ErrorState s = times(10_000, ErrorState::notAcknowledged);
        assertThat(s.transmit()).isEqualTo(128);
        assertThat(s.mode()).isEqualTo(Mode.PASSIVE);
    }

    @Test
    void success_takes_one_off() {
        assertThat(times(16, ErrorState::sendingFailed).sent().mode()).isEqualTo(Mode.WARNING);
        assertThat(ErrorState.FRESH.sent()).isEqualTo(ErrorState.FRESH);
        assertThat(ErrorState.FRESH.received()).isEqualTo(ErrorState.FRESH);
        ErrorState deaf = times(500, ErrorState::receivingFailed);
        assertThat(deaf.mode()).isEqualTo(Mode.PASSIVE);
        assertThat(deaf.received().receive()).isEqualTo(127);
        assertThat(times(96, ErrorState::receivingFailed).mode()).isEqualTo(Mode.WARNING);
    }

    /** 128 times 11 bits: 1.408 ms at 1 Mbit/s, 11.264 ms at 125 kbit/s (computed). */
    @Test
    void coming_back_takes_1408_bits() {
        assertThat(ErrorState.recoveryNs(1_000)).isEqualTo(1_408_000);
        assertThat(ErrorState.recoveryNs(8_000)).isEqualTo(11_264_000);
        assertThat(ErrorFrame.MOST_BITS - ErrorFrame.LEAST_BITS).isEqualTo(6);
    }
}
