package servowright.engine.worksheet.motor;

import java.util.List;
import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Problem;
import servowright.engine.known.Term;
import servowright.engine.motor.Conductor;
import servowright.engine.motor.RatioName;
import servowright.engine.motor.WindingResistance;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.HookUp;
import servowright.engine.quantity.Quantity;
import servowright.engine.worksheet.Basis;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Contradictions;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.UsualInputs;
import servowright.engine.worksheet.Worksheet;

/** Phase resistance from what was read at the terminals, at any temperature. */
public final class WindingResistanceSheet implements Worksheet {
    private static final String SERIES =
            "two phases in series, or one in series with two in parallel; the same for star and delta";
    private static final String STAR = "three terminals always have one equivalent star";
    private static final String SLOPE =
            "two currents take out a constant voltage error, which one turns into resistance";
    private static final String WARM =
            "R(t) = R(t0) (k + t)/(k + t0); 234.5 for copper of 100 % IACS, 235 in IEC 60034-1 (seen as quoted)";

    private static final Declaration DECLARATION = new Declaration(
            "winding-resistance",
            "Winding resistance",
            "From one reading, from the three pairs of terminals, from the same motor contacted both ways, or from two"
                    + " currents with their voltages. The hook-up decides, not star or delta.",
            inputs(),
            List.of(
                    new Result("phase_resistance", "resistance of one phase of the equivalent star", "ohm"),
                    new Result("two_terminals", "what two terminals show", "ohm"),
                    new Result("one_against_two", "what one terminal against the two others joined shows", "ohm"),
                    new Result("delta_coil", "one coil, if the winding is delta inside", "ohm"),
                    new Result("warm_factor", "resistance at the temperature asked over that read", ""),
                    new Result("phase_resistance_then", "phase resistance at the temperature asked", "ohm"),
                    new Result("phase_a", "phase a of the equivalent star", "ohm"),
                    new Result("phase_b", "phase b of the equivalent star", "ohm"),
                    new Result("phase_c", "phase c of the equivalent star", "ohm"),
                    new Result("pair_spread", "largest less smallest pair, over their mean", "%"),
                    new Result("hook_up_difference", "one against two over two terminals, less 1", "%"),
                    new Result("offset_voltage", "voltage at zero current", "V"),
                    new Result("one_point", "what the first point alone would have given for the loop", "ohm")),
            List.of(SERIES, STAR, SLOPE, WARM));

    private static List<Input> inputs() {
        return List.of(
                UsualInputs.resistance("reading", "resistance read; all three pairs, or both hook-ups, if at hand")
                        .repeatable(),
                UsualInputs.ohm("leads", "resistance of the test leads in the loop", "3 mohm"),
                Input.quantity("current", Dimension.CURRENT, "current of a reading", "2.004 A")
                        .within(Quantity.of(1e-6, "A"), Quantity.of(1e4, "A"))
                        .repeatable(),
                Input.quantity("voltage", Dimension.VOLTAGE, "voltage at that current", "0.4779 V [two terminals]")
                        .within(Quantity.of(1e-6, "V"), Quantity.of(1e4, "V"))
                        .statedAs(Basis.HOOK_UP)
                        .repeatable(),
                UsualInputs.temperature("winding_at", "winding temperature while it was read", "21 degC"),
                UsualInputs.temperature("wanted_at", "winding temperature asked for", "110 degC"),
                Conductors.conductor());
    }

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public List<Problem> contradictions(Inputs inputs) {
        int readings = inputs.all("reading").size();
        List<Known> amps = known(inputs, "current");
        List<Known> volts = known(inputs, "voltage");
        boolean pair = amps.size() == 2 && volts.size() == 2;
        double lead = inputs.known("leads").map(Known::si).orElse(0.0);
        return new Contradictions(DECLARATION)
                .when(
                        readings > 3 || (readings == 2 && hookUps(inputs).size() != 2),
                        "reading",
                        readings + " readings of one hook-up are neither one nor all three pairs",
                        "Give one reading, the three pairs, or one of each hook-up.")
                .when(
                        readings == 3 && hookUps(inputs).size() > 1,
                        "reading",
                        "the three pairs need one hook-up",
                        "Give all three between two terminals.")
                .when(
                        known(inputs, "reading").stream().anyMatch(r -> r.si() <= lead),
                        "leads",
                        "the leads take up the whole reading",
                        "Check the unit of leads.")
                .when(
                        readings == 3 && !star(known(inputs, "reading")),
                        "reading",
                        "one pair exceeds the two others together, which no winding can show",
                        "Read that pair again.")
                .when(
                        amps.size() != volts.size() || amps.size() == 1 || amps.size() > 2,
                        "voltage",
                        "a slope needs two currents and two voltages",
                        "Give current and voltage twice each.")
                .when(
                        pair && !rising(amps, volts),
                        "voltage",
                        "the larger current has the smaller voltage",
                        "Give current and voltage in the same order.")
                .when(readings > 0 && pair, "reading", "readings and a slope are two worksheets", "Give one of them.")
                .problems();
    }

