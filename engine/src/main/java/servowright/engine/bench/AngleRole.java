package servowright.engine.bench;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** What a channel shows in a test of an angle sensor. */
enum AngleRole {
    /** What the sensor on the bench reads. */
    ANGLE("angle"),
    /** Electrical angle of the current that drags the rotor. */
    COMMANDED("commanded angle"),
    /** What a sensor that is trusted reads. */
    REFERENCE("reference angle"),
    /** Magnitude of the field that the sensor reports. */
    FIELD("field");

    private final String words;

    AngleRole(String words) {
        this.words = words;
    }

    /** As it is written. */
    String words() {
        return words;
    }

    /** The name of the first channel that shows it. */
    Optional<String> channel(Map<String, String> channels) {
        return channels.entrySet().stream()
                .filter(e -> parse(e.getValue()).filter(this::equals).isPresent())
                .map(Map.Entry::getKey)
                .findFirst();
    }

    private static Optional<AngleRole> parse(String text) {
        String said = text.toLowerCase(Locale.ROOT);
        if (said.contains("commanded")) {
            return Optional.of(COMMANDED);
        }
        if (said.contains("reference")) {
            return Optional.of(REFERENCE);
        }
        if (said.contains("field")) {
            return Optional.of(FIELD);
        }
        return said.contains("angle") ? Optional.of(ANGLE) : Optional.empty();
    }
}
