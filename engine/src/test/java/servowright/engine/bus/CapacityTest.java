package servowright.engine.bus;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import servowright.engine.bus.ResponseTime.Schedule;

class CapacityTest {
    private static List<Message> axes(int count, long cycleNs) {
        List<Message> all = new ArrayList<>();
        all.add(new Message("sync", 55_000, cycleNs, 0, cycleNs));
        for (int i = 0; i < 2 * count; i++) {
            all.add(new Message("m" + i, 135_000, cycleNs, 0, cycleNs));
        }
        return all;
    }

    /** 1 Mbit/s, 1 kHz, 8 bytes to and from each axis and a SYNC: three axes in the worst case (computed: 945 / 270). */
    @Test
    void three_axes_go_at_one_kilohertz() {
        Sensitivity asks = new Sensitivity(1_000, FaultModel.none());
        assertThat(asks.mostAxes(n -> axes(n, 1_000_000), 20)).isEqualTo(3);
        assertThat(asks.mostAxes(n -> axes(n, 200_000), 20)).isZero();
        assertThat(ResponseTime.utilisation(axes(6, 1_000_000))).isEqualTo(1.675);
    }

    /** Eight axes take 2160 us and the SYNC 55 us (practitioner case): 2.215 ms, with all released at once and nothing below. */
    @Test
    void the_shortest_cycle_of_eight_axes_is_their_sum() {
        Sensitivity asks = new Sensitivity(1_000, FaultModel.none());
        assertThat(asks.shortestCycle(c -> axes(8, c), 10_000_000, 1_000)).isEqualTo(2_215_000);
        assertThat(asks.shortestCycle(c -> axes(8, c), 2_000_000, 1_000)).isZero();
    }

    @Test
    void the_stretch_is_what_is_left_of_the_cycle() {
        Sensitivity asks = new Sensitivity(1_000, FaultModel.none());
        long stretch = asks.mostStretch(axes(2, 1_000_000));
        assertThat(stretch).isBetween(1670L, 1681L);
        assertThat(asks.mostStretch(axes(4, 1_000_000))).isZero();
    }

    /**
     * Node 0 holds messages 0, 2, 3 and one buffer: message 0 waits for message 3, which waits for 1 and 2 and itself. With buffers enough
     * nothing changes. Computed by hand: w(3) = B 100 + 3 x 100, R(3) = 400 plus its own 0 blocking.
     */
    @Test
    void one_buffer_lets_the_lowest_hold_up_the_highest() {
        List<Message> set = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            set.add(new Message("m" + i, 100_000, 50_000_000, 0, 50_000_000));
        }
        List<Integer> node = List.of(0, 1, 0, 0);
        List<ResponseTime> free = ResponseTime.of(set, 1_000, FaultModel.none());
        assertThat(TransmitBuffers.of(set, node, List.of(3, 3, 3, 3), 1_000)).isEqualTo(free);
        List<ResponseTime> one = TransmitBuffers.of(set, node, List.of(1, 1, 1, 1), 1_000);
        assertThat(free.get(0).worstNs()).isEqualTo(200_000);
        assertThat(one.get(0).worstNs()).isEqualTo(200_000 + 400_000);
        assertThat(one.get(3).worstNs()).isEqualTo(400_000);
        List<ResponseTime> two = TransmitBuffers.of(set, node, List.of(2, 2, 2, 2), 1_000);
        assertThat(two.get(0).worstNs()).isEqualTo(200_000 + 400_000);
        assertThat(two.get(2)).isEqualTo(free.get(2));
    }

    @Test
    void an_overloaded_buffer_has_no_bound() {
        List<Message> set = axes(6, 1_000_000);
        List<Integer> node = set.stream().map(m -> 0).toList();
        List<Integer> one = set.stream().map(m -> 1).toList();
        assertThat(TransmitBuffers.of(set, node, one, 1_000)).allMatch(r -> r.schedule() == Schedule.NO_BOUND);
    }
}
