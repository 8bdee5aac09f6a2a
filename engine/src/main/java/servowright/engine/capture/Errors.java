package servowright.engine.capture;

import java.util.List;
import java.util.Map;

/**
 * The error reports of one bus.
 *
 * @param reports how many there were
 * @param counts how many of each class
 * @param places where in a frame protocol errors were seen, with their number
 * @param changes changes of the controller's state, the first hundred
 * @param mostTransmit highest transmit error counter that was stated
 * @param mostReceive highest receive error counter that was stated
 * @param ownAfterOff frames in the capture between the controller going off the bus and coming back: echoes, not traffic
 */
public record Errors(
        long reports,
        Map<ErrorClass, Long> counts,
        Map<String, Long> places,
        List<Change> changes,
        int mostTransmit,
        int mostReceive,
        long ownAfterOff) {
    public Errors {
        counts = Map.copyOf(counts);
        places = Map.copyOf(places);
        changes = List.copyOf(changes);
    }

    /** What a controller may do on the bus. */
    public enum State {
        ACTIVE("error active"),
        WARNING("warning"),
        PASSIVE("error passive"),
        OFF("off the bus");

        private final String words;

        State(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** A new state and the stamp of the report. */
    public record Change(long atNs, State state) {}

    /** How often a class was reported. */
    public long count(ErrorClass what) {
        return counts.getOrDefault(what, 0L);
    }
}
