package servowright.engine.prediction;

import java.util.Optional;
import java.util.function.Supplier;
import servowright.engine.bench.MotorParameter;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Term;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.Declared;
import servowright.engine.machine.DriveFigure;
import servowright.engine.machine.Duty;
import servowright.engine.machine.SupplyFigure;
import servowright.engine.motor.MotorConstants;
import servowright.engine.motor.SpeedReach;
import servowright.engine.quantity.Dimension;

/** How high does the back-EMF drive the supply lines when the bridge lets go at top speed? */
public final class ReleaseStudy {
    private static final String SOURCE = "line voltage of the turning magnets, √3 p λ ω; diodes taken without drop";

    private ReleaseStudy() {}

    /** Release at the top speed of one duty. */
    public static Outcome<Release> of(AxisParts parts, Duty duty) {
        Inquiry in = new Inquiry();
        Supplier<Demand> demand = in.take(DemandStudy.of(parts, duty));
        Supplier<Known> flux = in.take(WarmMotorStudy.coldFlux(parts));
        Supplier<Known> pairs = in.take(parts.parameter(MotorParameter.POLE_PAIRS));
        Supplier<Known> most = in.take(stands(parts));
        Optional<Known> full = parts.supply()
                .flatMap(s -> s.figures().get(SupplyFigure.VOLTAGE))
                .map(Wanted::most);
        return in.answer(() -> {
            Term p = Term.of("p", pairs.get());
            Term l = Term.of("λcold", flux.get(), "mWb");
            Known open = in.sheet()
                    .line(
                            "line voltage of the turning magnets, peak",
                            "{E} = √3 · {p} · {λcold} · {ω}",
                            "V",
                            Dimension.VOLTAGE,
                            SOURCE,
                            x -> SpeedReach.openLinePeakVolt(constants(x), x[2]),
                            p,
                            l,
                            Term.of("ω", demand.get().topSpeed(), "rpm"));
            Known feeding = in.sheet()
                    .line(
                            "speed at which they reach what the drive stands",
                            "{ωf} = {Vmax} / (√3 · {p} · {λcold})",
                            "rpm",
                            Dimension.SPEED,
                            SOURCE,
                            x -> SpeedReach.feedingMechRadPerS(constants(x), x[2], 0),
                            p,
                            l,
                            Term.of("Vmax", most.get(), "V"));
            return new Release(open, most.get(), full, feeding, driven(parts));
        });
    }

    /** The voltage a drive stands: the lower of the top of its window and its trip voltage. */
    static Outcome<Known> stands(AxisParts parts) {
        Optional<Known> trip = parts.drive().flatMap(d -> d.figures().known(DriveFigure.TRIP_VOLTAGE));
        Outcome<Declared> window = parts.drive(DriveFigure.VOLTAGE);
        Inquiry in = new Inquiry();
        if (trip.isPresent() && window.found().isEmpty()) {
            return in.answer(trip::get);
        }
        Supplier<Declared> top = in.take(window);
        return in.answer(() -> {
            Known most = Wanted.most(top.get());
            return trip.filter(t -> t.si() < most.si()).orElse(most);
        });
    }

    /** Whether the weight overcomes the friction at the output, and can turn the motor by itself. */
    private static boolean driven(AxisParts parts) {
        double weight = parts.own(AxisFigure.LOAD_TORQUE).map(Known::si).orElse(0.0);
        double friction = parts.own(AxisFigure.LOAD_FRICTION).map(Known::si).orElse(0.0);
        return Math.abs(weight) > friction;
    }

    private static MotorConstants constants(double[] x) {
        return MotorConstants.ofFluxLinkage(x[1], (int) Math.round(x[0]));
    }
}
