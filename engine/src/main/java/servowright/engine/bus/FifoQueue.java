package servowright.engine.bus;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import servowright.engine.bus.ResponseTime.Schedule;

/**
 * Worst-case response times when some nodes send their messages first in, first out instead of by priority: there a high
 * message waits behind every low one of its node.
 *
 * <p><b>Formula.</b> For a node's group M with lowest message L: w = max(B_L, Cmax) + (Csum - Cmin) + Σ_{k > L, k not in M}
 * ceil((w + J_k + f_k + τ) / T_k) C_k; R = w + Cmin for each of the group; f_k = R_k - Cmin_k for a message k of another such
 * group and 0 otherwise; repeated over the groups until nothing changes. A message k outside any group is taken with priority
 * order inside its node: its own blocking and interference include each group's members with their f.
 *
 * <p><b>Valid for</b> R not above the shortest period of the group; beyond it there is no bound. <b>Source.</b> Davis, Kollmann,
 * Pollex, Slomka, ECRTS 2011, 45-56 (abstract seen, equation recalled).
 */
public final class FifoQueue {
    private static final int MOST_ROUNDS = 1000;

    private FifoQueue() {}

    /**
     * Worst-case response times.
     *
     * @param byPriority highest priority first
     * @param group      per message the number of its first-in-first-out node, or -1 for priority order
     * @param bitNs      bit time, ns
     */
    public static List<ResponseTime> of(List<Message> byPriority, List<Integer> group, long bitNs) {
        if (group.size() != byPriority.size()) {
            throw new IllegalArgumentException(
                    "each message needs its group: " + byPriority.size() + " against " + group.size());
        }
        long[] late = new long[byPriority.size()];
        List<ResponseTime> found = List.of();
        for (int round = 0; round < MOST_ROUNDS; round++) {
            found = round(byPriority, group, bitNs, late);
            long[] next = lateness(byPriority, group, found);
            if (java.util.Arrays.equals(next, late)) {
                return found;
            }
            late = next;
        }
        return byPriority.stream().map(FifoQueue::unbounded).toList();
    }

    private static List<ResponseTime> round(List<Message> messages, List<Integer> group, long bitNs, long[] late) {
        List<ResponseTime> priority = ResponseTime.of(delayed(messages, late), bitNs, FaultModel.none());
        List<ResponseTime> all = new ArrayList<>();
        for (int m = 0; m < messages.size(); m++) {
            if (group.get(m) < 0) {
                ResponseTime r = priority.get(m);
                all.add(new ResponseTime(messages.get(m), r.schedule(), r.worstNs(), r.instances(), r.busyNs()));
            } else {
                all.add(queued(messages, group, m, bitNs, late));
            }
        }
        return all;
    }

    /** A message that waits in a first-in-first-out queue reaches the bus up to f later than it was queued: as jitter. */
    private static List<Message> delayed(List<Message> messages, long[] late) {
        List<Message> all = new ArrayList<>();
        for (int m = 0; m < messages.size(); m++) {
            Message k = messages.get(m);
            all.add(new Message(k.name(), k.sendNs(), k.periodNs(), k.jitterNs() + late[m], k.deadlineNs()));
        }
        return all;
    }

    private static ResponseTime queued(List<Message> messages, List<Integer> group, int m, long bitNs, long[] late) {
        List<Integer> members = members(group, group.get(m));
        int lowest = Collections.max(members);
        long sum = members.stream().mapToLong(i -> messages.get(i).sendNs()).sum();
        long most =
                members.stream().mapToLong(i -> messages.get(i).sendNs()).max().orElse(0);
        long least =
                members.stream().mapToLong(i -> messages.get(i).sendNs()).min().orElse(0);
        long shortest = members.stream()
                .mapToLong(i -> messages.get(i).periodNs())
                .min()
                .orElse(0);
        long blocking = most;
        for (int k = lowest + 1; k < messages.size(); k++) {
            blocking = Math.max(blocking, messages.get(k).sendNs());
        }
        long w = blocking + sum - least;
        while (true) {
            long next = blocking + sum - least;
            for (int k = 0; k < lowest; k++) {
                Message other = messages.get(k);
                if (!members.contains(k)) {
                    next += WholeNumbers.ceilDivide(w + other.jitterNs() + late[k] + bitNs, other.periodNs())
                            * other.sendNs();
                }
            }
            if (next + least > shortest) {
                return unbounded(messages.get(m));
            }
            if (next == w) {
                Message own = messages.get(m);
                long response = own.jitterNs() + w + least;
                Schedule schedule = response <= own.deadlineNs() ? Schedule.MEETS_DEADLINE : Schedule.LATE;
                return new ResponseTime(own, schedule, response, List.of(response), w);
            }
            w = next;
        }
    }

    private static long[] lateness(List<Message> messages, List<Integer> group, List<ResponseTime> found) {
        long[] late = new long[messages.size()];
        for (int m = 0; m < late.length; m++) {
            if (group.get(m) >= 0 && found.get(m).schedule() != Schedule.NO_BOUND) {
                long least = members(group, group.get(m)).stream()
                        .mapToLong(i -> messages.get(i).sendNs())
                        .min()
                        .orElse(0);
                late[m] = found.get(m).worstNs() - messages.get(m).jitterNs() - least;
            }
        }
        return late;
    }

    private static List<Integer> members(List<Integer> group, int number) {
        List<Integer> all = new ArrayList<>();
        for (int i = 0; i < group.size(); i++) {
            if (group.get(i) == number) {
                all.add(i);
            }
        }
        return all;
    }

    private static ResponseTime unbounded(Message m) {
        return new ResponseTime(m, Schedule.NO_BOUND, Long.MAX_VALUE, List.of(), Long.MAX_VALUE);
    }
}
