package servowright.app.input.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static servowright.app.input.csv.Bench.read;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import servowright.app.FieldData;
import servowright.engine.numeric.Harmonic;
import servowright.engine.numeric.HarmonicFit;
import servowright.engine.numeric.HarmonicTerms;
import servowright.engine.numeric.NonlinearFit;
import servowright.engine.numeric.Statistics;
import servowright.engine.quantity.Units;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Recording;
import servowright.engine.recording.Spread;

/** What real recordings hold, against figures computed outside from the same files. */
class RecordedValuesFieldTest {

    private static HarmonicFit fit(Recording recording, int channel, HarmonicTerms terms) {
        double[] samples = recording.channels().get(channel).samples();
        return HarmonicFit.ofSamples(terms, samples, recording.clock().intervalS());
    }

    @Test
    void finds_back_emf_of_525_volts_at_90_hertz_in_less_than_two_periods() {
        Recording recording = read(FieldData.files("s01-bemf-pmsm-scope").get(0));
        int[] orders = IntStream.rangeClosed(1, 13).toArray();
        HarmonicFit fit = fit(recording, 0, HarmonicTerms.ofOrders(orders));
        assertThat(fit.frequency()).isCloseTo(90.00, within(0.05));
        assertThat(fit.harmonic(1).amplitude()).isCloseTo(525.2, within(0.3));
        assertThat(fit.offset()).isCloseTo(-2.3, within(0.05));
        assertThat(fit.residualSd()).isCloseTo(4.7, within(0.05));
        Map.of(3, 1.0, 5, 0.6, 7, 0.9, 11, 11.4, 13, 3.3)
                .forEach((order, volt) -> assertThat(fit.harmonic(order).amplitude())
                        .as("order %d", order)
                        .isCloseTo(volt, within(0.05)));
        double above = fit.harmonics().stream()
                .filter(h -> h.order() > 1)
                .mapToDouble(h -> h.amplitude() * h.amplitude())
                .sum();
        assertThat(Math.sqrt(above) / fit.harmonic(1).amplitude()).isCloseTo(0.023, within(0.0005));
    }

    /** Least and most of each channel, found outside from the bare columns, to all their digits. */
    @ParameterizedTest
    @CsvSource({
        "s02-scope-layouts-a, 0, -15.6 20.8 -16 14.4",
        "s02-scope-layouts-a, 2, -4.6 1.88 -0.24 9.92",
        "s02-scope-layouts-a, 3, -0.054 0.1 -1.04 1.1 -1.02 0.088",
        "s02-scope-layouts-a, 4, 0.16 8.08 0.08 8.4",
        "s05-scope-side-preamble, 0, -0.136 0.168",
        "s05-scope-side-preamble, 1, -0.72 1.08",
        "s08-scope-key-colon, 0, -1.72 1.58"
    })
    void holds_the_range_of_every_channel(String folder, int file, String range) {
        Recording recording = read(FieldData.files(folder).get(file));
        assertThat(ranges(recording)).containsExactly(numbers(range), within(1e-9));
    }

