package servowright.engine.prediction;

import java.util.function.BiFunction;
import java.util.function.Supplier;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.MotorParameter;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Term;
import servowright.engine.machine.Declared;
import servowright.engine.machine.DriveFigure;
import servowright.engine.machine.Duty;
import servowright.engine.machine.SensorFigure;
import servowright.engine.motor.ElectricalSpeed;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** How fast do the phases turn at top speed, and how well can a sampled control follow? */
public final class CommutationStudy {
    private static final String DEFINITION = "definition; electrical turn = mechanical turn / pole pairs";
    private static final String DELAY = "one step to compute, half a step until the voltage acts (common practice)";

    private static final String MEASURED =
            "slope of the best offset over the speed; only what the drive does not make up for";
    private static final String LOST = "electrical angle lost to delay";

    private CommutationStudy() {}

    /** Electrical frequency at the top speed of one duty, Hz. */
    public static Outcome<Known> frequency(AxisParts parts, Duty duty) {
        Inquiry in = new Inquiry();
        Supplier<Demand> demand = in.take(DemandStudy.of(parts, duty));
        Supplier<Known> pairs = in.take(parts.parameter(MotorParameter.POLE_PAIRS));
        return in.answer(() -> in.sheet()
                .line(
                        "electrical frequency at top speed",
                        "{f} = {p} · {ω} / 2π",
                        "Hz",
                        Dimension.FREQUENCY,
                        DEFINITION,
                        x -> ElectricalSpeed.hertz(x[1], (int) Math.round(x[0])),
                        Term.of("p", pairs.get()),
                        Term.of("ω", demand.get().topSpeed(), "rpm")));
    }

    private static Outcome<Known> turning(AxisParts parts, Duty duty) {
        Outcome<Known> frequency = frequency(parts, duty);
        return frequency.found().filter(f -> f.si() == 0).isPresent()
                ? Outcome.missing("a speed in " + duty.name(), "a hold has no electrical turns to cut into steps")
                : frequency;
    }

    /** Control steps and lost angle for one duty that moves. */
    public static Outcome<Commutation> of(AxisParts parts, Duty duty) {
        Inquiry in = new Inquiry();
        Supplier<Known> frequency = in.take(turning(parts, duty));
        Supplier<Declared> loop = in.take(parts.drive(DriveFigure.LOOP_RATE));
        BiFunction<Term, Term, Known> lost = lost(parts, in);
        return in.answer(() -> {
            Term f = Term.of("f", frequency.get(), "Hz");
            Term rate = Term.of("fc", loop.get().known(), "kHz");
            Known steps = in.sheet()
                    .line(
                            "control steps per electrical turn",
                            "{n} = {fc} / {f}",
                            "",
                            Dimension.NUMBER,
                            DEFINITION,
                            x -> x[0] / x[1],
                            rate,
                            f);
            return new Commutation(frequency.get(), steps, lost.apply(f, rate));
        });
    }

    /** From frequency and loop rate to the angle lost: by the delay that was measured, else by what is known of its parts. */
    private static BiFunction<Term, Term, Known> lost(AxisParts parts, Inquiry in) {
        Outcome<Known> measured = parts.sensed().best(AxisParameter.COMMUTATION_DELAY);
        if (measured.found().isPresent()) {
            Supplier<Known> whole = in.take(measured);
            return (f, rate) -> in.sheet()
                    .line(
                            LOST,
                            "{δ} = 2π · {f} · |{τ}|",
                            "deg",
                            Dimension.ANGLE,
                            MEASURED,
                            x -> ElectricalSpeed.angleLostElectricalRad(Math.abs(x[1]), 2 * Math.PI * x[0], 1),
                            f,
                            Term.of("τ", whole.get(), "us"));
        }
        Supplier<Known> sensor = sensor(parts, in);
        return (f, rate) -> in.sheet()
                .line(
                        LOST,
                        "{δ} = 2π · {f} · (1.5 / {fc} + {ts})",
                        "deg",
                        Dimension.ANGLE,
                        DELAY,
                        x -> ElectricalSpeed.angleLostElectricalRad(
                                Math.max(0, 1.5 / x[1] + x[2]), 2 * Math.PI * x[0], 1),
                        f,
                        rate,
                        Term.of("ts", sensor.get(), "us"));
    }

    /** Delay of the sensor: as measured beside another, else as stated, else none. */
    private static Supplier<Known> sensor(AxisParts parts, Inquiry in) {
        Outcome<Known> measured = parts.sensed().best(AxisParameter.ANGLE_DELAY);
        if (measured.found().isPresent()) {
            return in.take(measured);
        }
        Known stated = parts.sensor()
                .flatMap(s -> s.figures().known(SensorFigure.DELAY))
                .orElseGet(() -> {
                    in.assume(Phrase.of("delay of the angle sensor not stated, taken as none"));
                    return Known.exact(new Quantity(0, Dimension.TIME), Origin.ASSUMED, "assumed");
                });
        return () -> stated;
    }
}
