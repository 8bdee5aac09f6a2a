package servowright.engine.worksheet.duty;

import java.util.List;
import servowright.engine.known.Outcome;
import servowright.engine.known.Term;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.thermal.DutyTorque;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.UsualInputs;
import servowright.engine.worksheet.Worksheet;

/** How much more than its continuous torque a motor may give for part of the time. */
public final class DutyTorqueSheet implements Worksheet {
    private static final String TYPES =
            "duty types S2 and S3 as in IEC 60034-1 (definitions seen); one time constant, derived";

    private static final Declaration DECLARATION = new Declaration(
            "duty-torque",
            "Torque for short time and periodic duty",
            "Factor on the continuous torque for one run from cold and for a repeated cycle, with one time constant. Bursts of"
                    + " seconds heat the winding alone: take the winding's own time constant, or two-node-heat.",
            List.of(
                    UsualInputs.time("time_constant", "thermal time constant", "800 s"),
                    UsualInputs.time("on", "length of one run from cold", "60 s"),
                    UsualInputs.time("cycle", "length of a repeated cycle", "10 min"),
                    Input.quantity("share_on", Dimension.NUMBER, "share of the cycle under load", "25 %")
                            .within(Quantity.number(1e-6), Quantity.number(1))),
            List.of(
                    new Result("short_time_factor", "torque over continuous torque, one run from cold", ""),
                    new Result("periodic_factor", "torque over continuous torque, repeated cycle", ""),
                    new Result("rms_factor", "the same for a cycle that is short against the time constant", "")),
            List.of(TYPES));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        boolean periodic = inputs.has("cycle") && inputs.has("share_on");
        return Calculation.of(DECLARATION, inputs)
                .needs("time_constant")
                .needs(
                        inputs.has("on") || periodic,
                        "the length of a run, or a cycle with its share",
                        "give on, for example 60 s")
                .work(c -> fill(c, periodic));
    }

    private static void fill(Calculation c, boolean periodic) {
        Term tau = c.given("τ", "time_constant");
        c.term("t", "on")
                .ifPresent(on -> c.result(
                        "short_time_factor",
                        "{k} = 1 / √(1 − exp(−{t}/{τ}))",
                        TYPES,
                        x -> DutyTorque.shortTimeFactor(x[0], x[1]),
                        on,
                        tau));
        if (periodic) {
            Term cycle = c.given("tc", "cycle");
            Term share = c.given("c", "share_on");
            c.result(
                    "periodic_factor",
                    "{k} = √((1 − exp(−{tc}/{τ})) / (1 − exp(−{c}·{tc}/{τ})))",
                    TYPES,
                    x -> DutyTorque.periodicFactor(x[0], x[1], x[2]),
                    cycle,
                    share,
                    tau);
            c.result("rms_factor", "{k} = 1 / √{c}", "equal RMS torque", x -> 1 / Math.sqrt(x[0]), share);
        }
    }
}
