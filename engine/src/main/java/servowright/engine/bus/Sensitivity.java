package servowright.engine.bus;

import java.util.List;
import java.util.function.IntFunction;
import java.util.function.LongFunction;
import java.util.function.LongPredicate;
import servowright.engine.bus.ResponseTime.Schedule;
import servowright.engine.quantity.Require;

/**
 * How far a plan is from failing, by asking the response-time analysis again with more of everything. Each answer is the last value
 * that still meets all deadlines.
 */
public final class Sensitivity {
    private final long bitNs;
    private final FaultModel faults;

    /**
     * @param bitNs bit time in which arbitration is decided, ns
     */
    public Sensitivity(long bitNs, FaultModel faults) {
        this.bitNs = bitNs;
        this.faults = faults;
    }

    /** Whether every message meets its deadline. */
    public boolean holds(List<Message> byPriority) {
        return ResponseTime.of(byPriority, bitNs, faults).stream()
                .allMatch(r -> r.schedule() == Schedule.MEETS_DEADLINE);
    }

    /** By how much every frame could be longer, thousandths of its length: 1000 means not at all; 0 when it fails as it stands. */
    public long mostStretch(List<Message> byPriority) {
        return last(
                1000,
                100_000,
                share -> holds(byPriority.stream()
                        .map(m -> m.sending(WholeNumbers.ceilDivide(m.sendNs() * share, 1000)))
                        .toList()));
    }

    /**
     * The shortest cycle of a plan, ns; 0 when even the longest does not hold.
     *
     * @param plan    messages by priority for a cycle in ns
     * @param longest cycle to begin with, ns
     * @param step    how finely, ns
     */
    public long shortestCycle(LongFunction<List<Message>> plan, long longest, long step) {
        Require.positive("step", (double) step, "ns");
        long steps = last(0, longest / step - 1, k -> holds(plan.apply(longest - k * step)));
        return holds(plan.apply(longest)) ? longest - steps * step : 0;
    }

    /** The most axes of a plan, up to a limit; 0 when not even one goes. */
    public int mostAxes(IntFunction<List<Message>> plan, int limit) {
        return (int) last(1, limit, n -> holds(plan.apply((int) n)));
    }

    /** The largest value for which a property holds that is lost once and for all; 0 when it does not hold at the least. */
    private static long last(long least, long most, LongPredicate property) {
        if (!property.test(least)) {
            return 0;
        }
        long good = least;
        long bad = most + 1;
        while (bad - good > 1) {
            long middle = good + (bad - good) / 2;
            if (property.test(middle)) {
                good = middle;
            } else {
                bad = middle;
            }
        }
        return good;
    }
}
