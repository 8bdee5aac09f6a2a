package servowright.engine.encoder;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.IntStream;

/** Rows of the private check data, by column name. Absent data skips the test that asks. */
final class ReferenceData {
    private static final Path DIRECTORY =
            Path.of(System.getProperty("servowright.root"), "..", "shared", "reference", "data");

    private ReferenceData() {}

    static List<Map<String, String>> rows(String file) {
        Path path = DIRECTORY.resolve(file);
        assumeTrue(Files.exists(path), "the check data " + file + " are absent");
        try {
            List<String> lines = Files.readAllLines(path).stream()
                    .filter(l -> !l.startsWith("#"))
                    .toList();
            String[] names = lines.get(0).split(",", -1);
            return lines.stream()
                    .skip(1)
                    .filter(l -> !l.isBlank())
                    .map(l -> row(names, l))
                    .toList();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** One column as numbers. */
    static double[] column(List<Map<String, String>> rows, String name) {
        return rows.stream().mapToDouble(row -> number(row, name)).toArray();
    }

    static String text(Map<String, String> row, String name) {
        return Objects.requireNonNull(row.get(name), name);
    }

    static double number(Map<String, String> row, String name) {
        return Double.parseDouble(text(row, name));
    }

    private static Map<String, String> row(String[] names, String line) {
        // The last names have no comma of their own; a case name in the first column has.
        String[] cells = line.split(",", -1);
        int extra = cells.length - names.length;
        Map<String, String> row = new LinkedHashMap<>();
        row.put(names[0], String.join(",", List.of(cells).subList(0, 1 + extra)).replace("\"", ""));
        IntStream.range(1, names.length).forEach(i -> row.put(names[i], cells[i + extra]));
        return row;
    }
}
