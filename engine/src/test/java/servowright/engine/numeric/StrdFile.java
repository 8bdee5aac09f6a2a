package servowright.engine.numeric;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** One NIST StRD nonlinear set, read from the publisher's own text form. */
record StrdFile(
        List<double[]> starts, double[] certified, double[] deviations, double rss, double sd, double[][] data) {
    private static final Pattern LINES = Pattern.compile("(Certified Values|Data) +\\(lines +(\\d+) +to +(\\d+)\\)");
    private static final Pattern PARAMETER = Pattern.compile("\\s*b\\d+ =\\s+(.+)");

    static StrdFile read(String name) {
        List<String> lines = resource("nist/" + name + ".dat").lines().toList();
        List<double[]> parameters = lines.stream()
                .map(PARAMETER::matcher)
                .filter(Matcher::matches)
                .map(m -> numbers(m.group(1)))
                .toList();
        List<double[]> rows = section(lines, "Data").stream()
                .filter(l -> !l.isBlank())
                .map(StrdFile::numbers)
                .toList();
        double[][] columns = IntStream.range(0, rows.get(0).length)
                .mapToObj(j -> rows.stream().mapToDouble(r -> r[j]).toArray())
                .toArray(double[][]::new);
        return new StrdFile(
                List.of(column(parameters, 0), column(parameters, 1)),
                column(parameters, 2),
                column(parameters, 3),
                labelled(lines, "Residual Sum of Squares:"),
                labelled(lines, "Residual Standard Deviation:"),
                columns);
    }

    /**
     * Number of correct significant digits: -log10 of the relative difference, of the absolute one where the reference
     * is zero; at most {@code most}, the digits that the reference has. The measure of NIST's own comparisons (log
     * relative error, LRE).
     */
    static double digits(double found, double reference, double most) {
        double difference = reference == 0 ? Math.abs(found) : Math.abs(found - reference) / Math.abs(reference);
        return difference == 0 ? most : Math.min(most, -Math.log10(difference));
    }

    static String resource(String path) {
        try (InputStream in = Objects.requireNonNull(StrdFile.class.getResourceAsStream(path), path)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("\uFEFF", "");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The columns of a table with one heading line; lines that start with # are notes. */
    static double[][] table(String path) {
        List<double[]> rows = new ArrayList<>();
        resource(path)
                .lines()
                .filter(l -> !l.isBlank() && !l.startsWith("#"))
                .skip(1)
                .map(l -> Arrays.stream(l.split(",", -1)).mapToDouble(Double::parseDouble))
                .forEach(r -> rows.add(r.toArray()));
        return IntStream.range(0, rows.get(0).length)
                .mapToObj(j -> column(rows, j))
                .toArray(double[][]::new);
    }

    private static List<String> section(List<String> lines, String which) {
        for (String line : lines.subList(0, 10)) {
            Matcher matcher = LINES.matcher(line);
            if (matcher.find() && matcher.group(1).equals(which)) {
                return lines.subList(Integer.parseInt(matcher.group(2)) - 1, Integer.parseInt(matcher.group(3)));
            }
        }
        throw new IllegalStateException("no section " + which);
    }

    private static double labelled(List<String> lines, String label) {
        String line =
                lines.stream().filter(l -> l.startsWith(label)).findFirst().orElseThrow();
        return Double.parseDouble(line.substring(label.length()).strip());
    }

    private static double[] numbers(String text) {
        return Arrays.stream(text.strip().split("\\s+"))
                .mapToDouble(Double::parseDouble)
                .toArray();
    }

    private static double[] column(List<double[]> rows, int j) {
        return rows.stream().mapToDouble(r -> r[j]).toArray();
    }
}
