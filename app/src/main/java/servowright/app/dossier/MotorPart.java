package servowright.app.dossier;

import java.util.List;
import servowright.app.view.FigureText;
import servowright.app.view.Markup;
import servowright.app.view.MotorView;
import servowright.app.view.MotorView.CandidateView;
import servowright.app.view.MotorView.ParameterView;
import servowright.app.view.NeedView;

/** What is known of each motor: best values, what speaks for them, and what cannot be true together. */
final class MotorPart {
    private MotorPart() {}

    static void write(List<MotorView> motors, Markup page) {
        if (motors.isEmpty()) {
            return;
        }
        page.line().open("section", "id", "motors").leaf("h2", "Motors");
        page.leaf("p", "± is the expanded uncertainty: the interval holds the true value with 95 %.", "class", "soft");
        for (MotorView motor : motors) {
            page.line().leaf("h3", motor.name());
            table(motor, page);
            motor.contradictions().forEach(c -> page.leaf("p", "Contradiction in " + c.text()));
            motor.parameters().forEach(p -> behind(p, page));
        }
        page.close();
    }

    private static void table(MotorView motor, Markup page) {
        page.open("table", "class", "stack");
        Text.head(page, "Parameter", "Value", "From", "Uncertainty from");
        page.open("tbody");
        for (ParameterView parameter : motor.parameters()) {
            page.open("tr").leaf("th", parameter.words() + " " + parameter.symbol(), "scope", "row");
            if (parameter.best().isPresent()) {
                page.open("td").leaf("span", text(parameter), "class", "figure").close();
                page.leaf("td", parameter.from());
            } else {
                page.leaf("td", "not known");
                page.leaf(
                        "td",
                        parameter.needs().stream()
                                .findFirst()
                                .map(NeedView::settle)
                                .orElse(""));
            }
            List<String> shares = parameter.budget().stream()
                    .map(s -> s.share() + " " + s.source())
                    .toList();
            page.leaf("td", String.join(", ", shares), "class", "from").close();
        }
        page.close().close();
    }

    private static String text(ParameterView parameter) {
        return parameter.best().map(FigureText::text).orElse("");
    }

    private static void behind(ParameterView parameter, Markup page) {
        boolean single = parameter.candidates().size() <= 1;
        for (CandidateView candidate : parameter.candidates()) {
            if (candidate.working().isEmpty() && single) {
                continue;
            }
            String summary = parameter.words() + " from " + candidate.from() + ": "
                    + candidate.figure().text();
            if (candidate.working().isEmpty()) {
                page.leaf("p", summary);
            } else {
                WorkingPart.write(summary, candidate.working(), page);
            }
        }
    }
}
