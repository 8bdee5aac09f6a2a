package servowright.app.view;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import servowright.engine.procedure.BenchPlan;
import servowright.engine.procedure.Stake;
import servowright.engine.procedure.Step;
import servowright.engine.procedure.Step.Settles;

/**
 * The steps of one motor or axis in the bench plan.
 *
 * @param name   of the motor or axis
 * @param motor  whether it is a motor
 * @param parts  of a motor the axes it drives; of an axis its motor, drive and sensor
 */
public record PlanView(String name, boolean motor, List<String> parts, List<StepView> steps) {
    /**
     * One step.
     *
     * @param rank     among the steps whose outcome could change a verdict, 1 for the first; 0 for the others
     * @param settles  what it tells, each with how well that is known now: {@code flux linkage (6.56 ± 0.74 mWb)}
     * @param stakes   what hangs on it: {@code tilt/speed-reach, 98 % of its uncertainty}
     * @param tests    ids of the tests made
     */
    public record StepView(
            int number,
            String kind,
            String subject,
            Step.State state,
            int rank,
            List<Sentence> hookUp,
            List<Sentence> cautions,
            List<ExpectationView> expectations,
            List<String> settles,
            List<String> stakes,
            List<String> tests) {
        public StepView {
            hookUp = List.copyOf(hookUp);
            cautions = List.copyOf(cautions);
            expectations = List.copyOf(expectations);
            settles = List.copyOf(settles);
            stakes = List.copyOf(stakes);
            tests = List.copyOf(tests);
        }

        /** The reading that says most: one outside its window, else the first. */
        public List<ExpectationView> telling() {
            return expectations.stream()
                    .filter(ExpectationView::outside)
                    .findFirst()
                    .or(() -> expectations.stream().findFirst())
                    .stream()
                    .toList();
        }
    }

    public PlanView {
        parts = List.copyOf(parts);
        steps = List.copyOf(steps);
    }

    static List<PlanView> of(BenchPlan plan) {
        List<Integer> ranks = plan.first().stream().map(Step::number).toList();
        return plan.chapters().stream()
                .map(c -> new PlanView(
                        c.name(),
                        c.motor(),
                        c.parts(),
                        c.steps().stream()
                                .map(s -> step(s, ranks.indexOf(s.number()) + 1))
                                .toList()))
                .toList();
    }

    private static StepView step(Step step, int rank) {
        return new StepView(
                step.number(),
                step.kind().words(),
                step.subject(),
                step.state(),
                rank,
                step.hookUp().stream().map(Sentence::of).toList(),
                step.cautions().stream().map(Sentence::of).toList(),
                step.expectations().stream().map(ExpectationView::of).toList(),
                step.settles().stream().map(PlanView::settles).toList(),
                step.stakes().stream().map(PlanView::stake).distinct().toList(),
                step.tests());
    }

    private static String settles(Settles settles) {
        String now = settles.now()
                .map(k -> FigureText.of(k, settles.what().unit()).text() + ", "
                        + k.origin().words())
                .orElse("not known");
        return settles.what().words() + " (" + now + ")";
    }

    private static String stake(Stake stake) {
        return stake.share() == 1 && stake.weight() == 1
                ? stake.finding() + " waits for it"
                : stake.finding() + ", " + Math.round(100 * stake.share()) + " % of its uncertainty";
    }

    /** The chapters that concern an axis or motor: its own, and for an axis that of its motor. */
    public static List<PlanView> concerning(List<PlanView> plan, String name) {
        return plan.stream()
                .filter(c -> c.name().equalsIgnoreCase(name)
                        || (c.motor() && c.parts().stream().anyMatch(name::equalsIgnoreCase)))
                .toList();
    }

    /** Names that a plan can be asked for. */
    public static List<String> names(List<PlanView> plan) {
        List<String> names = new ArrayList<>();
        plan.forEach(c -> names.add(c.name()));
        return names.stream().distinct().toList();
    }

    /** {@code 9 parts, 58 steps: 17 made, 21 worth doing}. */
    public static String extent(List<PlanView> plan) {
        List<StepView> all = plan.stream().flatMap(c -> c.steps().stream()).toList();
        long made = all.stream().filter(s -> !s.tests().isEmpty()).count();
        long outside = all.stream().filter(s -> s.state() == Step.State.DIFFERS).count();
        long worth = all.stream().filter(s -> s.state() == Step.State.WORTH).count();
        String differ = outside == 0 ? "" : " (" + outside + " outside what was expected)";
        return all.size() + " steps: " + made + " made" + differ + ", " + worth + " worth doing";
    }

    /** Steps in one of some states. */
    public List<StepView> steps(Step.State... states) {
        List<Step.State> wanted = List.of(states);
        return steps.stream().filter(s -> wanted.contains(s.state())).toList();
    }

    /** {@code 1 resistance, 3 spin}. */
    public static String numbered(List<StepView> steps) {
        return steps.stream().map(s -> s.number() + " " + s.kind()).collect(Collectors.joining(", "));
    }
}
