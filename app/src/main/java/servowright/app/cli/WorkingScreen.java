package servowright.app.cli;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import servowright.app.view.Sentence;
import servowright.app.view.WorkingText;

/**
 * A working on the screen: label beside formula, the same with the figures put in, and where each came from. What an
 * earlier line computed is not introduced again, and a source that several lines share is named once, after the last.
 */
final class WorkingScreen {
    private static final int LABEL = 24;
    private static final int NARROW = 72;

    private final Screen screen;
    private final int column;
    private final Set<String> introduced = new HashSet<>();

    private WorkingScreen(Screen screen) {
        this.screen = screen;
        this.column = screen.width() < NARROW ? 6 : LABEL + 2;
    }

    static void show(List<WorkingText> working, Screen screen) {
        WorkingScreen shown = new WorkingScreen(screen);
        for (int i = 0; i < working.size(); i++) {
            shown.line(working.get(i));
            boolean last = i + 1 == working.size();
            if (last || !working.get(i + 1).source().equals(working.get(i).source())) {
                shown.source(working.get(i));
            }
        }
    }

    private void line(WorkingText line) {
        String result = line.result().text();
        if (line.terms().isEmpty()) {
            String symbol = line.symbol().isEmpty() ? "" : line.symbol() + " = ";
            boolean formula = line.formula().contains("=");
            String given = formula ? line.formula() + " = " + result : symbol + result;
            screen.labelled(2, line.label(), column, Sentence.of(given + "   " + line.from()));
        } else {
            screen.labelled(2, line.label(), column, Sentence.of(line.formula()));
            String numbers = line.numbers().equals(result) ? "" : "= " + line.numbers() + " ";
            screen.wrapped(column + 2, Sentence.of(numbers + "= " + result));
        }
        for (WorkingText.TermText term : line.terms()) {
            String given = term.symbol() + " = " + term.figure().text();
            if (introduced.add(given)) {
                screen.wrapped(column + 4, Sentence.of(given + "   " + term.from()));
            }
        }
        introduced.add(line.symbol() + " = " + result);
    }

    /** What the line itself says to be its origin is not said again. */
    private void source(WorkingText line) {
        String source = line.source();
        if (!source.isEmpty() && !line.from().endsWith(source)) {
            screen.labelled(column, "source", column + 8, Sentence.of(source));
        }
    }
}
