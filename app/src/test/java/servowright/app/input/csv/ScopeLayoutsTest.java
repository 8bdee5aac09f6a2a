package servowright.app.input.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static servowright.app.input.csv.Bench.a;
import static servowright.app.input.csv.Bench.asked;
import static servowright.app.input.csv.Bench.b;
import static servowright.app.input.csv.Bench.holdsSamples;
import static servowright.app.input.csv.Bench.holdsSignal;
import static servowright.app.input.csv.Bench.read;
import static servowright.app.input.csv.Bench.remarked;
import static servowright.app.input.csv.Bench.rows;
import static servowright.app.input.csv.Bench.t;
import static servowright.app.input.csv.Bench.text;
import static servowright.app.input.csv.Bench.unit;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import servowright.engine.quantity.Units;
import servowright.engine.recording.Recording;
import servowright.engine.recording.Remark;
import servowright.engine.recording.UniformClock;

/** Files as scopes write them, with an invented signal in them. */
class ScopeLayoutsTest {
    @TempDir
    Path folder;

    private Bench bench;

    @BeforeEach
    void setUp() {
        bench = new Bench(folder);
    }

    @Test
    void reads_an_index_with_start_and_increment_that_begins_at_22() {
        String head = "X,CH1,CH3,Start,Increment,\r\nSequence,Volt,Volt,-4.440000e-03,2.000000e-05\r\n";
        Recording recording = read(bench.file(rows(head, "\r\n", i -> text("%d,%.3e,%.3e,", i + 22, a(i), b(i)))));
        holdsSignal(recording, "CH1");
        assertThat(recording.channel("CH3").orElseThrow().samples()[7]).isEqualTo(b(7));
        assertThat(unit(recording, "CH1")).isEqualTo("V");
    }

    @Test
    void reads_an_empty_first_heading_and_rows_that_end_in_a_comma_and_a_blank() {
        String head = ",CH2,CH4\r\nSecond,Volt,Volt\r\n";
        Recording recording = read(bench.file(rows(head, "\r\n", i -> text("%.5e,%.3e,%.3e, ", t(i), a(i), b(i)))));
        holdsSignal(recording, "CH2");
        assertThat(recording.channel("CH4").orElseThrow().samples()).hasSize(400);
    }

    @Test
    void takes_the_unit_from_a_second_row_of_headings_below_the_names() {
        String head = "\"Interval (s) =\",2E-5\n\"Channel\",\"CH 1\"\n\"Time (s)\",\"Voltage (V)\"\n";
        Recording recording = read(bench.file(rows(head, "\n", i -> text("%.5f,%.3f", t(i), a(i)))));
        assertThat(unit(recording, "CH 1")).isEqualTo("V");
    }

    @Test
    void reads_names_over_units_with_trailing_commas() {
        String head = "X,CH1,CH2,\nSecond,Volt,Volt,\n";
        holdsSignal(read(bench.file(rows(head, "\n", i -> text("%.6e,%.3f,%.3f,", t(i), a(i), b(i))))), "CH1");
    }

    @Test
    void reads_units_within_the_names_and_says_that_the_time_has_none() {
        Recording recording =
                read(bench.file(rows("X,CH 1 (V),CH 2 (V)\n", "\n", i -> text("%.8f,%.3f,%.3f", t(i), a(i), b(i)))));
        holdsSignal(recording, "CH 1");
        assertThat(unit(recording, "CH 2")).isEqualTo("V");
        assertThat(remarked(recording, Remark.Kind.UNIT_NOT_STATED)).isTrue();
    }

    @Test
    void reads_quoted_keys_with_equal_signs_and_takes_the_channel_names_from_them() {
        String head = """
                "Number of Data points =",400,
                "Time Scale (s/DIV) =",1E-3,
                "Sampling Frequency (Hz)=",50000,
                "Channel Data","CH 1","CH 2"
                "Attenuation = ",10,1
                "Inverted = ","NO","NO"
                "Time (s)","Voltage (V)","Voltage (V)"
                """;
        Recording recording =
                read(bench.file(rows(head, "\n", i -> text("%s,%s,%s", (float) t(i), a(i), b(i))) + ",,\n"));
        assertThat(recording.count()).isEqualTo(400);
        assertThat(recording.clock().intervalS()).isCloseTo(20e-6, within(1e-11));
        holdsSamples(recording, "CH 1");
        assertThat(recording.channel("CH 2")).isPresent();
        assertThat(remarked(recording, Remark.Kind.LENGTH_DISAGREES)).isFalse();
    }

