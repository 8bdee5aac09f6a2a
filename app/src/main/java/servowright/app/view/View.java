package servowright.app.view;

import java.util.List;
import servowright.engine.acceptance.Verdict;
import servowright.engine.assessment.Assessment;

/**
 * An assessment as it is shown: every string and digit that command line, JSON and dossier have in common.
 *
 * @param name     of the machine
 * @param about    a sentence or two; may be empty
 * @param extent   what the machine consists of: {@code 5 axes, 6 motors, 14 bench tests}
 * @param counts   findings per verdict
 * @param findings worst first
 * @param axes     each with its parts
 * @param parts    the machine as declared
 * @param mounts   magnets before their sensors, to be drawn
 * @param drills   where plates of sensor boards are to be drilled
 * @param corrections what is to be taken off the readings of angle sensors
 * @param motors   what is known of each motor
 * @param tests    what each bench test gave
 * @param narrowing parameters that, measured better, would narrow a prediction; the heaviest first
 * @param plan     what to measure, part by part in a safe order
 * @param busPlans the traffic that the bus is to carry; one, or none where something is missing for it
 * @param captures of the bus, held against its plan
 * @param assumed  what was taken without being known
 * @param notes    what should be known about the reading of the files
 * @param cautions hazards that go with this work
 * @param files    what went in
 * @param version  of this program
 */
public record View(
        String name,
        String about,
        String extent,
        Counts counts,
        List<FindingView> findings,
        List<AxisView> axes,
        List<PartView> parts,
        List<MountView> mounts,
        List<DrillView> drills,
        List<CorrectionView> corrections,
        List<MotorView> motors,
        List<TestView> tests,
        List<NarrowView> narrowing,
        List<PlanView> plan,
        List<BusPlanView> busPlans,
        List<CaptureView> captures,
        List<String> assumed,
        List<String> notes,
        List<String> cautions,
        List<FileView> files,
        String version) {

    /** Findings per verdict. */
    public record Counts(long fails, long tight, long holds, long notShown) {
        static Counts of(List<FindingView> findings) {
            return new Counts(
                    count(findings, Verdict.FAILS),
                    count(findings, Verdict.TIGHT),
                    count(findings, Verdict.HOLDS),
                    count(findings, Verdict.NOT_SHOWN));
        }

        private static long count(List<FindingView> findings, Verdict verdict) {
            return findings.stream().filter(f -> f.verdict() == verdict).count();
        }

        /** {@code 3 fail · 4 tight · 31 hold · 6 not shown}. */
        public String text() {
            return fails + (fails == 1 ? " fails · " : " fail · ") + tight + " tight · " + holds
                    + (holds == 1 ? " holds · " : " hold · ") + notShown + " not shown";
        }
    }

    /** A file that went in, with its SHA-256. */
    public record FileView(String name, String sha256) {}

    public View {
        findings = List.copyOf(findings);
        axes = LateList.copyOf(axes);
        parts = LateList.copyOf(parts);
        mounts = LateList.copyOf(mounts);
        drills = LateList.copyOf(drills);
        corrections = LateList.copyOf(corrections);
        motors = LateList.copyOf(motors);
        tests = LateList.copyOf(tests);
        narrowing = LateList.copyOf(narrowing);
        plan = LateList.copyOf(plan);
        busPlans = LateList.copyOf(busPlans);
        captures = LateList.copyOf(captures);
        assumed = List.copyOf(assumed);
        notes = List.copyOf(notes);
        cautions = List.copyOf(cautions);
        files = List.copyOf(files);
    }

    /** The assessment as it is shown, with what should be known about the reading of its files. */
    public static View present(Assessment assessment, List<String> notes) {
        return Presenter.present(assessment, notes);
    }

    /** Findings of one verdict, in their order. */
    public List<FindingView> findings(Verdict verdict) {
        return findings.stream().filter(f -> f.verdict() == verdict).toList();
    }

    /** The same view with some of its findings only; the counts follow. */
    public View only(List<FindingView> some) {
        return new View(
                name,
                about,
                extent,
                Counts.of(some),
                some,
                axes,
                parts,
                mounts,
                drills,
                corrections,
                motors,
                tests,
                narrowing,
                plan,
                busPlans,
                captures,
                assumed,
                notes,
                cautions,
                files,
                version);
    }
}
