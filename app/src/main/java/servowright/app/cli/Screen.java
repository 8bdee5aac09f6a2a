package servowright.app.cli;

import java.io.PrintStream;
import java.util.List;
import servowright.app.view.Sentence;

/**
 * Where text goes: a terminal, a pipe or a file.
 *
 * @param out     for what was asked
 * @param err     for what went wrong
 * @param width   columns to fill
 * @param colours whether words may be coloured
 * @param trace   whether a fault of the program shows where it happened
 */
public record Screen(PrintStream out, PrintStream err, int width, boolean colours, boolean trace) {
    /** Columns that words beside a label need. */
    private static final int BESIDE = 24;

    /** The same without colours. */
    Screen plain() {
        return new Screen(out, err, width, false, trace);
    }

    String ink(Ink ink, String text) {
        return colours && !text.isEmpty() ? ink.on(text) : text;
    }

    void line(String text) {
        out.println(text);
    }

    void line() {
        out.println();
    }

    /** A heading. */
    void heading(String text) {
        line(ink(Ink.BOLD, text));
    }

    /** Words from a column on, wrapped. */
    void wrapped(int indent, String words) {
        wrapped(indent, Sentence.of(words));
    }

    /** A sentence from a column on, wrapped. */
    void wrapped(int indent, Sentence sentence) {
        for (String text : Wrap.lines(sentence, width - indent)) {
            line(" ".repeat(indent) + text);
        }
    }

    /** A label and, from a column on, a sentence wrapped beside it; below it where the screen is too narrow. */
    void labelled(int indent, String label, int wanted, Sentence sentence) {
        int column = width - wanted < BESIDE ? indent + 4 : wanted;
        String head = " ".repeat(indent) + label;
        if (head.length() + 2 > column) {
            line(head);
            head = "";
        }
        List<String> lines = Wrap.lines(sentence, width - column);
        for (int i = 0; i < lines.size(); i++) {
            String start = i == 0 ? head : "";
            line(start + " ".repeat(column - start.length()) + lines.get(i));
        }
        if (lines.isEmpty() && !head.isEmpty()) {
            line(head);
        }
    }
}
