package servowright.engine.machine;

import java.util.Optional;
import servowright.engine.known.Place;

/**
 * A number in the data of a message as declared.
 *
 * @param id     identifier of its message
 * @param scale  what one count is, as written
 * @param offset what no count is, as written
 * @param rateOf name of the signal that this one is the rate of
 */
public record BusSignal(
        String name,
        Place place,
        int id,
        Figures<SignalFigure> figures,
        ByteOrder order,
        Sign sign,
        String scale,
        Optional<String> offset,
        Optional<String> rateOf) {
    /** Which byte comes first. */
    public enum ByteOrder {
        LOW_FIRST("low byte first"),
        HIGH_FIRST("high byte first");

        private final String words;

        ByteOrder(String words) {
            this.words = words;
        }

        /** As it is written. */
        public String words() {
            return words;
        }
    }

    /** Whether a number can be negative. */
    public enum Sign {
        SIGNED("signed"),
        UNSIGNED("unsigned");

        private final String words;

        Sign(String words) {
            this.words = words;
        }

        /** As it is written. */
        public String words() {
            return words;
        }
    }
}
