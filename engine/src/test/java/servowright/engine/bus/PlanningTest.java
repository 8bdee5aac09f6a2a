package servowright.engine.bus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.HashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import servowright.engine.bus.ResponseTime.Schedule;

/** Order, numbers, offsets and cycles of planned messages. */
class PlanningTest {
    private static final long MS = 1_000_000;

    private static Message message(String name, double sendMs, double periodMs, double deadlineMs) {
        return new Message(name, Math.round(sendMs * MS), Math.round(periodMs * MS), 0, Math.round(deadlineMs * MS));
    }

    private static List<String> names(List<Message> messages) {
        return messages.stream().map(Message::name).toList();
    }

    private static boolean meets(List<Message> order) {
        return ResponseTime.of(order, 1000, FaultModel.none()).stream()
                .allMatch(r -> r.schedule() == Schedule.MEETS_DEADLINE);
    }

    /** By rate the short urgent message comes last and late: 1 + 1 + 0.1 ms, due after 1.5 ms [by hand]. */
    @Test
    void finds_an_order_that_meets_deadlines_where_the_order_by_rate_does_not() {
        List<Message> set = List.of(message("a", 1, 5, 5), message("b", 1, 6, 6), message("urgent", 0.1, 10, 1.5));
        List<Message> byRate = PriorityOrder.byRate(set);
        assertThat(names(byRate)).containsExactly("a", "b", "urgent");
        assertThat(meets(byRate)).isFalse();
        List<Message> found =
                PriorityOrder.meetingDeadlines(set, 1000, FaultModel.none()).orElseThrow();
        assertThat(meets(found)).isTrue();
        assertThat(found.get(0).name()).isEqualTo("urgent");
    }

    /** A, B and C of Davis, Burns, Bril, Lukkien 2007, table 1 [from memory]: C is late in the published order, and in any other. */
    @Test
    void says_that_no_order_meets_deadlines_where_none_does() {
        List<Message> set = List.of(message("A", 1, 2.5, 1.5), message("B", 1, 3.5, 1.5), message("C", 1, 3.5, 1.5));
        assertThat(PriorityOrder.meetingDeadlines(set, 8000, FaultModel.none())).isEmpty();
    }

    @Test
    void spreads_messages_of_one_period_over_it() {
        List<Message> set = IntStream.range(0, 8)
                .mapToObj(k -> message("m" + k, 0.135, 5, 5))
                .toList();
        List<Long> offsets = Offsets.spread(set, 135_000);
        Set<Long> slots = new HashSet<>();
        offsets.forEach(o -> slots.add(o / 135_000));
        assertThat(slots).hasSize(8);
        assertThat(offsets).allMatch(o -> o >= 0 && o < 5 * MS);
    }

    @Test
    void keeps_slower_messages_out_of_the_slots_of_faster_ones() {
        List<Message> set =
                List.of(message("slow", 0.1, 20, 20), message("fast", 0.1, 1, 1), message("mid", 0.1, 5, 5));
        List<Long> offsets = Offsets.spread(set, 100_000);
        assertThat(offsets.get(1)).isZero();
        assertThat(offsets.get(0) % MS).isNotEqualTo(0);
        assertThat(offsets.get(2) % MS).isNotEqualTo(0);
        assertThat(offsets.get(0) % (5 * MS)).isNotEqualTo(offsets.get(2));
    }

    @Test
    void offers_the_fullest_period_a_slot_all_the_same() {
        List<Message> set = IntStream.range(0, 30)
                .mapToObj(k -> message("m" + k, 0.1, 1, 1))
                .toList();
        assertThat(Offsets.spread(set, 100_000)).hasSize(30).allMatch(o -> o < MS);
        assertThatIllegalArgumentException().isThrownBy(() -> Offsets.spread(set, 0));
    }

    /** Round trip of 1.8 ms, 0.8 ms of it bus and axis [practitioners' report]: six axes in turn reach 92.6 Hz. */
    @Test
    void compares_asking_in_turn_with_letting_all_answer() {
        Polling polling = new Polling(135_000, 135_000, 530_000, MS);
        assertThat(polling.roundTripNs()).isEqualTo(1_800_000);
        assertThat(1e9 / polling.cycleNs(6)).isBetween(92.5, 92.7);
        assertThat(polling.streamingNs(6)).isEqualTo(6 * 270_000 + 1_530_000);
        assertThat(polling.cycleNs(6, 1, 10 * MS)).isEqualTo(5 * 1_800_000 + 10_135_000);
        assertThatIllegalArgumentException().isThrownBy(() -> polling.cycleNs(2, 3, MS));
    }

    @Test
    void numbers_messages_in_their_order_around_given_ones() {
        List<Integer> ids = Identifiers.inOrder(
                List.of(OptionalInt.empty(), OptionalInt.of(0x100), OptionalInt.empty(), OptionalInt.of(0x102)));
        assertThat(ids).isSorted().doesNotHaveDuplicates().contains(0x100, 0x102);
    }

    @Test
    void takes_the_next_free_number_where_none_is_left_between() {
        List<Integer> ids =
                Identifiers.inOrder(List.of(OptionalInt.of(0x100), OptionalInt.empty(), OptionalInt.of(0x101)));
        assertThat(ids).containsExactly(0x100, 0x102, 0x101);
    }

    /** Bounds of the table in a public fieldbus manual [seen]. */
    @Test
    void knows_the_predefined_connection_set() {
        assertThat(PredefinedConnections.SYNC.identifier(5)).isEqualTo(0x080);
        assertThat(PredefinedConnections.FEEDBACK.identifier(1)).isEqualTo(0x181);
        assertThat(PredefinedConnections.COMMAND.identifier(127)).isEqualTo(0x27f);
        assertThat(PredefinedConnections.HEARTBEAT.identifier(1)).isEqualTo(0x701);
        assertThatIllegalArgumentException().isThrownBy(() -> PredefinedConnections.SYNC.identifier(0));
    }
}
