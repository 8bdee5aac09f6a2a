package servowright.app.view;

import java.util.Collection;
import java.util.Map;

/** Writes JSON (RFC 8259) from maps, collections, strings, numbers and truth values, in the order they are in. */
public final class JsonText {
    private final StringBuilder out = new StringBuilder();

    private JsonText() {}

    /** The value, indented by two blanks a level, with a line end at its end. */
    public static String of(Object value) {
        JsonText text = new JsonText();
        text.value(value, 0);
        return text.out.append('\n').toString();
    }

    private void value(Object value, int level) {
        if (value instanceof Map<?, ?> map) {
            map(map, level);
        } else if (value instanceof Collection<?> list) {
            list(list, level);
        } else if (value instanceof Double number) {
            number(number);
        } else if (value instanceof Number || value instanceof Boolean) {
            out.append(value);
        } else {
            string(value.toString());
        }
    }

    private void map(Map<?, ?> map, int level) {
        out.append('{');
        boolean first = true;
        for (Map.Entry<?, ?> entry : map.entrySet()) {
            next(first, level + 1);
            first = false;
            string(String.valueOf(entry.getKey()));
            out.append(": ");
            value(entry.getValue(), level + 1);
        }
        end('}', first, level);
    }

    private void list(Collection<?> list, int level) {
        out.append('[');
        boolean first = true;
        for (Object entry : list) {
            next(first, level + 1);
            first = false;
            value(entry, level + 1);
        }
        end(']', first, level);
    }

    private void next(boolean first, int level) {
        out.append(first ? "\n" : ",\n").append("  ".repeat(level));
    }

    private void end(char close, boolean none, int level) {
        if (!none) {
            out.append('\n').append("  ".repeat(level));
        }
        out.append(close);
    }

    /** JSON has no word for what is not finite: it becomes null. A whole number is written without a point. */
    private void number(double number) {
        if (!Double.isFinite(number)) {
            out.append("null");
        } else if (number == Math.rint(number) && Math.abs(number) < 1e15) {
            out.append((long) number);
        } else {
            out.append(number);
        }
    }

    private void string(String text) {
        out.append('"');
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '"' -> out.append("\\\"");
                case '\\' -> out.append("\\\\");
                case '\n' -> out.append("\\n");
                case '\r' -> out.append("\\r");
                case '\t' -> out.append("\\t");
                default -> {
                    if (c < 0x20 || c == 0x2028 || c == 0x2029 || (Character.isSurrogate(c) && !paired(text, i))) {
                        out.append("\\u")
                                .append(String.valueOf(Integer.toHexString(0x10000 | c))
                                        .substring(1));
                    } else {
                        out.append(c);
                    }
                }
            }
        }
        out.append('"');
    }

    private static boolean paired(String text, int i) {
        return Character.isHighSurrogate(text.charAt(i))
                ? i + 1 < text.length() && Character.isLowSurrogate(text.charAt(i + 1))
                : i > 0 && Character.isHighSurrogate(text.charAt(i - 1));
    }
}
