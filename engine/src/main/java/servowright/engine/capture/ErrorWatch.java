package servowright.engine.capture;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Gathers the error reports of one bus. */
final class ErrorWatch {
    private static final int MOST_CHANGES = 100;
    private static final int WARNS = 0x0c;
    private static final int PASSIVE = 0x30;
    private static final int ACTIVE_AGAIN = 0x40;

    /** Places in a frame by their code, as in the kernel's header for CAN errors (seen). */
    private static final Map<Integer, String> PLACES = Map.ofEntries(
            Map.entry(0x02, "identifier"),
            Map.entry(0x03, "start of frame"),
            Map.entry(0x04, "SRR bit"),
            Map.entry(0x05, "IDE bit"),
            Map.entry(0x06, "identifier"),
            Map.entry(0x07, "identifier"),
            Map.entry(0x08, "checksum"),
            Map.entry(0x0a, "data"),
            Map.entry(0x0b, "length code"),
            Map.entry(0x0c, "RTR bit"),
            Map.entry(0x0e, "identifier"),
            Map.entry(0x0f, "identifier"),
            Map.entry(0x12, "intermission"),
            Map.entry(0x18, "checksum delimiter"),
            Map.entry(0x19, "acknowledge slot"),
            Map.entry(0x1a, "end of frame"),
            Map.entry(0x1b, "acknowledge delimiter"));

    private final Map<ErrorClass, Long> counts = new EnumMap<>(ErrorClass.class);
    private final Map<String, Long> places = new TreeMap<>();
    private final List<Errors.Change> changes = new ArrayList<>();
    private Errors.State state = Errors.State.ACTIVE;
    private long reports;
    private int mostTransmit;
    private int mostReceive;
    private long ownAfterOff;

    void report(Frame frame) {
        reports++;
        for (ErrorClass what : ErrorClass.values()) {
            if (what.in(frame)) {
                counts.merge(what, 1L, Long::sum);
            }
        }
        if (ErrorClass.PROTOCOL.in(frame) && frame.at(3) != 0) {
            places.merge(PLACES.getOrDefault(frame.at(3), "elsewhere"), 1L, Long::sum);
        }
        if (ErrorClass.COUNTERS.in(frame)) {
            mostTransmit = Math.max(mostTransmit, frame.at(6));
            mostReceive = Math.max(mostReceive, frame.at(7));
        }
        state(frame);
    }

    private void state(Frame frame) {
        Errors.State next = state;
        if (ErrorClass.BUS_OFF.in(frame)) {
            next = Errors.State.OFF;
        } else if (ErrorClass.RESTARTED.in(frame)) {
            next = Errors.State.ACTIVE;
        } else if (ErrorClass.CONTROLLER.in(frame)) {
            int detail = frame.at(1);
            next = (detail & PASSIVE) != 0
                    ? Errors.State.PASSIVE
                    : (detail & WARNS) != 0
                            ? Errors.State.WARNING
                            : (detail & ACTIVE_AGAIN) != 0 ? Errors.State.ACTIVE : state;
        }
        if (next != state && changes.size() < MOST_CHANGES) {
            changes.add(new Errors.Change(frame.timeNs(), next));
        }
        state = next;
    }

    /** A frame that is no error report. */
    void frame() {
        ownAfterOff += state == Errors.State.OFF ? 1 : 0;
    }

    Errors errors() {
        return new Errors(reports, counts, places, changes, mostTransmit, mostReceive, ownAfterOff);
    }
}
