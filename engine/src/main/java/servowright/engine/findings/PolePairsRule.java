package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import servowright.engine.acceptance.Verdict;
import servowright.engine.bench.Candidate;
import servowright.engine.bench.IdentifiedMotor;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.Parameter;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.known.Working;
import servowright.engine.motor.RatioName;
import servowright.engine.prediction.StatedFigure;

/** Every witness of the pole pairs must say the same number: label, magnets, spin. */
final class PolePairsRule implements MotorRule {
    /** Pole pairs are whole numbers; a ratio of two of them has a name when it is that ratio. */
    private static final double NAME_TOLERANCE = 0.001;

    @Override
    public String id() {
        return "pole-pairs-disagree";
    }

    @Override
    public String source() {
        return "definition: electrical periods per turn of the shaft; alternating magnets come in pairs";
    }

    @Override
    public Optional<Finding> judge(IdentifiedMotor motor, List<StatedFigure> stated) {
        Parameter parameter = motor.parameters().get(MotorParameter.POLE_PAIRS);
        if (parameter == null || parameter.candidates().size() < 2) {
            return Optional.empty();
        }
        Working working =
                parameter.candidates().stream().map(Candidate::working).reduce(Working.NONE, Working::then);
        Draft draft = Draft.of(this, motor.name()).worked(working, List.of());
        List<Candidate> right = saying(parameter.candidates(), best(parameter));
        return Optional.of(
                right.size() == parameter.candidates().size()
                        ? agree(draft, right)
                        : disagree(draft, parameter.candidates(), right));
    }

    private static long best(Parameter parameter) {
        return parameter
                .best()
                .found()
                .map(p -> Math.round(p.si()))
                .orElse(Math.round(parameter.candidates().get(0).value().si()));
    }

    private static List<Candidate> saying(List<Candidate> all, long polePairs) {
        return all.stream().filter(c -> Math.round(c.value().si()) == polePairs).toList();
    }

    private static Finding agree(Draft draft, List<Candidate> all) {
        return draft.verdict(Verdict.HOLDS)
                .says(Phrase.of("{p} pole pairs from {all}")
                        .with("p", all.get(0).value())
                        .with("all", from(all)))
                .done();
    }

    private static Finding disagree(Draft draft, List<Candidate> all, List<Candidate> right) {
        Candidate first =
                all.stream().filter(c -> !right.contains(c)).findFirst().orElseThrow();
        Known wrong = first.value();
        Known best = right.isEmpty() ? all.get(0).value() : right.get(0).value();
        Known ratio = wrong.over(best);
        return draft.verdict(Verdict.FAILS)
                .says(Phrase.of("{wrong} from {others}, {right} from {witnesses}; ratio {ratio}" + named(ratio))
                        .with("wrong", wrong)
                        .with("others", from(saying(all, Math.round(wrong.si()))))
                        .with("right", best)
                        .with("witnesses", from(right))
                        .with("ratio", ratio))
                .because(Phrase.of("a turn of the shaft holds as many electrical turns as there are pole pairs"))
                .remedy(Phrase.of(
                                "use {right}: with {wrong} the field gains on the rotor or loses it every turn; it buzzes"
                                        + " and heats")
                        .with("right", best)
                        .with("wrong", wrong))
                .done();
    }

    private static String named(Known ratio) {
        return RatioName.nearest(ratio.si(), NAME_TOLERANCE, List.of())
                .map(match ->
                        " = " + match.words() + (match.name().value() == 2 ? ": magnets taken as pole pairs" : ""))
                .orElse("");
    }

    private static String from(List<Candidate> candidates) {
        return candidates.stream().map(Candidate::from).distinct().collect(Collectors.joining(", "));
    }
}
