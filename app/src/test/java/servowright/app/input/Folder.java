package servowright.app.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import servowright.engine.known.Problem;

/** Folders of machines for tests. */
final class Folder {
    private final Path dir;

    private Folder(Path dir) {
        this.dir = dir;
    }

    static Folder in(Path dir) {
        return new Folder(dir);
    }

    /** The folder with that name among the test resources. */
    static Path named(String name) {
        return Path.of("src/test/resources/servowright/app/input", name);
    }

    Folder with(String file, String text) {
        try {
            Path path = dir.resolve(file);
            Files.createDirectories(path.getParent());
            Files.writeString(path, text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return this;
    }

    MachineFolder.Loaded loaded() {
        MachineFolder read = MachineFolder.read(dir);
        assertThat(read).as(() -> String.valueOf(read)).isInstanceOf(MachineFolder.Loaded.class);
        return (MachineFolder.Loaded) read;
    }

    List<Problem> problems() {
        MachineFolder read = MachineFolder.read(dir);
        assertThat(read).as(() -> String.valueOf(read)).isInstanceOf(MachineFolder.Refused.class);
        return ((MachineFolder.Refused) read).problems();
    }

    /** The problems as a person reads them. */
    List<String> lines() {
        return problems().stream().map(Problem::text).toList();
    }
}
