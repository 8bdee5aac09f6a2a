package servowright.app.input.capture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import servowright.app.FieldData;
import servowright.engine.capture.CaptureSummary;

/** Real captures in every form that was found. */
class CaptureFieldTest {

    @ParameterizedTest
    @CsvSource({
        "auto-a.candump.log, 1087",
        "auto-a.le-canid.pcap, 1087",
        "marine-be.500.pcap, 500",
        "marine-comments-log.txt, 390",
        "marine-crlf-absolute.log, 106",
        "marine-crlf-zeropad.log, 23",
        "marine-lf-zeropad.log, 23",
        "marine-human-notime.txt, 402",
        "sll-canfd.le-canid.pcap, 4"
    })
    void reads_every_frame_of_a_capture(String file, int frames) {
        CaptureSummary summary = Seen.read(FieldData.captures().resolve(file), new Seen());
        assertThat(summary.frames()).isEqualTo(frames);
        assertThat(summary.malformed() + summary.others()).isZero();
    }

    /** Odd lines as they are kept beside the repository, with both line ends; the repository has its own copy of one. */
    @ParameterizedTest
    @ValueSource(strings = {"synthetic-odd-cases.log", "synthetic-odd-cases.crlf.log"})
    void reads_every_odd_line_as_its_table_says(String file) throws IOException {
        Path folder = FieldData.captures();
        OddCasesTest.agrees(folder.resolve(file), Files.readString(folder.resolve("synthetic-odd-cases.expected.csv")));
        CaptureSummary summary = Seen.read(folder.resolve(file), new Seen());
        assertThat(summary.lost()).isEqualTo(7);
        assertThat(summary.xl()).isEqualTo(1);
        assertThat(summary.malformed()).isEqualTo(5);
    }

    /** A new file beside the repository is to be looked at, not passed over. */
    @Test
    void no_capture_is_left_unread() throws IOException {
        try (Stream<Path> files = Files.list(FieldData.captures())) {
            List<Path> captures =
                    files.filter(f -> !f.toString().matches(".*\\.(md|csv)")).toList();
            assertThat(captures).hasSize(11).allSatisfy(f -> {
                CaptureSummary summary = Seen.read(f, new Seen());
                assertThat(summary.frames()).isPositive();
            });
        }
    }

    @Test
    void reads_the_same_traffic_from_a_log_and_from_packets_with_reversed_identifiers() {
        Seen log = Seen.in(FieldData.captures().resolve("auto-a.candump.log"));
        Seen packets = Seen.in(FieldData.captures().resolve("auto-a.le-canid.pcap"));
        assertThat(packets.frames).hasSize(1087).isEqualTo(log.frames);
        assertThat(packets.timesNs).isEqualTo(log.timesNs);
    }

    @Test
    void says_that_identifiers_were_reversed_and_only_where_they_are() {
        assertThat(notes("auto-a.le-canid.pcap")).anyMatch(n -> n.contains("reverse byte order"));
        assertThat(notes("sll-canfd.le-canid.pcap")).anyMatch(n -> n.contains("reverse byte order"));
        assertThat(notes("marine-be.500.pcap")).isEmpty();
    }

    private static List<String> notes(String file) {
        return Seen.read(FieldData.captures().resolve(file), new Seen()).notes();
    }

    @Test
    void takes_padded_records_behind_a_cooked_header_as_fd() {
        Seen seen = Seen.in(FieldData.captures().resolve("sll-canfd.le-canid.pcap"));
        assertThat(seen.frames).hasSize(4).allMatch(f -> f.startsWith("123 fb 12/9 "));
    }

    @Test
    void reads_the_same_from_both_line_ends() {
        Seen one = Seen.in(FieldData.captures().resolve("marine-lf-zeropad.log"));
        Seen other = Seen.in(FieldData.captures().resolve("marine-crlf-zeropad.log"));
        assertThat(other.frames).isEqualTo(one.frames);
    }

    @Test
    void reads_the_cycles_of_two_fd_drives_from_a_console_without_stamps() {
        Seen seen = Seen.in(FieldData.files("c01-can-fd-drives").get(0));
        assertThat(seen.frames).hasSize(500);
        assertThat(seen.timesNs).allMatch(t -> t == Long.MIN_VALUE);
        for (int bytes : new int[] {19, 24, 35, 64}) { // command and reply of each drive, counted outside
            assertThat(Collections.frequency(seen.lengths, bytes))
                    .as("%d bytes", bytes)
                    .isBetween(115, 116);
        }
        assertThat(seen.frames.stream()
                        .map(f -> f.split(" ")[0] + f.contains(" xf "))
                        .distinct())
                .contains("8001true", "8002true", "100false", "200false");
    }

    /** Frames counted by hand in each file, error reports included. */
    @ParameterizedTest
    @CsvSource({"0, 4", "1, 20", "2, 1", "3, 2", "4, 2", "5, 11", "6, 11"})
    void reads_tables_of_bus_analysers_without_loss(int file, int frames) {
        Path path = FieldData.files("c02-can-log-formats").get(file);
        CaptureSummary summary = Seen.read(path, new Seen());
        assertThat(summary.frames()).isEqualTo(frames);
        assertThat(summary.malformed()).isZero();
    }

    @Test
    void reads_remote_fd_and_error_lines_of_a_table() {
        Seen seen = Seen.in(FieldData.files("c02-can-log-formats").get(1));
        assertThat(seen.frames.subList(0, 7))
                .containsExactly(
                        "0 e 8/8 0000000000000000",
                        "0 e 8/8 0000000000000000",
                        "0 e 8/8 0000000000000000",
                        "100 ro 0/0",
                        "200 ro 0/0",
                        "300 ro 8/8",
                        "18EBFF00 x 8/8 01A00FA6603BD140");
        assertThat(seen.frames).anyMatch(f -> f.startsWith("4EE f 64/15 01020304"));
        assertThat(seen.frames).anyMatch(f -> f.startsWith("300 fb 8/8 0102030405060708"));
    }
}
