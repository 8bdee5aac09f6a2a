package servowright.app.input;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import servowright.app.input.csv.ReadResult;
import servowright.app.input.csv.ReadingHints;
import servowright.app.input.csv.RecordingReader;
import servowright.app.input.form.Check;
import servowright.app.input.form.Forms;
import servowright.app.input.form.Value.Part;
import servowright.app.input.tree.Problems;
import servowright.app.input.tree.SourceText;
import servowright.app.input.tree.TreeEdit;
import servowright.app.input.tree.TreeReader;

/**
 * A bench test that is being put together: keys of bench.yaml with what somebody answered. The keys that say how a
 * recording is to be read count from the first look on, so that the file is understood here exactly as it will be later.
 *
 * @param said by key; what belongs into a group has a dot in its key: {@code channels.CH1}
 */
public record TestDraft(Map<String, String> said) {
    private static final Pattern PLAIN = Pattern.compile("[\\p{L}\\p{N}/.+±-][\\p{L}\\p{N} /.%^·±µμΩ°+-]*");
    private static final Pattern NAME = Pattern.compile("[\\p{L}\\p{N}_.-][\\p{L}\\p{N} _.()-]*");

    public TestDraft {
        Map<String, String> some = new LinkedHashMap<>();
        said.forEach((key, value) -> {
            String line = value.replaceAll("\\s+", " ").strip();
            if (!line.isEmpty()) {
                some.put(key, line);
            }
        });
        said = java.util.Collections.unmodifiableMap(some);
    }

    /** Its lines in bench.yaml, without dash and indentation. */
    public List<String> lines() {
        Map<String, List<String>> groups = new LinkedHashMap<>();
        List<String> lines = new ArrayList<>();
        said.forEach((key, value) -> {
            int dot = key.indexOf('.');
            if (dot > 0) {
                groups.computeIfAbsent(key.substring(0, dot), k -> new ArrayList<>())
                        .add(name(key.substring(dot + 1)) + ": " + scalar(value));
            } else {
                lines.add(name(key) + ": " + scalar(value));
            }
        });
        groups.forEach((group, members) -> lines.add(name(group) + ": {" + String.join(", ", members) + "}"));
        return lines;
    }

    /** One reading on one line: {@code {pair: A to B, current: 1.002 A}}. */
    public static String flow(Map<String, String> values) {
        return new TestDraft(values)
                .said().entrySet().stream()
                        .map(e -> name(e.getKey()) + ": " + scalar(e.getValue()))
                        .collect(Collectors.joining(", ", "{", "}"));
    }

    static String scalar(String value) {
        return PLAIN.matcher(value).matches() ? value : "'" + value.replace("'", "''") + "'";
    }

    static String name(String key) {
        return NAME.matcher(key).matches() ? key : "'" + key.replace("'", "''") + "'";
    }

    /** Reads a recording as this test says it; a question names the key that answers it. */
    public ReadResult read(Path file, String shown) {
        Problems problems = new Problems();
        String text = "tests:\n  - " + String.join("\n    ", lines()) + "\n";
        Optional<Part> part = lines().isEmpty()
                ? Optional.empty()
                : TreeReader.keys(new SourceText(MachineFolder.BENCH, text, ""), problems)
                        .map(t -> new Check(Map.of(), new Problems()).part(t, Forms.bench()))
                        .flatMap(p -> p.series("tests").stream().findFirst());
        ReadingHints hints = part.map(p -> RecordingHints.of(p, problems)).orElseGet(ReadingHints::none);
        return problems.isEmpty()
                ? RecordingReader.read(file, shown, hints)
                : new ReadResult.Refused(problems.sorted());
    }

    /** bench.yaml of a folder with this test at its end; empty where the file does not allow it. */
    public Optional<String> added(MachineText bench) {
        String old = bench.source().text();
        if (old.isBlank()) {
            return Optional.of("tests:\n  - " + String.join("\n    ", lines()) + "\n");
        }
        return TreeEdit.of(bench.source()).flatMap(e -> e.appended("tests", lines()));
    }

    /** The file of a recording that lies within a machine's folder; empty for anything else. */
    public static Optional<Path> within(Path folder, String name) {
        try {
            Path real = folder.toRealPath();
            Path file = real.resolve(name).normalize();
            return file.startsWith(real)
                            && Files.isRegularFile(file)
                            && file.toRealPath().startsWith(real)
                    ? Optional.of(file)
                    : Optional.empty();
        } catch (java.io.IOException | java.nio.file.InvalidPathException e) {
            return Optional.empty();
        }
    }
}
