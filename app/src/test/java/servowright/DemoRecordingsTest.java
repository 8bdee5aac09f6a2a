package servowright;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The demo's recordings are what the committed programs make. */
class DemoRecordingsTest {
    private static final Path DEMO = Path.of(System.getProperty("servowright.root", ".."), "examples", "frost-cart");

    @Test
    void the_recordings_are_made_by_the_programs_beside_them(@TempDir Path made) throws Exception {
        for (String program : List.of("MakeRecordings.java", "MakeResponses.java")) {
            Process process = new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            DEMO.resolve(program).toString(),
                            made.toString())
                    .redirectErrorStream(true)
                    .start();
            String said = new String(process.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
            assertThat(process.waitFor()).as(said).isZero();
        }
        assertThat(names(made)).isNotEmpty().isEqualTo(names(DEMO.resolve("recordings")));
        for (String name : names(made)) {
            assertThat(Files.readAllBytes(made.resolve(name)))
                    .as(name)
                    .isEqualTo(Files.readAllBytes(DEMO.resolve("recordings").resolve(name)));
        }
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(p -> p.getFileName().toString()).sorted().toList();
        }
    }
}
