package servowright.engine.worksheet.drive;

import java.util.List;
import servowright.engine.known.Outcome;
import servowright.engine.known.Term;
import servowright.engine.power.DeadTime;
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
import servowright.engine.worksheet.motor.PhaseValue;

/** Voltage lost to dead time, and what it does to a resistance taken from one point. */
public final class DeadTimeBiasSheet implements Worksheet {
    private static final String BALANCE = "volt-second balance of one leg";

    private static final Declaration DECLARATION = new Declaration(
            "dead-time-bias",
            "Dead time and what it does to a resistance reading",
            "Mean voltage a leg loses because both switches are off at each edge, and how much a resistance from one current"
                    + " is too high by it. Two currents take it out: see winding-resistance. Device drops come on top.",
            List.of(
                    UsualInputs.supply(),
                    UsualInputs.time("dead_time", "dead time at each edge", "0.5 us"),
                    UsualInputs.frequency("pwm", "switching frequency", "20 kHz"),
                    Input.quantity("current", Dimension.CURRENT, "phase current of the reading", "5 A")
                            .within(Quantity.of(1e-3, "A"), Quantity.of(1e5, "A")),
                    UsualInputs.resistance("resistance", "true winding resistance")),
            List.of(
                    new Result("leg_voltage", "mean voltage lost by one leg", "V"),
                    new Result("fundamental", "fundamental of the error in a phase, peak", "V"),
                    new Result("resistance_bias", "phase resistance read too high by", "ohm"),
                    new Result("bias_share", "the same over the true phase resistance", "%")),
            List.of(BALANCE));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs)
                .needs("supply", "dead_time", "pwm")
                .work(DeadTimeBiasSheet::fill);
    }

    private static void fill(Calculation c) {
        Term[] bridge = {c.given("V", "supply"), c.given("td", "dead_time"), c.given("f", "pwm")};
        Term leg = c.result(
                "leg_voltage", "{ΔV} = {V} · {td} · {f}", BALANCE, x -> DeadTime.legVolt(x[0], x[1], x[2]), bridge);
        c.result(
                "fundamental",
                "{V1} = 4/π · {V} · {td} · {f}",
                "first order of a square wave in step with the current",
                x -> DeadTime.fundamentalVolt(x[0], x[1], x[2]),
                bridge);
        if (c.inputs().has("current")) {
            Term bias = c.result(
                    "resistance_bias",
                    "{ΔR} = {ΔV} / {i}",
                    "Ohm's law at one point",
                    x -> DeadTime.resistanceBiasOhm(x[0], x[1]),
                    leg,
                    c.given("i", "current"));
            if (c.inputs().has("resistance")) {
                c.result(
                        "bias_share",
                        "{share} = {ΔR} / {R}",
                        "definition",
                        x -> x[0] / x[1],
                        bias,
                        PhaseValue.resistance(c, "resistance"));
            }
        }
    }
}
