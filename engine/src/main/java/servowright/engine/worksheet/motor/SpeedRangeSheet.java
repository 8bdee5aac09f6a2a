package servowright.engine.worksheet.motor;

import java.util.Arrays;
import java.util.List;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Term;
import servowright.engine.motor.ElectricalSpeed;
import servowright.engine.motor.MotorConstants;
import servowright.engine.motor.SpeedReach;
import servowright.engine.motor.Winding;
import servowright.engine.power.Modulation;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.Stated;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.UsualInputs;

/** How fast a motor turns at a supply, and what else its speed runs into. */
public final class SpeedRangeSheet implements ConstantsSheet {
    private static final String HEXAGON =
            "voltage hexagon: space vector V/√3, sinusoidal V/2, six-step fundamental 2V/π; reserve comes off";
    private static final String STEADY =
            "|v| = V with vd = R id − ω Lq iq, vq = R iq + ω (Ld id + λ); Krause et al. 2013, ch. 4 (recalled)";
    private static final String SAMPLED =
            "loop rate over electrical frequency; below 20 coarse, below 10 lost (common practice, no source)";
    private static final String DIODES = "line peak of the open terminals √3 pλ ω against the bus";

    private static final Declaration DECLARATION = new Declaration(
            "speed-range",
            "Speed range at a supply",
            "No-load and loaded speed for a supply, modulation and reserve, with electrical frequency, control steps and"
                    + " angle lost to delay at the loaded speed, and the speed from which a released bridge feeds the bus. Of"
                    + " a supply range the lowest voltage decides. Friction, iron loss and dead time belong to the reserve.",
            inputs(),
            results(),
            List.of(HEXAGON, STEADY, SAMPLED, DIODES));

    private static List<Input> inputs() {
        String[] modulations =
                Arrays.stream(Modulation.values()).map(Modulation::words).toArray(String[]::new);
        return GivenMotor.and(
                UsualInputs.supply(),
                Input.choice("modulation", "how the bridge makes its voltage", modulations)
                        .orElse(Modulation.SPACE_VECTOR.words()),
                UsualInputs.share("reserve", "share of the voltage kept for control, drops and dead time", "5 %")
                        .orElse("10 %"),
                UsualInputs.current("current", "motor current under load"),
                Input.quantity("d_current", Dimension.CURRENT, "d current, peak; negative weakens the field", "-5 A")
                        .within(Quantity.of(-1e5, "A"), Quantity.of(1e5, "A")),
                UsualInputs.frequency("loop_rate", "rate of the current control", "20 kHz"),
                UsualInputs.time("delay", "from angle measurement to voltage", "75 us"),
                UsualInputs.frequency("frequency_limit", "highest electrical frequency of the drive", "950 Hz"),
                Input.quantity("diode_drop", Dimension.VOLTAGE, "forward drop of one diode of the bridge", "0.9 V")
                        .within(Quantity.of(0, "V"), Quantity.of(5, "V"))
                        .orElse("0 V"));
    }

