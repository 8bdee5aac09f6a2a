package servowright.app.input;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;

/** Takes a text file that a person wrote into memory, or says why not. */
final class TextFile {
    /** Larger than anything that is typed. */
    private static final long LARGEST_BYTES = 4_000_000;

    private TextFile() {}

    /**
     * The text of a file.
     *
     * @param name     the file as the user knows it
     * @param problems takes what is wrong when there is no text
     */
    static Optional<String> read(Path file, String name, Consumer<Problem> problems) {
        try {
            if (Files.size(file) > LARGEST_BYTES) {
                problems.accept(problem(
                        Problem.Kind.UNREADABLE,
                        name,
                        "it is larger than 4 MB, which no typed file is",
                        "Give the right file."));
                return Optional.empty();
            }
            String text = Files.readString(file);
            return Optional.of(text.startsWith("\ufeff") ? text.substring(1) : text);
        } catch (NoSuchFileException e) {
            problems.accept(problem(Problem.Kind.MISSING_FILE, name, "there is no such file", "Check its name."));
        } catch (CharacterCodingException e) {
            problems.accept(problem(Problem.Kind.UNREADABLE, name, "it is not UTF-8 text", "Save it as UTF-8."));
        } catch (IOException e) {
            problems.accept(problem(
                    Problem.Kind.UNREADABLE, name, "it cannot be read: " + e.getMessage(), "Check its permissions."));
        }
        return Optional.empty();
    }

    private static Problem problem(Problem.Kind kind, String name, String statement, String remedy) {
        return new Problem(kind, new Place(name, 0, ""), "", statement, "", remedy);
    }
}
