package servowright.engine.worksheet.duty;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import servowright.engine.known.Outcome;
import servowright.engine.known.Problem;
import servowright.engine.known.Term;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Contradictions;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.UsualInputs;
import servowright.engine.worksheet.Worksheet;

/** What a move to and fro asks of the motor behind a gear. */
public final class MoveTorqueSheet implements Worksheet {
    private static final String GEAR =
            "power balance of the gear: efficiency divides towards the load and multiplies back (common practice)";
    private static final String PROFILE =
            "kinematics of the trapezoid; Biagiotti, Melchiorri 2008, sec. 3.2 (recalled)";
    private static final String RMS = "RMS torque over the cycle, constant in each stretch";

    private static final Declaration DECLARATION = new Declaration(
            "move-torque",
            "Torque and speed of a move",
            "A move from rest to rest, with or without the way back, of a load with inertia, friction and gravity behind a"
                    + " gear. The RMS torque stands for heat only if the cycle is short against the winding's time constant.",
            inputs(),
            List.of(
                    new Result("peak_speed", "highest motor speed", "rpm"),
                    new Result("load_acceleration", "acceleration at the load", "rad/s2"),
                    new Result("peak_torque", "largest motor torque", "N m"),
                    new Result("rms_torque", "RMS motor torque over the cycle", "N m"),
                    new Result("accelerate_torque", "motor torque while accelerating", "N m"),
                    new Result("cruise_torque", "motor torque at constant speed", "N m"),
                    new Result("decelerate_torque", "motor torque while decelerating", "N m"),
                    new Result("hold_torque", "motor torque at rest", "N m"),
                    new Result("back_accelerate_torque", "motor torque while accelerating on the way back", "N m"),
                    new Result("back_cruise_torque", "motor torque at constant speed on the way back", "N m"),
                    new Result("back_decelerate_torque", "motor torque while decelerating on the way back", "N m"),
                    new Result("driving_power", "largest power into the mechanics", "W"),
                    new Result("braking_power", "largest power back from the mechanics", "W"),
                    new Result("cycle_time", "length of the cycle", "s"),
                    new Result("inertia_ratio", "load inertia at the motor over the motor's own", "")),
            List.of(GEAR, PROFILE, RMS));

    private static List<Input> inputs() {
        return List.of(
                Input.quantity("travel", Dimension.ANGLE, "travel at the load", "1 rad")
                        .within(Quantity.of(1e-6, "rad"), Quantity.of(1e6, "rad")),
                UsualInputs.time("move_time", "time of the move, a third each for its parts", "0.4 s"),
                Input.quantity("speed", Dimension.SPEED, "highest load speed, instead of the time", "95 rpm")
                        .within(Quantity.of(1e-4, "rpm"), Quantity.of(1e6, "rpm")),
                Input.quantity(
                                "acceleration",
                                Dimension.ACCELERATION,
                                "load acceleration, with the speed",
                                "3 turns/s2")
                        .within(new Quantity(1e-6, Dimension.ACCELERATION), new Quantity(1e9, Dimension.ACCELERATION)),
                Input.quantity("rest", Dimension.TIME, "rest after each move", "0.2 s")
                        .within(Quantity.of(0, "s"), Quantity.of(1e6, "s"))
                        .orElse("0 s"),
                Input.choice("back", "whether the way back belongs to the cycle", "yes", "no")
                        .orElse("yes"),
                UsualInputs.gear().orElse("1"),
                Input.quantity("efficiency", Dimension.NUMBER, "efficiency of the gear", "0.85")
                        .within(Quantity.number(0.01), Quantity.number(1))
                        .orElse("1"),
                UsualInputs.inertia("motor_inertia", "inertia of the rotor and all at motor speed", "60 kg mm2"),
                UsualInputs.inertia("load_inertia", "inertia of the load", "0.02 kg m2"),
                Input.quantity("friction", Dimension.TORQUE, "friction at the load", "0.5 N m")
                        .within(Quantity.of(0, "N m"), Quantity.of(1e6, "N m"))
                        .orElse("0 N m"),
                Input.quantity(
                                "gravity",
                                Dimension.TORQUE,
                                "torque that holds the load, against the way out if positive",
                                "1.5 N m")
                        .within(Quantity.of(-1e6, "N m"), Quantity.of(1e6, "N m"))
                        .orElse("0 N m"));
    }

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public List<Problem> contradictions(Inputs inputs) {
        boolean limits = inputs.has("speed") || inputs.has("acceleration");
        return new Contradictions(DECLARATION)
                .when(
                        inputs.has("move_time") && limits,
                        "move_time",
                        "a time and limits are both given",
                        "Give one of them.")
                .problems();
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        boolean limits = inputs.has("speed") && inputs.has("acceleration");
        return Calculation.of(DECLARATION, inputs)
                .needs("travel", "motor_inertia", "load_inertia")
                .needs(
                        inputs.has("move_time") || limits,
                        "the time of the move, or its speed and acceleration",
                        "give move_time, for example 0.4 s")
                .work(c -> fill(c, limits));
    }

