package servowright.engine.bench;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What a channel of a recording shows, read from the words of the bench file.
 *
 * @param contacts where it was contacted, if said
 * @param axis     on which axis of the rotor the winding was excited, if said
 */
public record ChannelRole(Signal signal, Optional<Contacts> contacts, Optional<RotorAxis> axis) {
    private static final List<String> ELSEWHERE = List.of(
            "supply",
            "speed",
            "frequency",
            "angle",
            "torque",
            "temperature",
            "housing",
            "time",
            "trigger",
            "index",
            "unused");

    /** What is recorded. */
    public enum Signal {
        VOLTAGE,
        CURRENT,
        /** Voltage across a shunt of stated resistance. */
        SHUNT,
        /** Nothing that a reduction uses: a trigger, a speed, an unused input. */
        OTHER
    }

    /** Axes of the rotor. */
    public enum RotorAxis {
        D,
        Q
    }

    /** {@code A to B}, {@code current}, {@code shunt, A to BC}, {@code current A to B, d axis}. */
    public static ChannelRole parse(String text) {
        String words = text.toLowerCase(Locale.ROOT);
        Optional<RotorAxis> axis = Optional.empty();
        if (words.contains("d axis")) {
            axis = Optional.of(RotorAxis.D);
        } else if (words.contains("q axis")) {
            axis = Optional.of(RotorAxis.Q);
        }
        return new ChannelRole(signal(words), Contacts.parse(words), axis);
    }

    private static Signal signal(String words) {
        if (words.contains("shunt")) {
            return Signal.SHUNT;
        }
        if (words.contains("current")) {
            return Signal.CURRENT;
        }
        return ELSEWHERE.stream().anyMatch(words::contains) ? Signal.OTHER : Signal.VOLTAGE;
    }
}
