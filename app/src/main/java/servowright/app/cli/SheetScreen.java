package servowright.app.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import servowright.app.view.NeedView;
import servowright.app.view.RangeText;
import servowright.app.view.Sentence;
import servowright.app.view.SheetView;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Worksheet;

/** A worksheet on the screen: its results, or what it takes and gives. */
final class SheetScreen {
    /** Columns that a meaning needs beside its figure; with fewer it goes below. */
    private static final int MEANING = 20;

    private SheetScreen() {}

    static ExitCode show(SheetView sheet, boolean working, Screen screen) {
        if (!sheet.needs().isEmpty()) {
            for (NeedView need : sheet.needs()) {
                ProblemText.show("Missing: " + need.text() + ".", screen);
            }
            ProblemText.show("`servowright sheet " + sheet.name() + " --help` shows every input.", screen);
            return ExitCode.REFUSED;
        }
        screen.line(screen.ink(Ink.BOLD, sheet.title()));
        screen.line();
        results(sheet.results(), screen);
        list("Remarks", sheet.remarks(), screen);
        list("Assumed", sheet.assumed(), screen);
        if (working && !sheet.working().isEmpty()) {
            screen.line();
            screen.heading("Working");
            WorkingScreen.show(sheet.working(), screen);
        }
        return ExitCode.FINE;
    }

    private static void results(List<SheetView.ResultView> results, Screen screen) {
        int name = widest(results.stream().map(SheetView.ResultView::name).toList());
        int text = widest(results.stream()
                .filter(r -> r.figure().isPresent())
                .map(SheetView.ResultView::text)
                .toList());
        for (SheetView.ResultView result : results) {
            String head = pad(result.name(), name) + "  " + pad(result.text(), text);
            if (result.figure().isEmpty()) {
                screen.labelled(2, result.name(), name + 4, Sentence.of(result.text()));
            } else if (screen.width() - name - text - 6 < MEANING) {
                screen.line("  " + head.strip());
                screen.wrapped(6, result.meaning());
            } else {
                screen.labelled(2, head, name + text + 6, Sentence.of(result.meaning()));
            }
        }
    }

    private static void list(String heading, List<Sentence> sentences, Screen screen) {
        if (!sentences.isEmpty()) {
            screen.line();
            screen.heading(heading);
            sentences.forEach(s -> screen.wrapped(2, s));
        }
    }

    /** Every worksheet with its title. */
    static void list(List<Worksheet> sheets, Screen screen) {
        int width = sheets.stream()
                .mapToInt(s -> s.declaration().name().length())
                .max()
                .orElse(0);
        for (Worksheet sheet : sheets) {
            Declaration d = sheet.declaration();
            screen.labelled(2, d.name(), width + 4, Sentence.of(d.title()));
        }
    }

    /** What a worksheet takes and gives, with an example. */
    static void help(Declaration sheet, Screen screen) {
        screen.line(screen.ink(Ink.BOLD, sheet.name()) + " · " + sheet.title());
        screen.line();
        screen.wrapped(0, sheet.about());
        screen.line();
        screen.heading("Inputs");
        int column = 4
                + Math.max(
                        widest(sheet.inputs().stream().map(Input::name).toList()),
                        widest(sheet.results().stream().map(Result::name).toList()));
        for (Input input : sheet.inputs()) {
            screen.labelled(2, input.name(), column, Sentence.of(describe(input)));
        }
        screen.line();
        screen.heading("Results");
        for (Result result : sheet.results()) {
            String unit = result.unit().isEmpty() ? "" : ", in " + result.unit();
            screen.labelled(2, result.name(), column, Sentence.of(result.meaning() + unit));
        }
        screen.line();
        screen.heading("Example");
        screen.wrapped(2, example(sheet));
        screen.line();
        screen.heading("Sources");
        sheet.sources().forEach(s -> screen.wrapped(2, s));
    }

    private static String describe(Input input) {
        List<String> parts = new ArrayList<>();
        parts.add(input.meaning());
        if (input.kind() == Input.Kind.CHOICE) {
            parts.add("one of " + String.join(", ", input.choices()));
        } else {
            parts.add("for example " + input.example());
        }
        if (!input.columns().isEmpty()) {
            parts.add("parts " + input.columns().stream().map(Input::name).collect(Collectors.joining(", ")));
        }
        input.range().ifPresent(r -> parts.add(RangeText.of(r)));
        if (!input.fallback().isEmpty()) {
            parts.add("taken as " + input.fallback() + " when not given");
        }
        if (input.several()) {
            parts.add("may be given more than once");
        }
        return String.join("; ", parts);
    }

    private static String example(Declaration sheet) {
        StringBuilder line = new StringBuilder("servowright sheet " + sheet.name());
        // Of inputs that may be mixed at will one is enough.
        int shown =
                sheet.inputs().get(0).several() ? 1 : Math.min(2, sheet.inputs().size());
        for (Input input : sheet.inputs().subList(0, shown)) {
            boolean bare = input.example().matches("[\\w.-]+");
            line.append(' ').append(input.name()).append('=');
            line.append(bare ? input.example() : "\"" + input.example() + "\"");
        }
        return line.toString();
    }

    private static int widest(List<String> names) {
        return names.stream().mapToInt(String::length).max().orElse(0);
    }

    private static String pad(String text, int width) {
        return text + " ".repeat(Math.max(0, width - text.length()));
    }
}
