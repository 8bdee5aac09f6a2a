package servowright.engine.capture;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Finds what was gathered about an identifier; an open table, since it is asked for every frame. */
final class IdTable {
    /** More identifiers than any bus has; frames of further ones are only counted. */
    static final int MOST = 4096;

    private static final int SLOTS = 8 * MOST;
    private static final int EXTENDED = 1 << 29;

    private final int bus;
    private final IdTraffic.@Nullable Gathering[] slots = new IdTraffic.Gathering[SLOTS];
    private final int[] keys = new int[SLOTS];
    private int used;
    private long beyond;

    IdTable(int bus) {
        this.bus = bus;
    }

    /** Identifier of a frame, with a bit for its kind. */
    static int key(Frame frame) {
        return frame.identifier() | (frame.is(Frame.EXTENDED) ? EXTENDED : 0);
    }

    /** The identifier as it is written, {@code 0x181} or {@code 0x18EBFF00}. */
    static String label(int key) {
        return String.format(Locale.ROOT, (key & EXTENDED) != 0 ? "0x%08X" : "0x%03X", key & ~EXTENDED);
    }

    /** Order in arbitration: a standard identifier wins against an extended one with the same first 11 bits. */
    static long rank(int key) {
        int id = key & ~EXTENDED;
        return (key & EXTENDED) == 0 ? (long) id << 19 : ((long) (id >>> 18) << 19) + (1 << 18) + (id & 0x3ffff);
    }

    /** What is gathered about the identifier of a frame, or nothing when there are too many. */
    IdTraffic.@Nullable Gathering of(Frame frame) {
        int key = key(frame);
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