    @Test
    void asks_for_the_interval_of_bare_columns_and_invents_none() {
        Path file = bench.file(rows("", "\r\n", i -> text("%.6f,%.6f", a(i), b(i))));
        assertThat(asked(file)).isEqualTo("sample_interval");
        Recording recording =
                read(file, ReadingHints.declare().sampleInterval(20e-6).build());
        holdsSamples(recording, "column 1");
        assertThat(recording.clock().intervalS()).isEqualTo(20e-6);
    }

    @Test
    void asks_for_the_time_column_where_one_column_rises_evenly() {
        Path file = bench.file(rows("", "\n", i -> text("%.3f %.3f %d", a(i), b(i), 780 + 20 * i)));
        assertThat(Bench.refused(file).get(0).text()).contains("column 3 rises by 20");
        Recording recording = read(
                file, ReadingHints.declare().timeColumn("3", Units.named("us")).build());
        assertThat(recording.clock().intervalS()).isCloseTo(20e-6, within(1e-15));
        assertThat(recording.clock().timeS(0)).isCloseTo(780e-6, within(1e-15));
        holdsSamples(recording, "column 1");
    }

    @Test
    void rebuilds_a_time_column_in_which_each_time_stands_twice() {
        Recording recording = read(bench.file(rows(
                "in s,C1 in V,C2 in V\n", "\n", i -> text("%.5E,%.5E,%.5E", t(i - i % 2), a(i), b(i)))));
        holdsSignal(recording, "C1");
        assertThat(recording.clock()).isInstanceOf(UniformClock.class);
        Remark rounded = recording.remarks().stream()
                .filter(r -> r.kind() == Remark.Kind.CLOCK_ROUNDED)
                .findFirst()
                .orElseThrow();
        assertThat(rounded.handled()).hasValue("rebuilt from row count and span: interval 20 us");
    }

    @Test
    void reads_channel_numbers_as_names_and_explicit_plus_signs() {
        String head = "x-axis,1,4\nsecond,Volt,Volt\n";
        Recording recording = read(bench.file(rows(
                head, "\n", i -> text("%+.4fE-03,%+.4fE-03,%+.4fE+00", t(i) * 1e3, a(i) * 1e3, b(i)))));
        holdsSignal(recording, "1");
        assertThat(unit(recording, "4")).isEqualTo("V");
    }

    @Test
    void reads_a_preamble_that_stands_beside_the_data() {
        String[] keys = {
            "Record Length,4.000000e+02", "Sample Interval,2.000000e-05", "Trigger Point,2.000000000000e+02", ",", ",",
            "Source,CH1", "Vertical Units,V", "Vertical Scale,1.000000e+00", "Horizontal Units,s", "Probe Atten,1.0e+00"
        };
        Recording recording = read(bench.file(rows(
                "",
                "\n",
                i -> text("%s,,%s%014.9f,%10.3f,", i < keys.length ? keys[i] : ",", i < 20 ? "  " : "", t(i), a(i)))));
        holdsSignal(recording, "CH1");
        assertThat(unit(recording, "CH1")).isEqualTo("V");
    }

    @Test
    void reads_the_same_with_a_heading_somebody_added() {
        String[] keys = {"Record Length,4.0e+02", "Sample Interval,2.0e-05", "Source,CH1", "Vertical Units,mV"};
        Recording recording = read(bench.file(rows(
                ",,,Time,Probe on A,\n",
                "\n",
                i -> text("%s,,-%s,%9.3f,", i < keys.length ? keys[i] : ",", text("%013.9f", -t(i)), a(i)))));
        assertThat(recording.clock().timeS(0)).isCloseTo(-4e-3, within(1e-12));
        assertThat(recording.channel("Probe on A").orElseThrow().samples()[0]).isCloseTo(a(0) / 1000, within(1e-12));
    }

    @Test
    void reads_keys_with_a_channel_before_the_value() {
        String head = """
                Record Length,Analog:1400
                Sample Interval,CH1:0.0000200000000
                Vertical Units,CH1:V,,,
                Vertical Scale,CH1:0.50,,,
                Horizontal Units,us,,,
                Horizontal Scale,20000.0000000000,,,
                Software Version,1.3,,,
                Source,CH1
                Second,Volt
                """;
        Recording recording = read(bench.file(rows(head, "\n", i -> text(" %.11f,%.5f", t(i), a(i)))));
        holdsSignal(recording, "CH1");
        assertThat(remarked(recording, Remark.Kind.LENGTH_DISAGREES)).isTrue();
    }

