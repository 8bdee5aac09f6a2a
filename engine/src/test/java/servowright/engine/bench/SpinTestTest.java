package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Clock;
import servowright.engine.recording.Recording;

class SpinTestTest {
    /** p = 7, lambda = 2.5 mWb: the golden example A of the motor constants (recomputed there). */
    private static final double FLUX = 2.5e-3;

    private static final Motor MOTOR = Given.motor(MotorFigure.MAGNETS, "14");

    private static double linePeak(double hertz) {
        return Math.sqrt(3) * FLUX * 2 * Math.PI * hertz;
    }

    private static double[] wave(int count, double interval, double hertz, double phase) {
        double e = linePeak(hertz);
        return Given.sampled(count, interval, t -> {
            double angle = 2 * Math.PI * hertz * t + phase;
            return e * (Math.sin(angle) + 0.03 * Math.sin(5 * angle + 1) - 0.02 * Math.sin(7 * angle));
        });
    }

    private static Given.Test spin() {
        return Given.spin("spin hub 1")
                .recorded("a.csv")
                .with(TestFigure.MAGNETS_AT, "20 degC ± 1 K")
                .limits("voltage", "± 0.5 %");
    }

    private static Known flux(TestResult result) {
        return result.outcome(MotorParameter.FLUX_LINKAGE).found().orElseThrow().value();
    }

    private static TestResult reduced(BenchTest test, Recording recording) {
        return SpinTest.of(test, MOTOR, recording).result();
    }

    private static String need(TestResult result, MotorParameter what) {
        return Given.need(result.outcome(what));
    }

    @Test
    void finds_the_flux_linkage_without_whole_periods() {
        Random random = new Random(11);
        double[] v = Given.noisy(wave(2500, 2e-5, 68.3, 0.4), 0.005, random);
        TestResult result = reduced(
                spin().channel("CH1", "A to B")
                        .with(TestFigure.SPEED, "585.43 rpm ± 0.5 rpm")
                        .done(),
                Given.recording("a.csv", 2e-5, Given.channel("CH1", "V", v)));
        assertThat(flux(result).si()).isCloseTo(FLUX, within(3e-3 * FLUX));
        assertThat(flux(result).origin()).isEqualTo(Origin.MEASURED);
        assertThat(flux(result).relativeUncertainty()).isBetween(0.0028, 0.0036);
        assertThat(result.outcome(MotorParameter.POLE_PAIRS)
                        .found()
                        .orElseThrow()
                        .value()
                        .si())
                .isEqualTo(7);
    }

    @Test
    void takes_three_pairs_and_says_their_sequence_and_spread() {
        double third = 2 * Math.PI / 3;
        Recording recording = Given.recording(
                "a.csv",
                2e-5,
                Given.channel("CH1", "V", Given.noisy(wave(3000, 2e-5, 71, 0), 0.004, new Random(1))),
                Given.channel("CH2", "V", Given.noisy(wave(3000, 2e-5, 71, -third), 0.004, new Random(2))),
                Given.channel("CH3", "V", Given.noisy(wave(3000, 2e-5, 71, third), 0.004, new Random(3))));
        TestResult result = reduced(
                spin().channel("CH1", "A to B")
                        .channel("CH2", "B to C")
                        .channel("CH3", "C to A")
                        .done(),
                recording);
        assertThat(flux(result).si()).isCloseTo(FLUX, within(3e-3 * FLUX));
        assertThat(result.details()).anyMatch(p -> p.template().contains("phase sequence A, B, C"));
        assertThat(result.details()).anyMatch(p -> p.template().contains("the three differ by"));
    }

    @Test
    void asks_where_it_was_contacted_and_shows_both_values() {
        TestResult result = reduced(
                spin().done(), Given.recording("a.csv", 2e-5, Given.channel("CH1", "V", wave(2500, 2e-5, 70, 0))));
        assertThat(need(result, MotorParameter.FLUX_LINKAGE)).contains("where CH1 of a.csv was contacted");
        assertThat(result.details())
                .anyMatch(p -> p.figures().containsKey("line") && p.figures().containsKey("phase"));
    }

