package servowright.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * Real files that people recorded, kept beside the repository and never in it. Where they are absent the tests that read them
 * say so and are skipped.
 */
public final class FieldData {
    private static final Path SHARED = Path.of(System.getProperty("servowright.root", "."))
            .resolve("../shared")
            .normalize();

    private FieldData() {}

    /** A folder of bench files. */
    public static Path bench(String folder) {
        return present(SHARED.resolve("field").resolve(folder));
    }

    /** The folder of captured bus traffic. */
    public static Path captures() {
        return present(SHARED.resolve("reference/data/captures"));
    }

    /** The files of a bench folder in the order of their names, without the note on where they come from. */
    public static List<Path> files(String folder) {
        try (Stream<Path> files = Files.list(bench(folder))) {
            List<Path> found =
                    files.filter(f -> !f.endsWith("SOURCE.md")).sorted().toList();
            assertThat(found).isNotEmpty();
            return found;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Path present(Path folder) {
        assumeTrue(Files.isDirectory(folder), "field data absent: there is no folder " + folder);
        return folder;
    }
}
