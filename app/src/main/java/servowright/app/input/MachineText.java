package servowright.app.input;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import servowright.app.input.tree.Problems;
import servowright.app.input.tree.SourceText;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;

/**
 * A text file of a machine's folder as it stands on disk, to be changed. It is written whole or not at all, only over the
 * very bytes that were read, and only when the new text holds no mistake that the old one did not.
 *
 * @param source its text; empty for a file that is not there yet
 * @param exists whether there is such a file
 */
public record MachineText(Path dir, SourceText source, boolean exists) {
    /** What came of writing. */
    public sealed interface Outcome {}

    /** The file holds the new text. */
    public record Written(MachineText now) implements Outcome {}

    /** The file was changed by somebody else meanwhile; nothing was written. */
    public record ChangedMeanwhile(MachineText now) implements Outcome {}

    /** The new text holds mistakes; nothing was written. */
    public record NotAccepted(List<Problem> problems) implements Outcome {
        public NotAccepted {
            problems = List.copyOf(problems);
        }
    }

    /** Machine and bench file of a folder; nothing else is edited. */
    public static final List<String> FILES = List.of(MachineFolder.MACHINE, MachineFolder.BENCH);

    private static final String NOTHING_THERE = "";

    /** The file as it stands; empty when it is none of ours or cannot be read as text. */
    public static Optional<MachineText> read(Path dir, String file) {
        if (!FILES.contains(file)) {
            return Optional.empty();
        }
        Path path = dir.resolve(file);
        if (!Files.exists(path)) {
            return Optional.of(new MachineText(dir, new SourceText(file, "", NOTHING_THERE), false));
        }
        return SourceText.read(path, file, new Problems()).map(s -> new MachineText(dir, s, true));
    }

    /** Names the bytes that were read; a file that is not there has an empty one. */
    public String mark() {
        return source.sha256();
    }

    /** Writes {@code text} over the bytes named by {@code mark}. */
    public static Outcome write(Path dir, String file, String mark, String text) {
        Optional<MachineText> now = read(dir, file);
        if (now.isEmpty() || !now.get().mark().equals(mark)) {
            return now.<Outcome>map(ChangedMeanwhile::new).orElseGet(() -> new NotAccepted(List.of(unreadable(file))));
        }
        List<Problem> fresh = now.get().fresh(text);
        if (!fresh.isEmpty()) {
            return new NotAccepted(fresh);
        }
        return now.get().put(text);
    }

    /** Takes the bytes named by {@code mark} back to what they were before, mistakes or not; empty takes the file away. */
    public static Outcome restore(Path dir, String file, String mark, Optional<String> before) {
        Optional<MachineText> now = read(dir, file);
        if (now.isEmpty() || !now.get().mark().equals(mark)) {
            return now.<Outcome>map(ChangedMeanwhile::new).orElseGet(() -> new NotAccepted(List.of(unreadable(file))));
        }
        return before.map(now.get()::put).orElseGet(now.get()::remove);
    }

    private Outcome remove() {
        try {
            Files.deleteIfExists(dir.resolve(source.file()));
        } catch (IOException e) {
            return new NotAccepted(List.of(unwritable(source.file())));
        }
        return new Written(read(dir, source.file()).orElse(this));
    }

    /** Mistakes of a new text that the present one does not hold. */
    private List<Problem> fresh(String text) {
        List<String> old = MachineFolder.check(dir, source).stream()
                .map(MachineText::without)
                .toList();
        return MachineFolder.check(dir, new SourceText(source.file(), text, "")).stream()
                .filter(p -> !old.contains(without(p)))
                .toList();
    }

    /** A problem apart from the line it stands on. */
    private static String without(Problem p) {
        return p.place().path() + p.statement();
    }

    private Outcome put(String text) {
        Path path = dir.resolve(source.file());
        try {
            Path target = Files.exists(path) ? path.toRealPath() : path;
            Path fresh = Files.createTempFile(target.toAbsolutePath().getParent(), ".servowright", ".part");
            try {
                Files.write(fresh, bytes(path, text));
                if (Files.exists(target)) {
                    WholeFile.rights(target, fresh);
                }
                Optional<MachineText> again = read(dir, source.file());
                if (again.isEmpty() || !again.get().mark().equals(mark())) {
                    return new ChangedMeanwhile(again.orElse(this));
                }
                WholeFile.move(fresh, target);
            } finally {
                Files.deleteIfExists(fresh);
            }
        } catch (IOException e) {
            return new NotAccepted(List.of(unwritable(source.file())));
        }
        return new Written(read(dir, source.file()).orElse(this));
    }

    /** Line ends and byte order mark as the file had them. */
    private byte[] bytes(Path path, String text) {
        String plain = text.replace("\r\n", "\n").replace('\r', '\n');
        try {
            String old = exists ? Files.readString(path) : "";
            String ends = old.contains("\r\n") ? plain.replace("\n", "\r\n") : plain;
            return (old.startsWith("\ufeff") ? "\ufeff" + ends : ends).getBytes(StandardCharsets.UTF_8);
        } catch (CharacterCodingException e) {
            return plain.getBytes(StandardCharsets.UTF_16); // what is no UTF-8 but was read is UTF-16
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Problem unwritable(String file) {
        return problem(file, file + " cannot be written", "Check the rights of the folder and the room on the disk.");
    }

    private static Problem unreadable(String file) {
        return problem(file, file + " cannot be read as text", "Mend it in an editor first.");
    }

    private static Problem problem(String file, String statement, String remedy) {
        return new Problem(Problem.Kind.UNREADABLE, new Place(file, 0, ""), "", statement, "", remedy);
    }
}