    @Test
    void corrects_warm_magnets_to_twenty_degrees() {
        Recording recording = Given.recording("a.csv", 2e-5, Given.channel("CH1", "V", wave(2500, 2e-5, 70, 0)));
        double cold =
                flux(reduced(spin().channel("CH1", "A to B").done(), recording)).si();
        BenchTest warm = Given.spin("spin hub 2")
                .recorded("a.csv")
                .channel("CH1", "A to B")
                .with(TestFigure.MAGNETS_AT, "100 degC ± 1 K")
                .done();
        // Neodymium at 100 degC keeps 0.912 of its flux: -0.11 %/K over 80 K (recomputed).
        assertThat(flux(reduced(warm, recording)).si()).isCloseTo(cold / 0.912, within(1e-6 * cold));
    }

    @Test
    void says_what_it_assumed() {
        BenchTest bare = Given.spin("spin hub 3")
                .recorded("a.csv")
                .channel("CH1", "A to B")
                .done();
        Recording recording = Given.recording("a.csv", 2e-5, Given.channel("CH1", "V", wave(2500, 2e-5, 70, 0)));
        Candidate found = reduced(bare, recording)
                .outcome(MotorParameter.FLUX_LINKAGE)
                .found()
                .orElseThrow();
        assertThat(found.assumptions()).anyMatch(p -> p.template().contains("oscilloscope"));
        assertThat(found.assumptions()).anyMatch(p -> p.template().contains("temperature of the magnets"));
        assertThat(found.value().relativeUncertainty()).isBetween(0.017, 0.022);
    }

    @Test
    void follows_a_speed_that_changes_on_the_way() {
        double[] v = Given.sampled(10_000, 2e-5, t -> {
            double hertz = 70 + 30 * t;
            double angle = 2 * Math.PI * (70 * t + 15 * t * t);
            return linePeak(hertz) * Math.sin(angle);
        });
        TestResult result = reduced(
                spin().channel("CH1", "A to B").done(),
                Given.recording("a.csv", 2e-5, Given.channel("CH1", "V", Given.noisy(v, 0.004, new Random(5)))));
        assertThat(flux(result).si()).isCloseTo(FLUX, within(2e-3 * FLUX));
        assertThat(result.remarks()).anyMatch(p -> p.template().contains("speed changed"));
    }

    @Test
    void gives_the_mean_frequency_of_a_speed_that_changes() {
        // 70 Hz and 30 Hz more each second, over 0.2 s: 73 Hz on average, by hand.
        for (int seed = 1; seed <= 5; seed++) {
            double[] v = Given.sampled(
                    10_000, 2e-5, t -> linePeak(70 + 30 * t) * Math.sin(2 * Math.PI * (70 * t + 15 * t * t)));
            TestResult result = reduced(
                    spin().done(),
                    Given.recording("a.csv", 2e-5, Given.channel("CH1", "V", Given.noisy(v, 0.05, new Random(seed)))));
            Known hertz = Given.figure(result, "peak at", "f");
            assertThat(hertz.si()).as("seed %d", seed).isCloseTo(73, within(0.02));
            assertThat(hertz.expandedUncertainty()).isBetween(0.002, 0.05);
        }
    }

    @Test
    void takes_out_mains_hum_and_says_so() {
        double[] v = wave(6000, 2e-5, 83, 0);
        for (int i = 0; i < v.length; i++) {
            v[i] += 0.05 * Math.sin(2 * Math.PI * 50 * i * 2e-5 + 1);
        }
        TestResult result = reduced(
                spin().channel("CH1", "A to B").done(),
                Given.recording("a.csv", 2e-5, Given.channel("CH1", "V", Given.noisy(v, 0.004, new Random(6)))));
        assertThat(flux(result).si()).isCloseTo(FLUX, within(1e-3 * FLUX));
        assertThat(result.remarks()).anyMatch(p -> p.template().contains("mains hum"));
    }

