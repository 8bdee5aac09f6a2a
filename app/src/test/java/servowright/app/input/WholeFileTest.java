package servowright.app.input;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WholeFileTest {
    @TempDir
    Path folder;

    @Test
    void a_file_that_cannot_be_filled_is_not_there() throws IOException {
        Path target = folder.resolve("bus.log");
        assertThatThrownBy(() -> WholeFile.fresh(target, out -> {
                    out.write("half".getBytes(StandardCharsets.UTF_8));
                    throw new IOException("no room");
                }))
                .isInstanceOf(IOException.class)
                .hasMessage("no room");
        assertThat(names()).isEmpty();
    }

    @Test
    void what_is_there_is_not_overwritten_by_a_new_file() throws IOException {
        Path target = Files.writeString(folder.resolve("bus.log"), "mine");
        assertThatThrownBy(() -> WholeFile.fresh(target, out -> 1)).isInstanceOf(FileAlreadyExistsException.class);
        assertThat(target).hasContent("mine");
        assertThat(names()).containsExactly("bus.log");
    }

    @Test
    void text_goes_over_what_was_there_with_its_rights() throws IOException {
        Path target = Files.writeString(folder.resolve("dossier.html"), "old and longer");
        boolean rights =
                target.toFile().setReadable(false, false) && target.toFile().setReadable(true, true);
        WholeFile.text(target, "new");
        assertThat(target).hasContent("new");
        assertThat(names()).containsExactly("dossier.html");
        if (rights && Files.getFileStore(target).supportsFileAttributeView("posix")) {
            assertThat(Files.getPosixFilePermissions(target))
                    .noneMatch(p -> p.name().startsWith("OTHERS_READ"));
        }
    }

    @Test
    void a_link_stays_a_link() throws IOException {
        Path real = Files.writeString(folder.resolve("real.html"), "old");
        Path link = Files.createSymbolicLink(folder.resolve("link.html"), real);
        WholeFile.text(link, "new");
        assertThat(real).hasContent("new");
        assertThat(Files.isSymbolicLink(link)).isTrue();
    }

    private Stream<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(p -> String.valueOf(p.getFileName())).toList().stream();
        }
    }
}
