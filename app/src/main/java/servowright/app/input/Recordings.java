package servowright.app.input;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import servowright.app.input.BenchBinder.Written;
import servowright.app.input.csv.ReadResult;
import servowright.app.input.csv.ReadingHints;
import servowright.app.input.csv.RecordingReader;
import servowright.app.input.form.Value;
import servowright.app.input.tree.Problems;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;
import servowright.engine.machine.BenchTest;
import servowright.engine.recording.Recording;

/** Reads the recordings that bench tests name: each once, however many tests name it. */
final class Recordings {
    /** Bytes of text that may be read at once; more is read one file after the other, to stay within a small heap. */
    private static final long AT_ONCE = 50_000_000;

    private final FolderFiles files;
    private final Problems problems;
    private final Map<Request, Wanted> wanted = new LinkedHashMap<>();
    private final Map<String, Recording> all = new LinkedHashMap<>();
    private final Map<String, String> sha256 = new LinkedHashMap<>();

    Recordings(FolderFiles files, Problems problems) {
        this.files = files;
        this.problems = problems;
    }

    /** A file and how it is to be read. */
    private record Request(String file, ReadingHints hints) {
        /** By the file alone: few are read in two ways, and a start should not wait for more. */
        @Override
        public int hashCode() {
            return file.hashCode();
        }
    }

    /**
     * A recording that a test wants.
     *
     * @param name what the tests call it: the path of its file, and the test too when one file is read in two ways
     */
    private record Wanted(String name, Path path, Written by) {}

    /** The tests, each with the name of its recording, after all recordings were read. */
    List<BenchTest> read(List<Written> tests) {
        List<BenchTest> named = tests.stream().map(this::named).toList();
        boolean small = wanted.values().stream().mapToLong(w -> size(w.path())).sum() < AT_ONCE;
        Stream<Map.Entry<Request, Wanted>> each =
                small ? wanted.entrySet().parallelStream() : wanted.entrySet().stream();
        List<ReadResult> results = each.map(e -> RecordingReader.read(
                        e.getValue().path(), e.getValue().name(), e.getKey().hints()))
                .toList();
        int i = 0;
        for (Map.Entry<Request, Wanted> e : wanted.entrySet()) {
            take(e.getKey(), e.getValue(), results.get(i++));
        }
        return named;
    }

    private void take(Request request, Wanted want, ReadResult result) {
        if (result instanceof ReadResult.Read good) {
            all.put(want.name(), good.recording());
            sha256.put(request.file(), good.recording().sourceHash());
        } else if (result instanceof ReadResult.Refused refused) {
            refused.problems().forEach(p -> problems.add(asked(p, want.name(), want.by())));
        }
    }

    /** Every recording by its name. */
    Map<String, Recording> all() {
        return all;
    }

    /** The hash of each file, by its path. */
    Map<String, String> sha256() {
        return sha256;
    }

    private BenchTest named(Written written) {
        BenchTest test = written.test();
        Optional<String> name = test.recording().flatMap(file -> name(file, written));
        return test.recordedAs(name);
    }

    private Optional<String> name(String file, Written written) {
        Request request = new Request(file, RecordingHints.of(written.part(), problems));
        Wanted known = wanted.get(request);
        if (known != null) {
            return Optional.of(known.name());
        }
        boolean other = wanted.keySet().stream().anyMatch(r -> r.file().equals(file));
        String name = other ? file + " for " + written.test().id() : file;
        Place place = written.part()
                .at("recording")
                .map(Value::place)
                .orElse(written.test().place());
        return files.find(file, place).map(path -> {
            wanted.put(request, new Wanted(name, path, written));
            return name;
        });
    }

    private static long size(Path path) {
        try {
            return Files.size(path);
        } catch (IOException e) {
            return AT_ONCE;
        }
    }

    /** A question that a key of the test answers is asked where that key belongs. */
    private static Problem asked(Problem p, String name, Written written) {
        if (p.place().path().isEmpty()) {
            return p;
        }
        Place test = written.part().place();
        Place key = written.part()
                .at(p.place().path())
                .map(Value::place)
                .orElse(new Place(
                        test.file(),
                        test.line(),
                        test.path() + " / " + p.place().path()));
        return new Problem(p.kind(), key, p.given(), name + ": " + p.statement(), p.allowed(), p.remedy());
    }
}
