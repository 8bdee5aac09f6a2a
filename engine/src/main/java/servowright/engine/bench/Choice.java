package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Need;
import servowright.engine.known.Source;
import servowright.engine.known.Working;
import servowright.engine.quantity.Quantity;

/**
 * The best value of one parameter out of its candidates. What was read on the bench goes before what was counted or
 * stated, that before a label, and what was assumed comes last. Results of several tests are combined while they agree.
 */
final class Choice {
    private Choice() {}

    /**
     * A parameter, and the pairs of test results that disagree.
     *
     * @param apart pairs of measured candidates that chance does not explain
     */
    record Chosen(Parameter parameter, List<Pair> apart) {}

    /** Two candidates. */
    record Pair(Candidate first, Candidate second) {}

    /**
     * Chooses.
     *
     * @param measured from bench tests
     * @param declared counted, stated, from the label
     * @param needs    what would give a value when there is no candidate
     */
    static Chosen of(
            String motor, MotorParameter what, List<Candidate> measured, List<Candidate> declared, List<Need> needs) {
        List<Candidate> others = new ArrayList<>(declared);
        others.sort(Comparator.comparing(c -> c.value().origin()));
        if (measured.isEmpty()) {
            return new Chosen(new Parameter(what, first(motor, what, others, needs), others), List.of());
        }
        List<Candidate> all = new ArrayList<>();
        List<Pair> apart = List.of();
        if (measured.size() > 1) {
            Combination together =
                    Combination.of(measured.stream().map(Candidate::value).toList());
            if (together.consistent()) {
                all.add(combined(what, measured, together));
            } else {
                apart = apart(measured);
                all.add(surest(motor, what, measured));
            }
        }
        all.addAll(measured);
        all.addAll(others);
        Candidate best = all.get(0);
        return new Chosen(
                new Parameter(what, new Outcome.Answer<>(best.value(), best.working(), best.assumptions()), all),
                apart);
    }

    private static Outcome<Known> first(String motor, MotorParameter what, List<Candidate> others, List<Need> needs) {
        if (!others.isEmpty()) {
            Candidate best = others.get(0);
            return new Outcome.Answer<>(best.value(), best.working(), best.assumptions());
        }
        if (needs.isEmpty()) {
            return Outcome.missing(what.words() + " of " + motor, "state it in machine.yaml or measure it");
        }
        return new Outcome.Missing<>(needs);
    }

    private static Candidate combined(MotorParameter what, List<Candidate> measured, Combination together) {
        Working.Sheet sheet = Working.begin();
        measured.forEach(c -> sheet.include(c.working()));
        together.note(sheet, measured.stream().map(Candidate::value).toList(), what.unit());
        return new Candidate(
                together.value().as(Origin.MEASURED, measured.size() + " tests"),
                measured.size() + " tests together",
                sheet.end(),
                measured.stream()
                        .flatMap(c -> c.assumptions().stream())
                        .distinct()
                        .toList());
    }

    /** The result with the least uncertainty, widened by half of the range that the tests span. */
    private static Candidate surest(String motor, MotorParameter what, List<Candidate> measured) {
        Candidate surest = measured.stream()
                .min(Comparator.comparingDouble(c -> c.value().standardUncertainty()))
                .orElseThrow();
        double least = measured.stream().mapToDouble(c -> c.value().si()).min().orElseThrow();
        double most = measured.stream().mapToDouble(c -> c.value().si()).max().orElseThrow();
        boolean counted = what == MotorParameter.POLE_PAIRS;
        Known value = counted
                ? surest.value()
                : surest.value()
                        .withPart(
                                Source.of("disagreement of the tests for the " + what.words() + " of " + motor),
                                (most - least) / Math.sqrt(3));
        Working.Sheet sheet = Working.begin().include(surest.working());
        sheet.note(
                "the tests disagree; taken from " + surest.from() + ", widened by their range",
                "{x}",
                what.unit(),
                "range of the tests as limits, rectangular",
                value);
        return new Candidate(value, surest.from(), sheet.end(), surest.assumptions());
    }

    private static List<Pair> apart(List<Candidate> measured) {
        List<Pair> found = new ArrayList<>();
        for (int i = 0; i < measured.size(); i++) {
            for (int j = i + 1; j < measured.size(); j++) {
                Candidate a = measured.get(i);
                Candidate b = measured.get(j);
                if (!Combination.of(List.of(a.value(), b.value())).consistent()) {
                    found.add(new Pair(a, b));
                }
            }
        }
        return found;
    }

    /** The best candidate of a parameter, if there is one. */
    static Optional<Candidate> best(Chosen chosen) {
        return chosen.parameter().candidates().stream().findFirst();
    }

    /** Second over first, with what both share taken out. */
    static Known ratio(Known first, Known second) {
        Known ratio = second.over(first);
        return Double.isFinite(ratio.si()) ? ratio : Known.exact(Quantity.number(0), Origin.DERIVED, "");
    }
}
