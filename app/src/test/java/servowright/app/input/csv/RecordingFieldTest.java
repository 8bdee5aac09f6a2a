package servowright.app.input.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static servowright.app.input.csv.Bench.read;
import static servowright.app.input.csv.Bench.remarked;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import servowright.app.FieldData;
import servowright.engine.known.Problem;
import servowright.engine.quantity.Units;
import servowright.engine.recording.Recording;
import servowright.engine.recording.Remark;

/** Real files in every layout that was found: read, or refused with the question that the user can answer. */
class RecordingFieldTest {

    /** Rows, channels and interval were counted and computed outside, from the bare columns of each file. */
    @ParameterizedTest
    @CsvSource({
        "s01-bemf-pmsm-scope, 0, 25001, 1, 0.8e-6",
        "s02-scope-layouts-a, 0, 8192, 2, 4e-6",
        "s02-scope-layouts-a, 2, 8192, 2, 2e-9",
        "s02-scope-layouts-a, 3, 1200, 3, 20e-6",
        "s02-scope-layouts-a, 4, 1024, 2, 1.0009775171e-5",
        "s03-scope-freqresp-dcmotor, 0, 20000, 2, 600e-6",
        "s03-scope-freqresp-dcmotor, 1, 20000, 2, 600e-6",
        "s03-scope-freqresp-dcmotor, 2, 20000, 2, 120e-6",
        "s03-scope-freqresp-dcmotor, 3, 20000, 2, 60e-6",
        "s03-scope-freqresp-dcmotor, 4, 20000, 2, 30e-6",
        "s03-scope-freqresp-dcmotor, 5, 20000, 2, 12e-6",
        "s03-scope-freqresp-dcmotor, 6, 20000, 2, 12e-6",
        "s05-scope-side-preamble, 0, 2500, 1, 40e-6",
        "s05-scope-side-preamble, 1, 2500, 1, 40e-6",
        "s06-scope-xaxis, 0, 2000, 3, 250e-6",
        "s07-scope-hash-comments, 0, 8192, 2, 6.25e-6",
        "s08-scope-key-colon, 0, 39988, 1, 2e-6",
        "s10-derived-layouts, 0, 5001, 1, 4e-6",
        "s10-derived-layouts, 1, 5001, 1, 4e-6",
        "s10-derived-layouts, 2, 5001, 1, 4e-6",
        "s10-derived-layouts, 3, 5001, 1, 4e-6",
        "m02-servo-axis-log, 0, 26999, 5, 1e-3",
        "m02-servo-axis-log, 1, 3717, 5, 1e-3",
        "m03-cogging-hold-map, 0, 31666, 6, 48.732607e-3",
        "m05-bldc-duty-to-speed, 0, 8334, 3, 720e-6",
        "m06-servo-trace-and-force, 0, 1078, 2, 500e-6",
        "m06-servo-trace-and-force, 1, 1024, 4, 0.666666e-3",
        "e01-angle-error-resolver, 0, 3935, 3, 10e-3",
        "e01-angle-error-resolver, 1, 3005, 3, 10e-3"
    })
    void reads_what_states_its_time(String folder, int file, int rows, int channels, double intervalS) {
        Recording recording = read(FieldData.files(folder).get(file));
        assertThat(recording.count()).isEqualTo(rows);
        assertThat(recording.channels()).hasSize(channels);
        assertThat(recording.clock().intervalS()).isCloseTo(intervalS, within(1e-6 * intervalS));
    }

    @ParameterizedTest
    @CsvSource({
        "s02-scope-layouts-a, 1, sample_interval",
        "s04-scope-counts-no-time, 0, scale",
        "s04-scope-counts-no-time, 1, scale",
        "s04-scope-counts-no-time, 2, scale",
        "s09-phase-terminals-adc, 0, time_column",
        "m01-flywheel-dyno, 0, time_column",
        "m01-flywheel-dyno, 1, time_column",
        "m01-flywheel-dyno, 2, time_column",
        "m07-bldc-curves, 0, sample_interval",
        "m07-bldc-curves, 1, sample_interval",
        "m07-bldc-curves, 2, sample_interval",
        "e02-sincos-ellipse, 0, sample_interval",
        "j01-leg-joint-cycles, 0, sample_interval",
        "j01-leg-joint-cycles, 1, time_column",
        "j01-leg-joint-cycles, 4, time_column",
        "j02-arm-single-joint, 1, time_column",
        "j02-arm-single-joint, 2, time_column"
    })
    void asks_for_the_one_declaration_that_is_missing(String folder, int file, String key) {
        assertThat(Bench.asked(FieldData.files(folder).get(file))).isEqualTo(key);
    }

    @Test
    void refuses_what_is_not_text() {
        Path binary = FieldData.files("m05-bldc-duty-to-speed").get(1);
        assertThat(Bench.refused(binary).get(0).kind()).isEqualTo(Problem.Kind.UNREADABLE);
    }

    @ParameterizedTest
    @CsvSource({"0, 4295", "1, 3067", "2, 641", "3, 692", "4, 341", "5, 412"})
    void reads_a_serial_monitor_with_a_time_of_day_before_each_row(int file, int lines) {
        Recording recording =
                read(FieldData.files("f01-inverter-faults-serial-log").get(file));
        assertThat(recording.count()).isEqualTo(lines);
        assertThat(recording.clock().timed()).isTrue();
    }

    @Test
    void says_that_lines_of_a_serial_log_were_lost_for_85_seconds() {
        Recording recording =
                read(FieldData.files("f01-inverter-faults-serial-log").get(1));
        assertThat(remark(recording, Remark.Kind.GAP).text()).contains("84.917 s");
    }

