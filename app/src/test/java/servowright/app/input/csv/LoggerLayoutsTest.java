package servowright.app.input.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static servowright.app.input.csv.Bench.a;
import static servowright.app.input.csv.Bench.b;
import static servowright.app.input.csv.Bench.holdsSamples;
import static servowright.app.input.csv.Bench.holdsSignal;
import static servowright.app.input.csv.Bench.read;
import static servowright.app.input.csv.Bench.remarked;
import static servowright.app.input.csv.Bench.rows;
import static servowright.app.input.csv.Bench.t;
import static servowright.app.input.csv.Bench.text;
import static servowright.app.input.csv.Bench.unit;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import servowright.engine.quantity.Units;
import servowright.engine.recording.Recording;
import servowright.engine.recording.Remark;

/** Files as loggers, drives, serial monitors and numerical programs write them, with an invented signal in them. */
class LoggerLayoutsTest {
    @TempDir
    Path folder;

    private Bench bench;

    @BeforeEach
    void setUp() {
        bench = new Bench(folder);
    }

    @Test
    void reads_a_logger_with_a_time_column_per_channel() {
        String head = Bench.lines(
                "\r\n",
                "\ufeffTimestamp,2024-03-16 17:04:51,Timestamp,2024-03-16 17:04:51",
                "Interval,2E-05,Interval,2E-05",
                "Channel name,\"Force\",Channel name,\"Input 1\"",
                "Unit,\"N\",Unit,\"V\"");
        Recording recording =
                read(bench.file(rows(head, "\r\n", i -> text("%.5f,%.3f,%.5f,%.3f", i * 2e-5, a(i), i * 2e-5, b(i)))));
        assertThat(recording.clock().intervalS()).isCloseTo(20e-6, within(1e-12));
        holdsSamples(recording, "Force");
        assertThat(unit(recording, "Force")).isEqualTo("N");
        assertThat(unit(recording, "Input 1")).isEqualTo("V");
        assertThat(remarked(recording, Remark.Kind.COLUMN_LEFT_OUT)).isTrue();
    }

    @Test
    void reads_a_servo_trace_with_two_rows_of_names_and_unused_channels() {
        String head = Bench.lines(
                "\r\n",
                "Wheel",
                "Number of sampling data,400",
                "Sampling time interval(ms),0.667",
                "Time,Analog 1,Analog 2,Analog 3",
                "ms,Motor speed,Torque,Not selected");
        Recording recording =
                read(bench.file(rows(head, "\r\n", i -> text("%.6f,%.6f,%.6f,0.000000", i * 0.666666, a(i), b(i)))
                        + "\r\n"));
        assertThat(recording.clock().intervalS()).isCloseTo(0.666666e-3, within(1e-12));
        holdsSamples(recording, "Motor speed");
        assertThat(recording.channels()).hasSize(2);
        assertThat(remarked(recording, Remark.Kind.INTERVAL_DISAGREES)).isTrue();
    }

    @Test
    void reads_absolute_times_of_18_digits_exactly() {
        String head = Bench.lines(
                "\r\n",
                "Name;spin;",
                "File;C:\\data\\spin.csv;",
                "",
                "",
                "Name;actual position;velocity",
                "Data-Type;REAL64;REAL64",
                "SampleTime;10;10",
                "Unit;(None);V",
                "");
        Recording recording = read(bench.file(rows(
                        head, "\r\n", i -> text("%d;%.3f;%.3f", 132_907_764_534_190_000L + i * 200L, a(i), b(i)))
                + "EOF\r\n"));
        assertThat(recording.clock().intervalS()).isCloseTo(20e-6, within(1e-15));
        assertThat(recording.began()).hasValue(Instant.parse("2022-03-03T10:20:53.419Z"));
        holdsSamples(recording, "actual position");
        assertThat(unit(recording, "velocity")).isEqualTo("V");
        assertThat(remarked(recording, Remark.Kind.LINE_SKIPPED)).isTrue();
    }

