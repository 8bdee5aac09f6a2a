package servowright.app.cli;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import servowright.app.view.FindingView;
import servowright.app.view.MotorView;
import servowright.app.view.MotorView.ParameterView;
import servowright.app.view.NarrowView;
import servowright.app.view.NeedView;
import servowright.app.view.Sentence;
import servowright.app.view.TestView;
import servowright.app.view.View;
import servowright.engine.acceptance.Verdict;

/** What the bench knows, on one screen: a line for each parameter, what contradicts, and what to measure next. */
final class BenchOverview {
    private static final int NAME = 22;
    private static final int ORIGIN = 46;
    private static final int NEXT = 3;

    private BenchOverview() {}

    static void show(View view, Screen screen) {
        screen.wrapped(0, Sentence.of(view.name() + " · " + view.extent()));
        for (MotorView motor : view.motors()) {
            screen.heading(Wrap.safe(motor.name()));
            List<ParameterView> known = motor.parameters().stream()
                    .filter(p -> p.best().isPresent())
                    .toList();
            for (int i = 0; i < known.size(); i++) {
                boolean alike = i + 1 < known.size() && alike(known.get(i), known.get(i + 1));
                parameter(
                        known.get(i),
                        alike ? "d and q inductance" : known.get(i).words(),
                        screen);
                i += alike ? 1 : 0;
            }
            view.tests().stream()
                    .filter(t -> t.motor().equals(motor.name()) && !t.brief().isEmpty())
                    .forEach(t -> screen.labelled(2, t.kind(), NAME, Sentence.of(t.brief())));
            String unknown = motor.parameters().stream()
                    .filter(p -> p.best().isEmpty())
                    .map(ParameterView::words)
                    .collect(Collectors.joining(", "));
            if (!unknown.isEmpty()) {
                screen.labelled(2, "not known", NAME, Sentence.of(unknown));
            }
            motor.contradictions().forEach(c -> screen.labelled(2, "contradiction", NAME, Sentence.of(c.text())));
        }
        refused(view, screen);
        next(view, screen);
        screen.wrapped(0, "`servowright bench --working` shows every test and candidate.");
    }

    /** Whether both axes of the rotor are taken to be the same, from the same source. */
    private static boolean alike(ParameterView one, ParameterView next) {
        return one.words().equals("d inductance")
                && next.words().equals("q inductance")
                && one.from().equals(next.from())
                && one.best().map(f -> f.text()).equals(next.best().map(f -> f.text()));
    }

    private static void parameter(ParameterView parameter, String name, Screen screen) {
        String figure = parameter.best().orElseThrow().text();
        String head = name + " ".repeat(Math.max(1, NAME - 2 - name.length())) + figure;
        screen.labelled(2, Wrap.safe(head), ORIGIN, Sentence.of(parameter.from()));
    }

    private static void refused(View view, Screen screen) {
        List<String> refused = view.tests().stream()
                .filter(t -> t.values().stream().noneMatch(v -> v.value().isPresent()))
                .map(TestView::id)
                .toList();
        if (!refused.isEmpty()) {
            screen.heading("Tests that gave nothing");
            screen.wrapped(2, String.join(", ", refused));
        }
    }

    /** What findings lack first, then what would narrow those that hold a figure. */
    private static void next(View view, Screen screen) {
        Set<String> lines = new LinkedHashSet<>();
        for (FindingView finding : view.findings(Verdict.NOT_SHOWN)) {
            finding.needs().stream().map(NeedView::text).forEach(lines::add);
        }
        List<String> next = new ArrayList<>(lines.stream().limit(NEXT).toList());
        view.narrowing().stream()
                .filter(NarrowView::matters)
                .map(NarrowView::text)
                .limit(NEXT)
                .forEach(next::add);
        if (!next.isEmpty()) {
            screen.heading("What to measure next");
            next.forEach(n -> screen.wrapped(2, n));
        }
    }
}
