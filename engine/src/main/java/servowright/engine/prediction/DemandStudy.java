package servowright.engine.prediction;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import servowright.engine.bench.MotorParameter;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Propagation;
import servowright.engine.known.Term;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.Duty;
import servowright.engine.machine.DutyFigure;
import servowright.engine.machine.Profile;
import servowright.engine.motion.MotorDuty;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** What torque and speed does a duty ask of the motor, through gear, friction, weight and inertia? */
public final class DemandStudy {
    private static final String BALANCE = "power balance of the gear, constant acceleration";
    private static final String RMS = "root of the mean square over the cycle, there and back with both rests";

    private DemandStudy() {}

    /** The demand of one duty. */
    public static Outcome<Demand> of(AxisParts parts, Duty duty) {
        Inquiry in = new Inquiry();
        boolean accelerates = accelerates(duty);
        List<Supplier<Known>> figures = new ArrayList<>();
        Known turns = in.orAssume(
                parts.own(AxisFigure.MOTOR_TURNS),
                Quantity.number(1),
                Phrase.of("no gear stated: the motor drives the output directly"));
        figures.add(() -> turns);
        figures.add(always(efficiency(in, parts, turns)));
        figures.add(motorInertia(in, parts, accelerates));
        figures.add(loadInertia(in, parts, accelerates));
        figures.add(always(none(in, parts, AxisFigure.LOAD_FRICTION, "friction taken as none, as it is not stated")));
        figures.add(always(orZero(parts.own(AxisFigure.LOAD_VISCOUS), Dimension.VISCOUS_FRICTION)));
        figures.add(
                always(none(in, parts, AxisFigure.LOAD_TORQUE, "weight taken as none, as no load torque is stated")));
        figures.add(always(orZero(duty.figures().known(DutyFigure.TORQUE), Dimension.TORQUE)));
        figures.addAll(motion(in, parts, duty));
        return in.answer(() ->
                compute(in, duty.profile(), figures.stream().map(Supplier::get).toList()));
    }

    private static boolean accelerates(Duty duty) {
        return duty.profile() != Profile.STEADY
                || (duty.figures().known(DutyFigure.ACCELERATION).isPresent()
                        && duty.figures().known(DutyFigure.SPEED).isPresent());
    }

    private static Known efficiency(Inquiry in, AxisParts parts, Known turns) {
        Optional<Known> stated = parts.own(AxisFigure.GEAR_EFFICIENCY);
        if (stated.isEmpty() && turns.si() == 1) {
            return Known.number(1, Origin.DECLARED, "no gear");
        }
        return in.orAssume(
                stated, Quantity.number(0.85), Phrase.of("gear efficiency taken as 85 %, as it is not stated"));
    }

    private static Supplier<Known> motorInertia(Inquiry in, AxisParts parts, boolean accelerates) {
        Known gear = orZero(parts.own(AxisFigure.GEAR_INERTIA), Dimension.INERTIA);
        if (!accelerates) {
            return always(gear);
        }
        Supplier<Known> rotor = in.take(parts.parameter(MotorParameter.ROTOR_INERTIA));
        return () -> rotor.get().plus(gear);
    }

    private static Supplier<Known> loadInertia(Inquiry in, AxisParts parts, boolean accelerates) {
        return accelerates
                ? in.take(Wanted.figure(parts.axis().figures(), AxisFigure.LOAD_INERTIA, parts.name()))
                : always(orZero(parts.own(AxisFigure.LOAD_INERTIA), Dimension.INERTIA));
    }

    private static Known none(Inquiry in, AxisParts parts, AxisFigure what, String why) {
        return in.orAssume(parts.own(what), new Quantity(0, Dimension.TORQUE), Phrase.of(why));
    }