    @Test
    void starts_where_a_header_says_that_the_record_starts() {
        Recording recording = read(FieldData.files("s02-scope-layouts-a").get(3));
        assertThat(recording.clock().timeS(0)).isCloseTo(-2e-3, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({"0, CH1, -84 84", "1, CH2, -54 38", "2, CH1, -129 126"})
    void holds_the_counts_of_a_scope_whose_worth_is_declared(int file, String channel, String range) {
        ReadingHints hints = ReadingHints.declare()
                .scale(channel, new ReadingHints.Scale(1, 0, Units.find("V")))
                .build();
        Recording recording = read(FieldData.files("s04-scope-counts-no-time").get(file), hints);
        assertThat(ranges(recording)).containsExactly(numbers(range), within(1e-9));
    }

    private static double[] ranges(Recording recording) {
        return recording.channels().stream()
                .map(Channel::spread)
                .flatMapToDouble(s -> DoubleStream.of(s.least(), s.most()))
                .toArray();
    }

    private static double[] numbers(String words) {
        return Arrays.stream(words.split(" ")).mapToDouble(Double::parseDouble).toArray();
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0.2001, 1.339, -7.9",
        "1, 0.2996, 1.319, -10.9",
        "2, 0.7998, 1.213, -27.1",
        "3, 1.3961, 1.002, -42.7",
        "4, 3.859, 0.520, -69.4",
        "5, 6.380, 0.336, -82.2",
        "6, 10.724, 0.170, -92.6"
    })
    void finds_gain_and_phase_of_a_small_motor(int file, double hertz, double gain, double phaseDeg) {
        Recording recording = read(FieldData.files("s03-scope-freqresp-dcmotor").get(file));
        HarmonicTerms terms = HarmonicTerms.ofOrders(1).withDrift().atKnownFrequency(hertz);
        Harmonic in = fit(recording, 0, terms).harmonic(1);
        Harmonic out = fit(recording, 1, terms).harmonic(1);
        assertThat(out.amplitude() / in.amplitude()).isCloseTo(gain, within(0.0005));
        double turn = Math.toDegrees(out.phase() - in.phase());
        assertThat(Math.IEEEremainder(turn - phaseDeg, 360)).isCloseTo(0, within(0.05));
    }

    /** Gain and time constant from ten such records, of which seven are here. */
    @Test
    void finds_first_order_gain_and_time_constant_of_a_small_motor() {
        double[] hertz = {0.2001, 0.2996, 0.7998, 1.3961, 3.859, 6.380, 10.724};
        double[] gain = new double[hertz.length];
        double[] shares = new double[2 * hertz.length];
        for (int k = 0; k < hertz.length; k++) {
            Recording recording =
                    read(FieldData.files("s03-scope-freqresp-dcmotor").get(k));
            HarmonicTerms terms = HarmonicTerms.ofOrders(1).withDrift().atKnownFrequency(hertz[k]);
            Harmonic in = fit(recording, 0, terms).harmonic(1);
            Harmonic out = fit(recording, 1, terms).harmonic(1);
            gain[k] = out.amplitude() / in.amplitude();
            shares[2 * k] = Math.cos(out.phase() - in.phase());
            shares[2 * k + 1] = Math.sin(out.phase() - in.phase());
        }
        NonlinearFit fit = NonlinearFit.of(p -> firstOrder(p, hertz, gain), shares, 1.2, 0.09);
        assertThat(fit.status().converged()).isTrue();
        assertThat(fit.parameter(0)).isCloseTo(1.375, within(0.04));
        assertThat(fit.parameter(1)).isCloseTo(0.110, within(0.005));
    }

    /** K / (1 + i w tau) over the measured gain, real and imaginary parts in turn. */
    private static double[] firstOrder(double[] p, double[] hertz, double[] gain) {
        double[] shares = new double[2 * hertz.length];
        for (int k = 0; k < hertz.length; k++) {
            double turned = 2 * Math.PI * hertz[k] * p[1];
            double share = p[0] / gain[k] / (1 + turned * turned);
            shares[2 * k] = share;
            shares[2 * k + 1] = -share * turned;
        }
        return shares;
    }

    @Test
    void integrates_the_flux_of_a_magnet_that_passes_a_coil() {
        double[] peaks = {1.36e-3, 7.46e-3};
        double[] ends = {0.44, 0.39};
        for (int file = 0; file < 2; file++) {
            Recording recording =
                    read(FieldData.files("s05-scope-side-preamble").get(file));
            double flux = 0;
            double peak = 0;
            for (double volt : recording.channels().get(0).samples()) {
                flux += volt * recording.clock().intervalS();
                peak = Math.max(peak, Math.abs(flux));
            }
            assertThat(peak).isCloseTo(peaks[file], within(0.005e-3));
            assertThat(flux / peak).as("what the open baseline leaves").isCloseTo(ends[file], within(0.005));
        }
    }

    @Test
    void reads_engineering_exponents_with_plus_signs() {
        Recording recording = read(FieldData.files("s06-scope-xaxis").get(0));
        Spread last = recording.channel("4").orElseThrow().spread();
        assertThat(last.least()).isCloseTo(-8.74477, within(5e-6));
        assertThat(last.most()).isCloseTo(6.69456, within(5e-6));
        assertThat(last.mean()).isCloseTo(-1.0481, within(5e-5));
    }

    @Test
    void finds_the_square_wave_of_40_hertz_and_what_a_first_order_filter_makes_of_it() {
        Recording recording = read(FieldData.files("s07-scope-hash-comments").get(0));
        double firstS = risingS(recording, 0, 0.0, 0);
        double nextS = risingS(recording, 0, 0.0, firstS + 1e-3);
        assertThat(1 / (nextS - firstS)).isCloseTo(39.99, within(0.02));
        // Within two steps of the converter, 0.34 mV each: the level creeps on by one of them.
        double[] settled = recording.channels().get(1).samples();
        int edge = (int) Math.round(firstS / recording.clock().intervalS());
        assertThat(Statistics.median(Arrays.copyOfRange(settled, edge + 1700, edge + 1990)))
                .isCloseTo(0.9863, within(0.0007));
        assertThat(Statistics.median(Arrays.copyOfRange(settled, edge - 300, edge - 10)))
                .isCloseTo(-0.9949, within(0.0007));
        double swing = 0.9863 + 0.9949;
        double risenS = risingS(recording, 1, 0.9863 - swing / Math.E, firstS);
        assertThat(risenS - firstS).isCloseTo(1.0079e-3, within(0.005 * 1.0079e-3));
    }

    /** Time after {@code fromS} (from the first row) at which a channel rises through a level, between rows by a line. */
    private static double risingS(Recording recording, int channel, double level, double fromS) {
        double[] y = recording.channels().get(channel).samples();
        double intervalS = recording.clock().intervalS();
        int i = 1 + (int) (fromS / intervalS);
        while (!(y[i - 1] < level && y[i] >= level)) {
            i++;
        }
        return (i - 1 + (level - y[i - 1]) / (y[i] - y[i - 1])) * intervalS;
    }

    @Test
    void finds_the_sine_of_1011_hertz() {
        Recording recording = read(FieldData.files("s08-scope-key-colon").get(0));
        HarmonicFit fit = fit(recording, 0, HarmonicTerms.ofOrders(1));
        assertThat(fit.frequency()).isCloseTo(1010.98, within(0.01));
    }

    @Test
    void finds_three_phases_in_order_under_chopped_terminal_voltages() {
        ReadingHints hints = ReadingHints.declare()
                .timeColumn("6", Units.find("us").orElseThrow())
                .build();
        Path file = FieldData.files("s09-phase-terminals-adc").get(0);
        Recording recording = read(file, hints);
        double[] timesS = new double[recording.count()];
        for (int i = 0; i < timesS.length; i++) {
            timesS[i] = recording.clock().timeS(i) - recording.clock().timeS(0);
        }
        double[] countsOutside = {893, 873, 895};
        double[] degOutside = {160, 43, -78};
        for (int phase = 0; phase < 3; phase++) {
            double[] samples = recording.channels().get(phase).samples();
            HarmonicFit free = HarmonicFit.overTime(HarmonicTerms.ofOrders(1).startingAt(72), timesS, samples);
            assertThat(free.frequency()).isCloseTo(71.66, within(0.05));
            // A cosine leads the sine of the fit by a quarter turn.
            double fitDeg = Math.toDegrees(free.harmonic(1).phase()) - 90;
            double[] sum = fourier(free.frequency(), timesS, samples);
            assertThat(sum[0]).isCloseTo(countsOutside[phase], within(1.0));
            assertThat(sum[1]).isCloseTo(degOutside[phase], within(1.0));
            double leak = 1 / (2 * Math.PI * free.frequency() * timesS[timesS.length - 1]);
            assertThat(free.harmonic(1).amplitude()).isCloseTo(sum[0], within(leak * sum[0]));
            assertThat(Math.IEEEremainder(fitDeg - sum[1], 360)).isCloseTo(0, within(Math.toDegrees(leak)));
        }
    }

    /** Amplitude and phase in degrees of a Fourier sum about the mean: the mirror image of the line leaks into it. */
    private static double[] fourier(double hertz, double[] timesS, double[] samples) {
        double mean = Statistics.mean(samples);
        double cosine = 0;
        double sine = 0;
        for (int i = 0; i < samples.length; i++) {
            double angle = 2 * Math.PI * hertz * timesS[i];
            cosine += 2 * (samples[i] - mean) * Math.cos(angle) / samples.length;
            sine += 2 * (samples[i] - mean) * Math.sin(angle) / samples.length;
        }
        return new double[] {Math.hypot(cosine, sine), Math.toDegrees(Math.atan2(-sine, cosine))};
    }
}