    @Test
    void asks_what_a_count_is_worth_and_reads_once_it_is_declared() {
        String head = """
                Memory Length,400,
                Trigger Level,4.600E-01,
                Source,CH1,
                Vertical Units,V,
                Vertical Scale,5.000E-01,
                Horizontal Units,s,
                Sampling Period,2.000E-05,
                Firmware, V1.12,
                Waveform Data,
                """;
        Path file = bench.file(rows(head, "\n", i -> text("%.0f,", 25 * a(i))));
        assertThat(asked(file)).isEqualTo("scale");
        ReadingHints.Scale worth = new ReadingHints.Scale(20, 0, Optional.of(Units.named("mV")));
        Recording recording =
                read(file, ReadingHints.declare().scale("CH1", worth).build());
        assertThat(recording.clock().intervalS()).isEqualTo(20e-6);
        assertThat(recording.channel("CH1").orElseThrow().samples()[33])
                .isCloseTo(Math.rint(25 * a(33)) * 0.02, within(1e-12));
    }

    @Test
    void reads_time_and_volts_below_keys_with_units_in_their_values() {
        String head = """
                Memory Length,400,
                Trigger Level,-12.0mV,
                Source,CH2,
                Probe Ratio,10.0X,
                Vertical Units,V,
                Vertical Scale,1.000E+00,
                Horizontal Units,s,
                Sampling Period,2.000E-05,
                Date,12-Mar-2024 10:22:13,
                Waveform Data,
                """;
        Recording recording = read(bench.file(rows(head, "\r\n", i -> text("%.6f,%.3f,", t(i), a(i)))));
        holdsSignal(recording, "CH2");
        assertThat(unit(recording, "CH2")).isEqualTo("V");
    }

    @Test
    void reads_a_long_list_of_keys_with_an_empty_label() {
        StringBuilder head =
                new StringBuilder("Format,2.0E,\nMemory Length,400,\nLabel,,\nSource,CH1,\nVertical Units,V,\n");
        for (int k = 0; k < 20; k++) {
            head.append("Setting ")
                    .append(k)
                    .append(',')
                    .append(k % 3 == 0 ? "Off" : "1.0E-0" + k % 9)
                    .append(",\n");
        }
        head.append("Sampling Period,2.000E-05,\nWaveform Data,\n");
        Recording recording = read(bench.file(rows(head.toString(), "\n", i -> text("%.3E,", a(i)))));
        assertThat(recording.clock().intervalS()).isEqualTo(20e-6);
        holdsSamples(recording, "CH1");
    }

    @Test
    void says_that_a_column_alternates_largest_and_smallest() {
        String head = "Model,ABC1\r\n\r\nSample Interval,2.0e-05\r\nRecord Length,400\r\nTIME,CH1,CH1 Peak Detect\r\n";
        Recording recording = read(bench.file(rows(
                head, "\r\n", i -> text("%.6f,%.3f,%.3f", t(i), a(i), a(i) + (i % 2 == 0 ? 0.1 : -0.1)))));
        holdsSignal(recording, "CH1");
        assertThat(remarked(recording, Remark.Kind.PEAK_PAIRS)).isTrue();
    }

    @Test
    void reads_comment_lines_with_a_character_that_is_not_utf_8() {
        String head = """
                #Acquisition
                #Sample rate: 50000Hz
                #Samples: 400
                #Phase: 0 \u00b0

                Time (s),Channel 1 (V),Channel 2 (V)
                """;
        Recording recording = read(bench.file(
                rows(head, "\n", i -> text("%.6f,%s,%s", t(i), a(i), b(i))), StandardCharsets.ISO_8859_1));
        holdsSignal(recording, "Channel 1");
        assertThat(remarked(recording, Remark.Kind.BAD_CHARACTER)).isTrue();
    }

    @Test
    void asks_about_columns_whose_names_mean_nothing() {
        Path file = bench.file(rows("\ufeffA,B\r\n", "\r\n", i -> text("%.6f,%.3f", t(i), a(i))));
        assertThat(asked(file)).isEqualTo("time_column");
        holdsSignal(
                read(
                        file,
                        ReadingHints.declare().timeColumn("A", Units.named("s")).build()),
                "B");
    }

    @Test
    void rebuilds_the_time_of_a_file_saved_again_by_a_spreadsheet() {
        String head = "Record Length,400,,,,,,\nSample Interval,2.00E-05,,,,,,\nSource,CH1,,,,,,\n";
        Recording recording =
                read(bench.file(rows(head, "\n", i -> text(",,,%.3f,%.3f,,%.3f,%.3f", t(i), a(i), t(i), a(i)))));
        holdsSamples(recording, "CH1");
        assertThat(recording.clock().intervalS()).isEqualTo(20e-6);
        assertThat(recording.clock().timeS(0)).isCloseTo(-4e-3, within(10e-6));
        assertThat(recording.channels()).hasSize(1);
        assertThat(remarked(recording, Remark.Kind.COLUMN_LEFT_OUT)).isTrue();
        assertThat(remarked(recording, Remark.Kind.CLOCK_ROUNDED)).isTrue();
    }
}
