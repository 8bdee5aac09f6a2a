package servowright.app.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files that are no machine, whatever they are, end in problems. */
class HostileFilesTest {
    @TempDir
    private Path dir;

    private Path machine() {
        return dir.resolve("machine.yaml");
    }

    @Test
    void refuses_a_hundred_megabytes_without_reading_them() throws IOException {
        try (RandomAccessFile file = new RandomAccessFile(machine().toFile(), "rw")) {
            file.setLength(100_000_000);
        }
        assertThat(Folder.in(dir).lines())
                .containsExactly("a file of 100 MB is no description of a machine; at most 5 MB are read."
                        + " Keep recordings in files of their own.");
    }

    @Test
    void refuses_bytes_that_are_no_text() throws IOException {
        byte[] bytes = new byte[10_000];
        new Random(7).nextBytes(bytes);
        Files.write(machine(), bytes);
        assertThat(Folder.in(dir).lines()).hasSize(1).first().asString().contains("bytes that are no UTF-8 text");
        Files.write(machine(), "a: 1\nb: \u0000x\n".getBytes(StandardCharsets.UTF_8));
        assertThat(Folder.in(dir).lines())
                .containsExactly("line 2: here is the control character 0000, which no text has."
                        + " Check that this is a text file; save it as UTF-8.");
    }

    @Test
    void names_the_line_of_a_sign_in_an_older_encoding() throws IOException {
        Files.write(machine(), "machine: x\nabout: 2 \u00b1 1\n".getBytes(StandardCharsets.ISO_8859_1));
        assertThat(Folder.in(dir).lines())
                .containsExactly("line 2: here are bytes that are no UTF-8 text. Save the file as UTF-8 text.");
    }

    @Test
    void reads_a_byte_order_mark_sixteen_bits_and_foreign_line_ends() throws IOException {
        String text = "\ufeffmachine: Frost cart\r\nmotors:\r\n  hub:\r\n    resistance: 0.24 ohm \u00b1 2 %\r\n";
        for (var charset : new java.nio.charset.Charset[] {
            StandardCharsets.UTF_8, StandardCharsets.UTF_16LE, StandardCharsets.UTF_16BE
        }) {
            Files.write(machine(), text.getBytes(charset));
            assertThat(Folder.in(dir).loaded().machine().name()).isEqualTo("Frost cart");
        }
    }

    @Test
    void refuses_an_empty_file_and_a_folder_in_its_place() throws IOException {
        Files.writeString(machine(), "");
        assertThat(Folder.in(dir).lines()).containsExactly("line 1: the file is empty. Write keys and values into it.");
        Files.delete(machine());
        Files.createDirectory(machine());
        assertThat(Folder.in(dir).lines()).containsExactly("machine.yaml is no file. Put a text file in its place.");
    }

    @Test
    void says_what_is_missing() throws IOException {
        assertThat(Folder.in(dir.resolve("none")).lines())
                .containsExactly(
                        "there is no folder " + dir.resolve("none") + ". Name the folder that holds machine.yaml.");
        assertThat(Folder.in(dir).lines())
                .containsExactly("there is no machine.yaml in " + dir + ". Name the folder that holds it.");
        Files.writeString(machine(), "machine: x");
        assertThat(Folder.in(machine()).lines())
                .containsExactly(machine() + " is a file. Name the folder that holds machine.yaml.");
    }

    @Test
    void stays_quick_on_lines_of_megabytes() throws IOException {
        for (String part :
                new String[] {"[", "a[", "{a: ", "1,", "\"", "a: ", "- ", "'", "x ", "a,", "& ", "# ", ": "}) {
            String start = part.equals("x ") ? "machine: " : "a: {b: ";
            Files.writeString(machine(), start + part.repeat(2_000_000 / part.length()));
            assertThat(MachineFolder.read(dir)).isNotNull();
        }
        Files.writeString(machine(), "motors: {" + "m: {resistance: 1 ohm [" + "[x".repeat(400_000) + "]}}");
        assertThat(MachineFolder.read(dir)).isInstanceOf(MachineFolder.Refused.class);
        Files.writeString(machine(), "motors:\n" + "  m: {resistence: 1 V}\n".repeat(150_000));
        assertThat(Folder.in(dir).problems()).hasSize(101);
    }
}
