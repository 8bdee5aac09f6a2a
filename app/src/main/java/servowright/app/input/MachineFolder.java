package servowright.app.input;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ForkJoinTask;
import servowright.app.input.form.Check;
import servowright.app.input.form.Forms;
import servowright.app.input.form.Shape;
import servowright.app.input.form.Value.Part;
import servowright.app.input.tree.Node.Entry;
import servowright.app.input.tree.Node.Group;
import servowright.app.input.tree.Problems;
import servowright.app.input.tree.SourceText;
import servowright.app.input.tree.TreeReader;
import servowright.engine.bench.CapturedBus;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Machine;
import servowright.engine.recording.Recording;

/** What came of reading the folder of a machine. */
public sealed interface MachineFolder {
    /** File that describes the machine; it must be there. */
    String MACHINE = "machine.yaml";

    /** File that lists what was measured; it may be absent. */
    String BENCH = "bench.yaml";

    /**
     * A machine without a mistake.
     *
     * @param recordings by the name that the tests call them
     * @param captures   of the bus, in the order of the file
     * @param sha256     of every file that was read, by its path within the folder
     * @param notes      what should be known about the reading; whole sentences
     */
    record Loaded(
            Machine machine,
            List<BenchTest> tests,
            Map<String, Recording> recordings,
            List<CapturedBus> captures,
            Map<String, String> sha256,
            List<String> notes)
            implements MachineFolder {
        public Loaded {
            tests = List.copyOf(tests);
            captures = List.copyOf(captures);
            recordings = Collections.unmodifiableMap(new LinkedHashMap<>(recordings));
            sha256 = Collections.unmodifiableMap(new LinkedHashMap<>(sha256));
            notes = List.copyOf(notes);
        }
    }

    /** Everything that is wrong, by file and line. */
    record Refused(List<Problem> problems) implements MachineFolder {
        public Refused {
            problems = List.copyOf(problems);
        }
    }

    /** Reads a folder. Whatever it holds, this gives a machine or problems. */
    static MachineFolder read(Path dir) {
        return new Reader(dir).read();
    }

    /** What machine.yaml alone declares, without tests and recordings; empty when it holds a mistake. */
    static Optional<Machine> declared(Path dir) {
        return new Reader(dir).declared();
    }

    /**
     * What is wrong with the text of machine.yaml or bench.yaml as it may be written next; recordings are not read.
     *
     * @param source with one of the two names
     */
    static List<Problem> check(Path dir, SourceText source) {
        return new Reader(dir).check(source);
    }

    /** One reading of one folder. */
    final class Reader {
        private static final List<String> SECTIONS = List.of("motors", "drives", "sensors", "axes");

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
            Optional<Group> machineTree = tree(MACHINE, problems);
            Map<String, Set<String>> names = new LinkedHashMap<>();
            Shape.Group form = Forms.machine();
            machineTree.ifPresent(t -> names.putAll(names(t, form)));
            // Both files side by side; what is wrong with the machine is told first.
            Problems ofBench = new Problems();
            ForkJoinTask<Optional<Part>> checking =
                    ForkJoinTask.adapt(() -> bench(names, ofBench)).fork();
            Optional<Part> machinePart = machine(machineTree, form, names, problems);
            Optional<Part> bench = checking.join();
            problems.addAll(ofBench);
            FolderFiles files = new FolderFiles(dir, problems);
            Recordings recordings = new Recordings(files, problems);
            Map<String, Part> axes =
                    machinePart.map(m -> m.part("axes").parts()).orElse(Map.of());
            List<BenchTest> tests =
                    recordings.read(bench.map(b -> BenchBinder.tests(b, axes)).orElse(List.of()));
            if (machinePart.isEmpty() || !problems.isEmpty()) {
                return new Refused(problems.sorted());
            }
            Machine machine = MachineBinder.machine(machinePart.get(), folderName());
            Captures captures = new Captures(files, problems);
            List<CapturedBus> captured =
                    captures.read(bench.map(BenchBinder::captures).orElse(List.of()), machine.bus());
            if (!problems.isEmpty()) {
                return new Refused(problems.sorted());
            }
            sha256.putAll(recordings.sha256());
            sha256.putAll(captures.sha256());
            return new Loaded(machine, tests, recordings.all(), captured, sha256, notes);
        }

        private Optional<Machine> declared() {
            Shape.Group form = Forms.machine();
            Optional<Group> tree = tree(MACHINE, problems);
            Optional<Part> part =
                    machine(tree, form, tree.map(t -> names(t, form)).orElse(Map.of()), problems);
            return problems.isEmpty() ? part.map(p -> MachineBinder.machine(p, folderName())) : Optional.empty();
        }

        private static Optional<Part> machine(
                Optional<Group> tree, Shape.Group form, Map<String, Set<String>> names, Problems problems) {
            Optional<Part> part = tree.map(t -> new Check(names, problems).part(t, form));
            part.ifPresent(new Contradictions(problems)::machine);
            return part;
        }

        private List<Problem> check(SourceText source) {
            Optional<Group> tree = TreeReader.keys(source, problems);
            if (source.file().equals(MACHINE)) {
                Shape.Group form = Forms.machine();
                machine(tree, form, tree.map(t -> names(t, form)).orElse(Map.of()), problems);
                return problems.sorted();
            }
            Optional<Group> machine = SourceText.read(dir.resolve(MACHINE), MACHINE, new Problems())
                    .flatMap(s -> TreeReader.keys(s, new Problems()));
            Map<String, Set<String>> names =
                    machine.map(t -> names(t, Forms.machine())).orElse(Map.of());
            tree.map(t -> new Check(names, problems).part(t, Forms.bench()))
                    .ifPresent(new Contradictions(problems)::bench);
            return problems.sorted();
        }

        private Optional<Part> bench(Map<String, Set<String>> names, Problems problems) {
            if (!Files.exists(dir.resolve(BENCH))) {
                notes.add("There is no " + BENCH + ": nothing was measured yet.");
                return Optional.empty();
            }
            Optional<Part> part = tree(BENCH, problems).map(t -> new Check(names, problems).part(t, Forms.bench()));
            part.ifPresent(new Contradictions(problems)::bench);
            return part;
        }

        private Optional<Group> tree(String file, Problems problems) {
            Path path = dir.resolve(file);
            if (!Files.exists(path)) {
                problems.add(missing(file, "there is no " + file + " in " + dir, "Name the folder that holds it."));
                return Optional.empty();
            }
            Optional<SourceText> source = SourceText.read(path, file, problems);
            source.ifPresent(s -> sha256.put(file, s.sha256()));
            return source.flatMap(s -> TreeReader.keys(s, problems));
        }

        /**
         * The parts that may be referred to. A section that is absent from a file with a key that is not known is left out:
         * it may be that section under a wrong name.
         */
        private static Map<String, Set<String>> names(Group tree, Shape.Group form) {
            boolean strange = tree.entries().keySet().stream()
                    .anyMatch(key -> form.field(key).isEmpty());
            Map<String, Set<String>> names = new LinkedHashMap<>();
            for (String section : SECTIONS) {
                Entry entry = tree.entries().get(section);
                if (entry != null && entry.value() instanceof Group group) {
                    names.put(section, group.entries().keySet());
                } else if (!strange) {
                    names.put(section, Set.of());
                }
            }
            return names;
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
