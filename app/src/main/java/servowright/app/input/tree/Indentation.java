package servowright.app.input.tree;

import servowright.engine.known.Place;
import servowright.engine.known.Problem;

/** Looks at the blanks before the first character of each line. */
final class Indentation {
    private Indentation() {}

    /** Whether a line is indented with a tab, which YAML does not allow (YAML 1.2.2, 6.1); says which. */
    static boolean hasTabs(SourceText source, Problems problems) {
        String text = source.text();
        int line = 0;
        int first = 0;
        int further = 0;
        for (int at = 0; at < text.length(); at = lineEnd(text, at) + 1) {
            line++;
            if (tabbed(text, at)) {
                further += first > 0 ? 1 : 0;
                first = first > 0 ? first : line;
            }
        }
        if (first > 0) {
            String more =
                    further == 0 ? "" : ", and in " + further + (further == 1 ? " further line" : " further lines");
            problems.add(
                    Problem.Kind.UNREADABLE,
                    new Place(source.file(), first, ""),
                    "a tab",
                    "a tab stands where blanks indent" + more,
                    "blanks",
                    "Indent with blanks.");
        }
        return first > 0;
    }

    private static boolean tabbed(String text, int start) {
        int at = start;
        boolean tab = false;
        while (at < text.length() && (text.charAt(at) == ' ' || text.charAt(at) == '\t')) {
            tab |= text.charAt(at) == '\t';
            at++;
        }
        return tab && at < text.length() && text.charAt(at) != '\n' && text.charAt(at) != '#';
    }

    private static int lineEnd(String text, int from) {
        int end = text.indexOf('\n', from);
        return end < 0 ? text.length() : end;
    }
}
