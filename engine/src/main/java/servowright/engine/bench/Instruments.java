package servowright.engine.bench;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.quantity.Accuracy;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/**
 * Limits of the instruments of one bench test, as stated or as assumed for instruments of the kind. Everything that one
 * instrument reads shares its error: readings do not average it away, and two tests with the same instrument move
 * together.
 *
 * <p>Instruments of one kind with the same limits count as one and the same instrument: a bench has one oscilloscope.
 *
 * @param stated limits by what is read, from the test
 */
public record Instruments(Map<String, Accuracy> stated) {
    /** What is read, and the limits assumed when none are stated (common practice, no source). */
    public enum Reads {
        SCOPE_VOLTAGE("voltage", "oscilloscope with probe", 0.03),
        SCOPE_CURRENT("current", "oscilloscope with current probe", 0.03),
        SCOPE_SHUNT("voltage", "oscilloscope on the shunt", 0.03),
        METER_VOLTAGE("voltage", "hand-held voltmeter", 0.005),
        METER_CURRENT("current", "hand-held ammeter", 0.01),
        METER_RESISTANCE("resistance", "hand-held ohmmeter", 0.01),
        METER_INDUCTANCE("inductance", "hand-held inductance meter", 0.02),
        TIME("time", "time base of a recorder", 50e-6),
        SPEED("speed", "hand-held tachometer", 0.005),
        FREQUENCY("frequency", "frequency meter", 0.001),
        TORQUE("torque", "torque sensor", 0.01),
        FORCE("force", "scale", 0.01),
        HOUSING_RISE("temperature", "thermometer on the housing", 0.03),
        DRIVE_CURRENT("current", "current sensing of a drive", 0.03),
        DRIVE_VOLTAGE("voltage", "voltage that a drive says it makes", 0.02);

        private final String key;
        private final String kind;
        private final double assumedRelative;

        Reads(String key, String kind, double assumedRelative) {
            this.key = key;
            this.kind = kind;
            this.assumedRelative = assumedRelative;
        }
    }

    /** The limits of what is read. */
    public Accuracy accuracy(Reads what) {
        Accuracy own = stated.get(what.key);
        return own != null ? own : new Accuracy(what.assumedRelative, Quantity.number(0));
    }

    /** The reading with the error that its instrument may have. */
    Known limited(Known reading, Reads what) {
        Accuracy limits = accuracy(what);
        Known more = reading;
        if (limits.relative() > 0) {
            double u = limits.relative() * Math.abs(reading.si()) / Math.sqrt(3);
            more = more.withPart(Source.of(name(what) + " gain"), u);
        }
        if (limits.absolute().si() > 0) {
            more = more.withPart(
                    Source.of(name(what) + " zero"), limits.absolute().si() / Math.sqrt(3));
        }
        return more;
    }

    /** A factor 1 with the gain error that the instrument may have. */
    Known gain(Reads what) {
        double u = accuracy(what).relative() / Math.sqrt(3);
        return Known.of(Quantity.number(1), u, Source.of(name(what) + " gain"), origin(what), name(what));
    }

    /** What was assumed of the instrument, if anything. */
    Optional<Phrase> assumption(Reads what) {
        if (stated.containsKey(what.key)) {
            return Optional.empty();
        }
        return Optional.of(Phrase.of(
                        "limits of the " + what.kind + " not stated; ± {limit} assumed (common practice, no source)")
                .with("limit", Quantity.number(what.assumedRelative), what.assumedRelative < 0.001 ? "ppm" : "%"));
    }

    private Origin origin(Reads what) {
        return stated.containsKey(what.key) ? Origin.DECLARED : Origin.ASSUMED;
    }

    private String name(Reads what) {
        Accuracy limits = accuracy(what);
        String fixed = limits.absolute().dimension().equals(Dimension.NUMBER)
                ? ""
                : String.format(Locale.ROOT, " ± %s", limits.absolute().si());
        return String.format(Locale.ROOT, "%s ± %s%s", what.kind, limits.relative(), fixed);
    }
}
