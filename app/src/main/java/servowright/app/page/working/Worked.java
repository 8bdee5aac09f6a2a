package servowright.app.page.working;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import servowright.app.page.Frame;
import servowright.app.view.FigureText;
import servowright.app.view.FindingView;
import servowright.app.view.MotorView;
import servowright.app.view.MotorView.CandidateView;
import servowright.app.view.MotorView.ParameterView;
import servowright.app.view.Sentence;
import servowright.app.view.View;
import servowright.app.view.WorkingText;

/**
 * How one figure came about.
 *
 * @param title  what it is
 * @param figure as it is shown everywhere; empty for a finding
 * @param from   where it comes from
 * @param rail   the figure against its limit, if it was judged
 * @param budget where its uncertainty comes from
 * @param others further values of the same thing
 */
public record Worked(
        String title,
        String figure,
        String from,
        Optional<FindingView.MarginView> rail,
        List<String> budget,
        List<WorkingText> lines,
        List<Sentence> assumptions,
        String source,
        List<Frame.Link> others) {

    static Optional<Worked> finding(View view, String key) {
        return view.findings().stream()
                .filter(f -> f.key().equals(key))
                .findFirst()
                .map(f -> new Worked(
                        f.subject() + ", " + f.id() + ": " + f.verdict().words(),
                        "",
                        "",
                        f.margin(),
                        List.of(),
                        f.working(),
                        f.assumptions(),
                        f.source(),
                        List.of()));
    }

    static Optional<Worked> parameter(View view, String motor, String words, int number) {
        return view.motors().stream()
                .filter(m -> m.name().equals(motor))
                .flatMap(m -> m.parameters().stream())
                .filter(p -> p.words().equals(words)
                        && number >= 0
                        && number < p.candidates().size())
                .findFirst()
                .map(p -> parameter(motor, p, number));
    }

    private static Worked parameter(String motor, ParameterView p, int number) {
        CandidateView value = p.candidates().get(number);
        List<Frame.Link> others = new ArrayList<>();
        for (int i = 0; i < p.candidates().size(); i++) {
            if (i != number) {
                CandidateView other = p.candidates().get(i);
                String title = other.figure().text() + " from " + other.from();
                others.add(new Frame.Link(title, Workings.parameter(motor, p.words(), i), false));
            }
        }
        List<String> budget = number > 0
                ? List.of()
                : p.budget().stream().map(s -> s.share() + " " + s.source()).toList();
        return value(p.words() + " of " + motor, value, budget, others);
    }

    static Optional<Worked> test(View view, String id, String words) {
        return view.tests().stream()
                .filter(t -> t.id().equals(id))
                .flatMap(t -> t.values().stream())
                .filter(v -> v.words().equals(words))
                .flatMap(v -> v.value().stream())
                .findFirst()
                .map(v -> value(words + " from " + id, v, List.of(), List.of()));
    }

    private static Worked value(
            String title, MotorView.CandidateView value, List<String> budget, List<Frame.Link> others) {
        FigureText figure = value.figure();
        return new Worked(
                title, figure.text(), value.from(), Optional.empty(), budget, value.working(), List.of(), "", others);
    }
}