    private static void fill(Calculation c, boolean limits) {
        Cycle cycle = new Cycle(
                limits, c.inputs().choice("back").filter("yes"::equals).isPresent());
        Term[] terms = terms(c, limits);
        c.result(
                "cycle_time",
                "{t} = sum of the stretches",
                PROFILE,
                x -> cycle.duty(x).cycleSecond(),
                terms);
        c.result(
                "load_acceleration",
                "{a} = peak speed over time of acceleration",
                PROFILE,
                x -> cycle.move(x).radPerS2(),
                terms);
        c.result(
                "peak_speed",
                "{ω} = {n} · highest load speed",
                PROFILE,
                x -> cycle.duty(x).peakRadPerS(),
                terms);
        torquesAndPowers(c, cycle, terms);
    }

    private static void torquesAndPowers(Calculation c, Cycle cycle, Term[] terms) {
        torques(c, cycle, terms);
        c.result(
                "peak_torque", "{T peak} = largest |T|", RMS, x -> cycle.duty(x).peakNewtonMetre(), terms);
        c.result(
                "rms_torque",
                "{T rms} = √(Σ T² t / Σ t)",
                RMS,
                x -> cycle.duty(x).rmsNewtonMetre(),
                terms);
        c.result("driving_power", "{P} = largest T ω", RMS, x -> cycle.duty(x).drivingWatt(), terms);
        c.result(
                "braking_power",
                "{P back} = largest −T ω",
                RMS,
                x -> cycle.duty(x).brakingWatt(),
                terms);
        c.result(
                "inertia_ratio",
                "{ratio} = {JL} / ({n}² · {Jm})",
                GEAR,
                x -> Cycle.axis(x).inertiaRatio(),
                terms);
    }

    private static Term[] terms(Calculation c, boolean limits) {
        List<Term> terms = new ArrayList<>(List.of(
                c.given("n", "gear"),
                c.given("η", "efficiency"),
                c.given("Jm", "motor_inertia"),
                c.given("JL", "load_inertia"),
                c.given("T friction", "friction"),
                c.given("T gravity", "gravity"),
                c.given("h", "travel"),
                c.given("t rest", "rest")));
        if (limits) {
            terms.add(c.given("v", "speed"));
            terms.add(c.given("a", "acceleration"));
        } else {
            terms.add(c.given("t move", "move_time"));
        }
        return terms.toArray(Term[]::new);
    }

    private static void torques(Calculation c, Cycle cycle, Term[] terms) {
        String formula = "{T} = ({JL} α + {T friction} sign ω + {T gravity}) / ({n} {η}^±1) + {Jm} {n} α";
        double[] x = Arrays.stream(terms).mapToDouble(t -> t.value().si()).toArray();
        List<String> names = cycle.names(x);
        for (int i = 0; i < names.size(); i++) {
            int stretch = i;
            if (!names.get(i).isEmpty()) {
                c.result(names.get(i), formula, GEAR, y -> cycle.torque(y, stretch), terms);
            }
        }
    }
}
