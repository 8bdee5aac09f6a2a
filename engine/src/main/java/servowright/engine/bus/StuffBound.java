package servowright.engine.bus;

import java.util.HashMap;
import java.util.Map;

/**
 * The most stuff bits that a frame with some fixed bits can get, found exactly by dynamic programming over the last bit and
 * the length of its run. A template writes fixed bits as 0 and 1 and free ones as x.
 *
 * <p><b>Valid for</b> checksum bits counted as free, which they are not quite: the figure is a bound that is reached or one
 * or two bits high.
 */
final class StuffBound {
    /** Stuff bits in the part before the split and behind it. */
    record Split(int before, int after) {
        int total() {
            return before + after;
        }
    }

    private record State(char last, int run) {}

    private StuffBound() {}

    /** The most stuff bits of a classical frame: a run of five that ends on the last bit is stuffed too. */
    static int most(String template) {
        return most(template, template.length(), true).total();
    }

    /**
     * The most stuff bits of the part of an FD frame that is stuffed by runs, counted for two bit rates.
     *
     * @param split      bits sent at the nominal rate; a stuff bit after the last of them is sent at the data rate
     * @param afterLast  whether a run of five that ends on the last bit is stuffed; in FD the fixed stuff bit stands there
     */
    static Split most(String template, int split, boolean afterLast) {
        Map<State, Split> states = new HashMap<>();
        states.put(new State('-', 0), new Split(0, 0));
        for (int i = 0; i < template.length(); i++) {
            boolean mayStuff = afterLast || i < template.length() - 1;
            Map<State, Split> next = new HashMap<>();
            for (Map.Entry<State, Split> at : states.entrySet()) {
                String bits = template.charAt(i) == 'x' ? "01" : template.substring(i, i + 1);
                for (int k = 0; k < bits.length(); k++) {
                    step(next, at, bits.charAt(k), mayStuff, i < split - 1);
                }
            }
            states = next;
        }
        return states.values().stream().reduce(new Split(0, 0), (a, b) -> better(a, b) ? a : b);
    }

    private static void step(
            Map<State, Split> next, Map.Entry<State, Split> at, char bit, boolean mayStuff, boolean nominal) {
        int run = bit == at.getKey().last() ? at.getKey().run() + 1 : 1;
        State state = new State(bit, run);
        Split count = at.getValue();
        if (run == 5 && mayStuff) {
            state = new State(bit == '1' ? '0' : '1', 1);
            count = nominal
                    ? new Split(count.before() + 1, count.after())
                    : new Split(count.before(), count.after() + 1);
        }
        next.merge(state, count, (a, b) -> better(a, b) ? a : b);
    }

    /** More stuff bits at the slow rate first: they cost most. */
    private static boolean better(Split a, Split b) {
        return a.before() != b.before() ? a.before() > b.before() : a.after() >= b.after();
    }
}
