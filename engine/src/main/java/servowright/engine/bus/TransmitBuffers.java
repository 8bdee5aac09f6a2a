package servowright.engine.bus;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import servowright.engine.bus.ResponseTime.Schedule;
import servowright.engine.quantity.Require;

/**
 * Worst-case response times when a controller has few transmit buffers whose frames cannot be taken back: a high message waits until
 * one of the lower ones before it is through.
 *
 * <p><b>Formula.</b> With n buffers, all may hold lower messages of the same node; the first to leave is the highest of them, at worst
 * the n-th lowest message of the node. The message enters its buffer up to w + C of that one late, which counts as jitter for itself and
 * for all others; repeated until nothing changes. A message with fewer than n lower ones in its node never waits.
 *
 * <p><b>Valid for</b> buffers served by priority and filled by priority; copying takes no time. <b>Source.</b> after Khan, Bril, Navet,
 * Integrating hardware limitations in CAN schedulability analysis, WFCS 2010 (abstract seen; the bound here is derived and coarser).
 */
public final class TransmitBuffers {
    private static final int MOST_ROUNDS = 1000;

    private TransmitBuffers() {}

    /**
     * Worst-case response times.
     *
     * @param byPriority highest priority first
     * @param node       per message the number of its node
     * @param buffers    per message the buffers of its node, at least 1; {@link Integer#MAX_VALUE} where frames can be taken back
     * @param bitNs      bit time, ns
     */
    public static List<ResponseTime> of(
            List<Message> byPriority, List<Integer> node, List<Integer> buffers, long bitNs) {
        Require.within("nodes said", byPriority.size(), byPriority.size(), node.size(), "");
        Require.within("buffers said", byPriority.size(), byPriority.size(), buffers.size(), "");
        long[] late = new long[byPriority.size()];
        for (int round = 0; round < MOST_ROUNDS; round++) {
            List<ResponseTime> found = ResponseTime.of(delayed(byPriority, late), bitNs, FaultModel.none());
            long[] next = lateness(byPriority, node, buffers, found, late);
            if (Arrays.equals(next, late)) {
                return named(byPriority, found);
            }
            if (Arrays.stream(next).anyMatch(l -> l < 0)) {
                break;
            }
            late = next;
        }
        return byPriority.stream()
                .map(m -> new ResponseTime(m, Schedule.NO_BOUND, Long.MAX_VALUE, List.of(), Long.MAX_VALUE))
                .toList();
    }

    /** How late each message enters its buffer; negative where there is no bound. */
    private static long[] lateness(
            List<Message> messages, List<Integer> node, List<Integer> buffers, List<ResponseTime> found, long[] now) {
        long[] late = new long[messages.size()];
        for (int m = 0; m < late.length; m++) {
            int own = m;
            int[] lower = IntStream.range(m + 1, late.length)
                    .filter(k -> node.get(k).equals(node.get(own)))
                    .toArray();
            int n = Require.atLeast("buffers", 1, buffers.get(m));
            if (lower.length >= n) {
                int first = lower[lower.length - n];
                ResponseTime r = found.get(first);
                boolean bounded = r.schedule() != Schedule.NO_BOUND;
                late[m] = bounded ? r.worstNs() - messages.get(first).jitterNs() - now[first] : -1;
            }
        }
        return late;
    }

    private static List<Message> delayed(List<Message> messages, long[] late) {
        return IntStream.range(0, late.length)
                .mapToObj(m -> messages.get(m).later(late[m]))
                .toList();
    }

    private static List<ResponseTime> named(List<Message> messages, List<ResponseTime> found) {
        List<ResponseTime> all = new ArrayList<>();
        for (int m = 0; m < messages.size(); m++) {
            ResponseTime r = found.get(m);
            all.add(new ResponseTime(messages.get(m), r.schedule(), r.worstNs(), r.instances(), r.busyNs()));
        }
        return List.copyOf(all);
    }
}
