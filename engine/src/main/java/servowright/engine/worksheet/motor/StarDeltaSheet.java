package servowright.engine.worksheet.motor;

import java.util.List;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Term;
import servowright.engine.motor.Coil;
import servowright.engine.motor.WindingResistance;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.HookUp;
import servowright.engine.quantity.Quantity;
import servowright.engine.worksheet.Basis;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.UsualInputs;
import servowright.engine.worksheet.Worksheet;

/** The same coils connected the other way. */
public final class StarDeltaSheet implements Worksheet {
    private static final String SAME_COILS =
            "star-delta transformation of a symmetrical three-pole; the copper stays the same";
    private static final String TO_DELTA = "star to delta";

    private static final Declaration DECLARATION = new Declaration(
            "star-delta",
            "Star made delta, or delta star",
            "What changes at the terminals when the same three coils are connected anew, and what one coil has. The motor"
                    + " constant stays. A delta carries a circulating current if the back-EMF has a third harmonic.",
            List.of(
                    Input.choice("change", "what is done", TO_DELTA, "delta to star"),
                    Input.quantity(
                                    "speed_constant",
                                    Dimension.SPEED_CONSTANT,
                                    "speed constant before",
                                    "150 rpm/V [line peak]")
                            .within(
                                    new Quantity(1e-9, Dimension.SPEED_CONSTANT),
                                    new Quantity(1e9, Dimension.SPEED_CONSTANT))
                            .statedAs(Basis.VOLTAGE),
                    Input.quantity(
                                    "torque_constant",
                                    Dimension.TORQUE_CONSTANT,
                                    "torque constant before",
                                    "0.055 N m/A [q axis]")
                            .within(
                                    new Quantity(1e-9, Dimension.TORQUE_CONSTANT),
                                    new Quantity(1e9, Dimension.TORQUE_CONSTANT))
                            .statedAs(Basis.CURRENT),
                    UsualInputs.resistance("resistance", "winding resistance before"),
                    UsualInputs.inductance("inductance", "winding inductance before")),
            List.of(
                    new Result("speed_factor", "speed per volt, after over before", ""),
                    new Result("torque_factor", "torque per ampere, after over before", ""),
                    new Result(
                            "resistance_factor", "resistance and inductance between terminals, after over before", ""),
                    new Result("current_factor", "terminal current for the same copper loss, after over before", ""),
                    new Result("motor_constant_factor", "torque per root watt, after over before", ""),
                    new Result("speed_constant_after", "speed constant after, on the basis given", "rpm/V"),
                    new Result("torque_constant_after", "torque constant after, on the basis given", "N m/A"),
                    new Result("two_terminals_after", "resistance between two terminals after", "ohm"),
                    new Result("coil_resistance", "resistance of one coil", "ohm"),
                    new Result("inductance_after", "inductance between two terminals after", "uH")),
            List.of(SAME_COILS));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs).needs("change").work(StarDeltaSheet::fill);
    }

    private static void fill(Calculation c) {
        boolean toDelta = c.inputs().choice("change").filter(TO_DELTA::equals).isPresent();
        Coil.Reconnection r = toDelta ? Coil.starToDelta() : Coil.deltaToStar();
        Term root = Term.of("√3", Known.number(Math.sqrt(3), Origin.DERIVED, "geometry of three phases"));
        String up = toDelta ? "{√3}" : "1 / {√3}";
        String down = toDelta ? "1 / {√3}" : "{√3}";
        String square = toDelta ? "1 / {√3}²" : "{√3}²";
        Term speed = c.result("speed_factor", "{speed} = " + up, SAME_COILS, x -> r.speedConstant(), root);
        Term torque = c.result("torque_factor", "{torque} = " + down, SAME_COILS, x -> r.torqueConstant(), root);
        Term resistance =
                c.result("resistance_factor", "{resistance} = " + square, SAME_COILS, x -> r.resistance(), root);
        c.result("current_factor", "{current} = " + up, SAME_COILS, x -> r.current(), root);
        c.result(
                "motor_constant_factor",
                "{Km} = {torque} / √{resistance}",
                SAME_COILS,
                x -> r.motorConstant(),
                torque,
                resistance);
        after(c, "speed_constant", "speed_constant_after", "Kv", speed);
        after(c, "torque_constant", "torque_constant_after", "Kt", torque);
        if (c.inputs().has("resistance")) {
            coil(c, toDelta, resistance);
        }
        if (c.inputs().has("inductance")) {
            Term phase = PhaseValue.inductance(c, "inductance", "L", HookUp.TWO_TERMINALS);
            c.result(
                    "inductance_after",
                    "{L2} = 2 · {L} · {resistance}",
                    SAME_COILS,
                    x -> 2 * x[0] * x[1],
                    phase,
                    resistance);
        }
    }

    private static void after(Calculation c, String input, String result, String symbol, Term factor) {
        if (c.inputs().has(input)) {
            String formula = "{" + symbol + " after} = {" + symbol + "} · {" + factor.symbol() + "}";
            c.result(result, formula, SAME_COILS, x -> x[0] * x[1], c.given(symbol, input), factor);
        }
    }

    private static void coil(Calculation c, boolean toDelta, Term factor) {
        Term phase = PhaseValue.resistance(c, "resistance");
        c.result(
                "coil_resistance",
                toDelta ? "{coil} = {R}" : "{coil} = 3 · {R}",
                SAME_COILS,
                x -> toDelta ? x[0] : WindingResistance.deltaCoilOhm(x[0]),
                phase);
        c.result(
                "two_terminals_after",
                "{R2} = 2 · {R} · {resistance}",
                SAME_COILS,
                x -> WindingResistance.expectedReadingOhm(x[0] * x[1], HookUp.TWO_TERMINALS, 0),
                phase,
                factor);
    }
}
