package servowright.engine.bus;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import servowright.engine.quantity.Require;

/**
 * First instants for messages of one clock, spread so that they do not all come at once: shortest period first, each in the middle of
 * the emptiest stretch of slots within its period.
 *
 * <p><b>Valid for</b> messages of one node or under one SYNC: clocks of their own drift through every phase, and a guarantee must not
 * count on offsets then. <b>Source.</b> after Grenier, Havet, Navet, Pushing the limits of CAN, ERTS 2008 (recalled).
 */
public final class Offsets {
    private Offsets() {}

    /**
     * Offsets in the order of the messages, ns, each below its period.
     *
     * @param slotNs how finely, ns; the longest frame is a good choice
     */
    public static List<Long> spread(List<Message> messages, long slotNs) {
        Require.positive("slot", (double) slotNs, "ns");
        long longest = messages.stream().mapToLong(Message::periodNs).max().orElse(slotNs);
        int slots = (int) Math.min(1_000_000, Math.max(1, longest / slotNs));
        int[] filled = new int[slots];
        Long[] offsets = new Long[messages.size()];
        List<Integer> order = IntStream.range(0, messages.size())
                .boxed()
                .sorted(Comparator.comparingLong(i -> messages.get(i).periodNs()))
                .toList();
        for (int i : order) {
            int every = (int) Math.max(1, Math.min(slots, messages.get(i).periodNs() / slotNs));
            int at = emptiest(filled, every);
            offsets[i] = at * slotNs;
            for (int k = at; k < slots; k += every) {
                filled[k]++;
            }
        }
        return new ArrayList<>(List.of(offsets));
    }

    /** Middle of the longest run of least filled slots among the first ones. */
    private static int emptiest(int[] filled, int first) {
        int least = IntStream.range(0, first).map(k -> filled[k]).min().orElse(0);
        int bestAt = 0;
        int bestRun = 0;
        int run = 0;
        for (int k = 0; k < first; k++) {
            run = filled[k] == least ? run + 1 : 0;
            if (run > bestRun) {
                bestRun = run;
                bestAt = k - run + 1;
            }
        }
        boolean untouched = bestRun == filled.length || (bestRun == first && least == 0 && bestAt == 0);
        return untouched ? 0 : bestAt + bestRun / 2;
    }
}
