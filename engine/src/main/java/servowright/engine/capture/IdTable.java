package servowright.engine.capture;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Finds what was gathered about an identifier; an open table, since it is asked for every frame. */
final class IdTable {
    /** More identifiers than any bus has; frames of further ones are only counted. */
    static final int MOST = 4096;

    private static final int SLOTS = 8 * MOST;

    private final int bus;
    private final IdTraffic.@Nullable Gathering[] slots = new IdTraffic.Gathering[SLOTS];
    private final int[] keys = new int[SLOTS];
    private int used;
    private long beyond;

    IdTable(int bus) {
        this.bus = bus;
    }

    /** What is gathered about the identifier of a frame, or nothing when there are too many. */
    IdTraffic.@Nullable Gathering of(Frame frame) {
        int key = frame.identifier() | (frame.is(Frame.EXTENDED) ? 1 << 29 : 0);
        int slot = (key * 0x9e37_79b9) >>> 17;
        IdTraffic.Gathering there = slots[slot];
        while (there != null && keys[slot] != key) {
            slot = (slot + 1) % SLOTS;
            there = slots[slot];
        }
        if (there == null && used < MOST) {
            there = new IdTraffic.Gathering(bus, key);
            slots[slot] = there;
            keys[slot] = key;
            used++;
        } else if (there == null) {
            beyond++;
        }
        return there;
    }

    void restart() {
        for (IdTraffic.Gathering one : slots) {
            if (one != null) {
                one.restart();
            }
        }
    }

    /** Frames of identifiers that found no room. */
    long beyond() {
        return beyond;
    }

    /** All, by priority on the bus. */
    List<IdTraffic> traffic() {
        List<IdTraffic> all = new ArrayList<>();
        for (IdTraffic.Gathering one : slots) {
            if (one != null) {
                all.add(one.traffic());
            }
        }
        all.sort(Comparator.comparingInt(t -> t.extended() ? t.identifier() : t.identifier() << 18));
        return all;
    }
}
