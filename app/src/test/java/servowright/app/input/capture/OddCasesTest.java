package servowright.app.input.capture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import servowright.engine.capture.CaptureSummary;

/** Every odd line that the log form allows, against a table of what each means. */
class OddCasesTest {
    @TempDir
    Path folder;

    private Path log = Path.of("");

    @BeforeEach
    void setUp() throws IOException {
        log = Files.writeString(folder.resolve("odd.log"), resource("odd-cases.log"));
    }

    private static String resource(String name) {
        try (InputStream in = OddCasesTest.class.getResourceAsStream(name)) {
            return new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The frames of the table: id, flags, length, code, data. */
    private static List<String[]> expected(String csv) {
        return csv.lines()
                .skip(1)
                .map(line -> line.split(",", -1))
                .filter(cells -> cells[1].startsWith("ok"))
                .toList();
    }

    @Test
    void reads_every_line_as_the_table_says() {
        agrees(log, resource("odd-cases.expected.csv"));
    }

    /** Fails unless every line of a log that the table calls good was read as it says, and no other. */
    static void agrees(Path log, String csv) {
        Seen seen = Seen.in(log);
        List<String[]> table = expected(csv);
        assertThat(seen.frames).hasSameSizeAs(table);
        for (int k = 0; k < table.size(); k++) {
            String[] c = table.get(k);
            boolean error = c[6].equals("1");
            long id = Long.parseLong(c[3], 16) & (error ? 0x1fff_ffffL : -1);
            String flags = (c[4].equals("1") ? "x" : "")
                    + (c[5].equals("1") ? "r" : "")
                    + (error ? "e" : "")
                    + (c[7].equals("1") ? "f" : "")
                    + (c[8].equals("1") ? "b" : "")
                    + (c[9].equals("1") ? "p" : "");
            String line = String.format("%X %s %s/%s %s", id, flags.isEmpty() ? "-" : flags, c[10], c[11], c[12])
                    .strip();
            assertThat(seen.frames.get(k).replace(" o ", " - "))
                    .as("line %s", c[0])
                    .isEqualTo(line);
            long timeNs = Math.round(Double.parseDouble(c[2]) * 1000);
            assertThat(seen.timesNs.get(k)).as("time of line %s", c[0]).isEqualTo(timeNs);
        }
    }

    @Test
    void counts_what_was_lost_what_is_broken_and_what_is_xl() {
        CaptureSummary summary = Seen.read(log, new Seen());
        assertThat(summary.lost()).isEqualTo(7);
        assertThat(summary.xl()).isEqualTo(1);
        assertThat(summary.malformed()).isEqualTo(5);
        assertThat(summary.buses()).containsExactly("can0", "vcan12");
        assertThat(summary.notes()).anyMatch(n -> n.contains("line 23: the number of digits is odd"));
    }

    @Test
    void reads_the_same_with_carriage_returns() throws IOException {
        Path twin = Files.writeString(
                folder.resolve("crlf.log"), resource("odd-cases.log").replace("\n", "\r\n"));
        assertThat(Seen.in(twin).frames).isEqualTo(Seen.in(log).frames);
    }

    @Test
    void reads_the_same_without_a_line_end_behind_the_last_frame() throws IOException {
        Path whole = Files.writeString(folder.resolve("whole.log"), "(1.0) can0 123#11\n(2.0) can0 124#22\n");
        Path cut = Files.writeString(folder.resolve("cut.log"), "(1.0) can0 123#11\n(2.0) can0 124#22");
        assertThat(Seen.in(cut).frames).isEqualTo(Seen.in(whole).frames);
    }
}
