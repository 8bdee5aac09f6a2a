package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import servowright.engine.acceptance.Verdict;
import servowright.engine.bench.Contradiction;
import servowright.engine.bench.IdentifiedMotor;
import servowright.engine.bench.Parameter;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.prediction.StatedFigure;

/** What was declared of a motor against what the bench found, where no ratio with a name explains the difference. */
final class LabelAgainstBenchRule implements MotorRule {
    /** Labels of small motors are good to about this; more says that it is another winding. */
    private static final double ANOTHER_WINDING = 0.10;

    @Override
    public String id() {
        return "label-against-bench";
    }

    @Override
    public String source() {
        return "common practice, no source: labels of small motors are good to 10 %";
    }

    @Override
    public Optional<Finding> judge(IdentifiedMotor motor, List<StatedFigure> stated) {
        List<Contradiction> unexplained = Contradictions.unexplained(motor);
        if (!unexplained.isEmpty()) {
            return Optional.of(differs(motor, unexplained.get(0)));
        }
        List<String> both = motor.parameters().values().stream()
                .filter(LabelAgainstBenchRule::hasBoth)
                .map(p -> p.what().words())
                .toList();
        return motor.contradictions().isEmpty() && !both.isEmpty()
                ? Optional.of(agrees(motor, both))
                : Optional.empty();
    }

    private Finding differs(IdentifiedMotor motor, Contradiction c) {
        boolean another = Contradictions.size(c) > ANOTHER_WINDING;
        return Contradictions.begin(this, motor.name(), c, another ? Verdict.FAILS : Verdict.TIGHT)
                .because(Phrase.of("they differ by more than their uncertainties, and by no usual ratio"))
                .remedy(Phrase.of(
                        another
                                ? "check that it is the motor of the label: winding, magnets, temperature, then the reading"
                                : "predictions use the better known of the two; repeat the reading if it matters"))
                .done();
    }

    private Finding agrees(IdentifiedMotor motor, List<String> parameters) {
        return Draft.of(this, motor.name())
                .says(Phrase.of("label and bench agree in {parameters}")
                        .with("parameters", parameters.stream().collect(Collectors.joining(", "))))
                .done();
    }

    private static boolean hasBoth(Parameter parameter) {
        boolean measured = parameter.candidates().stream()
                .anyMatch(c -> c.value().restsOn().contains(Origin.MEASURED));
        boolean stated = parameter.candidates().stream()
                .anyMatch(c -> !c.value().restsOn().contains(Origin.MEASURED));
        return measured && stated;
    }
}