    private static List<Result> results() {
        return List.of(
                new Result("usable_voltage", "voltage the bridge can make, phase peak", "V"),
                new Result("no_load_speed", "speed without current", "rpm"),
                new Result("loaded_speed", "speed with the current", "rpm"),
                new Result("loaded_speed_resistance_only", "the same with the inductance left out", "rpm"),
                new Result("base_speed", "the same with the resistance left out", "rpm"),
                new Result("output_speed", "speed behind the gear", "rad/s"),
                new Result("torque", "air-gap torque at the current", "N m"),
                new Result("electrical_frequency", "electrical frequency at the loaded speed", "Hz"),
                new Result("frequency_speed", "speed at the drive's highest electrical frequency", "rpm"),
                new Result("control_steps", "control steps in one electrical turn", ""),
                new Result("angle_lost", "electrical angle the rotor moves during the delay", "deg"),
                new Result("feeding_speed", "speed from which the diodes of a released bridge charge the bus", "rpm"),
                new Result("open_voltage", "line peak at the open terminals at the loaded speed", "V"));
    }

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs)
                .needs("supply")
                .work(c -> GivenMotor.of(c).ifPresent(motor -> fill(c, motor)));
    }

    private static void fill(Calculation c, GivenMotor motor) {
        Term volt = voltage(c);
        Term idle = c.result(
                "no_load_speed",
                "{ω0} = {V} / {pλ}",
                STEADY,
                x -> SpeedReach.idealNoLoadMechRadPerS(new MotorConstants(x[0]), x[1]),
                motor.pLambda(),
                volt);
        Term speed = c.inputs().has("current") ? loaded(c, motor, volt) : idle;
        c.term("gear", "gear")
                .ifPresent(gear -> c.result(
                        "output_speed",
                        "{output} = {" + speed.symbol() + "} / {gear}",
                        "gear without slip",
                        x -> x[0] / x[1],
                        speed,
                        gear));
        if (motor.known()) {
            sampled(c, motor, speed);
        }
        c.result(
                "open_voltage",
                "{V open} = √3 · {pλ} · {" + speed.symbol() + "}",
                DIODES,
                x -> SpeedReach.openLinePeakVolt(new MotorConstants(x[0]), x[1]),
                motor.pLambda(),
                speed);
        c.result(
                "feeding_speed",
                "{ω feed} = ({V bus} + 2 · {V diode}) / (√3 · {pλ})",
                DIODES,
                x -> SpeedReach.feedingMechRadPerS(new MotorConstants(x[0]), x[1], x[2]),
                motor.pLambda(),
                supply(c, "V bus"),
                c.given("V diode", "diode_drop"));
    }

    private static Term supply(Calculation c, String symbol) {
        Stated stated = c.stated("supply");
        if (stated.spread() != Stated.Spread.RANGE) {
            return c.given(symbol, "supply");
        }
        return Term.of(symbol, Known.exact(stated.lower(), Origin.DECLARED, "lowest of the range"), "V");
    }

    private static Term voltage(Calculation c) {
        String word = c.inputs().choice("modulation").orElseThrow();
        Modulation modulation = Arrays.stream(Modulation.values())
                .filter(m -> m.words().equals(word))
                .findFirst()
                .orElseThrow();
        String factor = switch (modulation) {
            case SPACE_VECTOR -> "1/√3";
            case SINUSOIDAL -> "1/2";
            case SIX_STEP -> "2/π";
        };
        return c.result(
                "usable_voltage",
                "{V} = " + factor + " · {V supply} · (1 − {reserve})",
                HEXAGON,
                x -> modulation.phasePeakVolt(x[0], x[1]),
                supply(c, "V supply"),
                c.given("reserve", "reserve"));
    }

    private static Term loaded(Calculation c, GivenMotor motor, Term volt) {
        Term iq = PhaseValue.current(c, "current");
        Term id = c.term("id", "d_current")
                .orElse(Term.of("id", Known.exact(Quantity.of(0, "A"), Origin.ASSUMED, "id 0"), "A"));
        Term[] terms = motor.terms(iq, id, volt);
        c.result(
                "torque",
                "{T} = 3/2 · ({pλ} + p ({Ld} − {Lq}) {id}) · {i}",
                "air-gap power; Krause et al. 2013, ch. 4 (recalled)",
                x -> motor.winding(x).torqueNewtonMetre(GivenMotor.further(x, 1), GivenMotor.further(x, 0)),
                terms);
        if (SpeedReach.mechRadPerS(
                        motor.winding(values(terms)),
                        id.value().si(),
                        iq.value().si(),
                        volt.value().si())
                .isEmpty()) {
            c.remark(Phrase.of("the resistance alone takes more than the voltage: the motor does not turn at {i}")
                    .with("i", iq.value()));
            return Term.of("ω", Known.exact(Quantity.of(0, "rpm"), Origin.DERIVED, "stalled"), "rpm");
        }
        Term speed = c.result(
                "loaded_speed",
                "{ω} from ({R}{i} + ω({pλ} + p{Ld}{id}))² + ({R}{id} − pω{Lq}{i})² = {V}²",
                STEADY,
                x -> reach(motor.winding(x), x),
                terms);
        neglecting(c, motor, terms);
        return speed;
    }

    /** The same speed when the inductance, or the resistance, is left out. */
    private static void neglecting(Calculation c, GivenMotor motor, Term[] terms) {
        c.result(
                "loaded_speed_resistance_only",
                "{ω} = ({V} − {R}{i}) / {pλ}",
                STEADY,
                x -> reach(motor.winding(x).withInductance(0, 0), x),
                terms);
        c.result(
                "base_speed",
                "{ω} = {V} / √(({pλ} + p{Ld}{id})² + (p{Lq}{i})²)",
                STEADY,
                x -> reach(motor.winding(x).withPhaseOhm(0), x),
                terms);
    }

    private static double reach(Winding winding, double[] x) {
        return SpeedReach.mechRadPerS(
                        winding, GivenMotor.further(x, 1), GivenMotor.further(x, 0), GivenMotor.further(x, 2))
                .orElse(0);
    }

    private static double[] values(Term... terms) {
        return Arrays.stream(terms).mapToDouble(t -> t.value().si()).toArray();
    }

    private static void sampled(Calculation c, GivenMotor motor, Term speed) {
        int p = motor.polePairs();
        String w = "{" + speed.symbol() + "}";
        Term f = c.result(
                "electrical_frequency",
                "{f} = " + p + " · " + w + " / 2π",
                "definition of pole pairs",
                x -> ElectricalSpeed.hertz(x[0], p),
                speed);
        c.term("f limit", "frequency_limit")
                .ifPresent(limit -> c.result(
                        "frequency_speed",
                        "{ω} = 2π · {f limit} / " + p,
                        "definition of pole pairs",
                        x -> ElectricalSpeed.mechRadPerS(x[0], p),
                        limit));
        if (f.value().si() > 0) {
            c.term("f loop", "loop_rate")
                    .ifPresent(loop -> c.result(
                            "control_steps",
                            "{steps} = {f loop} / {f}",
                            SAMPLED,
                            x -> ElectricalSpeed.controlStepsPerTurn(x[0], x[1], p),
                            loop,
                            speed));
        }
        c.term("t", "delay")
                .ifPresent(delay -> c.result(
                        "angle_lost",
                        "{angle} = 2π · {f} · {t}",
                        "angle moved during the delay",
                        x -> ElectricalSpeed.angleLostElectricalRad(x[0], x[1], p),
                        delay,
                        speed));
    }
}
