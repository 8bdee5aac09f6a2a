package servowright.engine.bus.traffic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import servowright.engine.bus.ErrorState;
import servowright.engine.bus.ErrorState.Mode;
import servowright.engine.bus.FifoQueue;
import servowright.engine.bus.Message;
import servowright.engine.bus.traffic.Sender.Queue;
import servowright.engine.bus.traffic.Stream.Fill;
import servowright.engine.bus.traffic.Watcher.Spoilt;

class TrafficSimulationTest {
    private static final long MS = 1_000_000;
    private static final long BIT = 1_000;

    private static TrafficFigures run(Traffic traffic, long untilNs, Watcher watcher) {
        return TrafficSimulation.run(traffic, untilNs, new SplittableRandom(99), watcher);
    }

    private static Stream stream(String name, int node, int id, int bytes, long period) {
        return Stream.of(name, node, id, bytes, period, 0);
    }

    /** Davis, Burns, Bril, Lukkien 2007, example: C reaches 3.5 ms, though its first instance takes 3.0 (recalled, recomputed). */
    @Test
    void agrees_with_davis_2007_table_1() {
        long bit = 8_000;
        List<Stream> set = new ArrayList<>();
        long[] periods = {2_500_000, 3_500_000, 3_500_000};
        for (int i = 0; i < 3; i++) {
            set.add(Stream.of("" + (char) ('A' + i), i, 0x100 + i, 7, periods[i], 0)
                    .filled(Fill.LONGEST));
        }
        Traffic t = Traffic.classical(bit, List.of(Sender.good("a"), Sender.good("b"), Sender.good("c")), set);
        TrafficFigures seen = run(t, 7 * MS, Watcher.NONE);
        assertThat(seen.streams().get(2).worstNs()).isEqualTo(3_500_000);
    }

    @Test
    void the_same_source_gives_the_same_traffic() {
        Traffic t = Traffic.classical(
                        BIT,
                        List.of(Sender.good("host"), Sender.good("axis").drifting(80e-6)),
                        List.of(
                                stream("c", 0, 0x201, 8, MS),
                                stream("f", 1, 0x181, 8, MS).jittering(50_000)))
                .noisy(1e-5);
        StringBuilder one = new StringBuilder();
        StringBuilder two = new StringBuilder();
        run(t, 500 * MS, new LogText(one, "can0", 0));
        run(t, 500 * MS, new LogText(two, "can0", 0));
        assertThat(one.toString())
                .isEqualTo(two.toString())
                .contains("can0 201#")
                .contains("can0 20000208#");
    }

    @Test
    void a_clock_that_drifts_sends_less() {
        Traffic t = Traffic.classical(
                BIT,
                List.of(Sender.good("true"), Sender.good("slow").drifting(0.01)),
                List.of(stream("a", 0, 1, 8, MS), stream("b", 1, 2, 8, MS)));
        TrafficFigures seen = run(t, 10_000 * MS, Watcher.NONE);
        assertThat(seen.streams().get(0).sent()).isEqualTo(10_000);
        assertThat(seen.streams().get(1).sent()).isBetween(9_900L, 9_902L);
        assertThat(seen.load()).isBetween(0.22, 0.27);
        assertThat(seen.streams().get(0).meanNs()).isCloseTo(115_000, within(10_000.0));
    }

    /** The vector of the FIFO analysis: message 1 of a first-in-first-out node waits behind 5 and 8; bound 1215 us (derived). */
    @Test
    void a_first_in_first_out_node_keeps_its_bound_and_exceeds_the_priority_one() {
        List<Stream> set = new ArrayList<>();
        List<Message> messages = new ArrayList<>();
        List<Integer> group = List.of(0, -1, -1, -1, 0, -1, -1, 0);
        for (int i = 0; i < 8; i++) {
            boolean fifo = group.get(i) == 0;
            long offset = i == 7 ? 0 : i == 4 ? 1 : i == 0 ? 2 : 3;
            set.add(Stream.of("m" + i, fifo ? 0 : 1, 0x100 + i, 8, 5 * MS, offset)
                    .filled(Fill.LONGEST));
            messages.add(new Message("m" + i, 135_000, 5 * MS, 0, 5 * MS));
        }
        Traffic t = Traffic.classical(
                BIT, List.of(Sender.good("host").queueing(Queue.FIRST_IN_FIRST_OUT, 1), Sender.good("others")), set);
        TrafficFigures seen = run(t, 50 * MS, Watcher.NONE);
        long bound = FifoQueue.of(messages, group, BIT).get(0).worstNs();
        assertThat(seen.streams().get(0).worstNs()).isGreaterThan(800_000).isLessThanOrEqualTo(bound);
        assertThat(bound).isEqualTo(1_215_000);
    }

    @Test
    void a_single_buffer_lets_a_low_message_hold_up_a_high_one() {
        List<Stream> set = List.of(
                Stream.of("urgent", 0, 0x100, 8, 10 * MS, 2).filled(Fill.LONGEST),
                Stream.of("other", 1, 0x200, 8, 10 * MS, 1).filled(Fill.LONGEST),
                Stream.of("lazy", 0, 0x300, 8, 10 * MS, 1).filled(Fill.LONGEST));
        List<Sender> free = List.of(Sender.good("host"), Sender.good("axis"));
        List<Sender> one = List.of(Sender.good("host").queueing(Queue.BUFFERS, 1), Sender.good("axis"));
        long quick = run(Traffic.classical(BIT, free, set), 9 * MS, Watcher.NONE)
                .streams()
                .get(0)
                .worstNs();
        long slow = run(Traffic.classical(BIT, one, set), 9 * MS, Watcher.NONE)
                .streams()
                .get(0)
                .worstNs();
        assertThat(quick).isEqualTo(2 * 135_000 - 1);
        assertThat(slow).isEqualTo(3 * 135_000 - 1);
    }

