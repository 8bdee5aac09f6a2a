package servowright.app.cli;

import java.util.Comparator;
import java.util.List;
import servowright.app.view.ExpectationView;
import servowright.app.view.NeedView;
import servowright.app.view.PlanView;
import servowright.app.view.PlanView.StepView;
import servowright.app.view.Sentence;
import servowright.app.view.View;
import servowright.engine.procedure.Step.State;

/** The bench plan: what is worth doing on one screen, or every step of one part with hook-up and cautions. */
final class PlanScreen {
    private static final int STEP = 24;
    private static final int FIRST = 3;

    private PlanScreen() {}

    static void overview(View view, String folder, Screen screen) {
        screen.wrapped(0, view.name() + " · bench plan · " + PlanView.extent(view.plan()));
        first(view.plan(), screen);
        for (PlanView part : view.plan()) {
            screen.heading(Wrap.safe(title(part)));
            List<StepView> worth = part.steps(State.DIFFERS, State.REFUSED, State.WORTH);
            worth.stream()
                    .filter(s -> !blind(s))
                    .forEach(s -> screen.labelled(2, s.number() + " " + s.kind(), STEP, Sentence.of(inShort(s))));
            list("nothing known yet", worth.stream().filter(PlanScreen::blind).toList(), screen);
            list("made, as expected", part.steps(State.AGREES), screen);
            list("can wait", part.steps(State.SPARE), screen);
        }
        screen.wrapped(0, String.join(" ", view.cautions()));
        String where = folder.isEmpty() ? "" : " " + Wrap.safe(folder);
        String example = view.plan().isEmpty() ? "NAME" : view.plan().get(0).name();
        screen.wrapped(
                0,
                "`servowright plan" + where + " --axis \"" + Wrap.safe(example)
                        + "\"` shows hook-up and cautions of each step; the dossier has them as a sheet to fill in.");
    }

    private static void first(List<PlanView> plan, Screen screen) {
        List<StepView> first = plan.stream()
                .flatMap(c -> c.steps().stream())
                .filter(s -> s.rank() > 0)
                .sorted(Comparator.comparingInt(StepView::rank))
                .limit(FIRST)
                .toList();
        if (!first.isEmpty()) {
            screen.heading("Narrows most");
            first.forEach(s -> screen.labelled(
                    2,
                    s.number() + " " + s.kind(),
                    STEP,
                    Sentence.of("of " + s.subject() + ": " + s.stakes().get(0))));
        }
    }

    /** Worth doing, with nothing to expect: whatever it reads is the first to tell. */
    private static boolean blind(StepView step) {
        return step.state() == State.WORTH
                && step.telling().stream().allMatch(e -> e.window().isEmpty());
    }

    private static String title(PlanView part) {
        if (part.parts().isEmpty()) {
            return part.name();
        }
        return part.name() + (part.motor() ? ", motor of " : ", axis of ") + String.join(", ", part.parts());
    }

    private static void list(String label, List<StepView> steps, Screen screen) {
        if (!steps.isEmpty()) {
            screen.labelled(2, label, STEP, Sentence.of(PlanView.numbered(steps)));
        }
    }

    /** What it should read or did, in one sentence. */
    private static String inShort(StepView step) {
        List<ExpectationView> telling = step.telling();
        if (telling.isEmpty()) {
            return step.state().words();
        }
        ExpectationView one = telling.get(0);
        if (!one.verdict().isEmpty()) {
            return one.what() + " " + one.reading() + " by " + one.test() + ", expected " + one.window() + ": "
                    + one.verdict();
        }
        String at = one.at().isEmpty() ? "" : ", " + one.at().text();
        String expected = one.window().isEmpty() ? "" : "expect " + one.what() + " " + one.window() + at;
        return step.state() == State.REFUSED ? "made, gave nothing; " + expected : expected;
    }

    static void steps(View view, List<PlanView> plan, Screen screen) {
        screen.wrapped(0, view.name() + " · bench plan · " + PlanView.extent(plan));
        screen.wrapped(0, String.join(" ", view.cautions()));
        for (PlanView part : plan) {
            for (StepView step : part.steps()) {
                screen.line();
                String rank = step.rank() > 0 ? ", narrows most (" + step.rank() + ")" : "";
                screen.heading(Wrap.safe(step.number() + " " + step.kind() + " of " + part.name() + " · "
                        + step.state().words() + rank));
                step.cautions().forEach(c -> screen.labelled(2, "caution", 12, c));
                Sentence hookUp = step.hookUp().stream().reduce(Sentence.EMPTY, (a, b) -> a.then(" ", b));
                screen.labelled(2, "hook-up", 12, hookUp);
                step.expectations().forEach(e -> expectation(e, screen));
                screen.labelled(2, "settles", 12, Sentence.of(String.join(", ", step.settles())));
                step.stakes().forEach(s -> screen.wrapped(12, s));
            }
        }
    }

    private static void expectation(ExpectationView one, Screen screen) {
        String from = one.from().isEmpty() ? "" : "; from " + one.from();
        String drawn = one.drawn() ? ", by draws" : "";
        if (one.window().isEmpty()) {
            String needs = one.needs().stream().map(NeedView::what).findFirst().orElse("");
            screen.labelled(2, "expect", 12, Sentence.of(one.what() + ": nothing yet, for want of the " + needs));
        } else {
            Sentence words = Sentence.of(one.what() + " " + one.window() + drawn + ", ");
            screen.labelled(2, "expect", 12, words.then("", one.at()).then("", Sentence.of(from)));
        }
        if (!one.read().isEmpty()) {
            String verdict = one.verdict().isEmpty() ? "" : ": " + one.verdict();
            screen.labelled(2, "read", 12, Sentence.of(one.reading() + " by " + one.test() + verdict));
        }
    }
}
