package servowright.app.input.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static servowright.app.input.csv.Bench.read;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import servowright.app.FieldData;
import servowright.engine.numeric.Harmonic;
import servowright.engine.numeric.HarmonicFit;
import servowright.engine.numeric.HarmonicTerms;
import servowright.engine.quantity.Units;
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
        HarmonicFit fit = fit(recording, 0, HarmonicTerms.ofOrders(1, 3, 5, 7, 11, 13));
        assertThat(fit.frequency()).isCloseTo(90.00, within(0.05));
        assertThat(fit.harmonic(1).amplitude()).isCloseTo(525.2, within(0.3));
        assertThat(fit.harmonic(11).amplitude()).isCloseTo(11.4, within(0.2));
        assertThat(fit.harmonic(13).amplitude()).isCloseTo(3.3, within(0.2));
        assertThat(fit.offset()).isCloseTo(-2.3, within(0.2));
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
        assertThat(out.amplitude() / in.amplitude()).isCloseTo(gain, within(0.004));
        double turn = Math.toDegrees(out.phase() - in.phase());
        assertThat(Math.IEEEremainder(turn - phaseDeg, 360)).isCloseTo(0, within(0.5));
    }

    @Test
    void integrates_the_flux_of_a_magnet_that_passes_a_coil() {
        double[] peaks = {1.36e-3, 7.46e-3};
        for (int file = 0; file < 2; file++) {
            Recording recording =
                    read(FieldData.files("s05-scope-side-preamble").get(file));
            double flux = 0;
            double peak = 0;
            for (double volt : recording.channels().get(0).samples()) {
                flux += volt * recording.clock().intervalS();
                peak = Math.max(peak, Math.abs(flux));
            }
            assertThat(peak).isCloseTo(peaks[file], within(0.01 * peaks[file]));
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
        double swing = 0.9863 + 0.9949;
        double risenS = risingS(recording, 1, 0.9863 - swing / Math.E, firstS);
        assertThat(risenS - firstS).isCloseTo(1.0079e-3, within(0.01e-3));
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
        assertThat(fit.frequency()).isCloseTo(1010.98, within(0.02));
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
        HarmonicTerms terms = HarmonicTerms.ofOrders(1);
        double[] phaseDeg = new double[3];
        for (int phase = 0; phase < 3; phase++) {
            double[] samples = recording.channels().get(phase).samples();
            HarmonicFit free = HarmonicFit.overTime(terms.startingAt(72), timesS, samples);
            assertThat(free.frequency()).isCloseTo(71.66, within(0.05));
            Harmonic line = HarmonicFit.overTime(terms.atKnownFrequency(71.66), timesS, samples)
                    .harmonic(1);
            phaseDeg[phase] = Math.toDegrees(line.phase());
            assertThat(line.amplitude()).isCloseTo(885, within(20.0));
        }
        assertThat(Math.IEEEremainder(phaseDeg[1] - phaseDeg[0], 360)).isCloseTo(-117, within(3.0));
        assertThat(Math.IEEEremainder(phaseDeg[2] - phaseDeg[1], 360)).isCloseTo(-120, within(3.0));
    }
}
