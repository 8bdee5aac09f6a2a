package servowright.app.view;

import java.util.ArrayDeque;
import java.util.Deque;

/** Writes well-formed XML: everything that comes from outside is escaped here and nowhere else. */
public final class Markup {
    private final StringBuilder out = new StringBuilder();
    private final Deque<String> open = new ArrayDeque<>();

    /** Opens an element; attributes are names and values in turn. */
    public Markup open(String name, String... attributes) {
        tag(name, attributes);
        out.append('>');
        open.push(name);
        return this;
    }

    /** An element without content. */
    public Markup empty(String name, String... attributes) {
        tag(name, attributes);
        out.append("/>");
        return this;
    }

    /** An element that holds only text. */
    public Markup leaf(String name, String text, String... attributes) {
        return open(name, attributes).text(text).close();
    }

    /** Text inside the element that is open. */
    public Markup text(String text) {
        escape(text);
        return this;
    }

    /** Closes the element opened last. */
    public Markup close() {
        out.append("</").append(open.pop()).append('>');
        return this;
    }

    /** A line break in the file, for those who read it. */
    public Markup line() {
        out.append('\n');
        return this;
    }

    /** Something written by another one of these. */
    public Markup add(Markup other) {
        out.append(other.end());
        return this;
    }

    /** Text of our own that is already markup, such as a style sheet. */
    public Markup own(String markup) {
        out.append(markup);
        return this;
    }

    /**
     * Everything written.
     *
     * @throws IllegalStateException if an element is still open
     */
    public String end() {
        if (!open.isEmpty()) {
            throw new IllegalStateException("<" + open.peek() + "> is still open");
        }
        return out.toString();
    }

    private void tag(String name, String... attributes) {
        out.append('<').append(name);
        for (int i = 0; i + 1 < attributes.length; i += 2) {
            out.append(' ').append(attributes[i]).append("=\"");
            escape(attributes[i + 1]);
            out.append('"');
        }
    }

    private void escape(String text) {
        text.codePoints().forEach(c -> {
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                default -> out.appendCodePoint(allowed(c) ? c : 0xFFFD);
            }
        });
    }

    /** Characters that XML 1.0 (W3C, fifth edition, 2.2) allows. */
    private static boolean allowed(int c) {
        return c == '\t'
                || c == '\n'
                || c == '\r'
                || (c >= 0x20 && c <= 0xD7FF)
                || (c >= 0xE000 && c <= 0xFFFD)
                || c >= 0x10000;
    }
}
