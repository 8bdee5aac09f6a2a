package servowright.engine.bus;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import servowright.engine.numeric.GivenUp;

/**
 * Guaranteed worst-case response time of a message on a priority-driven, non-preemptive bus, all instances of the busy period
 * looked at.
 *
 * <p><b>Formula.</b> With messages in priority order, blocking B_m = max C_k over lower priorities, and bit time τ: busy period
 * t = E(t) + B_m + Σ_{k ≥ m} ceil((t + J_k) / T_k) C_k; instances Q = ceil((t + J_m) / T_m); for each instance q the queueing
 * delay w = E(w + C_m) + B_m + q C_m + Σ_{k > m} ceil((w + J_k + τ) / T_k) C_k; R = max_q (J_m + w - q T_m + C_m).
 *
 * <p><b>Valid for</b> priority-ordered queues in every node and frames that never leave their period by more than their
 * jitter. When the load of the message and all above it reaches one, the busy period has no end: the answer is then that there
 * is none. <b>Source.</b> Davis, Burns, Bril, Lukkien, Real-Time Systems 35 (2007) 239-272 (abstract seen, equations
 * recalled). The older form that looks at the first instance alone is wrong and not offered.
 *
 * @param message   the message
 * @param schedule  schedulable, late or without bound
 * @param worstNs   R, ns; {@link Long#MAX_VALUE} when there is no bound
 * @param instances response time of each instance in the busy period, ns
 * @param busyNs    length of the busy period, ns
 */
public record ResponseTime(Message message, Schedule schedule, long worstNs, List<Long> instances, long busyNs) {
    /** Whether a message makes its deadline. */
    public enum Schedule {
        MEETS_DEADLINE,
        LATE,
        /** The bus is loaded beyond what it carries at this priority. */
        NO_BOUND
    }

    /** Instances beyond which the message is called unbounded: a load so near to one that no guarantee is worth it. */
    private static final int MOST_INSTANCES = 100_000;

    public ResponseTime {
        instances = List.copyOf(instances);
    }

    /**
     * Response times of all messages.
     *
     * @param byPriority highest priority first
     * @param bitNs      bit time in which arbitration is decided, ns
     */
    public static List<ResponseTime> of(List<Message> byPriority, long bitNs, FaultModel faults) {
        return of(byPriority, bitNs, faults, 0);
    }

    /**
     * Response times of all messages on a bus that others use too.
     *
     * @param byPriority highest priority first
     * @param bitNs      bit time in which arbitration is decided, ns
     * @param foreignNs  longest frame of lower priority that an unknown node may send, ns; at least the intermission of
     *                   the frame before where that is to be counted for the lowest message
     */
    public static List<ResponseTime> of(List<Message> byPriority, long bitNs, FaultModel faults, long foreignNs) {
        List<ResponseTime> all = new ArrayList<>();
        Analysis above = null;
        for (int m = 0; m < byPriority.size(); m++) {
            Analysis own = new Analysis(byPriority, m, bitNs, faults, foreignNs);
            all.add(own.after(above).run());
            above = own;
        }
        return List.copyOf(all);
    }

    /** Response time of one message among the others. */
    static ResponseTime at(int m, List<Message> byPriority, long bitNs, FaultModel faults) {
        return new Analysis(byPriority, m, bitNs, faults, 0).run();
    }

    /** Share of the bus that the messages take in the worst case. */
    public static double utilisation(List<Message> messages) {
        return messages.stream()
                .mapToDouble(m -> (double) m.sendNs() / m.periodNs())
                .sum();
    }

    /** The analysis of one message. */
    private static final class Analysis {
        private final Message[] higher;
        private final Message own;
        private final long bitNs;
        private final FaultModel faults;
        private final long blockingNs;
        private final long longestNs;
        private long leastBusyNs;
        private long leastWaitNs;
        private long waitNs;

        Analysis(List<Message> byPriority, int m, long bitNs, FaultModel faults, long foreignNs) {
            this.higher = byPriority.subList(0, m).toArray(Message[]::new);
            this.own = byPriority.get(m);
            this.bitNs = bitNs;
            this.faults = faults;
            this.blockingNs = byPriority.subList(m + 1, byPriority.size()).stream()
                    .mapToLong(Message::sendNs)
                    .reduce(foreignNs, Math::max);
            this.longestNs = byPriority.subList(0, m + 1).stream()
                    .mapToLong(Message::sendNs)
                    .max()
                    .orElse(0);
        }

        /**
         * Starts from what the message above came to, where that cannot be too much: with the same blocking and no shorter frame all
         * sums are at least as large as they were there.
         */
        Analysis after(@Nullable Analysis above) {
            if (above != null && above.blockingNs == blockingNs && above.own.sendNs() <= own.sendNs()) {
                leastBusyNs = above.leastBusyNs;
                leastWaitNs = above.leastWaitNs;
            }
            return this;
        }

        ResponseTime run() {
            long limit = limit();
            long busy = limit < 0 ? -1 : busyPeriod(limit);
            if (busy < 0) {
                return new ResponseTime(own, Schedule.NO_BOUND, Long.MAX_VALUE, List.of(), Long.MAX_VALUE);
            }
            leastBusyNs = busy;
            long count = WholeNumbers.ceilDivide(busy + own.jitterNs(), own.periodNs());
            List<Long> instances = new ArrayList<>();
            long worst = 0;
            for (long q = 0; q < count; q++) {
                GivenUp.check();
                long w = queueing(q, busy);
                leastWaitNs = q == 0 ? w : leastWaitNs;
                long response = own.jitterNs() + w - q * own.periodNs() + own.sendNs();
                instances.add(response);
                worst = Math.max(worst, response);
            }
            Schedule schedule = worst <= own.deadlineNs() ? Schedule.MEETS_DEADLINE : Schedule.LATE;
            return new ResponseTime(own, schedule, worst, instances, busy);
        }

        /** A busy period longer than this has more instances than are looked at; negative when the load reaches one. */
        private long limit() {
            double load = (double) own.sendNs() / own.periodNs();
            for (Message k : higher) {
                load += (double) k.sendNs() / k.periodNs();
            }
            return load >= 1 ? -1 : Math.multiplyExact(own.periodNs(), (long) MOST_INSTANCES);
        }

        private long busyPeriod(long limit) {
            long t = Math.max(own.sendNs(), leastBusyNs);
            while (true) {
                GivenUp.check();
                long next = faults.lostNs(t, longestNs)
                        + blockingNs
                        + WholeNumbers.ceilDivide(t + own.jitterNs(), own.periodNs()) * own.sendNs();
                for (Message k : higher) {
                    next += WholeNumbers.ceilDivide(t + k.jitterNs(), k.periodNs()) * k.sendNs();
                }
                if (next == t) {
                    return t;
                }
                if (next > limit) {
                    return -1;
                }
                t = next;
            }
        }

        private long queueing(long q, long busy) {
            long fixed = blockingNs + q * own.sendNs();
            long w = Math.max(fixed, q == 0 ? leastWaitNs : waitNs + own.sendNs());
            while (true) {
                GivenUp.check();
                long next = faults.lostNs(w + own.sendNs(), longestNs) + fixed;
                for (Message k : higher) {
                    next += WholeNumbers.ceilDivide(w + k.jitterNs() + bitNs, k.periodNs()) * k.sendNs();
                }
                if (next == w) {
                    waitNs = w;
                    return w;
                }
                if (next > 2 * busy + own.periodNs() * MOST_INSTANCES) {
                    throw new IllegalStateException("queueing delay left its busy period");
                }
                w = next;
            }
        }
    }
}
