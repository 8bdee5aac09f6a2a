package servowright.app.input.capture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import servowright.engine.capture.CaptureSummary;

/** What a console shows of a frame, with each option that changes the line. */
class ConsoleLinesTest {
    @TempDir
    Path folder;

    private Path file(String text) throws IOException {
        return Files.writeString(folder.resolve("console.txt"), text);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "  can0  123   [8]  11 22 33 44 55 66 77 88 | 123 - 8/8 1122334455667788",
                "  can0  12345678   [2]  11 22 | 12345678 x 2/2 1122",
                "  can0  123   [0] | 123 - 0/0",
                "  can0  123   [4]  remote request | 123 r 4/4",
                "  can0  123  [12]  00 01 02 03 04 05 06 07 08 09 0A 0B | 123 f 12/9 000102030405060708090A0B",
                "  can0  RX B E  123  [02]  11 22 | 123 fbp 2/2 1122",
                "  can0  TX - -  123   [2]  11 22 | 123 o 2/2 1122",
                "  can0  20000004   [8]  00 0C 00 00 00 00 00 00   ERRORFRAME | 4 e 8/8 000C000000000000",
                "  can0  123   [3]  33`22`11 | 123 - 3/3 112233",
                "  can0  123   [2]  00010001 00100010 | 123 - 2/2 1122",
                "  can0  123   [2]  41 42   'AB' | 123 - 2/2 4142",
                " (001.999987)  can0  123   [1]  11 | 123 - 1/1 11"
            })
    void reads_the_line(String line, String frame) throws IOException {
        assertThat(Seen.in(file(line + "\n")).frames).containsExactly(frame);
    }

    @Test
    void reads_stamps_in_seconds_and_as_dates() throws IOException {
        Seen seconds = Seen.in(file(" (1700000000.000250)  can0  123   [1]  11\n"));
        Seen dates = Seen.in(file(" (2023-11-14 22:13:20.000250)  can0  123   [1]  11\n"));
        assertThat(seconds.timesNs).containsExactly(1_700_000_000_000_250_000L);
        assertThat(dates.timesNs).isEqualTo(seconds.timesNs);
    }

    @Test
    void leaves_colours_of_a_terminal_out() throws IOException {
        Seen seen = Seen.in(file("  \u001b[31mcan0\u001b[0m  123   [1]  11\n"));
        assertThat(seen.frames).containsExactly("123 - 1/1 11");
    }

    @Test
    void adds_up_stamps_that_are_differences() throws IOException {
        StringBuilder text = new StringBuilder();
        for (int k = 0; k < 60; k++) {
            text.append(k % 2 == 0 ? " (000.001000)" : " (000.000250)").append("  can0  123   [1]  11\n");
        }
        Seen seen = new Seen();
        CaptureSummary summary = Seen.read(file(text.toString()), seen);
        assertThat(seen.timesNs.get(59)).isEqualTo(30 * 1_250_000L);
        assertThat(summary.notes()).anyMatch(n -> n.contains("differences"));
    }

    @Test
    void refuses_text_without_frames_and_missing_files() throws IOException {
        assertThat(Seen.refusal(file("nothing of that kind\n"))).contains("no CAN frames");
        assertThat(Seen.refusal(file(""))).contains("no CAN frames");
        assertThat(Seen.refusal(folder.resolve("absent.log"))).contains("no such file");
        assertThat(Seen.refusal(folder)).contains("not a regular file");
    }
}