    private static List<Known> known(Inputs inputs, String name) {
        return inputs.all(name).stream().flatMap(v -> v.known().stream()).toList();
    }

    private static List<HookUp> hookUps(Inputs inputs) {
        return inputs.all("reading").stream()
                .map(v -> v.stated().flatMap(s -> s.hookUp()).orElse(HookUp.TWO_TERMINALS))
                .distinct()
                .toList();
    }

    private static boolean star(List<Known> pairs) {
        double sum = pairs.stream().mapToDouble(Known::si).sum();
        return pairs.stream().allMatch(p -> 2 * p.si() < sum);
    }

    private static boolean rising(List<Known> amps, List<Known> volts) {
        return (amps.get(1).si() - amps.get(0).si())
                        * (volts.get(1).si() - volts.get(0).si())
                > 0;
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs)
                .needs(
                        inputs.has("reading") || inputs.has("voltage"),
                        "a resistance reading, or two currents with their voltages",
                        "measure between two terminals, four-wire, and give reading, for example 0.24 ohm [two terminals]")
                .work(WindingResistanceSheet::fill);
    }

    private static void fill(Calculation c) {
        int readings = c.inputs().all("reading").size();
        Term phase = readings == 0 ? slope(c) : readings == 3 ? threePairs(c) : reading(c);
        c.result("two_terminals", "{R} = 2 · {phase}", SERIES, x -> show(x[0], HookUp.TWO_TERMINALS), phase);
        c.result("one_against_two", "{R} = 3/2 · {phase}", SERIES, x -> show(x[0], HookUp.ONE_AGAINST_TWO), phase);
        c.result("delta_coil", "{R} = 3 · {phase}", STAR, x -> WindingResistance.deltaCoilOhm(x[0]), phase);
        warm(c, phase);
    }

    private static double show(double phaseOhm, HookUp hookUp) {
        return WindingResistance.expectedReadingOhm(phaseOhm, hookUp, 0);
    }

    private static Term reading(Calculation c) {
        Term leads = c.term("leads", "leads").orElseGet(() -> none("leads"));
        HookUp hookUp = PhaseValue.hookUp(c, "reading", HookUp.TWO_TERMINALS);
        Term phase = c.result(
                "phase_resistance",
                "{phase} = ({reading} − {leads}) / " + PhaseValue.number(hookUp),
                SERIES,
                x -> WindingResistance.phaseOhm(x[0], hookUp, x[1]),
                c.given("reading", "reading"),
                leads);
        if (c.inputs().all("reading").size() == 2) {
            compare(c, hookUp);
        }
        return phase;
    }

    /** A second reading with the other hook-up tells whether either was really made as stated. */
    private static void compare(Calculation c, HookUp first) {
        boolean twoFirst = first == HookUp.TWO_TERMINALS;
        Term difference = c.result(
                "hook_up_difference",
                "{difference} = (2/3 · {one against two}) / (1/2 · {two terminals}) − 1",
                SERIES,
                x -> WindingResistance.compare(x[0], x[1]).relativeDifference(),
                c.given("two terminals", "reading", twoFirst ? 0 : 1),
                c.given("one against two", "reading", twoFirst ? 1 : 0));
        double ratio = 1 + difference.value().si();
        RatioName.nearest(ratio, 0.03, List.of())
                .filter(m -> m.name().value() > 1)
                .ifPresent(m -> c.remark(Phrase.of("the two hook-ups differ by {ratio}, near " + m.words()
                                + ": one reading was made the other way")
                        .with("ratio", ratio)));
    }

    private static Term threePairs(Calculation c) {
        Term[] pairs = {c.given("ab", "reading", 0), c.given("bc", "reading", 1), c.given("ca", "reading", 2)};
        c.result("phase_a", "{a} = ({ab} + {ca} − {bc}) / 2", STAR, x -> three(x).aOhm(), pairs);
        c.result("phase_b", "{b} = ({ab} + {bc} − {ca}) / 2", STAR, x -> three(x).bOhm(), pairs);
        c.result("phase_c", "{c} = ({bc} + {ca} − {ab}) / 2", STAR, x -> three(x).cOhm(), pairs);
        Term phase = c.result(
                "phase_resistance", "{phase} = ({ab} + {bc} + {ca}) / 6", STAR, x -> three(x).meanOhm(), pairs);
        c.result(
                "pair_spread",
                "{spread} = (largest − smallest of {ab}, {bc}, {ca}) / mean",
                "definition",
                x -> three(x).pairSpread(),
                pairs);
        return phase;
    }

    private static WindingResistance.ThreePhases three(double[] x) {
        return WindingResistance.fromThreePairs(x[0], x[1], x[2]);
    }

    private static Term slope(Calculation c) {
        int low = known(c.inputs(), "current").get(0).si()
                        < known(c.inputs(), "current").get(1).si()
                ? 0
                : 1;
        Term[] points = {
            c.given("I1", "current", low),
            c.given("V1", "voltage", low),
            c.given("I2", "current", 1 - low),
            c.given("V2", "voltage", 1 - low)
        };
        HookUp hookUp = PhaseValue.hookUp(c, "voltage", HookUp.TWO_TERMINALS);
        Term phase = c.result(
                "phase_resistance",
                "{phase} = ({V2} − {V1}) / ({I2} − {I1}) / " + PhaseValue.number(hookUp),
                SLOPE,
                x -> WindingResistance.phaseOhm(two(x).ohm(), hookUp, 0),
                points);
        c.result(
                "offset_voltage",
                "{V0} = {V1} − {I1} · ({V2} − {V1}) / ({I2} − {I1})",
                SLOPE,
                x -> two(x).offsetVolt(),
                points);
        c.result("one_point", "{R} = {V1} / {I1}", SLOPE, x -> two(x).firstPointOhm(), points);
        return phase;
    }

    private static WindingResistance.Slope two(double[] x) {
        return WindingResistance.fromTwoCurrents(x[0], x[1], x[2], x[3]);
    }

    private static void warm(Calculation c, Term phase) {
        Optional<Term> at = c.term("t0", "winding_at").or(() -> bracket(c));
        Optional<Term> wanted = c.term("t", "wanted_at");
        if (at.isEmpty() || wanted.isEmpty()) {
            return;
        }
        Conductor conductor = Conductors.conductor(c.inputs());
        Term factor = c.result(
                "warm_factor",
                "{factor} = (" + conductor.kCelsius() + " + {t}) / (" + conductor.kCelsius() + " + {t0}), in °C",
                WARM,
                x -> conductor.resistanceFactor(x[0], x[1]),
                at.get(),
                wanted.get());
        c.result("phase_resistance_then", "{R} = {factor} · {phase}", WARM, x -> x[0] * x[1], factor, phase);
    }

    /** The temperature that stands in brackets behind the reading. */
    private static Optional<Term> bracket(Calculation c) {
        return c.inputs()
                .stated("reading")
                .flatMap(s -> s.temperature())
                .map(t -> Term.of("t0", Known.exact(t, Origin.DECLARED, "input reading"), "degC"));
    }

    private static Term none(String symbol) {
        return Term.of(
                symbol,
                Known.exact(new Quantity(0, Dimension.RESISTANCE), Origin.ASSUMED, "nothing, with four wires"),
                "ohm");
    }
}
