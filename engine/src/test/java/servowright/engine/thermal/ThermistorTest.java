package servowright.engine.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ThermistorTest {
    /** Constants often given for a thermistor of 3 kohm at 25 °C (from memory; they hold it to half a kelvin). */
    @Test
    void reads_25_degrees_at_3_kilohm_with_the_constants_often_given_for_it() {
        Thermistor thermistor = new Thermistor(1.40e-3, 2.37e-4, 9.90e-8);
        assertThat(thermistor.kelvin(3000)).isCloseTo(298.15, within(0.6));
        assertThat(thermistor.ohm(thermistor.kelvin(3000)).orElseThrow()).isCloseTo(3000, within(1e-6));
    }

    /** Counts of a converter of 1023 over a fixed resistor of 10 kohm, and what declared constants make of them; computed outside. */
    @ParameterizedTest
    @CsvSource({"388, 21.6", "301, 30.4", "216, 41.2"})
    void reads_a_divider_as_was_computed_outside(double count, double celsius) {
        double ohm = Thermistor.ohmInDivider(count / 1023, 10e3);
        assertThat(new Thermistor(1.2666e-3, 2.3661e-4, 9.6094e-8).kelvin(ohm) - 273.15)
                .isCloseTo(celsius, within(0.05));
    }

    /** Ratio of resistances at 25 and 85 °C for β 3435 K: 6.89, a line of many data sheets (from memory; recomputed). */
    @Test
    void falls_by_the_exponential_between_25_and_85_degrees() {
        Thermistor thermistor = Thermistor.exponential(10e3, 3435);
        assertThat(thermistor.ohm(298.15).orElseThrow()).isCloseTo(10e3, within(1e-6));
        assertThat(10e3 / thermistor.ohm(358.15).orElseThrow()).isCloseTo(6.89, within(0.005));
    }

    @Test
    void refuses_what_no_thermistor_has() {
        assertThatThrownBy(() -> Thermistor.exponential(0, 3435)).hasMessageContaining("25 degC");
        assertThatThrownBy(() -> Thermistor.ohmInDivider(1, 10e3)).hasMessageContaining("rest of the share");
        assertThat(Thermistor.exponential(10e3, 3435).ohm(1)).isEmpty();
    }

    @Test
    void counts_what_was_read_at_one_temperature_once() {
        Thermistor truth = Thermistor.exponential(12e3, 3700);
        double[] kelvin = new double[500];
        double[] ohm = new double[500];
        for (int k = 0; k < kelvin.length; k++) {
            kelvin[k] = k < 400 ? 300 : 300 + 0.5 * (k - 400);
            ohm[k] = truth.ohm(kelvin[k]).orElseThrow();
        }
        ThermistorFit fit = ThermistorFit.of(kelvin, ohm).orElseThrow();
        assertThat(fit.betaKelvin()).isCloseTo(3700, within(2.0));
        assertThat(fit.ohmAt25()).isCloseTo(12e3, within(10.0));
        assertThat(fit.fit().degreesOfFreedom()).isEqualTo(22);
        assertThat(fit.standardKelvin(320)).isLessThan(0.1);
        assertThat(ThermistorFit.of(new double[] {300, 300}, new double[] {1, 1}))
                .isEmpty();
        assertThat(ThermistorFit.of(new double[] {300, 310}, new double[] {1, 2}))
                .isEmpty();
    }
}
