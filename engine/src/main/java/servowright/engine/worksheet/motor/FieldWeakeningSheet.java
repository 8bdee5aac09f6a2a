package servowright.engine.worksheet.motor;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Term;
import servowright.engine.motor.CurrentAngle;
import servowright.engine.motor.SpeedReach;
import servowright.engine.motor.Winding;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.VoltageBasis;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.UsualInputs;

/** How a current is best split between the axes, below and above the base speed. */
public final class FieldWeakeningSheet implements ConstantsSheet {
    private static final String BEST =
            "maximum of the torque on the current circle; Morimoto et al., IEEE Trans. IA 26(5) 1990 (recalled)";
    private static final String LIMIT = "current circle and voltage ellipse, resistance left out";

    private static final Declaration DECLARATION = new Declaration(
            "field-weakening",
            "Current angle and field weakening",
            "Most torque per ampere, the base speed, and the torque at a speed above it with the whole current and just the"
                    + " voltage there is. The resistance is left out above the base speed, saturation everywhere. At speed the"
                    + " open terminals stand above the supply: what happens when the bridge lets go is in speed-range.",
            GivenMotor.and(
                    UsualInputs.current("current", "length of the current"),
                    Input.quantity("voltage", Dimension.VOLTAGE, "voltage the bridge can make", "13.86 V [phase peak]")
                            .within(Quantity.of(1e-3, "V"), Quantity.of(1e4, "V"))
                            .statedAs(List.of(VoltageBasis.PHASE_PEAK.words())),
                    Input.quantity("speed", Dimension.SPEED, "speed asked for", "9000 rpm")
                            .within(Quantity.of(1e-3, "rpm"), Quantity.of(1e6, "rpm"))),
            List.of(
                    new Result("best_d_current", "d current of most torque per ampere", "A"),
                    new Result("best_q_current", "q current of most torque per ampere", "A"),
                    new Result("best_torque", "torque there", "N m"),
                    new Result("plain_torque", "torque of the same current on the q axis alone", "N m"),
                    new Result("base_speed", "speed up to which that current can flow, resistance left out", "rpm"),
                    new Result("base_speed_with_resistance", "the same with the resistance", "rpm"),
                    new Result("d_current", "d current at the speed asked", "A"),
                    new Result("q_current", "q current at the speed asked", "A"),
                    new Result("torque", "torque at the speed asked", "N m"),
                    new Result("characteristic_current", "current that cancels the magnet flux, phase peak", "A"),
                    new Result("top_speed", "speed at which the whole current only weakens the field", "rpm")),
            List.of(BEST, LIMIT));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return GivenMotor.needInductance(Calculation.of(DECLARATION, inputs).needs("current"))
                .work(c -> GivenMotor.of(c).filter(GivenMotor::known).ifPresent(motor -> fill(c, motor)));
    }

    private static void fill(Calculation c, GivenMotor motor) {
        Term current = PhaseValue.current(c, "current");
        Term[] terms = motor.terms(current);
        Term d = c.result(
                "best_d_current",
                "{id} = −2 ΔL {i}² / (λ + √(λ² + 8 ΔL² {i}²)), ΔL = {Lq} − {Ld}, λ = {pλ}/p",
                BEST,
                x -> best(motor, x).dAmp(),
                terms);
        Term q = c.result(
                "best_q_current",
                "{iq} = √({i}² − {id}²)",
                BEST,
                x -> Math.sqrt((x[0] - x[1]) * (x[0] + x[1])),
                current,
                d);
        c.result(
                "best_torque",
                "{T} = 3/2 ({pλ} + p({Ld} − {Lq}) {id}) {iq}",
                BEST,
                x -> motor.winding(x).torqueNewtonMetre(GivenMotor.further(x, 0), GivenMotor.further(x, 1)),
                motor.terms(d, q));
        c.result(
                "plain_torque",
                "{T} = 3/2 {pλ} {i}",
                BEST,
                x -> motor.winding(x).torqueNewtonMetre(0, GivenMotor.further(x, 0)),
                terms);
        c.result(
                "characteristic_current",
                "{i∞} = {pλ} / (p{Ld})",
                LIMIT,
                x -> CurrentAngle.characteristicAmp(motor.winding(x)),
                motor.terms());
        if (c.inputs().has("voltage")) {
            speeds(c, motor, current, d, q);
        }
    }

    private static CurrentAngle best(GivenMotor motor, double[] x) {
        return CurrentAngle.mostTorquePerAmpere(motor.winding(x), GivenMotor.further(x, 0));
    }

    private static void speeds(Calculation c, GivenMotor motor, Term current, Term d, Term q) {
        Term volt = c.given("V", "voltage");
        Term[] limited = motor.terms(d, q, volt);
        c.result(
                "base_speed",
                "{ω} = {V} / √(({pλ} + p{Ld}{id})² + (p{Lq}{iq})²)",
                LIMIT,
                x -> reach(motor.winding(x).withPhaseOhm(0), x),
                limited);
        if (motor.ohm().value().si() > 0
                && SpeedReach.mechRadPerS(
                                motor.winding(values(limited)),
                                d.value().si(),
                                q.value().si(),
                                volt.value().si())
                        .isPresent()) {
            c.result(
                    "base_speed_with_resistance",
                    "{ω} from ({R}{id} − pω{Lq}{iq})² + ({R}{iq} + ω({pλ} + p{Ld}{id}))² = {V}²",
                    "settled voltage equations; Krause et al. 2013, ch. 4 (recalled)",
                    x -> reach(motor.winding(x), x),
                    limited);
        }
        topSpeed(c, motor, current, volt);
    }

    private static void topSpeed(Calculation c, GivenMotor motor, Term current, Term volt) {
        Term[] terms = motor.terms(current, volt);
        double[] values = values(terms);
        if (CurrentAngle.topMechRadPerS(
                        motor.winding(values),
                        current.value().si(),
                        volt.value().si())
                .isPresent()) {
            c.result(
                    "top_speed",
                    "{ω top} = {V} / ({pλ} − p{Ld}{i})",
                    LIMIT,
                    x -> CurrentAngle.topMechRadPerS(
                                    motor.winding(x), GivenMotor.further(x, 0), GivenMotor.further(x, 1))
                            .orElse(0),
                    terms);
        } else {
            c.remark(Phrase.of("the current reaches the characteristic one: voltage sets no highest speed"));
        }
        if (c.inputs().has("speed")) {
            atSpeed(c, motor, current, volt);
        }
    }

    private static void atSpeed(Calculation c, GivenMotor motor, Term current, Term volt) {
        Term[] terms = motor.terms(current, volt, c.given("ω", "speed"));
        if (weakened(motor, values(terms)).isEmpty()) {
            c.remark(Phrase.of("this current cannot be used at {speed}: it takes more voltage than there is")
                    .with("speed", c.given("ω", "speed").value(), "rpm"));
            return;
        }
        String ellipse = "(λ + {Ld} id)² + {Lq}² ({i}² − id²) = ({V}/(p{ω}))², λ = {pλ}/p";
        Term d = c.result(
                "d_current",
                "{id} from " + ellipse,
                LIMIT,
                x -> weakened(motor, x).map(CurrentAngle::dAmp).orElse(0.0),
                terms);
        Term q = c.result(
                "q_current",
                "{iq} from " + ellipse + ", {iq} = √({i}² − id²)",
                LIMIT,
                x -> weakened(motor, x).map(CurrentAngle::qAmp).orElse(0.0),
                terms);
        c.result(
                "torque",
                "{T} = 3/2 ({pλ} + p({Ld} − {Lq}) {id}) {iq}",
                LIMIT,
                x -> motor.winding(x).torqueNewtonMetre(GivenMotor.further(x, 0), GivenMotor.further(x, 1)),
                motor.terms(d, q));
    }

    private static Optional<CurrentAngle> weakened(GivenMotor motor, double[] x) {
        return CurrentAngle.weakenedField(
                motor.winding(x), GivenMotor.further(x, 0), GivenMotor.further(x, 1), GivenMotor.further(x, 2));
    }

    private static double reach(Winding winding, double[] x) {
        return SpeedReach.mechRadPerS(
                        winding, GivenMotor.further(x, 0), GivenMotor.further(x, 1), GivenMotor.further(x, 2))
                .orElse(0);
    }

    private static double[] values(Term... terms) {
        return Arrays.stream(terms).mapToDouble(t -> t.value().si()).toArray();
    }
}
