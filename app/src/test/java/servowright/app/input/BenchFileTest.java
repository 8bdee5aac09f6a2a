package servowright.app.input;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;

class BenchFileTest {
    private static final String MACHINE = "machine: Cart\nmotors:\n  hub:\n    magnets: 20\n";

    @TempDir
    private Path dir;

    private Folder bench(String text) {
        return Folder.in(dir)
                .with("machine.yaml", MACHINE)
                .with("bench.yaml", text)
                .with("recordings/spin-1.csv", samples("Time (s),CH1 (V)", true))
                .with("recordings/bare.csv", samples("CH1 (V)", false));
    }

    private static String samples(String head, boolean timed) {
        StringBuilder text = new StringBuilder(head).append('\n');
        for (int i = 0; i < 200; i++) {
            text.append(timed ? String.format(java.util.Locale.ROOT, "%.4f,", i * 1e-3) : "")
                    .append(String.format(java.util.Locale.ROOT, "%.4f", Math.sin(0.3 * i)))
                    .append('\n');
        }
        return text.toString();
    }

    @Test
    void reads_tests_as_people_write_them() throws Exception {
        MachineFolder.Loaded loaded = bench(
                        java.nio.file.Files.readString(Folder.named("orchard").resolve("bench.yaml"))
                                .replace("hub-spin-1", "spin-1"))
                .loaded();
        BenchTest spin = loaded.tests().get(0);
        assertThat(spin.id()).isEqualTo("spin hub 1");
        assertThat(spin.kind()).isEqualTo(TestKind.SPIN);
        assertThat(spin.channels()).containsEntry("CH1", "A to B");
        var speed = spin.figures().get(TestFigure.SPEED).orElseThrow();
        assertThat(speed.stated().upper().in("rpm")).isCloseTo(412, within(1e-9));
        assertThat(speed.place().text()).isEqualTo("bench.yaml:6");
        assertThat(loaded.recordings()).containsOnlyKeys("recordings/spin-1.csv");
        assertThat(loaded.recordings().get("recordings/spin-1.csv")).satisfies(r -> {
            assertThat(r.channel("CH1")).isPresent();
            assertThat(loaded.sha256()).containsEntry("recordings/spin-1.csv", r.sourceHash());
        });
        BenchTest resistance = loaded.tests().get(1);
        assertThat(resistance.readings()).hasSize(2);
        assertThat(resistance.readings().get(1).contacts()).isEqualTo("A to B");
        assertThat(resistance
                        .readings()
                        .get(1)
                        .figures()
                        .get(ReadingFigure.VOLTAGE)
                        .orElseThrow()
                        .si())
                .isEqualTo(0.4779);
        assertThat(resistance.instrument().get("current"))
                .satisfies(a -> assertThat(a.relative()).isCloseTo(0.003, within(1e-15)));
    }

    @Test
    void names_every_mistake_in_a_test() {
        assertThat(bench("""
                        tests:
                          - test: spinn
                            motor: hubb
                            recording: recordings/spin-2.csv
                          - test: spin
                            motor: hub
                            recording: ../spin-1.csv
                            channels: {CH1: somewhere}
                            instrument: {voltage: ± 2 A, speed: ± 50 ppm}
                          - test: resistance
                            readings: {current: 1 A}
                          - test: resistance
                            motor: hub
                            readings:
                              - {pair: A to X, current: 1 A, volts: 2 V}
                          - test: spin
                            motor: hub
                            recording: recordings/spin-1.csv
                            channels: {CH2: A to B}
                          - {test: resistance, motor: hub, from: 0.1 s, to: 50 ms}
                        """).lines())
                .containsExactly(
                        "line 2, tests / 1 / test: \"spinn\" is not known here."
                                + " Nearest: spin. Known: spin, resistance, inductance step, coast-down, no-load run, torque stairs, short circuit, acceleration, cogging run, hold map, current zero, current sensing, axis log, sine response, response run, load curve, shared event, thermistor check, heating, hand turn, alignment, slow drag,"
                                + " free run, reference run, offset at speeds, shim series, channel turn, reseating.",
                        "line 3, tests / 1 / motor: there is no motor \"hubb\". Known: hub.",
                        "line 7, tests / 2 / recording: \"../spin-1.csv\" lies outside the folder of the machine."
                                + " Put the recording into the folder, so that the folder holds everything.",
                        "line 8, tests / 2 / channels / CH1: \"somewhere\" cannot be understood here."
                                + " Write it like A to B, current, or shunt A to B.",
                        "line 9, tests / 2 / instrument / voltage: \"± 2 A\" says no limits for voltage."
                                + " Write them like ± 0.1 %, or ± 0.1 % ± 2 mV for a voltage.",
                        "line 10, tests / 3: the key motor is missing: the motor on the bench. Add a line like motor: hub.",
                        "line 11, tests / 3 / readings: a list of readings is asked here."
                                + " Begin each reading with a hyphen and a blank.",
                        "line 15, tests / 4 / readings / 1 / pair: \"A to X\" cannot be understood here."
                                + " Write it like A to B, A to BC, or A to star.",
                        "line 15, tests / 4 / readings / 1 / volts: this key is not known."
                                + " Known here: pair, current, voltage, resistance, inductance, speed, frequency,"
                                + " field_angle, angle, offset, shim, field, magnitude, temperature, after, since, torque, force.",
                        "line 19, tests / 5 / channels: recordings/spin-1.csv: there is no channel \"CH2\". Known: CH1.",
                        "line 20, tests / 6 / to: 50 ms is below the 0.1 s of from in line 20. Check both figures.");
    }

