package servowright.engine.worksheet.motor;

import java.util.List;
import servowright.engine.known.Outcome;
import servowright.engine.known.Problem;
import servowright.engine.known.Term;
import servowright.engine.motor.MotorConstants;
import servowright.engine.power.CopperLoss;
import servowright.engine.power.SupplyCurrent;
import servowright.engine.quantity.CurrentBasis;
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

/** Torque for a current or current for a torque, with the copper loss and what the supply gives for it. */
public final class CurrentAndTorqueSheet implements Worksheet {
    private static final String JOULE = "Joule's law in three phases, 3/2 R i² with i peak, 3 R I² with I RMS";
    private static final String BALANCE = "power balance T ω + copper loss + idle power";

    private static final Declaration DECLARATION = new Declaration(
            "current-and-torque",
            "Current, torque, copper loss and supply current",
            "Torque at the motor shaft for a motor current or the other way round, the copper loss with the winding as cold"
                    + " or warm as its resistance, and the supply current at a speed, which is no motor current.",
            ConstantInputs.and(
                    UsualInputs.resistance("resistance", "winding resistance, as warm as in question"),
                    UsualInputs.current("current", "motor current"),
                    Input.quantity("torque", Dimension.TORQUE, "torque at the motor shaft", "0.5 N m")
                            .within(Quantity.of(0, "N m"), Quantity.of(1e6, "N m")),
                    UsualInputs.supply(),
                    UsualInputs.speed("speed", "speed of the motor shaft").orElse("0 rpm"),
                    Input.quantity("idle_power", Dimension.POWER, "power the drive takes by itself", "2 W")
                            .within(Quantity.of(0, "W"), Quantity.of(1e4, "W"))
                            .orElse("0 W")),
            List.of(
                    new Result("current_q_axis", "motor current, q axis, phase peak", "A"),
                    new Result("current_phase_rms", "motor current, phase RMS", "A"),
                    new Result("current_six_step", "six-step current for the same torque", "A"),
                    new Result("torque_out", "torque at the motor shaft", "N m"),
                    new Result("motor_constant", "torque per root of copper loss", "N m/sqrt(W)"),
                    new Result("copper_loss", "heat in the copper of three phases", "W"),
                    new Result("mechanical_power", "torque times speed", "W"),
                    new Result("supply_current", "mean current from the supply", "A"),
                    new Result("efficiency", "share of the supply's power that reaches the shaft", "%")),
            List.of(Citations.POWER_BALANCE, JOULE, BALANCE));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public List<Problem> contradictions(Inputs inputs) {
        return ConstantInputs.check(new Contradictions(DECLARATION), inputs)
                .when(
                        inputs.has("current") && inputs.has("torque"),
                        "torque",
                        "current and torque are both given",
                        "Give one; the other follows. For a torque constant from both use motor-constants.")
                .problems();
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs)
                .needs(
                        inputs.has("current") || inputs.has("torque"),
                        "a motor current or a torque",
                        "give current, for example 15 A [q axis]")
                .work(c -> GivenConstants.of(c, GivenPoles.of(c)).common(c).ifPresent(pLambda -> fill(c, pLambda)));
    }

    private static void fill(Calculation c, Term pLambda) {
        Term current = current(c, pLambda);
        Term torque = c.result(
                "torque_out",
                "{T} = 3/2 · {pλ} · {iq}",
                Citations.POWER_BALANCE,
                x -> constant(x[0], CurrentBasis.Q_AXIS) * x[1],
                pLambda,
                current);
        c.result(
                "current_phase_rms",
                "{I} = {T} / (3/√2 · {pλ})",
                Citations.POWER_BALANCE,
                x -> x[0] / constant(x[1], CurrentBasis.PHASE_RMS),
                torque,
                pLambda);
        c.result(
                "current_six_step",
                "{I dc} = {T} / (3√3/π · {pλ})",
                Citations.POWER_BALANCE,
                x -> x[0] / constant(x[1], CurrentBasis.SIX_STEP),
                torque,
                pLambda);
        if (c.inputs().has("resistance")) {
            loss(c, pLambda, current, torque);
        }
    }

    private static double constant(double pLambda, CurrentBasis basis) {
        return new MotorConstants(pLambda).torqueConstant(basis);
    }

    private static Term current(Calculation c, Term pLambda) {
        if (c.inputs().has("torque")) {
            return c.result(
                    "current_q_axis",
                    "{iq} = {T asked} / (3/2 · {pλ})",
                    Citations.POWER_BALANCE,
                    x -> x[0] / constant(x[1], CurrentBasis.Q_AXIS),
                    c.given("T asked", "torque"),
                    pLambda);
        }
        return c.result("current_q_axis", "{iq} = {i}", "as given", x -> x[0], PhaseValue.current(c, "current"));
    }

    private static void loss(Calculation c, Term pLambda, Term current, Term torque) {
        Term ohm = PhaseValue.resistance(c, "resistance");
        c.result(
                "motor_constant",
                "{Km} = √(3/2) · {pλ} / √{R}",
                "torque 3/2 pλ i over the root of 3/2 R i²",
                x -> new MotorConstants(x[0]).perRootWatt(x[1]),
                pLambda,
                ohm);
        Term copper = c.result(
                "copper_loss", "{P} = 3/2 · {R} · {iq}²", JOULE, x -> CopperLoss.watt(x[1], x[0]), ohm, current);
        Term speed = c.given("ω", "speed");
        Term power = c.result("mechanical_power", "{P out} = {T} · {ω}", "definition", x -> x[0] * x[1], torque, speed);
        if (!c.inputs().has("supply")) {
            return;
        }
        drawn(c, power, copper, torque, speed, current, ohm);
    }

    private static void drawn(Calculation c, Term power, Term copper, Term torque, Term speed, Term current, Term ohm) {
        Term idle = c.given("P idle", "idle_power");
        Term volt = c.given("V", "supply");
        c.result(
                "supply_current",
                "{I supply} = ({P out} + {P} + {P idle}) / {V}",
                BALANCE,
                x -> SupplyCurrent.of(x[4], x[5], x[6], x[7], x[2], x[3]).busAmp(),
                power,
                copper,
                idle,
                volt,
                torque,
                speed,
                current,
                ohm);
        if (power.value().si() > 0) {
            c.result(
                    "efficiency",
                    "{η} = {P out} / ({P out} + {P} + {P idle})",
                    BALANCE,
                    x -> new SupplyCurrent(x[0], x[1], x[2], 0).efficiency(),
                    power,
                    copper,
                    idle);
        }
    }
}