    private static List<Supplier<Known>> motion(Inquiry in, AxisParts parts, Duty duty) {
        Optional<Known> speed = duty.figures().known(DutyFigure.SPEED);
        Optional<Known> travel = duty.figures().known(DutyFigure.TRAVEL);
        Optional<Known> time = duty.figures().known(DutyFigure.TIME);
        boolean needsSpeed = duty.profile() == Profile.TRAPEZOID;
        boolean needsTravel = (duty.profile() == Profile.TRAPEZOID && time.isEmpty())
                || (duty.profile() == Profile.TRIANGLE && speed.isEmpty());
        boolean needsAcceleration = duty.profile() != Profile.STEADY;
        return List.of(
                wanted(in, parts, duty, DutyFigure.SPEED, needsSpeed),
                wanted(in, parts, duty, DutyFigure.ACCELERATION, needsAcceleration),
                travel.isPresent() || needsTravel
                        ? wanted(in, parts, duty, DutyFigure.TRAVEL, needsTravel)
                        : always(zero(Dimension.ANGLE)),
                always(orZero(time, Dimension.TIME)),
                always(orZero(duty.figures().known(DutyFigure.REST), Dimension.TIME)));
    }

    private static Supplier<Known> wanted(Inquiry in, AxisParts parts, Duty duty, DutyFigure what, boolean needed) {
        Optional<Known> stated = duty.figures().known(what);
        if (stated.isEmpty() && needed) {
            return in.take(Wanted.missing(what, parts.name() + " / " + duty.name()));
        }
        return always(orZero(stated, what.key().dimension()));
    }

    private static Term[] torqueTerms(List<Known> x) {
        return new Term[] {
            Term.of("JL", x.get(3)),
            Term.of("a", x.get(9), "rad/s2"),
            Term.of("Tf", x.get(4), "N m"),
            Term.of("Tg", x.get(6), "N m"),
            Term.of("n", x.get(0)),
            Term.of("η", x.get(1)),
            Term.of("J", x.get(2))
        };
    }

    private static Demand compute(Inquiry in, Profile profile, List<Known> x) {
        Known peak = in.sheet()
                .note(
                        "peak torque at the motor",
                        "{T} = ({JL} · {a} + {Tf} + {Tg} + ..) / ({n} · {η}) + {J} · {n} · {a}",
                        "N m",
                        BALANCE,
                        derive(Dimension.TORQUE, profile, x, MotorDuty::peakNewtonMetre),
                        torqueTerms(x));
        Known rms = in.sheet()
                .note(
                        "RMS torque at the motor",
                        "{Trms}",
                        "N m",
                        RMS,
                        derive(Dimension.TORQUE, profile, x, MotorDuty::rmsNewtonMetre));
        Known top = in.sheet()
                .note(
                        "top speed at the motor",
                        "{ω} = {n} · {v}",
                        "rpm",
                        "gear ratio; peak speed of the move",
                        derive(Dimension.SPEED, profile, x, MotorDuty::peakRadPerS),
                        Term.of("n", x.get(0)),
                        Term.of("v", x.get(8), "rpm"));
        if (top.si() < x.get(0).si() * x.get(8).si() * (1 - 1e-9)) {
            in.assume(Phrase.of("the travel is too short to reach {speed}: counted with the speed it does reach")
                    .with("speed", x.get(8), "rpm"));
        }
        return new Demand(
                peak,
                rms,
                top,
                derive(Dimension.SPEED, profile, x, MotorDuty::rmsRadPerS),
                derive(Dimension.POWER, profile, x, MotorDuty::drivingWatt),
                derive(Dimension.POWER, profile, x, MotorDuty::brakingWatt),
                top.si() == 0);
    }

    private static Known derive(
            Dimension dimension, Profile profile, List<Known> x, ToDoubleFunction<MotorDuty> figure) {
        return Propagation.derive(
                dimension, v -> figure.applyAsDouble(DutyCycle.of(profile, v).motorDuty()), x);
    }

    private static Known orZero(Optional<Known> stated, Dimension dimension) {
        return stated.orElseGet(() -> zero(dimension));
    }

    private static Known zero(Dimension dimension) {
        return Known.exact(new Quantity(0, dimension), Origin.DECLARED, "not stated");
    }

    private static Supplier<Known> always(Known known) {
        return () -> known;
    }
}
