package servowright.engine.worksheet.motor;

import java.util.ArrayList;
import java.util.List;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Problem;
import servowright.engine.known.Term;
import servowright.engine.motor.ElectricalSpeed;
import servowright.engine.motor.PolePairs;
import servowright.engine.motor.RatioName;
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

/** Pole pairs from counting, from a spin, or from the travel for commanded electrical turns. */
public final class PolePairsSheet implements Worksheet {
    private static final String ACCEPTANCE =
            "accepted within 2 % of a whole number and 0.2 pole pairs, both directions agreeing (common practice, no source)";

    private static final Declaration DECLARATION = new Declaration(
            "pole-pairs",
            "Pole pairs",
            "From magnets counted, from electrical periods seen in known turns of the shaft or at a known speed, or from the"
                    + " travel for a commanded number of electrical turns in both directions. A reading that is not near a"
                    + " whole number is refused.",
            inputs(),
            List.of(
                    new Result("verdict", "accepted, or why not", ""),
                    new Result("pole_pairs", "pole pairs", ""),
                    new Result("quotient", "pole pairs before rounding", ""),
                    new Result("off", "distance from the whole number", "%"),
                    new Result("sense", "whether the shaft follows the electrical sense", "")),
            List.of(ACCEPTANCE));

    private static List<Input> inputs() {
        Quantity far = Quantity.of(1e6, "turns");
        Quantity back = Quantity.of(-1e6, "turns");
        Quantity tiny = Quantity.of(1e-6, "turns");
        return List.of(
                UsualInputs.magnets(),
                Input.quantity("electrical_periods", Dimension.NUMBER, "electrical periods seen", "70")
                        .within(Quantity.number(1e-3), Quantity.number(1e9)),
                Input.quantity("shaft_turns", Dimension.ANGLE, "turns of the shaft in the same time", "10 turns")
                        .within(tiny, far),
                UsualInputs.frequency("frequency", "electrical frequency of the turning motor", "350 Hz"),
                Input.quantity("speed", Dimension.SPEED, "speed of the shaft at that frequency", "3000 rpm")
                        .within(Quantity.of(1e-3, "rpm"), Quantity.of(1e6, "rpm")),
                Input.quantity("electrical_turns", Dimension.NUMBER, "electrical turns commanded each way", "7")
                        .within(Quantity.number(1e-3), Quantity.number(1e6)),
                Input.quantity("travel_forward", Dimension.ANGLE, "travel of the shaft forward, with sign", "361 deg")
                        .within(back, far),
                Input.quantity(
                                "travel_backward",
                                Dimension.ANGLE,
                                "travel of the shaft backward, with sign",
                                "-359 deg")
                        .within(back, far),
                Input.count("stated", "pole pairs as the label says", 1, 1000, "7"));
    }