    @Test
    void reads_a_serial_monitor_with_lost_lines_and_a_gap() {
        String text = rows(
                        "",
                        "\r\n",
                        i -> text(
                                "13:%02d:%02d.%03d -> %.3f  %d  ",
                                40 + i / 300, (i / 5) % 60, 200 * (i % 5), a(i), 510 - i % 3))
                + "garbled\r\n13:45:58.000 -> 1 2\r\n";
        Recording recording = read(bench.file(text));
        assertThat(recording.count()).isEqualTo(401);
        assertThat(recording.clock().timeS(0)).isEqualTo(13 * 3600 + 40 * 60);
        assertThat(recording.clock().timeS(1)).isCloseTo(13 * 3600 + 40 * 60 + 0.2, within(1e-9));
        assertThat(remarked(recording, Remark.Kind.GAP)).isTrue();
        assertThat(remarked(recording, Remark.Kind.LINE_SKIPPED)).isTrue();
        assertThat(recording.channel("column 2").orElseThrow().unit()).isEmpty();
    }

    @Test
    void counts_on_over_midnight() {
        Recording recording = read(bench.file(rows(
                "",
                "\n",
                i -> text(
                        "%02d:%02d:%02d.%03d -> %.3f",
                        i < 200 ? 23 : 0,
                        i < 200 ? 59 : 0,
                        (i < 200 ? 40 : 0) + (i % 200) / 10,
                        100 * (i % 10),
                        a(i)))));
        assertThat(recording.clock().intervalS()).isCloseTo(0.1, within(1e-9));
        assertThat(remarked(recording, Remark.Kind.COUNTER_WRAPPED)).isTrue();
    }

    @Test
    void reads_tabs_with_a_tab_at_the_end_and_a_16_bit_microsecond_counter() {
        Path file = bench.file(rows("", "\n", i -> text("%.3f\t%.3f\t%d\t", a(i), b(i), (16_021 + 171 * i) % 65_536)));
        assertThat(Bench.refused(file).get(0).text()).contains("column 3").contains("65536");
        Recording recording = read(
                file, ReadingHints.declare().timeColumn("3", Units.named("us")).build());
        assertThat(recording.clock().intervalS()).isCloseTo(171e-6, within(1e-12));
        holdsSamples(recording, "column 1");
        assertThat(remarked(recording, Remark.Kind.COUNTER_WRAPPED)).isTrue();
    }

    @Test
    void reads_commas_with_blanks() {
        holdsSignal(
                read(bench.file(rows("Time, Position, Iq\n", "\n", i -> text("%.5f, %.3f, %.3f", t(i), a(i), b(i))))),
                "Position");
    }

    @Test
    void reads_a_block_of_comments_with_declared_constants() {
        String head = Bench.lines(
                "\r\n",
                "# Test started at noon",
                "# Labels:",
                "# \t c1 = drive 1",
                "# kt_1 = 0.109; kt_2 = 0.109",
                "time [s],c1 torque [Nm],c1 temp [C]");
        Recording recording =
                read(bench.file(rows(head, "\r\n", i -> text("%.5f,%.3f,%.1f", t(i), a(i), 20 + 0.1 * i))));
        holdsSignal(recording, "c1 torque");
        assertThat(unit(recording, "c1 torque")).isEqualTo("Nm");
        assertThat(recording.channel("c1 temp").orElseThrow().samples()[0]).isCloseTo(293.15, within(1e-9));
    }

    @Test
    void reads_a_header_in_the_last_comment() {
        holdsSignal(
                read(bench.file(rows(
                        "# made by a script\n# time_s a b\n", "\n", i -> text("%.18e %.18e %.18e", t(i), a(i), b(i))))),
                "a");
    }

    @Test
    void reads_semicolons_with_decimal_commas_and_a_row_of_units() {
        String head = Bench.lines("\r\n", "\ufeffZeit;Kanal A", "(ms);(V)", "");
        Recording recording = read(bench.file(rows(
                head, "\r\n", i -> text("%.6f;%.3f", t(i) * 1e3, a(i)).replace('.', ','))));
        holdsSignal(recording, "Kanal A");
        assertThat(unit(recording, "Kanal A")).isEqualTo("V");
    }

