package servowright.app.input;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import servowright.app.input.BenchBinder.Written;
import servowright.app.input.form.Check;
import servowright.app.input.form.Forms;
import servowright.app.input.form.Value.Part;
import servowright.app.input.tree.Node.Group;
import servowright.app.input.tree.Problems;
import servowright.app.input.tree.SourceText;
import servowright.app.input.tree.TreeReader;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Machine;

/** What came of reading the folder of a machine. */
public sealed interface MachineFolder {
    /** File that describes the machine; it must be there. */
    String MACHINE = "machine.yaml";

    /** File that lists what was measured; it may be absent. */
    String BENCH = "bench.yaml";

    /**
     * A machine without a mistake.
     *
     * @param sha256 of every file that was read, by its path within the folder
     * @param notes  what should be known about the reading; whole sentences
     */
    record Loaded(Machine machine, List<BenchTest> tests, Map<String, String> sha256, List<String> notes)
            implements MachineFolder {}

    /** Everything that is wrong, by file and line. */
    record Refused(List<Problem> problems) implements MachineFolder {}

    /** Reads a folder. Whatever it holds, this gives a machine or problems. */
    static MachineFolder read(Path dir) {
        return new Reader(dir).read();
    }

    /** One reading of one folder. */
    final class Reader {
        private static final List<String> SECTIONS = List.of("motors", "drives", "sensors");

        private final Path dir;
        private final Problems problems = new Problems();
        private final Map<String, String> sha256 = new LinkedHashMap<>();
        private final List<String> notes = new ArrayList<>();

        private Reader(Path dir) {
            this.dir = dir;
        }

        private MachineFolder read() {
            if (!Files.isDirectory(dir)) {
                String what = Files.exists(dir) ? dir + " is a file" : "there is no folder " + dir;
                problems.add(missing(dir.toString(), what, "Name the folder that holds " + MACHINE + "."));
                return new Refused(problems.sorted());
            }
            Optional<Group> machineTree = tree(MACHINE);
            Map<String, Set<String>> names = new LinkedHashMap<>();
            machineTree.ifPresent(t -> SECTIONS.forEach(s -> names.put(s, names(t, s))));
            Optional<Part> machinePart = machineTree.map(t -> new Check(names, problems).part(t, Forms.machine()));
            machinePart.ifPresent(new Contradictions(problems)::machine);
            List<Written> tests = tests(names);
            if (machinePart.isEmpty() || !problems.isEmpty()) {
                return new Refused(problems.sorted());
            }
            Machine machine = MachineBinder.machine(machinePart.get(), folderName());
            return new Loaded(
                    machine, tests.stream().map(Written::test).toList(), Map.copyOf(sha256), List.copyOf(notes));
        }

        private List<Written> tests(Map<String, Set<String>> names) {
            if (!Files.exists(dir.resolve(BENCH))) {
                notes.add("There is no " + BENCH + ": nothing was measured yet.");
                return List.of();
            }
            Optional<Part> part = tree(BENCH).map(t -> new Check(names, problems).part(t, Forms.bench()));
            part.ifPresent(new Contradictions(problems)::bench);
            return part.map(BenchBinder::tests).orElse(List.of());
        }

        private Optional<Group> tree(String file) {
            Path path = dir.resolve(file);
            if (!Files.exists(path)) {
                problems.add(missing(file, "there is no " + file + " in " + dir, "Name the folder that holds it."));
                return Optional.empty();
            }
            Optional<SourceText> source = SourceText.read(path, file, problems);
            source.ifPresent(s -> sha256.put(file, s.sha256()));
            return source.flatMap(s -> TreeReader.read(s, problems));
        }

        private static Set<String> names(Group tree, String section) {
            return Stream.ofNullable(tree.entries().get(section))
                    .filter(e -> e.value() instanceof Group)
                    .flatMap(e -> ((Group) e.value()).entries().keySet().stream())
                    .collect(java.util.stream.Collectors.toCollection(LinkedHashSet::new));
        }

        private String folderName() {
            Path name = dir.toAbsolutePath().normalize().getFileName();
            return name == null ? "machine" : name.toString();
        }

        private static Problem missing(String file, String statement, String remedy) {
            return new Problem(Problem.Kind.MISSING_FILE, new Place(file, 0, ""), "", statement, "", remedy);
        }
    }
}
