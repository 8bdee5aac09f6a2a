package servowright.engine.bus.traffic;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import servowright.engine.bus.ErrorState;
import servowright.engine.bus.FaultModel;
import servowright.engine.bus.Message;
import servowright.engine.bus.ResponseTime;
import servowright.engine.bus.ResponseTime.Schedule;
import servowright.engine.bus.traffic.Stream.Fill;

/** The simulation and the analysis know nothing of each other: each checks the other on random schedulable sets. */
class TrafficAgainstAnalysisTest {
    private static final int SETS = 500;
    private static final long BIT_NS = 2_000;
    private static final long UNTIL_NS = 60_000_000;

    private final SplittableRandom random;

    TrafficAgainstAnalysisTest() {
        random = new SplittableRandom(20_260_117);
    }

    /** Streams in order of priority; periods in odd nanoseconds, so that no two events meet by chance. */
    private List<Stream> streams() {
        List<Stream> all = new ArrayList<>();
        int count = 2 + random.nextInt(10);
        for (int i = 0; i < count; i++) {
            long period = 1_500_000 + random.nextLong(count * 900_000L);
            long jitter = random.nextInt(3) == 0 ? random.nextLong(period / 3) : 0;
            int id = 0x100 + 16 * i;
            all.add(Stream.of("m" + i, i % 3, id, random.nextInt(9), period, random.nextLong(period))
                    .jittering(jitter));
        }
        return all;
    }

    private static List<Message> messages(List<Stream> streams) {
        return streams.stream()
                .map(s ->
                        new Message(s.name(), s.mostNs(BIT_NS, BIT_NS), s.periodNs(), s.jitterNs(), 100 * s.periodNs()))
                .toList();
    }

    private static Traffic traffic(List<Stream> streams) {
        return Traffic.classical(BIT_NS, List.of(Sender.good("a"), Sender.good("b"), Sender.good("c")), streams);
    }

    private List<Stream> schedulable() {
        while (true) {
            List<Stream> set = streams();
            if (ResponseTime.of(messages(set), BIT_NS, FaultModel.none()).stream()
                    .allMatch(r -> r.schedule() == Schedule.MEETS_DEADLINE)) {
                return set;
            }
        }
    }

    @Test
    void no_response_exceeds_its_bound() {
        for (int n = 0; n < SETS; n++) {
            List<Stream> set = schedulable();
            List<ResponseTime> bound = ResponseTime.of(messages(set), BIT_NS, FaultModel.none());
            TrafficFigures seen = TrafficSimulation.run(traffic(set), UNTIL_NS, random, Watcher.NONE);
            for (int i = 0; i < set.size(); i++) {
                assertThat(seen.streams().get(i).worstNs())
                        .as("set %d, message %d", n, i)
                        .isPositive()
                        .isLessThanOrEqualTo(bound.get(i).worstNs());
            }
            assertThat(seen.broken()).isZero();
        }
    }

    /**
     * All messages at once, the longest lower one a nanosecond before them: with the longest frames the bound is reached to that nanosecond,
     * with random payloads to the stuff bits of the frames in the busy period.
     */
    @Test
    void the_critical_instant_reaches_the_bound() {
        for (int n = 0; n < SETS; n++) {
            List<Stream> set = schedulable().stream().map(s -> s.jittering(0)).toList();
            int m = random.nextInt(set.size());
            ResponseTime bound =
                    ResponseTime.of(messages(set), 1, FaultModel.none()).get(m);
            TrafficFigures longest = TrafficSimulation.run(
                    traffic(critical(set, m, Fill.LONGEST)), bound.busyNs() + 1, random, Watcher.NONE);
            assertThat(longest.streams().get(m).worstNs())
                    .as("set %d, message %d", n, m)
                    .isBetween(bound.worstNs() - 1, bound.worstNs());
        }
    }

    private static List<Stream> critical(List<Stream> set, int m, Fill fill) {
        int blocker = -1;
        for (int k = m + 1; k < set.size(); k++) {
            boolean longer = blocker < 0
                    || set.get(k).mostNs(BIT_NS, BIT_NS) > set.get(blocker).mostNs(BIT_NS, BIT_NS);
            blocker = longer ? k : blocker;
        }
        List<Stream> all = new ArrayList<>();
        for (int k = 0; k < set.size(); k++) {
            Stream s = set.get(k);
            long offset = k == blocker ? -1 : 0;
            all.add(new Stream(s.name(), s.node(), s.id(), s.bytes(), false, s.periodNs(), offset, 0, fill));
        }
        return all;
    }

