package servowright.engine.worksheet.duty;

import java.util.List;
import java.util.stream.Stream;
import servowright.engine.known.Outcome;
import servowright.engine.known.Problem;
import servowright.engine.known.Term;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.thermal.TwoNode;
import servowright.engine.thermal.TwoNodeDuty;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.UsualInputs;
import servowright.engine.worksheet.Worksheet;

/** How much more than its continuous current a motor may carry for part of the time, by winding and housing. */
public final class TwoNodeDutySheet implements Worksheet {
    private static final String TYPES =
            "duty types S2 and S3 as in IEC 60034-1 (definitions seen); two heat stores with copper that warms, derived";

    /** 20 degC, at which the coefficient holds. */
    private static final double TWENTY_KELVIN = 293.15;

    private static final Declaration DECLARATION = new Declaration(
            "two-node-duty",
            "Short time and periodic duty by winding and housing",
            "Current over continuous current for one run from cold and for a repeated cycle, so that the winding just reaches its"
                    + " limit. Winding and housing warm apart, and the copper loss grows with the winding. In torque the factor is"
                    + " the same as long as torque follows current.",
            List.of(
                    TwoNodeHeatSheet.resistance(
                            "winding_to_housing", "thermal resistance winding to housing", "1.2 K/W"),
                    TwoNodeHeatSheet.capacity("winding_capacity", "heat capacity of the winding", "40 J/K"),
                    TwoNodeHeatSheet.resistance(
                            "housing_to_surroundings", "thermal resistance housing to surroundings", "2 K/W"),
                    TwoNodeHeatSheet.capacity("housing_capacity", "heat capacity of the housing", "400 J/K"),
                    UsualInputs.temperature("limit", "highest winding temperature", "110 degC"),
                    UsualInputs.temperature("surroundings", "temperature of the surroundings", "25 degC")
                            .orElse("25 degC"),
                    CopperHeatSheet.coefficient("resistance per kelvin at 20 degC"),
                    UsualInputs.time("on", "length of one run from cold", "60 s"),
                    UsualInputs.time("cycle", "length of a repeated cycle", "10 min"),
                    Input.quantity("share_on", Dimension.NUMBER, "share of the cycle under load", "25 %")
                            .within(Quantity.number(1e-6), Quantity.number(1))),
            List.of(
                    new Result("continuous_loss", "copper loss for good, winding at its limit", "W"),
                    new Result("short_time_factor", "current over continuous current, one run from cold", ""),
                    new Result("periodic_factor", "current over continuous current, repeated cycle", "")),
            List.of(TYPES));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public List<Problem> contradictions(Inputs inputs) {
        return CopperHeatSheet.limitAboveSurroundings(DECLARATION, inputs);
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs)
                .needs("winding_to_housing", "winding_capacity", "housing_to_surroundings", "housing_capacity", "limit")
                .work(TwoNodeDutySheet::fill);
    }

    private static void fill(Calculation c) {
        Term[] heat = {
            c.given("Rwh", "winding_to_housing"),
            c.given("Cw", "winding_capacity"),
            c.given("Rha", "housing_to_surroundings"),
            c.given("Ch", "housing_capacity"),
            c.given("tmax", "limit"),
            c.given("ta", "surroundings"),
            c.given("α", "coefficient")
        };
        c.result(
                "continuous_loss",
                "{P} = ({tmax} − {ta}) / ({Rwh} + {Rha})",
                TYPES,
                x -> (x[0] - x[1]) / (x[2] + x[3]),
                heat[4],
                heat[5],
                heat[0],
                heat[2]);
        String reached = " in {t}, for {Rwh}, {Cw}, {Rha}, {Ch}, copper of {α}, from {ta}";
        c.term("t", "on")
                .ifPresent(on -> c.result(
                        "short_time_factor",
                        "{k} = √(P0/P1), P0 the loss at ambient with which the winding reaches {tmax}" + reached,
                        TYPES,
                        x -> duty(x).shortTimeFactor(x[7]),
                        with(heat, on)));
        c.term("tc", "cycle")
                .ifPresent(cycle -> c.term("s", "share_on")
                        .ifPresent(share -> c.result(
                                "periodic_factor",
                                "{k} = √(P0/P1), P0 the loss at ambient with which the winding stands at {tmax} after {s} of every {tc}, for"
                                        + " {Rwh}, {Cw}, {Rha}, {Ch}, copper of {α}, from {ta}",
                                TYPES,
                                x -> duty(x).periodicFactor(x[7], x[8]),
                                with(heat, cycle, share))));
    }

    private static Term[] with(Term[] heat, Term... more) {
        return Stream.concat(Stream.of(heat), Stream.of(more)).toArray(Term[]::new);
    }

    private static TwoNodeDuty duty(double... x) {
        double growth = x[6] / (1 + x[6] * (x[5] - TWENTY_KELVIN));
        return new TwoNodeDuty(new TwoNode(x[0], x[1], x[2], x[3]), growth, x[4] - x[5]);
    }
}
