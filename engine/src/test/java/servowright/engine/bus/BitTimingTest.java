package servowright.engine.bus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class BitTimingTest {
    /**
     * Worked examples of controller manuals (seen): 1 Mbit/s 0.39 % and 0.38 %, 100 kbit/s 1.58 %. The second manual prints 100 kbit/s
     * and 1.32 % for a timing of 9 us per bit, which is 111.1 kbit/s.
     */
    @ParameterizedTest
    @CsvSource({
        "10000000, 1, 6, 1, 2, 1, 1000000, 0.80, 0.003906, 0.005",
        "10000000, 1, 7, 1, 1, 1, 1000000, 0.90, 0.003876, 0.005",
        "2000000, 2, 1, 4, 4, 4, 100000, 0.60, 0.015873, 0.02",
        "2000000, 2, 1, 4, 3, 3, 111111.11, 0.6667, 0.013158, 0.016667",
        "8000000, 1, 3, 2, 2, 1, 1000000, 0.75, 0.009804, 0.00625",
        "8000000, 1, 5, 2, 2, 1, 800000, 0.80, 0.007813, 0.005"
    })
    void agrees_with_the_worked_examples(
            long clock,
            int prescaler,
            int prop,
            int ps1,
            int ps2,
            int sjw,
            double rate,
            double sample,
            double one,
            double two) {
        BitTiming t = new BitTiming(clock, prescaler, prop, ps1, ps2, sjw);
        assertThat(t.bitsPerSecond()).isCloseTo(rate, within(1e-6 * rate));
        assertThat(t.samplePoint()).isCloseTo(sample, within(1e-4));
        assertThat(t.toleranceAfterError()).isCloseTo(one, within(1e-6));
        assertThat(t.toleranceBetweenEdges()).isCloseTo(two, within(1e-6));
        assertThat(t.clockTolerance()).isEqualTo(Math.min(t.toleranceAfterError(), t.toleranceBetweenEdges()));
    }

    /** Practitioner case: 40 quanta of 25 ns, prop 14, ps1 15, ps2 10; sjw 1, 4, 5, 10 give 0.125, 0.5, 0.625, 0.980 %; recomputed. */
    @ParameterizedTest
    @CsvSource({"1, 0.00125", "4, 0.005", "5, 0.00625", "10, 0.009804"})
    void the_jump_width_decides_what_a_clock_may_deviate(int sjw, double tolerance) {
        BitTiming t = new BitTiming(40_000_000, 1, 14, 15, 10, sjw);
        assertThat(t.clockTolerance()).isCloseTo(tolerance, within(1e-6));
        assertThat(t.longestBusMetre(110, 5.5)).isCloseTo(11.8, within(0.05));
        assertThat(t.longestBusMetre(150, 5.5)).isCloseTo(4.5, within(0.05));
        assertThat(t.longestBusMetre(300, 5.5)).isZero();
    }

    /**
     * Needed propagation quanta of a public reprint of CiA DS-102 V2.0 (lengths and delays seen, quanta computed): 1 Mbit/s over 25 m and
     * 800 kbit/s over 50 m exceed what is free by 0.36 quanta.
     */
    @ParameterizedTest
    @CsvSource({
        "25, 125, 210, 5.36",
        "50, 125, 210, 7.36",
        "100, 125, 300, 12.80",
        "250, 250, 300, 12.40",
        "500, 500, 450, 11.80"
    })
    void long_buses_need_propagation_quanta(double metre, int quantumNs, double delayNs, double quanta) {
        BitTiming t = new BitTiming(1_000_000_000L / quantumNs, 1, 3, 2, 2, 1);
        assertThat(t.neededProp(metre, delayNs, 5)).isCloseTo(quanta, within(1e-9));
    }

    /** The largest deviation any setting bears: prop 1, ps1 = ps2 = sjw = 4 gives 1.58 % (published; recomputed 1.5873 %). */
    @Test
    void no_setting_bears_more_than_the_published_largest() {
        assertThat(new BitTiming(1_000_000, 1, 1, 4, 4, 4).clockTolerance()).isCloseTo(0.015873, within(1e-6));
    }

    /** Register bytes of nine rates at 16 MHz: public reprint of CiA DS-102 V2.0 (seen). */
    @ParameterizedTest
    @CsvSource({
        "1000000, 0x0014, 0.75",
        "800000, 0x0016, 0.80",
        "500000, 0x001C, 0.875",
        "250000, 0x011C, 0.875",
        "125000, 0x031C, 0.875",
        "100000, 0x041C, 0.875",
        "50000, 0x091C, 0.875",
        "20000, 0x181C, 0.875",
        "10000, 0x311C, 0.875"
    })
    void register_bytes_are_read_and_written(double rate, String bytes, double samplePoint) {
        int word = Integer.decode(bytes);
        BitTiming t = TimingRegisters.decode(word >> 8, word & 255, 16_000_000);
        assertThat(t.bitsPerSecond()).isCloseTo(rate, within(1e-9 * rate));
        assertThat(t.samplePoint()).isCloseTo(samplePoint, within(1e-12));
        assertThat(TimingRegisters.encode(t)).isEqualTo(word);
        assertThatThrownBy(() -> TimingRegisters.encode(new BitTiming(8_000_000, 1, 14, 15, 10, 1)))
                .hasMessageContaining("phase segment 2");
        assertThatThrownBy(() -> TimingRegisters.decode(256, 0, 16_000_000)).hasMessageContaining("first register");
    }

    @ParameterizedTest
    @ValueSource(ints = {1_000_000, 800_000, 500_000, 250_000, 125_000, 50_000})
    void finds_the_recommended_setting_first(int rate) {
        double sample = TimingSearch.recommendedSamplePoint(rate);
        List<BitTiming> found = TimingSearch.all(16_000_000, rate, TimingSearch.Limits.CLASSICAL, 0, sample);
        assertThat(found)
                .isNotEmpty()
                .allSatisfy(t -> assertThat(t.bitsPerSecond()).isCloseTo(rate, within(0.005 * rate)));
        assertThat(found.get(0).samplePoint()).isCloseTo(sample, within(0.01));
    }

    @Test
    void a_long_bus_leaves_only_settings_with_a_long_propagation_segment() {
        List<BitTiming> near = TimingSearch.all(16_000_000, 500_000, TimingSearch.Limits.CLASSICAL, 0, 0.875);
        List<BitTiming> far = TimingSearch.all(16_000_000, 500_000, TimingSearch.Limits.CLASSICAL, 1200, 0.875);
        assertThat(far).isNotEmpty().hasSizeLessThan(near.size());
        assertThat(far).allSatisfy(t -> assertThat(t.prop() * t.quantumNs()).isGreaterThanOrEqualTo(1200));
        assertThat(TimingSearch.all(16_000_000, 777_777, TimingSearch.Limits.CLASSICAL, 0, 0.8))
                .isEmpty();
    }

    /**
     * A controller manual's FD example at 80 MHz (seen): 500 kbit/s with 160 quanta and 2 Mbit/s with 40, sample points 80 %; the five
     * conditions recomputed after Mutter 2013 (recalled): 1.000, 0.781, 1.000, 1.183, 0.877 %.
     */
    @Test
    void agrees_with_the_fd_example() {
        FdTolerance t =
                FdTolerance.of(new BitTiming(80_000_000, 1, 95, 32, 32, 32), new BitTiming(80_000_000, 1, 23, 8, 8, 8));
        double[] expected = {0.01000, 0.00781, 0.01000, 0.01183, 0.00877};
        for (int i = 0; i < expected.length; i++) {
            assertThat(t.conditions()[i]).as("condition %d", i + 1).isCloseTo(expected[i], within(6e-6));
        }
        assertThat(t.least()).isCloseTo(0.00781, within(6e-6));
    }

    @Test
    void refuses_a_jump_wider_than_a_phase_segment() {
        assertThatThrownBy(() -> new BitTiming(8_000_000, 1, 3, 2, 2, 3)).hasMessageContaining("jump width");
    }
}
