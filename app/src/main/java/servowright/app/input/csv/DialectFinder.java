package servowright.app.input.csv;

import java.util.ArrayList;
import java.util.List;

/** Finds delimiter and decimal mark: those under which most lines fall into numbers and nothing else. */
final class DialectFinder {
    private static final char[] DELIMITERS = {',', ';', '\t', '|', ' '};
    private static final char[] DECIMALS = {'.', ','};
    private static final int LINES = 200;

    private DialectFinder() {}

    static Dialect find(List<String> lines, ReadingHints hints) {
        List<String> some = selection(lines);
        boolean prefix = prefixed(some);
        Dialect best = new Dialect(',', '.', prefix);
        double most = -1;
        for (char delimiter : DELIMITERS) {
            for (char decimal : DECIMALS) {
                boolean wanted = hints.delimiter().orElse(delimiter) == delimiter
                        && hints.decimal().orElse(decimal) == decimal
                        && (delimiter == DELIMITERS[0] || occurs(delimiter, some));
                Dialect dialect = new Dialect(delimiter, decimal, prefix);
                double score = wanted ? score(some, dialect) : -2;
                if (score > most) {
                    most = score;
                    best = dialect;
                }
            }
        }
        return best;
    }

    private static boolean occurs(char delimiter, List<String> lines) {
        return delimiter == ' ' || lines.stream().anyMatch(l -> l.indexOf(delimiter) >= 0);
    }

    /** All lines of a short head, else the first and the last ones: preambles differ from data. */
    private static List<String> selection(List<String> lines) {
        List<String> some = new ArrayList<>();
        int stride = Math.max(1, lines.size() / LINES);
        for (int i = 0; i < lines.size(); i += stride) {
            String line = lines.get(i);
            if (!line.isBlank() && !Preamble.comment(line) && line.length() < 20_000) {
                some.add(line);
            }
        }
        return some;
    }

    private static boolean prefixed(List<String> lines) {
        long prefixed = lines.stream()
                .filter(l -> Cells.CLOCK_PREFIX.matcher(l).lookingAt())
                .count();
        return prefixed > 0.5 * lines.size();
    }

    /** Sum over lines of the squared share of cells that are data; a small bonus per column settles ties. */
    private static double score(List<String> lines, Dialect dialect) {
        double score = 0;
        double columns = 0;
        for (String line : lines) {
            int data = 0;
            int text = 0;
            for (String cell : Cells.split(line, dialect)) {
                Cells.Kind kind = Cells.kind(cell, dialect.decimal());
                data += kind.data() ? 1 : 0;
                text += kind == Cells.Kind.TEXT ? 1 : 0;
            }
            if (data > 0) {
                double share = (double) data / (data + text);
                score += share * share;
                columns += data;
            }
        }
        return score + 1e-6 * Math.min(columns, 1e4);
    }
}
