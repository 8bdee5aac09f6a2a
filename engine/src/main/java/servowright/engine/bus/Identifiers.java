package servowright.engine.bus;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;

/** Numbers for messages that have an order but not all of them an identifier. */
public final class Identifiers {
    /** Left for network management and the like. */
    private static final int FIRST = 0x081;

    private static final int STEP = 0x08;
    private static final int MOST = 0x7ff;

    private Identifiers() {}

    /**
     * Identifiers in the order given: those given stay, the others are spread between them, in steps that leave room for later ones.
     * Where no number is left between two given ones, the next free one above is taken, and the order is not kept there.
     *
     * @param given highest priority first; empty where a number is wanted
     */
    public static List<Integer> inOrder(List<OptionalInt> given) {
        Set<Integer> taken = new HashSet<>();
        given.forEach(g -> g.ifPresent(taken::add));
        List<Integer> all = new ArrayList<>();
        int last = FIRST - STEP;
        for (int i = 0; i < given.size(); i++) {
            OptionalInt own = given.get(i);
            int id = own.isPresent() ? own.getAsInt() : free(last, step(given, i, last), taken);
            taken.add(id);
            all.add(id);
            last = id;
        }
        return List.copyOf(all);
    }

    /** As wide as the room up to the next given number allows. */
    private static int step(List<OptionalInt> given, int from, int last) {
        int wanted = given.size() - from;
        int end = MOST + 1;
        for (int k = from; k < given.size(); k++) {
            if (given.get(k).isPresent() && given.get(k).getAsInt() > last) {
                end = Math.min(MOST + 1, given.get(k).getAsInt());
                wanted = k - from;
                break;
            }
        }
        return Math.max(1, Math.min(STEP, (end - last) / (wanted + 1)));
    }

    private static int free(int last, int step, Set<Integer> taken) {
        int id = last + step;
        while (taken.contains(id)) {
            id++;
        }
        return id;
    }
}