    /** One way to the answer, with the line that shows it. */
    private record Way(PolePairs.Count count, String formula, List<Term> terms) {}

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public List<Problem> contradictions(Inputs inputs) {
        return new Contradictions(DECLARATION)
                .when(
                        inputs.has("travel_forward") != inputs.has("travel_backward"),
                        "travel_backward",
                        "travel needs both directions: slack and slip show in the difference",
                        "Give travel_forward and travel_backward.")
                .problems();
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs).work(PolePairsSheet::fill);
    }

    private static void fill(Calculation c) {
        List<Way> ways = ways(c);
        c.needs(
                !ways.isEmpty(),
                "the magnets, electrical periods in known turns, a frequency at a known speed, or the travel for commanded"
                        + " electrical turns",
                "count the magnets on the rotor and give magnets, for example 14");
        List<Way> accepted = ways.stream()
                .filter(w -> w.count() instanceof PolePairs.Accepted)
                .toList();
        ways.forEach(w -> refusal(c, w));
        long different = accepted.stream()
                .map(w -> ((PolePairs.Accepted) w.count()).polePairs())
                .distinct()
                .count();
        if (different == 1) {
            accept(c, accepted.get(0));
        } else if (different > 1) {
            c.word("verdict", "the ways disagree");
            disagree(c, accepted.get(0), accepted.get(accepted.size() - 1));
        } else if (!ways.isEmpty()) {
            c.word("verdict", ((PolePairs.Refused) ways.get(0).count()).reason().words());
        }
    }

    private static List<Way> ways(Calculation c) {
        Inputs in = c.inputs();
        List<Way> ways = new ArrayList<>();
        if (in.has("magnets")) {
            Term magnets = c.given("magnets", "magnets");
            ways.add(new Way(PolePairs.fromMagnets(c.count("magnets")), "{p} = {magnets} / 2", List.of(magnets)));
        }
        if (in.has("electrical_periods") && in.has("shaft_turns")) {
            Term periods = c.given("n", "electrical_periods");
            Term turns = Term.of("turns", c.given("turns", "shaft_turns").value(), "turns");
            ways.add(new Way(
                    PolePairs.fromPeriods(periods.value().si(), turns(turns)),
                    "{p} = {n} / {turns}",
                    List.of(periods, turns)));
        }
        if (in.has("frequency") && in.has("speed")) {
            Term f = c.given("f", "frequency");
            Term w = c.given("ω", "speed");
            ways.add(new Way(
                    PolePairs.fromPeriods(
                            f.value().si(), ElectricalSpeed.hertz(w.value().si(), 1)),
                    "{p} = 2π · {f} / {ω}",
                    List.of(f, w)));
        }
        if (in.has("electrical_turns") && in.has("travel_forward")) {
            Term n = c.given("n", "electrical_turns");
            Term forward = c.given("forward", "travel_forward");
            Term backward = c.given("backward", "travel_backward");
            ways.add(new Way(
                    PolePairs.fromTravel(n.value().si(), turns(forward), turns(backward)),
                    "{p} = mean of {n} turns / {forward} and −{n} turns / {backward}",
                    List.of(n, forward, backward)));
        }
        return ways;
    }

    private static double turns(Term angle) {
        return angle.value().value().in("turns");
    }

    private static void accept(Calculation c, Way way) {
        PolePairs.Accepted count = (PolePairs.Accepted) way.count();
        Term[] terms = way.terms().toArray(Term[]::new);
        Term raw = c.result("quotient", way.formula().replace("{p}", "{p raw}"), ACCEPTANCE, x -> count.raw(), terms);
        Term p = c.result("pole_pairs", "{p} = {p raw}, rounded", ACCEPTANCE, x -> count.polePairs(), raw);
        c.result("off", "{off} = {p raw} / {p} − 1", ACCEPTANCE, x -> count.relativeOff(), raw, p);
        c.word("verdict", "accepted").word("sense", count.reversed() ? "reversed" : "the same");
        if (count.reversed()) {
            c.remark(Phrase.of("the shaft turned against the field: phase order or sensor sense is reversed"));
        }
        c.inputs().known("stated").filter(s -> s.si() != count.polePairs()).ifPresent(s -> {
            double ratio = s.si() / count.polePairs();
            String name = RatioName.nearest(ratio, 1e-9, List.of())
                    .map(m -> ": ratio " + m.words() + ", " + m.name().meaning())
                    .orElse("");
            c.remark(Phrase.of("{stated} stated, {found} found" + name)
                    .with("stated", s)
                    .with("found", Known.number(count.polePairs(), Origin.DERIVED, "")));
        });
    }

    private static void refusal(Calculation c, Way way) {
        if (way.count() instanceof PolePairs.Refused refused) {
            c.remark(Phrase.of("refused: " + refused.reason().words() + " ({electrical} electrical over {turns})")
                    .with("electrical", refused.electricalTurns())
                    .with("turns", refused.forwardTurns()));
        }
    }

    private static void disagree(Calculation c, Way first, Way last) {
        double one = ((PolePairs.Accepted) first.count()).polePairs();
        double other = ((PolePairs.Accepted) last.count()).polePairs();
        c.remark(Phrase.of("one way gives {one}, another {other}")
                .with("one", one)
                .with("other", other));
    }
}
