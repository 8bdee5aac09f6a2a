package servowright.engine.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static servowright.engine.capture.Frames.MS;
import static servowright.engine.capture.Frames.data;
import static servowright.engine.capture.Frames.seen;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What nodes say about themselves. */
class NodeWatchTest {
    private final Traffic traffic = Traffic.at(new BitTimes(1000, 1000));

    private Node node() {
        return seen(traffic).nodes().get(0);
    }

    /** Bounds of the predefined connection set [seen in a public manual]. */
    @ParameterizedTest
    @CsvSource({
        "0, NETWORK_MANAGEMENT, 0",
        "128, SYNC, 0",
        "129, EMERGENCY, 1",
        "256, TIME, 0",
        "385, TRANSMIT_1, 1",
        "639, RECEIVE_1, 127",
        "1407, RECEIVE_4, 127",
        "1409, SERVICE_REPLY, 1",
        "1537, SERVICE_REQUEST, 1",
        "1919, HEARTBEAT, 127",
        "2020, OTHER, 100"
    })
    void knows_what_an_identifier_is_for(int identifier, Service service, int node) {
        assertThat(Service.of(identifier)).isEqualTo(service);
        assertThat(Service.node(identifier)).isEqualTo(node);
    }

    @Test
    void sees_a_node_that_started_anew_in_mid_run() {
        traffic.frame(data(0, 0x705, 0));
        traffic.frame(data(100 * MS, 0x705, 5));
        traffic.frame(data(200 * MS, 0x705, 0));
        assertThat(node().restarts()).isEqualTo(1);
        assertThat(node().bootUpsNs()).containsExactly(0L, 200 * MS);
    }

    @Test
    void takes_a_boot_up_after_a_reset_by_the_master_as_ordered() {
        traffic.frame(data(0, 0x705, 5));
        traffic.frame(data(50 * MS, 0x000, 0x81, 5));
        traffic.frame(data(200 * MS, 0x705, 0));
        assertThat(node().restarts()).isZero();
        assertThat(node().bootUpsNs()).hasSize(1);
    }

    @Test
    void sees_two_nodes_with_one_number_by_states_that_alternate() {
        for (long k = 0; k < 10; k++) {
            traffic.frame(data(k * 100 * MS, 0x705, 5));
            traffic.frame(data(k * 100 * MS + 50 * MS, 0x705, 127));
        }
        assertThat(node().seemsDouble()).isTrue();
    }

    @Test
    void leaves_the_toggle_bit_of_node_guarding_out() {
        for (long k = 0; k < 10; k++) {
            traffic.frame(data(k * 100 * MS, 0x705, k % 2 == 0 ? 0x05 : 0x85));
        }
        assertThat(node().seemsDouble()).isFalse();
        assertThat(node().lastState()).isEqualTo(5);
        assertThat(node().heartbeats()).isEqualTo(10);
    }

    @Test
    void collects_emergencies_and_aborts() {
        traffic.frame(data(0, 0x085, 0x10, 0x43, 8, 0, 0, 0, 0, 0));
        traffic.frame(data(MS, 0x085, 0, 0, 0, 0, 0, 0, 0, 0));
        traffic.frame(data(2 * MS, 0x585, 0x80, 0x41, 0x60, 0, 0, 0, 2, 6));
        assertThat(node().emergencies()).containsEntry(0x4310, 1L).containsEntry(0, 1L);
        assertThat(node().aborts()).containsEntry(0x0602_0000L, 1L);
    }

    /** Masks of the state machine [seen in three public manuals]. */
    @ParameterizedTest
    @CsvSource({
        "0x0000, NOT_READY",
        "0x0250, SWITCH_ON_DISABLED",
        "0x0231, READY",
        "0x0233, SWITCHED_ON",
        "0x1237, ENABLED",
        "0x0217, QUICK_STOP",
        "0x021F, FAULT_REACTION",
        "0x0218, FAULT",
        "0x0001, UNDEFINED"
    })
    void knows_the_state_of_an_axis_from_its_statusword(String word, AxisState state) {
        assertThat(AxisState.of(Integer.decode(word))).isEqualTo(state);
    }

    /** 12 of the 64 patterns, 12288 of the 65536 words [recomputed from the masks]. */
    @Test
    void takes_most_words_for_no_state() {
        long states = IntStream.range(0, 65536)
                .filter(w -> AxisState.of(w) != AxisState.UNDEFINED)
                .count();
        assertThat(states).isEqualTo(12288);
    }

    /** Commands of the device control [from memory]. */
    @ParameterizedTest
    @CsvSource({
        "0x06, SHUT_DOWN",
        "0x07, SWITCH_ON",
        "0x0F, ENABLE",
        "0x1F, ENABLE",
        "0x00, DISABLE_VOLTAGE",
        "0x02, QUICK_STOP",
        "0x0B, QUICK_STOP",
        "0x80, CLEAR_FAULT"
    })
    void knows_what_a_controlword_asks(String word, AxisCommand command) {
        assertThat(AxisCommand.of(Integer.decode(word))).isEqualTo(command);
    }

    @Test
    void follows_an_axis_into_its_fault() {
        traffic.frame(data(0, 0x705, 5));
        for (long k = 1; k < 30; k++) {
            traffic.frame(data(k * 10 * MS, 0x205, k < 5 ? 6 : 15, 0));
            traffic.frame(data(k * 10 * MS + MS, 0x185, k < 10 ? 0x31 : k < 20 ? 0x37 : 0x18, 2));
        }
        assertThat(node().turns())
                .extracting(Node.Turn::state)
                .containsExactly(AxisState.READY, AxisState.ENABLED, AxisState.FAULT);
        assertThat(node().turns().get(2).command()).isEqualTo(AxisCommand.ENABLE);
        assertThat(Remarks.of(seen(traffic))).anyMatch(r -> r.words().template().contains("goes to fault"));
    }

    @Test
    void takes_process_data_that_are_no_statuswords_for_what_they_are() {
        traffic.frame(data(0, 0x705, 5));
        for (int k = 0; k < 30; k++) {
            traffic.frame(data(10 * MS * k, 0x185, k, 0));
        }
        assertThat(node().turns()).isEmpty();
    }
}
