package servowright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class BusVerbTest {
    @TempDir
    Path folder;

    private String capture() throws IOException {
        StringBuilder lines = new StringBuilder();
        for (int k = 0; k < 400; k++) {
            lines.append(String.format(
                    Locale.ROOT, "(%010d.%06d) can0 181#%016X%n", 1000 + k / 100, k % 100 * 10_000, 0x1122 * k));
            if (k % 10 == 0) {
                lines.append(String.format(
                        Locale.ROOT, "(%010d.%06d) can0 701#05%n", 1000 + k / 100, k % 100 * 10_000 + 500));
            }
        }
        lines.append("(0000001004.000000) can0 20000020#0000000000000000\n");
        lines.append("(0000001004.100000) can0 123#1\n");
        Path file = folder.resolve("drive.log");
        Files.writeString(file, lines);
        return file.toString();
    }

    private static String words(String text) {
        return text.replaceAll("\\s+", " ");
    }

    @Test
    void shows_what_a_capture_holds() throws IOException {
        Typed typed = Typed.wide(120, "bus", capture(), "--rate", "500 kbit/s");
        assertThat(typed.code()).isEqualTo(ExitCode.FINE);
        assertThat(words(typed.out()))
                .contains("log lines, 441 records")
                .contains("1 line or record left out as broken, the first is line 442")
                .contains("frames 440 in 3.99 s")
                .contains("load mean 2.")
                .contains("nodes 1 operational")
                .contains("error reports: nobody acknowledged 1; 1 in all")
                .contains("0x181 400 8 10 ms 10 ms 10 ms")
                .contains("0x701 40 1 100 ms")
                .contains("heartbeat");
    }

    @Test
    void says_that_a_load_needs_the_rate() throws IOException {
        assertThat(words(Typed.type("bus", capture()).out())).contains("a load needs the bit rate: --rate");
    }

    @Test
    void writes_the_same_as_json() throws IOException {
        Typed typed = Typed.type("bus", capture(), "--rate", "500 kbit/s", "--json");
        JsonNode json = JsonMapper.builder().build().readTree(typed.out());
        assertThat(json.path("kind").asString()).isEqualTo("captures");
        JsonNode capture = json.path("captures").path(0);
        assertThat(capture.path("frames").asInt()).isEqualTo(441);
        assertThat(capture.path("malformed").asInt()).isEqualTo(1);
        JsonNode bus = capture.path("buses").path(0);
        assertThat(bus.path("worst_windows").size()).isEqualTo(3);
        assertThat(bus.path("identifiers").path(0).path("period").path("si").asDouble())
                .isBetween(0.0099, 0.0101);
    }

    @Test
    void goes_on_with_the_next_file_when_one_is_refused() throws IOException {
        Typed typed = Typed.type("bus", folder.resolve("absent.log").toString(), capture());
        assertThat(typed.code()).isEqualTo(ExitCode.REFUSED);
        assertThat(typed.err()).contains("there is no such file");
        assertThat(typed.out()).contains("441 records");
    }

    @Test
    void refuses_a_rate_that_is_none() throws IOException {
        Typed typed = Typed.type("bus", capture(), "--rate", "5 V");
        assertThat(typed.code()).isEqualTo(ExitCode.REFUSED);
        assertThat(words(typed.err())).contains("is no bit rate. Write one like \"500 kbit/s\"");
        assertThat(Typed.type("bus", capture(), "--data-rate", "fast").code()).isEqualTo(ExitCode.REFUSED);
    }

    @Test
    void asks_for_a_file() {
        assertThat(Typed.type("bus").code()).isEqualTo(ExitCode.REFUSED);
    }
}
