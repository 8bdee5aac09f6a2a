package servowright.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static servowright.app.FieldReduction.need;
import static servowright.app.FieldReduction.read;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import servowright.app.input.csv.ReadingHints;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.TestResult;
import servowright.engine.known.Known;
import servowright.engine.machine.Figures;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.quantity.Units;
import servowright.engine.recording.Recording;

/** Real recordings through whole bench tests, against figures computed outside from the same files. */
class BenchFieldTest {
    private static final Figures<TestFigure> ROOM =
            FieldReduction.with(Figures.none(), TestFigure.MAGNETS_AT, "20 degC ± 0.1 K");

    private static TestResult reduced(
            TestKind kind, Recording recording, Map<String, String> channels, Figures<TestFigure> figures) {
        return FieldReduction.reduced(kind, FieldReduction.unknownMotor(), recording, channels, figures);
    }

    private static TestResult spin(Recording recording, String shows) {
        String channel = recording.channels().get(0).name();
        return reduced(TestKind.SPIN, recording, Map.of(channel, shows), ROOM);
    }

    private static Known figure(TestResult result, String name) {
        return FieldReduction.figure(result, "", name);
    }

    /** Samples in volt, which some files do not say. */
    private static ReadingHints volts(String channel) {
        return volts(channel, 1);
    }

    private static ReadingHints volts(String channel, double perCount) {
        return ReadingHints.declare()
                .scale(channel, new ReadingHints.Scale(perCount, 0, Units.find("V")))
                .build();
    }

    private static Recording machineOf500Volts() {
        return read(FieldData.files("s01-bemf-pmsm-scope").get(0), volts("voltage"));
    }

    @Test
    void asks_what_bare_numbers_are_worth() {
        Recording bare = read(FieldData.files("s01-bemf-pmsm-scope").get(0), ReadingHints.none());
        assertThat(need(spin(bare, "A to B"), MotorParameter.FLUX_LINKAGE)).contains("bare numbers");
    }

    @Test
    void asks_where_a_back_emf_was_contacted_and_shows_both_flux_linkages() {
        TestResult result = spin(machineOf500Volts(), "voltage");
        assertThat(need(result, MotorParameter.FLUX_LINKAGE)).contains("was contacted");
        assertThat(figure(result, "E").si()).isCloseTo(525.2, within(0.3));
        assertThat(figure(result, "f").si()).isCloseTo(90.0, within(0.05));
        assertThat(figure(result, "line").si()).isCloseTo(0.536, within(0.0005));
        assertThat(figure(result, "phase").si()).isCloseTo(0.929, within(0.001));
    }

    @Test
    void holds_the_flux_linkage_of_a_machine_of_500_volts() {
        Known flux = spin(machineOf500Volts(), "A to B")
                .outcome(MotorParameter.FLUX_LINKAGE)
                .found()
                .orElseThrow()
                .value();
        assertThat(flux.si()).isCloseTo(0.536, within(0.0005));
        assertThat(flux.expandedUncertainty()).isGreaterThan(0.0005);
    }

    @ParameterizedTest
    @ValueSource(strings = {"millivolt_microsecond.csv", "semicolon_decimal_comma_ms.csv", "utf16le_bom_tab.txt"})
    void finds_the_same_in_other_layouts(String file) {
        Recording recording = read(FieldData.bench("s10-derived-layouts").resolve(file), ReadingHints.none());
        TestResult result = spin(recording, "voltage");
        assertThat(figure(result, "E").si()).isCloseTo(525.2, within(0.4));
        assertThat(figure(result, "f").si()).isCloseTo(90.0, within(0.05));
    }

    @Test
    void refuses_segments_of_half_a_period() {
        Recording recording = read(FieldData.bench("s10-derived-layouts").resolve("three_segments.csv"), volts("Ampl"));
        assertThat(need(spin(recording, "A to B"), MotorParameter.FLUX_LINKAGE))
                .contains("a clear alternating voltage");
    }

    @Test
    void finds_the_time_constant_of_a_filter_behind_a_square_wave() {
        Recording recording = read(FieldData.files("s07-scope-hash-comments").get(0), ReadingHints.none());
        TestResult result = reduced(
                TestKind.INDUCTANCE_STEP,
                recording,
                Map.of("Channel 1", "applied", "Channel 2", "shunt"),
                FieldReduction.with(Figures.none(), TestFigure.SHUNT, "1 ohm"));
        Known all = FieldReduction.figure(result, "of all steps together", "tau");
        assertThat(all.si()).isCloseTo(1.0079e-3, within(0.0005e-3));
        assertThat(all.standardUncertainty()).isLessThan(0.001e-3);
        assertThat(need(result, MotorParameter.PHASE_INDUCTANCE)).contains("was contacted");
    }

    @Test
    void finds_the_frequency_of_a_long_record() {
        Recording recording = read(FieldData.files("s08-scope-key-colon").get(0), ReadingHints.none());
        assertThat(figure(spin(recording, "voltage"), "f").si()).isCloseTo(1010.98, within(0.02));
    }

    @Test
    void finds_two_periods_in_counts_of_declared_worth() {
        Recording recording =
                read(FieldData.bench("s04-scope-counts-no-time").resolve("A0000CH1.CSV"), volts("CH1", 0.02));
        Known hertz = figure(spin(recording, "voltage"), "f");
        assertThat(hertz.si()).isCloseTo(130, within(5.0));
    }

    /** A magnet that passes a coil gives two pulses, which are no spin. */
    @Test
    void refuses_the_pulse_of_a_coil_as_a_spin() {
        Recording recording = read(FieldData.files("s05-scope-side-preamble").get(0), ReadingHints.none());
        assertThat(spin(recording, "A to B")
                        .outcome(MotorParameter.FLUX_LINKAGE)
                        .found())
                .isEmpty();
    }

    /**
     * Terminals against ground of a running motor: counts and a 16-bit counter of microseconds. The motor gains speed; what
     * counts is the mean. The amplitudes from outside were read off a Fourier sum over 12.2 periods, into which offset and
     * mirror image leak by up to 1 / (2 pi 12.2) = 1.3 %, 11.6 counts; the regression separates them.
     */
    @Test
    void sees_the_fundamental_in_three_chopped_terminal_voltages() {
        double[] counts = {893, 873, 895};
        for (int phase = 0; phase < 3; phase++) {
            String name = "column " + (phase + 1);
            ReadingHints hints = ReadingHints.declare()
                    .timeColumn("6", Units.named("us"))
                    .wrapsAt("time", 65536)
                    .scale(name, new ReadingHints.Scale(0.01, 0, Units.find("V")))
                    .build();
            Recording scaled = read(FieldData.files("s09-phase-terminals-adc").get(0), hints);
            TestResult result = reduced(TestKind.SPIN, scaled, Map.of(name, "voltage"), ROOM);
            Known hertz = figure(result, "f");
            assertThat(hertz.si()).as(name).isCloseTo(71.66, within(0.05));
            assertThat(hertz.expandedUncertainty()).isLessThan(0.1);
            Known volt = figure(result, "E");
            double scatter = volt.parts().entrySet().stream()
                    .filter(part -> part.getKey().id().endsWith("pieces"))
                    .mapToDouble(Map.Entry::getValue)
                    .sum();
            assertThat(scatter).isBetween(0.001, 0.06);
            assertThat(volt.si()).as(name).isCloseTo(0.01 * counts[phase], within(0.116 + 2 * scatter));
        }
    }
}