    @Test
    void asks_in_the_bench_file_for_what_a_recording_does_not_say() {
        String test = "tests:\n  - test: spin\n    motor: hub\n    recording: recordings/bare.csv\n";
        assertThat(bench(test).lines())
                .containsExactly(
                        "line 2, tests / 1 / sample_interval: recordings/bare.csv: the file has no time column and"
                                + " states no sample interval. Declare sample_interval, for example 20 us, or none when the rows are"
                                + " points of a curve.");
        var timed = bench(test + "    sample_interval: 20 us\n").loaded();
        assertThat(timed.recordings().get("recordings/bare.csv"))
                .satisfies(r -> assertThat(r.clock().intervalS()).isCloseTo(20e-6, within(1e-15)));
        var order = bench(test + "    sample_interval: none\n").loaded();
        assertThat(order.recordings().get("recordings/bare.csv"))
                .satisfies(r -> assertThat(r.clock().timed()).isFalse());
    }

    @Test
    void says_in_the_hints_what_they_mean() {
        String test =
                "tests:\n  - test: spin\n    motor: hub\n    recording: recordings/bare.csv\n    sample_interval: 1 ms\n";
        var scaled = bench(test + "    scale: {CH1: 20 mV zero at 2}\n    every: 10\n    delimiter: comma\n"
                        + "    decimal: point\n    drop_outs: keep\n")
                .loaded();
        var recording = scaled.recordings().get("recordings/bare.csv");
        assertThat(recording).satisfies(r -> {
            assertThat(r.count()).isEqualTo(20);
            assertThat(r.channel("CH1").orElseThrow().spread().mean()).isCloseTo(-0.04, within(0.003));
        });
        assertThat(bench(test + "    scale: {CH1: 20 bananas}\n    time_column: 1 [V]\n")
                        .lines())
                .containsExactly(
                        "line 6, tests / 1 / scale / CH1: \"20 bananas\" is no worth of one count."
                                + " Write it like 20 mV, or 20 mV zero at 128.",
                        "line 7, tests / 1 / time_column: \"1 [V]\" names no column with a unit of time."
                                + " Write it like 1 [ms] or Time [s].");
    }

    @Test
    void reads_a_recording_once_unless_it_is_read_in_two_ways() {
        String test = "  - {test: spin, motor: hub, recording: recordings/spin-1.csv%s}\n";
        var loaded = bench("tests:\n" + test.formatted("") + test.formatted("") + test.formatted(", from: 0.1 s"))
                .loaded();
        assertThat(loaded.recordings())
                .containsOnlyKeys("recordings/spin-1.csv", "recordings/spin-1.csv for spin hub 3");
        assertThat(loaded.tests())
                .extracting(t -> t.recording().orElseThrow())
                .containsExactly(
                        "recordings/spin-1.csv", "recordings/spin-1.csv", "recordings/spin-1.csv for spin hub 3");
        assertThat(loaded.sha256()).containsOnlyKeys("machine.yaml", "bench.yaml", "recordings/spin-1.csv");
    }