    @Test
    void finds_the_gap_of_7_ms_in_an_axis_log() {
        Recording recording = read(FieldData.files("m02-servo-axis-log").get(0));
        assertThat(remark(recording, Remark.Kind.GAP).text()).contains("7.1 ms");
        assertThat(recording.clock().jitterS()).isPositive();
    }

    @Test
    void rebuilds_a_time_column_with_too_few_digits_and_says_so() {
        for (Path file : FieldData.files("s03-scope-freqresp-dcmotor")) {
            Recording recording = read(file);
            assertThat(remarked(recording, Remark.Kind.CLOCK_ROUNDED))
                    .as("%s", file)
                    .isTrue();
        }
    }

    @Test
    void says_that_a_cut_file_is_shorter_than_it_states() {
        Recording recording = read(FieldData.files("s08-scope-key-colon").get(0));
        assertThat(remark(recording, Remark.Kind.LENGTH_DISAGREES).text())
                .contains("140000")
                .contains("39988");
    }

    @Test
    void trusts_the_times_of_a_trace_above_its_rounded_interval() {
        Recording recording = read(FieldData.files("m06-servo-trace-and-force").get(1));
        assertThat(remarked(recording, Remark.Kind.INTERVAL_DISAGREES)).isTrue();
        assertThat(recording.clock().timeS(1023)).isCloseTo(0.681999, within(2e-6));
    }

    @Test
    void takes_a_declared_counter_that_wraps_as_time() {
        ReadingHints hints = ReadingHints.declare()
                .timeColumn("6", Units.find("us").orElseThrow())
                .build();
        Recording recording = read(FieldData.files("s09-phase-terminals-adc").get(0), hints);
        assertThat(recording.count()).isEqualTo(1000);
        double lastS = recording.clock().timeS(999) - recording.clock().timeS(0);
        assertThat(lastS).isCloseTo(170.5e-3, within(0.1e-3)); // computed outside: two wraps of 16 bits
    }

    @Test
    void repairs_ten_drop_outs_of_a_spin_down_only_when_told_to() {
        ReadingHints.Builder hints =
                ReadingHints.declare().timeColumn("6", Units.find("ms").orElseThrow());
        Path file = FieldData.files("m01-flywheel-dyno").get(1);
        Recording kept = read(file, hints.build());
        Recording repaired = read(file, hints.repairDropOuts().build());
        long found = kept.remarks().stream()
                .filter(r -> r.kind() == Remark.Kind.DROP_OUT)
                .mapToLong(Remark::count)
                .sum();
        assertThat(found).isGreaterThanOrEqualTo(10);
        assertThat(differing(kept, repaired)).isEqualTo(found);
    }

    private static long differing(Recording a, Recording b) {
        long n = 0;
        for (int k = 0; k < a.channels().size(); k++) {
            double[] x = a.channels().get(k).samples();
            double[] y = b.channels().get(k).samples();
            for (int i = 0; i < x.length; i++) {
                n += x[i] == y[i] ? 0 : 1;
            }
        }
        return n;
    }

    @Test
    void takes_counts_once_their_worth_is_declared() {
        ReadingHints hints = ReadingHints.declare()
                .scale(
                        "CH1",
                        new ReadingHints.Scale(
                                0.02, 0, Optional.of(Units.find("V").orElseThrow())))
                .build();
        Recording recording = read(FieldData.files("s04-scope-counts-no-time").get(0), hints);
        assertThat(recording.count()).isEqualTo(4000);
        assertThat(recording.clock().intervalS()).isCloseTo(4e-6, within(1e-12));
        assertThat(recording.channels().get(0).spread().most()).isCloseTo(1.68, within(1e-9)); // 84 counts
    }

    @Test
    void takes_the_rows_of_a_curve_without_a_time() {
        ReadingHints hints = ReadingHints.declare().orderOnly().build();
        for (Path file : FieldData.files("m07-bldc-curves")) {
            Recording curve = read(file, hints);
            assertThat(curve.clock().timed()).isFalse();
            assertThat(curve.channel("Torque").orElseThrow().unit()).isPresent();
        }
    }

    /** The four files hold every fifth row of one scope trace, rewritten in other layouts with six digits. */
    @ParameterizedTest
    @CsvSource({"0", "1", "2", "3"})
    void reads_the_same_trace_from_every_layout(int file) {
        Recording other = read(FieldData.files("s10-derived-layouts").get(file));
        double[] whole = read(FieldData.files("s01-bemf-pmsm-scope").get(0))
                .channels()
                .get(0)
                .samples();
        double[] part = other.channels().get(0).samples();
        for (int i = 0; i < part.length; i++) {
            assertThat(part[i]).as("row %d", i).isCloseTo(whole[5 * i], within(0.5e-3));
        }
    }

    @Test
    void sees_three_segments_whose_times_start_anew() {
        List<Path> files = FieldData.files("s10-derived-layouts");
        Recording recording = read(files.get(2));
        assertThat(recording.segmentCount()).isEqualTo(3);
        assertThat(recording.clock().segmentStarts()).containsExactly(0, 1667, 3334);
        ReadingHints second = ReadingHints.declare().segment(2).build();
        assertThat(read(files.get(2), second).count()).isEqualTo(1667);
    }

    private static Remark remark(Recording recording, Remark.Kind kind) {
        return recording.remarks().stream()
                .filter(r -> r.kind() == kind)
                .findFirst()
                .orElseThrow();
    }
}
