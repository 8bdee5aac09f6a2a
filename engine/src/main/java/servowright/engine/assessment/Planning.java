package servowright.engine.assessment;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import servowright.engine.acceptance.Verdict;
import servowright.engine.bench.MotorParameter;
import servowright.engine.findings.Finding;
import servowright.engine.findings.Narrowing;
import servowright.engine.machine.Axis;
import servowright.engine.prediction.Predictions;
import servowright.engine.procedure.BenchPlan;
import servowright.engine.procedure.Stake;

/** The bench plan of an assessed machine. It is made when asked for: an assessment does not wait for it. */
public final class Planning {
    private Planning() {}

    public static BenchPlan of(Assessment assessment) {
        return BenchPlan.of(assessment.identified(), Predictions.of(assessment.identified()), stakes(assessment));
    }

    /** What hangs on each parameter: findings that lack it, and judged figures in which it weighs. */
    private static List<Stake> stakes(Assessment assessment) {
        List<Stake> all = new ArrayList<>();
        for (Finding finding : assessment.findings()) {
            Optional<String> motor = Optional.ofNullable(
                            assessment.machine().axes().get(finding.subject()))
                    .flatMap(Axis::motor);
            if (finding.verdict() == Verdict.NOT_SHOWN && motor.isPresent()) {
                for (MotorParameter what : MotorParameter.values()) {
                    String wanted = what.words() + " of " + motor.get();
                    if (finding.needs().stream().anyMatch(n -> n.what().equals(wanted))) {
                        all.add(new Stake(motor.get(), what, finding.key(), 1, 1, true));
                    }
                }
            }
        }
        Narrowing.of(assessment.findings(), assessment.identified()).stream()
                .map(n -> new Stake(n.motor(), n.what(), n.finding().key(), n.share(), n.weight(), n.matters()))
                .forEach(all::add);
        return List.copyOf(all);
    }
}