    @Test
    void keeps_within_the_folder_and_names_the_nearest_file() throws Exception {
        String test = "tests:\n  - {test: spin, motor: hub, recording: %s}\n";
        String outside =
                "\" lies outside the folder of the machine. Put the recording into the folder, so that the folder"
                        + " holds everything.";
        assertThat(bench(test.formatted("recordings/spim-1.csv")).lines())
                .containsExactly("line 2, tests / 1 / recording: there is no file \"recordings/spim-1.csv\"."
                        + " Nearest: recordings/spin-1.csv.");
        assertThat(bench(test.formatted("'recordings\\spin-1.csv'")).lines())
                .singleElement()
                .asString()
                .endsWith("Write / between folders.");
        assertThat(bench(test.formatted("/etc/hostname")).lines())
                .containsExactly("line 2, tests / 1 / recording: \"/etc/hostname" + outside);
        java.nio.file.Files.createSymbolicLink(dir.resolve("link.csv"), Path.of("/etc/hostname"));
        assertThat(bench(test.formatted("link.csv")).lines())
                .containsExactly("line 2, tests / 1 / recording: \"link.csv" + outside);
        assertThat(bench(test.formatted("\"a\\0b\"")).lines())
                .singleElement()
                .asString()
                .contains("there is no file");
        assertThat(bench(test.formatted("recordings")).lines())
                .containsExactly("line 2, tests / 1 / recording: \"recordings\" is no file of text."
                        + " Name the file that holds the recording.");
    }

    @Test
    void a_broken_machine_file_hides_no_mistake_in_the_bench_file() {
        assertThat(bench("tests:\n  - {test: spin, motor: hub, recordin: x}\n")
                        .with("machine.yaml", "machine: a: b\n")
                        .problems())
                .extracting(p -> p.place().text())
                .containsExactly("machine.yaml:1", "bench.yaml:2");
    }

    @Test
    void works_without_a_bench_file() {
        assertThat(Folder.in(dir).with("machine.yaml", MACHINE).loaded().notes())
                .containsExactly("There is no bench.yaml: nothing was measured yet.");
    }

    @Test
    void a_test_of_an_angle_sensor_names_its_axis_and_takes_its_motor() {
        String machine = MACHINE + "sensors: {ring: {kind: on-axis magnetic}}\n"
                + "axes: {left wheel: {motor: hub, sensor: ring}, right wheel: {}}\n";
        List<BenchTest> tests = Folder.in(dir)
                .with("machine.yaml", machine)
                .with("recordings/turn.csv", "t [s];pos;mag\n0;1;2\n0.1;2;2\n0.2;3;2\n")
                .with("bench.yaml", """
                        tests:
                          - test: hand turn
                            axis: left wheel
                            recording: recordings/turn.csv
                            channels: {pos: angle, mag: field}
                          - test: alignment
                            axis: left wheel
                            readings:
                              - {field_angle: 0 deg, angle: 12.1 deg}
                              - {field_angle: 90 deg, angle: 25.0 deg}
                          - {test: slow drag, axis: right wheel, orders: 6}
                        """)
                .loaded()
                .tests();
        assertThat(tests)
                .extracting(BenchTest::id)
                .containsExactly("hand turn left wheel 1", "alignment left wheel 1", "slow drag right wheel 1");
        assertThat(tests).extracting(BenchTest::motor).containsExactly("hub", "hub", "");
        assertThat(tests.get(0).axis()).contains("left wheel");
        assertThat(tests.get(1)
                        .readings()
                        .get(1)
                        .figures()
                        .known(ReadingFigure.FIELD_ANGLE)
                        .orElseThrow()
                        .si())
                .isCloseTo(Math.PI / 2, within(1e-12));
        assertThat(tests.get(2).figures().known(TestFigure.ORDERS).orElseThrow().si())
                .isEqualTo(6);
    }

    @Test
    void a_test_of_an_angle_sensor_without_its_axis_is_refused() {
        assertThat(bench("""
                        tests:
                          - {test: hand turn, motor: hub}
                          - {test: alignment, axis: wheel}
                        """).lines())
                .containsExactly(
                        "line 2, tests / 1: the key axis is missing: the axis whose angle sensor is tested."
                                + " Add a line like axis: left wheel.",
                        "line 3, tests / 2 / axis: there is no axis \"wheel\". Declare it under axes.");
    }
}
