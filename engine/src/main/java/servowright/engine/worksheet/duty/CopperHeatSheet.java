package servowright.engine.worksheet.duty;

import java.util.List;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Problem;
import servowright.engine.known.Term;
import servowright.engine.power.CopperLoss;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.thermal.CopperHeat;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Contradictions;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.UsualInputs;
import servowright.engine.worksheet.Worksheet;
import servowright.engine.worksheet.motor.PhaseValue;

/** How warm a winding gets that heats itself more as it warms, and what it may carry for ever. */
public final class CopperHeatSheet implements Worksheet {
    private static final String FEEDBACK = "T = Ta + Rth P0 [1 + α (T − T0)], settled heat (derived)";
    private static final String COPPER = "0.00393 /K at 20 °C, annealed copper of 100 % IACS";

    private static final Declaration DECLARATION = new Declaration(
            "copper-heat",
            "Winding temperature and continuous torque",
            "One thermal resistance from winding to surroundings, with copper that gains resistance as it warms. A thermal"
                    + " resistance printed for a motor on a metal plate can double without the plate (common practice, no"
                    + " source). Standing still under load one phase carries the peak: allow 0.7 of the current.",
            List.of(
                    Input.quantity("loss", Dimension.POWER, "copper loss at the reference temperature", "20 W")
                            .within(Quantity.of(0, "W"), Quantity.of(1e6, "W")),
                    UsualInputs.current("current", "motor current"),
                    UsualInputs.resistance("resistance", "winding resistance at the reference temperature"),
                    TwoNodeHeatSheet.resistance("thermal_resistance", "winding to surroundings", "3.2 K/W"),
                    UsualInputs.temperature("surroundings", "temperature of the surroundings", "25 degC")
                            .orElse("25 degC"),
                    UsualInputs.temperature("reference", "temperature at which loss and resistance hold", "20 degC")
                            .orElse("20 degC"),
                    coefficient("resistance per kelvin"),
                    UsualInputs.temperature("limit", "highest winding temperature", "110 degC"),
                    Input.quantity(
                                    "torque_constant",
                                    Dimension.TORQUE_CONSTANT,
                                    "torque per q-axis ampere, warm",
                                    "0.055 N m/A [q axis]")
                            .within(
                                    new Quantity(1e-9, Dimension.TORQUE_CONSTANT),
                                    new Quantity(1e9, Dimension.TORQUE_CONSTANT))
                            .statedAs(List.of(CurrentBasis.Q_AXIS.words())),
                    Input.quantity("other_loss", Dimension.POWER, "loss that does not come from the current", "3 W")
                            .within(Quantity.of(0, "W"), Quantity.of(1e6, "W"))
                            .orElse("0 W")),
            List.of(
                    new Result("winding", "settled winding temperature", "degC"),
                    new Result("without_feedback", "the same with constant resistance", "degC"),
                    new Result("runaway_loss", "loss at the reference temperature from which on it runs away", "W"),
                    new Result("allowed_loss", "heat that may flow at the limit", "W"),
                    new Result("continuous_current", "current for ever at the limit, q axis, phase peak", "A"),
                    new Result("continuous_torque", "torque for ever at the limit", "N m")),
            List.of(FEEDBACK, COPPER));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    /** Growth of the resistance; copper unless stated. */
    static Input coefficient(String meaning) {
        return Input.quantity("coefficient", Dimension.TEMPERATURE_COEFFICIENT, meaning, "0.00393 1/K")
                .within(
                        new Quantity(0, Dimension.TEMPERATURE_COEFFICIENT),
                        new Quantity(0.1, Dimension.TEMPERATURE_COEFFICIENT))
                .orElse("0.00393 1/K");
    }

    @Override
    public List<Problem> contradictions(Inputs inputs) {
        return limitAboveSurroundings(DECLARATION, inputs);
    }

