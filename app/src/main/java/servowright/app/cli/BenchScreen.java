package servowright.app.cli;

import java.util.List;
import servowright.app.view.MotorView;
import servowright.app.view.NeedView;
import servowright.app.view.Sentence;
import servowright.app.view.TestView;
import servowright.app.view.View;

/** What the bench knows of each motor: best values, what speaks for them, and what would narrow them. */
final class BenchScreen {
    private static final int NAME = 20;
    private static final int VALUE = 46;

    private BenchScreen() {}

    static void show(View view, Screen screen) {
        screen.wrapped(0, Sentence.of(view.name() + " · " + view.extent()));
        for (MotorView motor : view.motors()) {
            screen.line();
            screen.heading(Wrap.safe(motor.name()));
            motor.parameters().forEach(p -> parameter(p, screen));
            motor.contradictions().forEach(c -> screen.labelled(2, "contradiction", NAME, Sentence.of(c.text())));
        }
        for (TestView test : view.tests()) {
            screen.line();
            screen.heading(Wrap.safe(test.id()));
            test(test, screen);
        }
    }

    private static void parameter(MotorView.ParameterView parameter, Screen screen) {
        if (parameter.best().isEmpty()) {
            List<NeedView> needs = parameter.needs();
            String missing =
                    needs.isEmpty() ? "not known" : "not known; " + needs.get(0).settle();
            screen.labelled(2, parameter.words(), NAME, Sentence.of(missing));
            return;
        }
        value(2, parameter.words(), parameter.best().orElseThrow().text(), parameter.from(), screen);
        if (parameter.candidates().size() > 1) {
            for (MotorView.CandidateView candidate : parameter.candidates()) {
                value(4, candidate.from(), candidate.figure().text(), candidate.origin(), screen);
            }
        }
        if (!parameter.budget().isEmpty()) {
            List<String> shares = parameter.budget().stream()
                    .map(s -> s.share() + " " + s.source())
                    .toList();
            screen.labelled(4, "uncertainty from", NAME + 2, Sentence.of(String.join(", ", shares)));
        }
    }

    /** Name, figure and origin in columns; on a narrow screen the origin goes below. */
    private static void value(int indent, String name, String figure, String origin, Screen screen) {
        int column = indent == 2 ? NAME : NAME + 2;
        if (screen.width() < VALUE + 24 || figure.length() + column + 2 > VALUE) {
            screen.labelled(indent, Wrap.safe(name), column, Sentence.of(figure));
            screen.wrapped(screen.width() < column + 24 ? indent + 4 : column, origin);
            return;
        }
        String label = Wrap.safe(name);
        if (indent + label.length() + 2 > column) {
            screen.line(" ".repeat(indent) + label);
            label = "";
        }
        String head = label + " ".repeat(column - indent - label.length()) + figure;
        screen.labelled(indent, head, VALUE, Sentence.of(origin));
    }

    private static void test(TestView test, Screen screen) {
        for (TestView.ValueView value : test.values()) {
            value.value()
                    .ifPresentOrElse(
                            v -> screen.labelled(
                                    2,
                                    value.words(),
                                    NAME,
                                    Sentence.of(v.figure().text())),
                            () -> value.needs()
                                    .forEach(n -> screen.labelled(2, value.words(), NAME, Sentence.of(n.text()))));
        }
        test.details().forEach(d -> screen.wrapped(2, d));
        test.remarks().forEach(r -> screen.wrapped(2, r));
    }
}
