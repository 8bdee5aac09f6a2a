package servowright.engine.assessment;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import servowright.engine.acceptance.PlanSeen;
import servowright.engine.bench.CapturedBus;
import servowright.engine.bench.Identification;
import servowright.engine.bench.IdentifiedMachine;
import servowright.engine.findings.Cautions;
import servowright.engine.findings.Finding;
import servowright.engine.findings.Rules;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Machine;
import servowright.engine.prediction.Predictions;
import servowright.engine.recording.Recording;

/** The door: from a machine and its bench to one assessment. Same input, same assessment. */
public final class Assess {
    private Assess() {}

    /**
     * Assesses a machine from what is declared and what was recorded.
     *
     * @param recordings by the name under which the tests refer to them
     */
    public static Assessment assess(
            Machine machine, List<BenchTest> tests, Map<String, Recording> recordings, AssessSettings settings) {
        return assess(machine, tests, recordings, List.of(), settings);
    }

    /**
     * Assesses a machine whose bus was captured as well.
     *
     * @param recordings by the name under which the tests refer to them
     */
    public static Assessment assess(
            Machine machine,
            List<BenchTest> tests,
            Map<String, Recording> recordings,
            List<CapturedBus> captures,
            AssessSettings settings) {
        return assess(Identification.identify(machine, tests, recordings).with(captures), settings);
    }

    /** Assesses a machine of which the bench has already told what it knows. */
    public static Assessment assess(IdentifiedMachine identified, AssessSettings settings) {
        Predictions predictions = Predictions.of(identified);
        List<String> order = subjects(identified.machine());
        List<Finding> findings = Rules.all().parallelStream()
                .filter(rule -> settings.wants(rule.area()))
                .flatMap(rule -> rule.examine(predictions).stream())
                .sorted(Comparator.comparing(Finding::verdict).thenComparingInt(f -> place(order, f.subject())))
                .toList();
        List<PlanSeen> seen = identified.captures().stream()
                .map(c -> PlanSeen.of(predictions.bus(), c))
                .toList();
        return new Assessment(
                identified.machine(),
                identified,
                predictions.bus().found(),
                seen,
                findings,
                Cautions.of(identified.machine()),
                settings.version(),
                settings.inputs());
    }

    /** Names of all parts in the order of the machine: axes first, as people think in them. */
    private static List<String> subjects(Machine machine) {
        List<String> all = new ArrayList<>(machine.axes().keySet());
        all.addAll(machine.motors().keySet());
        all.addAll(machine.drives().keySet());
        all.addAll(machine.sensors().keySet());
        return all;
    }

    private static int place(List<String> order, String subject) {
        int at = order.indexOf(subject);
        return at < 0 ? order.size() : at;
    }
}
