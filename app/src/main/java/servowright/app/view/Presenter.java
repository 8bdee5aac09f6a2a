package servowright.app.view;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import servowright.engine.assessment.Assessment;
import servowright.engine.assessment.Planning;
import servowright.engine.bench.AngleCorrection;
import servowright.engine.findings.Finding;
import servowright.engine.findings.Narrowing;
import servowright.engine.machine.Machine;

/** Turns an assessment into its view. */
final class Presenter {
    private Presenter() {}

    static View present(Assessment assessment, List<String> notes) {
        Machine machine = assessment.machine();
        List<FindingView> findings =
                assessment.findings().parallelStream().map(FindingView::of).toList();
        return new View(
                machine.name(),
                machine.about(),
                extent(assessment),
                View.Counts.of(findings),
                findings,
                LateList.of(() -> axes(machine)),
                LateList.of(() -> MachineParts.of(machine)),
                LateList.of(() -> mounts(machine)),
                LateList.of(() -> drills(machine)),
                LateList.of(() -> corrections(assessment)),
                LateList.of(() -> assessment.identified().motors().values().parallelStream()
                        .map(MotorView::of)
                        .toList()),
                LateList.of(() -> assessment.identified().tests().parallelStream()
                        .map(TestView::of)
                        .toList()),
                LateList.of(() -> narrowing(assessment)),
                LateList.of(() -> PlanView.of(Planning.of(assessment))),
                LateList.of(() -> busPlans(assessment)),
                LateList.of(() -> captures(assessment)),
                assumed(assessment.findings()),
                notes,
                assessment.cautions().stream()
                        .map(c -> Sentence.of(c.sentence()).text())
                        .toList(),
                assessment.inputs().entrySet().stream()
                        .map(e -> new View.FileView(e.getKey(), e.getValue()))
                        .toList(),
                assessment.version());
    }

    private static List<CorrectionView> corrections(Assessment assessment) {
        return assessment.identified().axes().values().stream()
                .map(AngleCorrection::of)
                .flatMap(Optional::stream)
                .map(CorrectionView::new)
                .toList();
    }

    private static List<BusPlanView> busPlans(Assessment assessment) {
        return assessment.busPlan().map(p -> BusPlanView.of(assessment.machine(), p)).stream()
                .toList();
    }

    private static List<CaptureView> captures(Assessment assessment) {
        return assessment.captures().stream().map(CaptureView::of).toList();
    }

    private static List<NarrowView> narrowing(Assessment assessment) {
        return Narrowing.of(assessment.findings(), assessment.identified()).stream()
                .map(NarrowView::of)
                .toList();
    }

    private static List<MountView> mounts(Machine machine) {
        return machine.axes().values().stream()
                .map(axis -> MountView.of(machine, axis))
                .flatMap(Optional::stream)
                .toList();
    }

    private static List<DrillView> drills(Machine machine) {
        return machine.axes().values().stream()
                .map(DrillView::of)
                .flatMap(Optional::stream)
                .toList();
    }

    private static List<AxisView> axes(Machine machine) {
        return machine.axes().values().stream().map(AxisView::of).toList();
    }

    private static String extent(Assessment assessment) {
        return counted(assessment.machine().axes().size(), "axis", "axes") + ", "
                + counted(assessment.machine().motors().size(), "motor", "motors") + ", "
                + counted(assessment.identified().tests().size(), "bench test", "bench tests");
    }

    private static String counted(int n, String one, String many) {
        return n + " " + (n == 1 ? one : many);
    }

    private static List<String> assumed(List<Finding> findings) {
        Set<String> all = new LinkedHashSet<>();
        findings.forEach(
                f -> f.assumptions().forEach(a -> all.add(Sentence.of(a).text())));
        return List.copyOf(all);
    }
}
