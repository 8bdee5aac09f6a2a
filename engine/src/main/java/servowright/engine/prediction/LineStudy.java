package servowright.engine.prediction;

import java.util.Optional;
import java.util.function.Supplier;
import servowright.engine.encoder.QuadratureLine;
import servowright.engine.encoder.SerialLine;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Term;
import servowright.engine.machine.Duty;
import servowright.engine.machine.Sensor;
import servowright.engine.machine.SensorFigure;
import servowright.engine.machine.SensorKind;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** What comes over the line of an angle sensor, and how fast it may be clocked. */
public final class LineStudy {
    private static final double DRIVER_SECOND = 0.3e-6;

    private LineStudy() {}

    /** Edges a second at the top speed of a duty; empty unless the sensor counts edges and its input has a limit. */
    public static Optional<Outcome<Known>> edges(AxisParts parts, Duty duty) {
        boolean counts = parts.sensor()
                .flatMap(Sensor::kind)
                .filter(k -> k == SensorKind.INCREMENTAL || k == SensorKind.INCREMENTAL_WITH_INDEX)
                .isPresent();
        return counts && edgeLimit(parts).isPresent() ? Optional.of(answer(parts, duty)) : Optional.empty();
    }

    /** Edges a second that the input counts, if stated. */
    public static Optional<Known> edgeLimit(AxisParts parts) {
        return parts.sensor().flatMap(s -> s.figures().known(SensorFigure.LINE_EDGE_RATE));
    }

    private static Outcome<Known> answer(AxisParts parts, Duty duty) {
        Inquiry in = new Inquiry();
        Supplier<Demand> demand = in.take(DemandStudy.of(parts, duty));
        Supplier<Known> bits = in.take(parts.sensor()
                .map(s -> Wanted.figure(s.figures(), SensorFigure.RESOLUTION, s.name()))
                .orElseThrow());
        return in.answer(() -> in.sheet()
                .line(
                        "edges a second at top speed",
                        "{fe} = 2^{N} · {ω} / 2π",
                        "kHz",
                        Dimension.FREQUENCY,
                        "four edges for each period of the two channels",
                        x -> edges(x[0], x[1]),
                        Term.of("N", bits.get(), "bit"),
                        Term.of("ω", demand.get().topSpeed(), "rpm")));
    }

    private static double edges(double bits, double radPerSecond) {
        int periods = (int) Math.max(1, Math.round(Math.pow(2, bits) / 4));
        return radPerSecond > 0 ? new QuadratureLine(periods).edgesPerSecond(radPerSecond) : 0;
    }

    /** Fastest clock that the length of its cable allows a sensor; empty unless clock and length are stated. */
    public static Optional<Outcome<Known>> fastestClock(Sensor sensor) {
        Optional<Known> length = sensor.figures().known(SensorFigure.LINE_LENGTH);
        if (length.isEmpty() || sensor.figures().known(SensorFigure.LINE_CLOCK).isEmpty()) {
            return Optional.empty();
        }
        Inquiry in = new Inquiry();
        in.assume(Phrase.of("drivers and receivers take {t} of the round trip (common practice, no source)")
                .with("t", new Quantity(DRIVER_SECOND, Dimension.TIME), "us"));
        Known driver = Known.exact(new Quantity(DRIVER_SECOND, Dimension.TIME), Origin.ASSUMED, "assumed");
        return Optional.of(in.answer(() -> in.sheet()
                .line(
                        "fastest clock of the line",
                        "{fc} = 1 / (2 · (2 · {L} · 5 ns/m + {td}))",
                        "kHz",
                        Dimension.FREQUENCY,
                        "round trip within half a clock; within 20 % of published tables of serial angle lines",
                        x -> SerialLine.fastestClockHertz(x[0], x[1]),
                        Term.of("L", length.get(), "m"),
                        Term.of("td", driver, "us"))));
    }
}
