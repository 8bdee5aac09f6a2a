package servowright.engine.worksheet.drive;

import java.util.List;
import servowright.engine.known.Outcome;
import servowright.engine.known.Term;
import servowright.engine.motor.ElectricalSpeed;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.UsualInputs;
import servowright.engine.worksheet.Worksheet;

/** How finely a sampled control sees an electrical turn. */
public final class ControlStepsSheet implements Worksheet {
    private static final String RATE = "loop rate over electrical frequency";
    private static final String PRACTICE =
            "below about 20 the current becomes coarse, below 10 control is lost (common practice, no source)";

    private static final Declaration DECLARATION = new Declaration(
            "control-steps",
            "Control steps in an electrical turn",
            "Electrical frequency at a speed, control steps in one electrical turn, the speed at which they fall below a"
                    + " number, and the angle that a delay loses.",
            List.of(
                    UsualInputs.frequency("loop_rate", "rate of the current control", "20 kHz"),
                    Input.quantity("speed", Dimension.SPEED, "speed of the motor shaft", "3000 rpm")
                            .within(Quantity.of(1e-3, "rpm"), Quantity.of(1e6, "rpm")),
                    UsualInputs.polePairs(),
                    Input.count("least_steps", "steps to keep", 3, 1000, "20").orElse("20"),
                    UsualInputs.time("delay", "from angle measurement to voltage", "75 us")),
            List.of(
                    new Result("electrical_frequency", "electrical frequency", "Hz"),
                    new Result("control_steps", "control steps in one electrical turn", ""),
                    new Result("highest_speed", "speed at which the steps to keep are left", "rpm"),
                    new Result("angle_lost", "electrical angle the rotor moves during the delay", "deg"),
                    new Result("torque_share", "torque left if the angle lost is not put right", "%")),
            List.of(RATE, PRACTICE));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs)
                .needs("pole_pairs")
                .needs(
                        inputs.has("loop_rate") || inputs.has("delay"),
                        "the loop rate or a delay",
                        "give loop_rate, for example 20 kHz")
                .needs(inputs.has("speed") || inputs.has("loop_rate"), "the speed", "give speed, for example 3000 rpm")
                .work(ControlStepsSheet::fill);
    }

    private static void fill(Calculation c) {
        int p = c.count("pole_pairs");
        Term pairs = c.given("p", "pole_pairs");
        c.term("f loop", "loop_rate")
                .ifPresent(rate -> c.result(
                        "highest_speed",
                        "{ω} = 2π · {f loop} / ({steps} · {p})",
                        PRACTICE,
                        x -> ElectricalSpeed.mechRadPerS(x[0] / x[1], p),
                        rate,
                        c.given("steps", "least_steps"),
                        pairs));
        c.term("ω", "speed").ifPresent(speed -> atSpeed(c, p, speed));
    }

    private static void atSpeed(Calculation c, int p, Term speed) {
        Term pairs = c.given("p", "pole_pairs");
        Term f = c.result(
                "electrical_frequency",
                "{f} = {p} · {ω} / 2π",
                "definition of pole pairs",
                x -> ElectricalSpeed.hertz(x[1], p),
                pairs,
                speed);
        c.term("f loop", "loop_rate")
                .ifPresent(rate -> c.result(
                        "control_steps",
                        "{steps} = {f loop} / ({p} · {ω} / 2π)",
                        RATE,
                        x -> ElectricalSpeed.controlStepsPerTurn(x[0], x[1], p),
                        rate,
                        speed,
                        pairs));
        c.term("t", "delay").ifPresent(delay -> {
            Term angle = c.result(
                    "angle_lost",
                    "{angle} = 2π · {f} · {t}",
                    "angle moved during the delay",
                    x -> ElectricalSpeed.angleLostElectricalRad(x[0], x[1], p),
                    delay,
                    speed,
                    f);
            c.result(
                    "torque_share",
                    "{share} = cos {angle}",
                    "q part of a current that is turned by the angle",
                    x -> Math.cos(x[0]),
                    angle);
        });
    }
}