    @Test
    void reads_a_meter_with_frequency_or_with_speed() {
        // 14.2 V peak to peak between two terminals at 350 Hz reads 5.02 V rms (practitioner case, recomputed).
        BenchTest test = Given.spin("spin hub 4")
                .with(TestFigure.MAGNETS_AT, "20 degC ± 1 K")
                .reading("A to B", ReadingFigure.VOLTAGE, "5.020 V", ReadingFigure.FREQUENCY, "350.0 Hz")
                .reading("B to C", ReadingFigure.VOLTAGE, "5.020 V", ReadingFigure.SPEED, "3000 rpm")
                .done();
        TestResult result = SpinReadings.of(
                        test,
                        MOTOR,
                        PolePairCandidates.of(MOTOR, new java.util.ArrayList<>()).stream()
                                .findFirst()
                                .map(Candidate::value))
                .result();
        double expected = 7.1 / Math.sqrt(3) / (2 * Math.PI * 350);
        assertThat(flux(result).si()).isCloseTo(expected, within(1e-3 * expected));
    }

    /**
     * One motor, 7.1 V between two terminals at the peak and 350 Hz, as five instruments show it: 5.0205 V rms, the same of a meter that
     * averages a sine, 7.1 V, 3/π of it behind a rectifier and the peak into a capacitor, both less two diodes of 1.2 V together.
     */
    @ParameterizedTest
    @CsvSource({
        "5.0205 V [true rms], A to B",
        "5.0205 V [averaging], A to B",
        "7.100 V [peak], A to B",
        "5.580 V [rectified], ''",
        "5.900 V [rectified into a capacitor], ''"
    })
    void takes_an_instrument_for_what_it_is(String volt, String pair) {
        BenchTest test = Given.spin("spin hub 5")
                .with(TestFigure.MAGNETS_AT, "20 degC ± 1 K")
                .reading(pair, ReadingFigure.VOLTAGE, volt, ReadingFigure.FREQUENCY, "350.0 Hz")
                .done();
        Known found = flux(SpinReadings.of(test, MOTOR, Optional.empty()).result());
        double expected = 7.1 / Math.sqrt(3) / (2 * Math.PI * 350);
        assertThat(found.si()).isCloseTo(expected, within(2e-4 * expected));
        double shape = volt.contains("peak") || volt.contains("capacitor") ? 0.029 : 0;
        double diodes = volt.contains("rectified") ? 0.6 / Math.sqrt(3) / 7.1 : 0;
        assertThat(found.standardUncertainty()).isGreaterThan(0.95 * Math.hypot(shape, diodes) * expected);
    }

    @Test
    void refuses_what_is_no_spin_and_says_why() {
        assertThat(refusal("V", new double[2500])).contains("all samples are equal");
        assertThat(refusal("V", new double[] {1})).contains("enough samples");
        assertThat(refusal("A", wave(2500, 2e-5, 70, 0))).contains("a voltage in");
        assertThat(refusal("", wave(2500, 2e-5, 70, 0))).contains("bare numbers");
        double[] noise = Given.noisy(new double[2500], 0.1, new Random(3));
        assertThat(refusal("V", noise)).contains("a clear alternating voltage");
        double[] clipped = Arrays.stream(wave(2500, 2e-5, 70, 0))
                .map(v -> Math.max(-1.2, Math.min(1.2, v)))
                .toArray();
        assertThat(refusal("V", clipped)).contains("within the range of its instrument");
        double[] holes = wave(2500, 2e-5, 70, 0);
        Arrays.fill(holes, 200, 900, Double.NaN);
        assertThat(refusal("V", holes)).contains("700 that are not");
        assertThat(refusal("V", wave(900, 2e-5, 70, 0))).contains("a clear alternating voltage");
    }

    private static String refusal(String unit, double[] samples) {
        TestResult result = reduced(
                spin().channel("CH1", "A to B").done(),
                Given.recording("a.csv", 2e-5, Given.channel("CH1", unit, samples)));
        return need(result, MotorParameter.FLUX_LINKAGE);
    }