    /** Random payloads: short of the bound by no more than the stuff bits that all frames of the busy period might have had. */
    @Test
    void real_payloads_stay_within_the_stuffing_of_the_bound() {
        for (int n = 0; n < SETS; n++) {
            List<Stream> set = schedulable().stream().map(s -> s.jittering(0)).toList();
            int m = random.nextInt(set.size());
            List<Message> messages = messages(set);
            ResponseTime bound = ResponseTime.of(messages, 1, FaultModel.none()).get(m);
            List<Message> least = set.stream()
                    .map(s ->
                            new Message(s.name(), (47 + 8L * s.bytes()) * BIT_NS, s.periodNs(), 0, 100 * s.periodNs()))
                    .toList();
            long floor = ResponseTime.of(least, 1, FaultModel.none()).get(m).worstNs();
            TrafficFigures seen = TrafficSimulation.run(
                    traffic(critical(set, m, Fill.RANDOM)), bound.busyNs() + 1, random, Watcher.NONE);
            assertThat(seen.streams().get(m).worstNs())
                    .as("set %d, message %d", n, m)
                    .isBetween(floor - 1, bound.worstNs());
        }
    }

    /** What the faults of a run were: how many, and how close two of them ended. */
    private static final class Faults implements Watcher {
        private long count;
        private long lastNs = Long.MIN_VALUE;
        private long closestNs = UNTIL_NS;

        @Override
        public void broken(Stream stream, Spoilt why, long startNs, long endNs, ErrorState state) {
            closestNs = count > 0 ? Math.min(closestNs, endNs - lastNs) : closestNs;
            lastNs = endNs;
            count++;
        }
    }

    /**
     * Noise in every set, in every other one a node too that destroys frames: each broken frame costs at most 31 bits and the longest
     * frame, and the bound with as many faults holds.
     */
    @Test
    void with_faults_no_response_exceeds_the_bound_with_as_many_faults() {
        long all = 0;
        for (int n = 0; n < SETS; n++) {
            List<Stream> set = schedulable();
            double destroys = n % 2 == 0 ? 0 : 0.2;
            Traffic traffic = Traffic.classical(
                            BIT_NS,
                            List.of(
                                    Sender.good("a"),
                                    Sender.good("b"),
                                    Sender.good("c"),
                                    Sender.good("wrong").destroying(destroys)),
                            set)
                    .noisy(2e-4);
            Faults faults = new Faults();
            TrafficFigures seen = TrafficSimulation.run(traffic, UNTIL_NS, random, faults);
            assertThat(seen.broken()).isEqualTo(faults.count);
            FaultModel model = (interval, longest) -> faults.count * (FaultModel.RECOVERY_BITS * BIT_NS + longest);
            holds(n, set, seen, model);
            all += faults.count;
        }
        assertThat(all).isGreaterThan(5L * SETS);
    }

    /** Rare noise: no two faults come closer than some time, and the bound with one fault in every such time holds. */
    @Test
    void with_faults_apart_no_response_exceeds_the_bound_of_that_interval() {
        int bounded = 0;
        for (int n = 0; n < SETS; n++) {
            List<Stream> set = schedulable();
            Faults faults = new Faults();
            TrafficFigures seen = TrafficSimulation.run(traffic(set).noisy(2e-5), UNTIL_NS, random, faults);
            bounded += holds(n, set, seen, FaultModel.burstAndInterval(1, faults.closestNs, BIT_NS)) ? 1 : 0;
        }
        assertThat(bounded).isGreaterThan(SETS / 2);
    }

    /** Whether all messages had a bound; fails when a simulated response exceeds it. */
    private static boolean holds(int n, List<Stream> set, TrafficFigures seen, FaultModel model) {
        List<ResponseTime> bound = ResponseTime.of(messages(set), BIT_NS, model);
        for (int i = 0; i < set.size(); i++) {
            assertThat(seen.streams().get(i).worstNs())
                    .as("set %d, message %d", n, i)
                    .isPositive()
                    .isLessThanOrEqualTo(bound.get(i).worstNs());
        }
        return bound.stream().noneMatch(r -> r.schedule() == Schedule.NO_BOUND);
    }
}