    @Test
    void reads_quoted_cells_with_decimal_commas_between_commas() {
        Recording recording = read(bench.file(rows(
                "\"t / ms\",\"U / V\"\n",
                "\n",
                i -> text(
                        "\"%s\",\"%s\"",
                        text("%.3f", t(i) * 1e3).replace('.', ','),
                        text("%.3f", a(i)).replace('.', ',')))));
        holdsSignal(recording, "U");
    }

    @ParameterizedTest
    @ValueSource(strings = {"UTF-16LE", "UTF-16BE"})
    void reads_two_byte_characters_with_and_without_a_mark(String charset) {
        String text = rows("Time\tSpannung \u00fc\r\ns\tV\r\n", "\r\n", i -> text("%.6f\t%.3f", t(i), a(i)));
        holdsSignal(read(bench.file(text, Charset.forName(charset))), "Spannung \u00fc");
        holdsSignal(read(bench.file("\ufeff" + text, Charset.forName(charset))), "Spannung \u00fc");
    }

    @Test
    void reads_segments_whose_times_start_anew() {
        String head = Bench.lines(
                "\n",
                "Segments,4,SegmentSize,100",
                "Segment,TrigTime,TimeSinceSegment1",
                "#1,01-Jan-2024 10:00:00,0",
                "#2,01-Jan-2024 10:00:01,1",
                "#3,01-Jan-2024 10:00:02,2",
                "#4,01-Jan-2024 10:00:03,3",
                "Time,Ampl");
        Path file = bench.file(rows(head, "\n", i -> text("%.5e,%.3f", i % 100 * 2e-5, a(i))));
        Recording recording = read(file);
        assertThat(recording.clock().segmentStarts()).containsExactly(0, 100, 200, 300);
        holdsSamples(recording, "Ampl");
        Recording third = read(file, ReadingHints.declare().segment(3).build());
        assertThat(third.count()).isEqualTo(100);
        assertThat(third.channel("Ampl").orElseThrow().samples()[0]).isEqualTo(a(200));
        assertThat(Bench.refused(file, ReadingHints.declare().segment(5).build())
                        .get(0)
                        .text())
                .contains("no segment 5");
    }

    @Test
    void reads_dates_with_times() {
        Recording recording = read(bench.file(rows(
                "when,CH1 [mV]\n",
                "\n",
                i -> text("2024-02-24 14:09:%02d.%03d,%.3f", i / 10, 100 * (i % 10), a(i) * 1e3))));
        assertThat(recording.began()).hasValue(Instant.parse("2024-02-24T14:09:00Z"));
        assertThat(recording.clock().intervalS()).isCloseTo(0.1, within(1e-9));
        holdsSamples(recording, "CH1");
    }

    @Test
    void reads_bare_carriage_returns() {
        holdsSignal(read(bench.file(rows("time,CH1\r", "\r", i -> text("%.6f,%.3f", t(i), a(i))))), "CH1");
    }

    @Test
    void reads_points_of_a_curve_when_the_user_says_that_they_have_no_time() {
        Path file = bench.file(rows("Speed (rpm),Torque (Nm)\n", "\n", i -> text("%d,%.3f", 15 * i, a(i))));
        assertThat(Bench.asked(file)).isEqualTo("sample_interval");
        Recording recording = read(file, ReadingHints.declare().orderOnly().build());
        assertThat(recording.clock().timed()).isFalse();
        assertThat(recording.channel("Speed").orElseThrow().samples()[2]).isCloseTo(Math.PI, within(1e-12));
        holdsSamples(recording, "Torque");
    }

    @Test
    void asks_for_the_unit_of_whole_numbers_called_time() {
        Path file = bench.file(rows("time,CH1\n", "\n", i -> text("%d,%.3f", 20 * i, a(i))), StandardCharsets.US_ASCII);
        assertThat(Bench.asked(file)).isEqualTo("time_column");
    }
}