    /** A winding that may not get warmer than the air can carry nothing. */
    static List<Problem> limitAboveSurroundings(Declaration declaration, Inputs inputs) {
        double ambient = inputs.known("surroundings").map(Known::si).orElse(0.0);
        return new Contradictions(declaration)
                .when(
                        inputs.known("limit").filter(t -> t.si() <= ambient).isPresent(),
                        "limit",
                        "the limit is not above the surroundings",
                        "Check both temperatures.")
                .problems();
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        boolean heat = inputs.has("loss") || (inputs.has("current") && inputs.has("resistance"));
        return Calculation.of(DECLARATION, inputs)
                .needs("thermal_resistance")
                .needs(heat || inputs.has("limit"), "a loss, or a limit to keep", "give loss, for example 20 W")
                .work(c -> fill(c, heat));
    }

    private static void fill(Calculation c, boolean heat) {
        Term[] path = {
            c.given("Ta", "surroundings"),
            c.given("Rth", "thermal_resistance"),
            c.given("T0", "reference"),
            c.given("α", "coefficient")
        };
        if (path[3].value().si() > 0) {
            c.result(
                    "runaway_loss",
                    "{P} = 1 / ({α} · {Rth})",
                    FEEDBACK,
                    x -> path(x).runawayWatt().orElseThrow(),
                    path);
        }
        if (heat) {
            settled(c, path, loss(c));
        }
        if (c.inputs().has("limit")) {
            continuous(c, path);
        }
    }

    private static CopperHeat path(double[] x) {
        return new CopperHeat(x[0], x[1], x[2], x[3]);
    }

    private static Term loss(Calculation c) {
        if (c.inputs().has("loss")) {
            return c.given("P0", "loss");
        }
        Term current = PhaseValue.current(c, "current");
        return c.step(
                "copper loss at the reference temperature",
                "{P0} = 3/2 · {R} · {" + current.symbol() + "}²",
                "W",
                "Joule's law in three phases",
                x -> CopperLoss.watt(x[1], x[0]),
                PhaseValue.resistance(c, "resistance"),
                current);
    }

    private static void settled(Calculation c, Term[] path, Term loss) {
        c.result(
                "without_feedback",
                "{T} = {Ta} + {Rth} · {P0}",
                FEEDBACK,
                x -> x[0] + x[1] * x[2],
                path[0],
                path[1],
                loss);
        Term[] terms = {path[0], path[1], path[2], path[3], loss};
        if (new CopperHeat(
                        path[0].value().si(),
                        path[1].value().si(),
                        path[2].value().si(),
                        path[3].value().si())
                .settledKelvin(loss.value().si())
                .isEmpty()) {
            c.remark(Phrase.of("the winding runs away: it never settles at this loss"));
            return;
        }
        c.result(
                "winding",
                "{T} = {Ta} + {Rth} · {P0} · (1 + {α} ({Ta} − {T0})) / (1 − {α} · {Rth} · {P0})",
                FEEDBACK,
                x -> path(x).settledKelvin(x[4]).orElse(Double.NaN),
                terms);
    }

    private static void continuous(Calculation c, Term[] path) {
        Term limit = c.given("T max", "limit");
        c.result(
                "allowed_loss",
                "{P} = ({T max} − {Ta}) / {Rth}",
                FEEDBACK,
                x -> (x[0] - x[1]) / x[2],
                limit,
                path[0],
                path[1]);
        if (!c.inputs().has("resistance")) {
            return;
        }
        Term ohm = PhaseValue.resistance(c, "resistance");
        Term other = c.given("P other", "other_loss");
        Term[] terms = {path[0], path[1], path[2], path[3], limit, ohm, other};
        Term current = c.result(
                "continuous_current",
                "{i} = √((({T max} − {Ta})/{Rth} − {P other}) / (3/2 · {R} · (1 + {α} ({T max} − {T0}))))",
                FEEDBACK,
                x -> path(x).continuous(x[4], x[5], 1, x[6]).phasePeakAmp(),
                terms);
        c.term("Kt", "torque_constant")
                .ifPresent(kt -> c.result(
                        "continuous_torque",
                        "{T out} = {Kt} · {i}",
                        "torque per q-axis ampere",
                        x -> x[0] * x[1],
                        kt,
                        current));
    }
}
