package servowright.app.cli;

import java.util.List;
import java.util.Locale;
import servowright.app.view.FigureText;
import servowright.app.view.Sentence;
import servowright.engine.assessment.Rehearsal;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Outcome.Need;
import servowright.engine.quantity.Quantity;

/** Played traffic on the terminal: what became of each message, beside what is guaranteed. */
final class TrafficScreen {
    private TrafficScreen() {}

    static ExitCode show(Answer<Rehearsal> answer, Rehearsal.Wish wish, String file, Screen screen) {
        Rehearsal played = answer.value();
        screen.heading("simulated traffic of " + text(wish.durationNs(), "s"));
        screen.wrapped(
                2,
                played.frames() + " frames, load "
                        + FigureText.of(Quantity.number(played.load()), "%").text() + broken(played));
        for (String node : played.left()) {
            screen.wrapped(2, Wrap.safe(node) + " had to leave the bus");
        }
        answer.assumptions().forEach(a -> screen.wrapped(2, Sentence.of(a)));
        if (!file.isEmpty()) {
            screen.wrapped(2, "written to " + file + ", interface " + Rehearsal.INTERFACE + ", its clock starts at 0");
        }
        screen.line();
        line(screen, "message", "identifier", "sent", "lost", "latest", "guaranteed");
        for (Rehearsal.Played m : played.messages()) {
            line(
                    screen,
                    Wrap.safe(m.name()),
                    m.id(),
                    m.sent(),
                    m.lost() == 0 ? "" : m.lost(),
                    m.sent() == 0 ? "" : text(m.worstNs(), "ms"),
                    m.boundNs() == Long.MAX_VALUE ? "no bound" : text(m.boundNs(), "ms"));
        }
        return ExitCode.FINE;
    }

    private static String broken(Rehearsal played) {
        return played.broken() == 0 ? "" : ", " + played.broken() + " broken off and sent again";
    }

    /** What a plan of the bus would need. */
    static ExitCode missing(List<Need> needs, Screen screen) {
        for (Need need : needs) {
            ProblemText.show(
                    "There is no plan of the bus yet: " + Wrap.safe(need.what()) + "; " + Wrap.safe(need.settle())
                            + ".",
                    screen);
        }
        return ExitCode.REFUSED;
    }

    private static void line(Screen screen, Object... cells) {
        screen.line("  "
                + String.format(Locale.ROOT, "%-22s %-11s %9s %7s %-11s %-11s", cells)
                        .stripTrailing());
    }

    private static String text(long ns, String unit) {
        return FigureText.of(Quantity.of(ns * 1e-9, "s"), unit).text();
    }
}