    /** A node alone stays at 128 and fills the bus with one frame; the queue goes out when the axis has power again. */
    @Test
    void a_stop_fills_the_queue_and_its_release_empties_it() {
        List<Sender> nodes = List.of(Sender.good("host"), Sender.good("axis").off(100 * MS, 400 * MS));
        Traffic t = Traffic.classical(BIT, nodes, List.of(stream("command", 0, 0x201, 8, 5 * MS)));
        List<Spoilt> spoilt = new ArrayList<>();
        List<Long> arrivals = new ArrayList<>();
        int[] most = {0};
        run(t, 500 * MS, new Watcher() {
            @Override
            public void frame(Stream stream, long eventNs, long startNs, long endNs, byte[] payload) {
                arrivals.add(endNs);
            }

            @Override
            public void broken(Stream stream, Spoilt why, long startNs, long endNs, ErrorState state) {
                spoilt.add(why);
                most[0] = Math.max(most[0], state.transmit());
            }
        });
        assertThat(spoilt).isNotEmpty().containsOnly(Spoilt.NOT_ACKNOWLEDGED);
        assertThat(most[0]).isBetween(128, 135);
        assertThat(spoilt.size() * 135_000L).isGreaterThan(270 * MS);
        long burst =
                arrivals.stream().filter(a -> a >= 400 * MS && a < 403 * MS).count();
        assertThat(burst).isEqualTo(Traffic.USUAL_DEPTH);
    }

    @Test
    void one_identifier_in_two_nodes_drives_both_off_the_bus() {
        List<Sender> nodes = List.of(Sender.good("one"), Sender.good("two"), Sender.good("host"));
        Traffic t = Traffic.classical(
                BIT, nodes, List.of(stream("f", 0, 0x181, 8, MS), stream("f again", 1, 0x181, 8, MS)));
        List<String> log = new ArrayList<>();
        TrafficFigures seen = run(t, 500 * MS, new Watcher() {
            @Override
            public void left(Sender sender, long ns) {
                log.add(sender.name() + " left");
            }

            @Override
            public void back(Sender sender, long ns) {
                log.add(sender.name() + " back");
            }
        });
        assertThat(log).startsWith("one left", "two left").contains("one back", "two back");
        assertThat(seen.left().get(0)).isGreaterThan(1);
        assertThat(seen.left().get(2)).isZero();
    }

    @Test
    void a_node_of_the_wrong_rate_destroys_frames_until_it_is_passive() {
        List<Sender> nodes = List.of(
                Sender.good("host"), Sender.good("axis"), Sender.good("wrong").destroying(1));
        Traffic t = Traffic.classical(BIT, nodes, List.of(stream("c", 0, 0x201, 8, MS)));
        TrafficFigures seen = run(t, 200 * MS, Watcher.NONE);
        assertThat(seen.broken()).isBetween(10L, 60L);
        assertThat(seen.states().get(2).mode()).isNotEqualTo(Mode.BUS_OFF);
        assertThat(seen.frames()).isGreaterThan(150);
    }

    @Test
    void noise_breaks_the_expected_share_of_frames() {
        List<Sender> nodes = List.of(Sender.good("host"), Sender.good("axis"));
        Traffic t = Traffic.classical(
                        BIT, nodes, List.of(Stream.of("c", 0, 0x201, 8, MS, 0).filled(Fill.LONGEST)))
                .noisy(1e-4);
        TrafficFigures seen = run(t, 20_000 * MS, Watcher.NONE);
        double share = (double) seen.broken() / (seen.broken() + seen.frames());
        assertThat(share).isCloseTo(1 - Math.pow(1 - 1e-4, 135), within(0.0025));
        assertThat(seen.streams().get(0).lost()).isZero();
    }

    @Test
    void an_overloaded_bus_loses_what_is_least_urgent() {
        List<Sender> nodes = List.of(Sender.good("host"), Sender.good("axis"));
        Traffic t = Traffic.classical(
                BIT, nodes, List.of(stream("low", 0, 0x300, 8, 200_000), stream("high", 1, 0x100, 8, 200_000)));
        TrafficFigures seen = run(t, 1000 * MS, Watcher.NONE);
        assertThat(seen.streams().get(1).lost()).isZero();
        assertThat(seen.streams().get(0).lost()).isGreaterThan(500);
        assertThat(seen.load()).isGreaterThan(0.999);
    }

    @Test
    void fd_frames_and_long_identifiers_are_written_as_such() {
        List<Sender> nodes = List.of(Sender.good("host"), Sender.good("axis"));
        Stream fd = new Stream("fd", 0, 0x12, 12, true, MS, 0, 0, Fill.COUNT);
        Stream far = new Stream("far", 1, 0x12345678, 2, false, MS, 0, 0, Fill.COUNT);
        StringBuilder log = new StringBuilder();
        run(new Traffic(1000, 200, nodes, List.of(fd, far), 0, 4), MS, new LogText(log, "can1", 1_000_000_000L));
        assertThat(log.toString().lines())
                .hasSize(2)
                .element(0)
                .asString()
                .matches("\\(0000000001\\.0000\\d\\d\\) can1 012##5000000000000000000000000");
        assertThat(log.toString().lines())
                .element(1)
                .asString()
                .matches("\\(0000000001\\.000\\d+\\) can1 12345678#0000");
    }
}