    /** Cut off in a tenth of the samples, in most of them, at both ends, and by a converter that reads nothing below 0. */
    @Test
    void refuses_a_wave_that_is_cut_off_anywhere() {
        double e = linePeak(70);
        double[] v = Given.noisy(wave(4000, 50e-6, 70, 0.3), 0.01 * e, new Random(21));
        double[][] limits = {{-2, 0.93}, {-0.93, 2}, {-2, 0.3}, {-0.5, 0.5}, {0, 2}, {-2, -0.5}};
        for (double[] limit : limits) {
            double[] cut = Arrays.stream(v)
                    .map(u -> Math.max(limit[0] * e, Math.min(limit[1] * e, u)))
                    .toArray();
            TestResult result = reduced(
                    spin().channel("CH1", "A to B").done(),
                    Given.recording("a.csv", 50e-6, Given.channel("CH1", "V", Given.eightBit(cut, 1.3 * e))));
            boolean refused = need(result, MotorParameter.FLUX_LINKAGE).contains("range of its instrument");
            assertThat(refused || (limit[0] == 0 && Given.says(result, "is cut off there")))
                    .as("%s to %s", limit[0], limit[1])
                    .isTrue();
        }
    }

    @Test
    void leaves_out_a_few_cells_that_are_no_numbers() {
        double[] v = wave(2500, 2e-5, 70, 0);
        v[100] = Double.NaN;
        v[1700] = Double.NaN;
        TestResult result = reduced(
                spin().channel("CH1", "A to B").done(), Given.recording("a.csv", 2e-5, Given.channel("CH1", "V", v)));
        assertThat(flux(result).si()).isCloseTo(FLUX, within(1e-4 * FLUX));
        assertThat(result.remarks()).anyMatch(p -> p.template().contains("no numbers"));
    }

    @Test
    void asks_for_the_sample_interval_of_rows_without_a_clock() {
        Channel channel = Given.channel("CH1", "V", wave(2500, 2e-5, 70, 0));
        Recording bare = new Recording("a.csv", "0", Clock.order(2500), List.of(channel), List.of());
        TestResult without = reduced(spin().channel("CH1", "A to B").done(), bare);
        assertThat(need(without, MotorParameter.FLUX_LINKAGE)).contains("time between two samples");
        TestResult with = reduced(
                spin().channel("CH1", "A to B")
                        .with(TestFigure.SAMPLE_INTERVAL, "20 us")
                        .done(),
                bare);
        assertThat(flux(with).si()).isCloseTo(FLUX, within(1e-4 * FLUX));
    }

    @Test
    void refuses_a_speed_that_gives_no_whole_pole_pairs() {
        TestResult result = reduced(
                spin().channel("CH1", "A to B")
                        .with(TestFigure.SPEED, "560 rpm")
                        .done(),
                Given.recording("a.csv", 2e-5, Given.channel("CH1", "V", wave(2500, 2e-5, 70, 0))));
        assertThat(need(result, MotorParameter.POLE_PAIRS)).contains("whole number");
        assertThat(flux(result).si()).isCloseTo(FLUX, within(1e-3 * FLUX));
    }

    @Test
    void says_when_back_emf_does_not_go_through_zero() {
        Given.Test test = Given.spin("spin hub 5").with(TestFigure.MAGNETS_AT, "20 degC ± 1 K");
        for (double hertz : new double[] {40, 80, 120, 160}) {
            double rms = linePeak(hertz) / Math.sqrt(2) + 0.05;
            test.reading(
                    "A to B",
                    ReadingFigure.VOLTAGE,
                    String.format(java.util.Locale.ROOT, "%.4f V", rms),
                    ReadingFigure.FREQUENCY,
                    String.format(java.util.Locale.ROOT, "%.2f Hz", hertz));
        }
        IdentifiedMachine machine = Identification.identify(Given.machine(MOTOR), List.of(test.done()), Map.of());
        assertThat(machine.motor("hub").orElseThrow().remarks())
                .anyMatch(p -> p.template().contains("misses zero"));
    }
}
