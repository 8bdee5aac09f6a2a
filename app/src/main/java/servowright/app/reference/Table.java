package servowright.app.reference;

import java.util.Arrays;
import java.util.stream.Collectors;

/** A table in Markdown while it is written. */
final class Table {
    private final StringBuilder text = new StringBuilder();

    private Table(String... heads) {
        line(heads);
        text.append("|").append("---|".repeat(heads.length)).append('\n');
    }

    static Table of(String... heads) {
        return new Table(heads);
    }

    Table line(String... cells) {
        text.append(Arrays.stream(cells).map(Table::cell).collect(Collectors.joining(" | ", "| ", " |")))
                .append('\n');
        return this;
    }

    String text() {
        return text.toString();
    }

    private static String cell(String words) {
        return words.replace("|", "\\|").replace('\n', ' ');
    }
}
