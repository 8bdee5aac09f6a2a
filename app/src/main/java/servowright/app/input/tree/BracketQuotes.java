package servowright.app.input.tree;

/**
 * Puts quotation marks where people leave them out. Within braces, YAML ends a plain value at the next bracket or comma;
 * people write <code>{continuous: 6 A [q axis], gap: 1,9 mm}</code> and mean two values. Here such a value is put in
 * quotes before the file is parsed. Lines stay where they are; columns may move.
 *
 * <p>Touched are only plain values inside {@code {}} or {@code []} that have text before a bracket closed on the same
 * line, or a comma between two digits. Quoted text, comments, block text and everything outside braces stay as they are.
 */
final class BracketQuotes {
    private static final int LONGEST_BRACKET = 200;

    private final String text;
    private final StringBuilder out;
    private int at;

    private BracketQuotes(String text) {
        this.text = text;
        this.out = new StringBuilder(text.length() + 64);
    }

    /** The text with the missing quotation marks. */
    static String put(String text) {
        BracketQuotes quotes = new BracketQuotes(text);
        quotes.lines();
        return quotes.out.toString();
    }

    private void lines() {
        int textBelow = -1;
        while (at < text.length()) {
            int end = lineEnd(at);
            int first = skipBlanks(at, end);
            if (first == end || text.charAt(first) == '#') {
                copyTo(lineStart(end));
            } else if (textBelow >= 0 && first - at > textBelow) {
                copyTo(lineStart(end));
            } else {
                textBelow = line(first, end);
            }
        }
    }

    /** Copies one line, or more if a value runs on; gives the column below which text continues, or -1. */
    private int line(int first, int end) {
        int start = at;
        int item = first;
        int column = first - start;
        while (item + 1 < end && text.charAt(item) == '-' && text.charAt(item + 1) == ' ') {
            column = item - start;
            item = skipBlanks(item + 1, end);
        }
        int colon = colon(item, end);
        int value = colon < 0 ? item : skipBlanks(colon + 1, end);
        column = colon < 0 ? column : item - start;
        copyTo(value);
        if (value >= end) {
            copyTo(lineStart(end));
            return -1;
        }
        switch (text.charAt(value)) {
            case '{', '[' -> flow();
            case '"', '\'' -> copyTo(quoteEnd(value));
            case '#' -> {
                copyTo(lineStart(end));
                return -1;
            }
            default -> {
                copyTo(lineStart(end));
                return column;
            }
        }
        copyTo(lineStart(lineEnd(at)));
        return -1;
    }

    /** Copies from an opening brace to the end of its closing one. */
    private void flow() {
        int depth = 0;
        do {
            char c = text.charAt(at);
            boolean comment = c == '#' && Character.isWhitespace(text.charAt(at - 1));
            switch (comment ? '#' : c == '#' ? 'x' : c) {
                case '{', '[' -> {
                    depth++;
                    copyTo(at + 1);
                }
                case '}', ']' -> {
                    depth--;
                    copyTo(at + 1);
                }
                case '"', '\'' -> copyTo(quoteEnd(at));
                case '#' -> copyTo(lineEnd(at));
                case ' ', '\t', '\n', ',', ':' -> copyTo(at + 1);
                default -> plain();
            }
        } while (depth > 0 && at < text.length());
    }

    private void plain() {
        int end = at;
        boolean quote = false;
        while (end < text.length()) {
            char c = text.charAt(end);
            int close = c == '[' && end > at ? closing(end) : -1;
            boolean joins = close > 0 || (c == ',' && betweenDigits(end));
            if (!joins && ends(c, end)) {
                break;
            }
            quote |= joins;
            end = close > 0 ? close + 1 : end + 1;
        }
        String value = text.substring(at, end);
        String trimmed = value.stripTrailing();
        if (quote && "&*!".indexOf(value.charAt(0)) < 0) {
            out.append('\'').append(trimmed.replace("'", "''")).append('\'');
            out.append(value.substring(trimmed.length()));
        } else {
            out.append(value);
        }
        at = end;
    }

    private boolean ends(char c, int index) {
        return switch (c) {
            case ',', '{', '}', '[', ']', '\n' -> true;
            case ':' -> index + 1 >= text.length() || " \t\n,{}[]".indexOf(text.charAt(index + 1)) >= 0;
            case '#' -> index > 0 && text.charAt(index - 1) == ' ';
            default -> false;
        };
    }

    private boolean betweenDigits(int comma) {
        return comma > at
                && comma + 1 < text.length()
                && Character.isDigit(text.charAt(comma - 1))
                && Character.isDigit(text.charAt(comma + 1));
    }

    /** The bracket that closes the one at {@code open} on its line with nothing nested; -1 if there is none. */
    private int closing(int open) {
        for (int i = open + 1; i < Math.min(text.length(), open + LONGEST_BRACKET); i++) {
            char c = text.charAt(i);
            if (c == ']') {
                return i;
            }
            if ("[{}\"'\n".indexOf(c) >= 0) {
                return -1;
            }
        }
        return -1;
    }

    /** The colon behind a key that begins at {@code from}; -1 if there is none. */
    private int colon(int from, int end) {
        if (from < end && "{[#|>".indexOf(text.charAt(from)) >= 0) {
            return -1;
        }
        boolean quoted = from < end && "\"'".indexOf(text.charAt(from)) >= 0;
        for (int i = quoted ? quoteEnd(from) : from; i < end; i++) {
            char c = text.charAt(i);
            if (c == ':' && (i + 1 >= end || text.charAt(i + 1) == ' ')) {
                return i;
            }
            if (c == '#' && i > from && text.charAt(i - 1) == ' ') {
                return -1;
            }
        }
        return -1;
    }

    /** The place behind the quotation mark that closes the one at {@code open}, or the end of the text. */
    private int quoteEnd(int open) {
        char quote = text.charAt(open);
        int i = open + 1;
        while (i < text.length()) {
            char c = text.charAt(i);
            if (c == '\\' && quote == '"') {
                i++;
            } else if (c == quote) {
                boolean doubled = quote == '\'' && i + 1 < text.length() && text.charAt(i + 1) == quote;
                if (!doubled) {
                    return i + 1;
                }
                i++;
            }
            i++;
        }
        return text.length();
    }

    private int skipBlanks(int from, int end) {
        int i = from;
        while (i < end && text.charAt(i) == ' ') {
            i++;
        }
        return i;
    }

    private int lineEnd(int from) {
        int end = text.indexOf('\n', from);
        return end < 0 ? text.length() : end;
    }

    private int lineStart(int end) {
        return Math.min(text.length(), end + 1);
    }

    private void copyTo(int end) {
        if (end > at) {
            out.append(text, at, end);
            at = end;
        }
    }
}
