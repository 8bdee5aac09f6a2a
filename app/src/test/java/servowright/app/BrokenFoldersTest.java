package servowright.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The whole program, started as a user starts it, on folders that are not in order. */
class BrokenFoldersTest {
    private static final Path SIX_MISTAKES = Path.of("src/test/resources/servowright/app/input/six-mistakes");
    private static final String SPIN = "tests:\n  - {test: spin, motor: hub, recording: spin.csv, speed: 400 rpm}\n";

    @TempDir
    private Path scratch;

    private Path folder;

    @BeforeEach
    void make_the_folder() throws IOException {
        folder = Files.createDirectory(scratch.resolve("machine"));
    }

    private Started assess(Path machine) throws IOException, InterruptedException {
        return Started.with(scratch, "assess", machine.toString());
    }

    private void write(String file, String text) throws IOException {
        Files.writeString(folder.resolve(file), text);
    }

    /** What is said of the folder, which must be refused and nothing worse. */
    private String refusal() throws IOException, InterruptedException {
        return refusal(assess(folder));
    }

    private static String refusal(Started run) {
        assertThat(run.err()).doesNotContain("\tat ", "Exception", "fault of the program");
        assertThat(run.out()).isEmpty();
        assertThat(run.code()).as(run.err()).isEqualTo(2);
        return String.join("\n", run.complaints());
    }

    @Test
    void six_mistakes_are_six_problems_with_their_lines() throws Exception {
        List<String> lines = refusal(assess(SIX_MISTAKES))
                .lines()
                .map(line -> line.replaceAll(": .*", ""))
                .toList();
        assertThat(lines)
                .containsExactly(
                        "machine.yaml was not accepted, 6 problems:",
                        "line 4, supply / battery / voltage",
                        "line 10, motors / hub / resistence",
                        "line 11, motors / hub / speed_constant",
                        "line 15, drives / palm / current / peak",
                        "line 21, axes / tilt / drive",
                        "line 22, axes / tilt / mount / gap");
    }

    @ParameterizedTest
    @ValueSource(strings = {"bench", "dossier", "explain speed-reach"})
    void every_verb_refuses_them_alike(String verb) throws Exception {
        String[] words = (verb + " " + SIX_MISTAKES).split(" ");
        assertThat(refusal(Started.with(scratch, words))).startsWith("machine.yaml was not accepted, 6 problems:");
    }

    @Test
    void a_folder_without_a_machine_is_refused() throws Exception {
        assertThat(refusal()).contains("there is no machine.yaml in " + folder);
        assertThat(refusal(assess(folder.resolve("none")))).contains("there is no folder");
    }

    @Test
    void an_empty_file_is_refused() throws Exception {
        write("machine.yaml", "");
        assertThat(refusal()).contains("line 1: the file is empty.");
    }

    @Test
    void a_picture_is_refused() throws Exception {
        Files.write(folder.resolve("machine.yaml"), new byte[] {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10, 0, 0});
        assertThat(refusal()).contains("here are bytes that are no UTF-8 text");
    }

    @Test
    void a_file_in_an_old_encoding_is_refused() throws Exception {
        Files.write(folder.resolve("machine.yaml"), "about: 0,24 ohm ± 2 %\n".getBytes(StandardCharsets.ISO_8859_1));
        assertThat(refusal()).contains("line 1: here are bytes that are no UTF-8 text. Save the file as UTF-8 text.");
    }

    @Test
    void a_file_of_100_megabytes_is_refused() throws Exception {
        try (RandomAccessFile file =
                new RandomAccessFile(folder.resolve("machine.yaml").toFile(), "rw")) {
            file.setLength(100_000_000);
        }
        assertThat(refusal()).contains("a file of 100 MB is no description of a machine");
    }

    @Test
    void deep_nesting_is_refused() throws Exception {
        write("machine.yaml", "motors: " + "[".repeat(200_000));
        assertThat(refusal()).contains("line 1: this is nested deeper than 20 levels.");
    }

    @Test
    void references_that_multiply_are_refused() throws Exception {
        StringBuilder bomb = new StringBuilder("a0: &a0 [x, x]\n");
        for (int i = 1; i < 30; i++) {
            bomb.append("a%d: &a%d [*a%d, *a%d]\n".formatted(i, i, i - 1, i - 1));
        }
        write("machine.yaml", bomb.toString());
        assertThat(refusal()).contains("line 2, a1 / 1: *a0 refers to another part of the file.");
    }

    @Test
    void a_recording_that_is_missing_is_named() throws Exception {
        write("machine.yaml", "motors: {hub: {slots: 18}}\n");
        write("bench.yaml", SPIN);
        write("spin1.csv", "0,1\n");
        assertThat(refusal())
                .contains("line 2, tests / 1 / recording: there is no file \"spin.csv\". Nearest: spin1.csv.");
    }

    @Test
    void a_recording_longer_than_the_memory_asks_how_to_shorten_it() throws Exception {
        write("machine.yaml", "motors: {hub: {slots: 18}}\n");
        write("bench.yaml", SPIN);
        try (var out = Files.newBufferedWriter(folder.resolve("spin.csv"))) {
            out.write("Time (s),CH1 (V)\n");
            for (int i = 0; i < 3_000_000; i++) {
                out.write(i / 100_000 + "."
                        + String.valueOf(100_000 + i % 100_000).substring(1) + "," + i % 7 + "\n");
            }
        }
        assertThat(refusal()).contains("line 2, tests / 1 / every: spin.csv: 3000000 rows of 2 columns are more than");
    }
}
