package servowright.engine.worksheet.motor;

import java.util.ArrayList;
import java.util.List;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Problem;
import servowright.engine.known.Term;
import servowright.engine.motor.RatioName;
import servowright.engine.quantity.Dimension;
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

/** What usually stands behind the ratio of two figures that should agree. */
public final class NamedRatioSheet implements Worksheet {
    private static final String NAMES =
            "ratios between the bases of motor figures, from the power balance and the hook-up";

    private static final Declaration DECLARATION = new Declaration(
            "named-ratio",
            "Name of a ratio",
            "Two figures of one motor that should agree and do not: the usual ratio near theirs, and what stands behind it.",
            List.of(
                    figure("first", "one figure", "0.55 N m/A"),
                    figure("second", "the other figure, in the same unit", "0.318 N m/A"),
                    UsualInputs.polePairs(),
                    UsualInputs.gear(),
                    UsualInputs.share("tolerance", "how near counts as near", "3 %")
                            .orElse("3 %")),
            List.of(
                    new Result("ratio", "first over second", ""),
                    new Result("name", "the nearest usual ratio", ""),
                    new Result("named_value", "its value", ""),
                    new Result("off", "found over named, less 1", "%"),
                    new Result("meaning", "what usually stands behind it", "")),
            List.of(NAMES));

    private static Input figure(String name, String meaning, String example) {
        Input input = Input.quantity(name, Dimension.NUMBER, meaning, example);
        for (Dimension dimension : List.of(
                Dimension.TORQUE_CONSTANT,
                Dimension.SPEED_CONSTANT,
                Dimension.FLUX_LINKAGE,
                Dimension.RESISTANCE,
                Dimension.INDUCTANCE,
                Dimension.SPEED,
                Dimension.FREQUENCY,
                Dimension.TORQUE,
                Dimension.CURRENT,
                Dimension.VOLTAGE,
                Dimension.INERTIA)) {
            input = input.orAs(dimension);
        }
        return input.statedAs(
                Basis.both(Basis.both(Basis.VOLTAGE, Basis.CURRENT), Basis.both(Basis.HOOK_UP, Basis.SIDE)));
    }

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public List<Problem> contradictions(Inputs inputs) {
        boolean both = inputs.has("first") && inputs.has("second");
        return new Contradictions(DECLARATION)
                .when(
                        both
                                && !inputs.known("first")
                                        .map(Known::dimension)
                                        .equals(inputs.known("second").map(Known::dimension)),
                        "second",
                        "the two figures measure different things",
                        "Give both in the same unit.")
                .when(
                        inputs.all("first").stream().anyMatch(NamedRatioSheet::notAboveZero)
                                || inputs.all("second").stream().anyMatch(NamedRatioSheet::notAboveZero),
                        "first",
                        "a ratio needs two figures above 0",
                        "Leave the sign out.")
                .problems();
    }

    private static boolean notAboveZero(Inputs.Value value) {
        return value.known().filter(k -> k.si() > 0).isEmpty();
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs).needs("first", "second").work(NamedRatioSheet::fill);
    }

    private static void fill(Calculation c) {
        Term ratio = c.result(
                "ratio",
                "{ratio} = {first} / {second}",
                "definition",
                x -> x[0] / x[1],
                c.given("first", "first"),
                c.given("second", "second"));
        List<RatioName> also = new ArrayList<>();
        if (c.inputs().has("pole_pairs")) {
            also.add(RatioName.polePairs(c.count("pole_pairs")));
        }
        c.inputs().known("gear").ifPresent(g -> also.add(RatioName.gear(g.si())));
        double tolerance = c.inputs().known("tolerance").orElseThrow().si();
        List<RatioName.Match> names = RatioName.fitting(ratio.value().si(), Math.max(tolerance, 1e-9), also);
        if (names.isEmpty()) {
            c.word("name", "none").word("meaning", "no usual ratio is near");
            return;
        }
        RatioName.Match best = names.get(0);
        c.word("name", best.words()).word("meaning", best.name().meaning());
        double value = best.inverted() ? 1 / best.name().value() : best.name().value();
        Term named = c.result("named_value", "{named} = " + best.words(), NAMES, x -> value, ratio);
        c.result("off", "{off} = {ratio} / {named} − 1", "definition", x -> x[0] / x[1] - 1, ratio, named);
        names.stream()
                .skip(1)
                .forEach(m -> c.remark(
                        Phrase.of("also near " + m.words() + ": " + m.name().meaning())));
    }
}
