package servowright.engine.worksheet.duty;

import java.util.List;
import servowright.engine.known.Outcome;
import servowright.engine.known.Term;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.thermal.TwoNode;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.Worksheet;

/** Winding and housing warming up as two heat stores. */
public final class TwoNodeHeatSheet implements Worksheet {
    private static final String PAIR =
            "two linear heat stores in series, closed form; time constants are eigenvalues (derived)";

    private static final Declaration DECLARATION = new Declaration(
            "two-node-heat",
            "Warming of winding and housing",
            "Rise of winding and housing after a time under a constant loss, from cold. The time constants are those of the"
                    + " pair, which differ from the products of each part by ten percent or so.",
            List.of(
                    resistance("winding_to_housing", "thermal resistance winding to housing", "1.2 K/W"),
                    capacity("winding_capacity", "heat capacity of the winding", "40 J/K"),
                    resistance("housing_to_surroundings", "thermal resistance housing to surroundings", "2 K/W"),
                    capacity("housing_capacity", "heat capacity of the housing", "400 J/K"),
                    Input.quantity("loss", Dimension.POWER, "loss in the winding", "20 W")
                            .within(Quantity.of(0, "W"), Quantity.of(1e6, "W")),
                    Input.quantity("after", Dimension.TIME, "time under that loss", "300 s")
                            .within(Quantity.of(0, "s"), Quantity.of(1e9, "s"))),
            List.of(
                    new Result("short_time_constant", "the shorter time constant", "s"),
                    new Result("long_time_constant", "the longer time constant", "s"),
                    new Result("winding_rise", "rise of the winding after the time", "K"),
                    new Result("housing_rise", "rise of the housing after the time", "K"),
                    new Result("settled_winding_rise", "rise of the winding in the end", "K"),
                    new Result("settled_housing_rise", "rise of the housing in the end", "K")),
            List.of(PAIR));

    /** A thermal resistance. */
    static Input resistance(String name, String meaning, String example) {
        return Input.quantity(name, Dimension.THERMAL_RESISTANCE, meaning, example)
                .within(Quantity.of(1e-4, "K/W"), Quantity.of(1e5, "K/W"));
    }

    /** A heat capacity. */
    static Input capacity(String name, String meaning, String example) {
        return Input.quantity(name, Dimension.HEAT_CAPACITY, meaning, example)
                .within(Quantity.of(1e-6, "J/K"), Quantity.of(1e9, "J/K"));
    }

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs)
                .needs("winding_to_housing", "winding_capacity", "housing_to_surroundings", "housing_capacity")
                .work(TwoNodeHeatSheet::fill);
    }

    private static void fill(Calculation c) {
        Term[] pair = {
            c.given("Rwh", "winding_to_housing"),
            c.given("Cw", "winding_capacity"),
            c.given("Rha", "housing_to_surroundings"),
            c.given("Ch", "housing_capacity")
        };
        String eigen = "eigenvalue of the pair {Rwh}, {Cw}, {Rha}, {Ch}";
        c.result(
                "short_time_constant",
                "{τ1} = 1 / larger " + eigen,
                PAIR,
                x -> pair(x).shortTimeConstantSecond(),
                pair);
        c.result(
                "long_time_constant", "{τ2} = 1 / smaller " + eigen, PAIR, x -> pair(x).longTimeConstantSecond(), pair);
        c.term("P", "loss").ifPresent(loss -> {
            Term[] heated = {pair[0], pair[1], pair[2], pair[3], loss};
            c.result(
                    "settled_winding_rise",
                    "{ΔTw} = {P} · ({Rwh} + {Rha})",
                    PAIR,
                    x -> pair(x).settled(x[4]).windingKelvin(),
                    heated);
            c.result(
                    "settled_housing_rise",
                    "{ΔTh} = {P} · {Rha}",
                    PAIR,
                    x -> pair(x).settled(x[4]).housingKelvin(),
                    heated);
            c.term("t", "after").ifPresent(time -> after(c, heated, time));
        });
    }

    private static void after(Calculation c, Term[] heated, Term time) {
        Term[] terms = {heated[0], heated[1], heated[2], heated[3], heated[4], time};
        String sum = "sum of two exponentials of {t} for {P}, {Rwh}, {Cw}, {Rha}, {Ch}";
        c.result("winding_rise", "{ΔTw} = " + sum, PAIR, x -> risen(x).windingKelvin(), terms);
        c.result("housing_rise", "{ΔTh} = " + sum, PAIR, x -> risen(x).housingKelvin(), terms);
    }

    private static TwoNode pair(double[] x) {
        return new TwoNode(x[0], x[1], x[2], x[3]);
    }

    private static TwoNode.Rise risen(double[] x) {
        return pair(x).after(TwoNode.Rise.COLD, x[4], x[5]);
    }
}
