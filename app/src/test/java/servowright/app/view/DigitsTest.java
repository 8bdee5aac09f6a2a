package servowright.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import servowright.app.FrostCart;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Source;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** Expected texts: written down by hand after JCGM 100:2008, 7.2.6 (two digits of the uncertainty, value to match). */
class DigitsTest {
    private static Known exact(double value, String unit, Origin origin) {
        return Known.exact(Quantity.of(value, unit), origin, "");
    }

    @ParameterizedTest(name = "{0} {1} ± {2} standard")
    @CsvSource({
        "5.161, mWb, 0.0135, mWb, 5.161 ± 0.026 mWb",
        "2690.4, rpm, 20, rpm, 2690 ± 39 rpm",
        "2690.4, rpm, 210, rpm, 2690 ± 410 rpm",
        "2694, rpm, 2100, rpm, 2700 ± 4100 rpm",
        "12.34, V, 0.051, V, 12.34 ± 0.10 V",
        "12.34, V, 0.5077, V, 12.3 ± 1.0 V",
        "0.24, ohm, 0.0024, ohm, 0.2400 ± 0.0047 ohm",
        "-3.2, N m, 0.1, N m, -3.20 ± 0.20 N m",
        "0, V, 0.02, V, 0.000 ± 0.039 V",
        "21.456, degC, 0.25, degC, 21.46 ± 0.49 degC",
        "100, rpm, 0.00001, rpm, 100 rpm",
    })
    void shows_two_digits_of_the_uncertainty_and_the_value_to_match(
            double value, String unit, double standard, String asked, String text) {
        assertThat(FigureText.of(FrostCart.measured(value, standard, unit, "x"), asked)
                        .text())
                .isEqualTo(text);
    }

    @ParameterizedTest(name = "{0} {1}")
    @CsvSource({
        "24, V, 24 V",
        "10.392304845, V, 10.39 V",
        "0.3, V, 300 mV",
        "12345.678, rpm, 12346 rpm",
        "0.0123, V, 12.3 mV",
        "0.24, ohm, 0.24 ohm",
        "45, mohm, 45 mohm",
        "130, uH, 130 uH",
        "1.5, mH, 1.5 mH",
        "9.5, kg cm2, 9.5 kg cm2",
        "0.042, kg m2, 0.042 kg m2",
        "12, g cm2, 12 g cm2",
        "131, mV s/rad, 131 mV s/rad",
        "42, rpm/V, 42 rpm/V",
        "35, mN m, 35 mN m",
        "0.35, N m, 0.35 N m",
        "2.2, mF, 2.2 mF",
        "20, A h, 20 A h",
        "950, Hz, 950 Hz",
        "20, kHz, 20 kHz",
        "40, us, 40 us",
        "4, s, 4 s",
        "20, min, 20 min",
        "-12, degC, -12 degC",
        "12, turns, 12 turns",
        "0.5, deg, 0.5 deg",
        "2.1, K/W, 2.1 K/W",
        "1.9, mm, 1.9 mm",
        "0, V, 0 V",
        "0, N m, 0 N m",
    })
    void takes_the_unit_that_the_trade_reads_it_in(double value, String unit, String text) {
        assertThat(FigureText.of(exact(value, unit, Origin.DERIVED), "").text()).isEqualTo(text);
    }

    @Test
    void keeps_the_unit_asked_for_as_long_as_it_can_be_read() {
        Known resistance = exact(17, "ohm", Origin.DERIVED);
        assertThat(FigureText.of(resistance, "mohm").text()).isEqualTo("17000 mohm");
        assertThat(FigureText.of(exact(2, "Mohm", Origin.DERIVED), "mohm").text())
                .isEqualTo("2 Mohm");
        assertThat(FigureText.of(exact(0.1, "", Origin.DERIVED), "%").text()).isEqualTo("10 %");
        assertThat(FigureText.of(exact(12, "V", Origin.DERIVED), "rpm").text()).isEqualTo("12 V");
    }

    @Test
    void shows_a_temperature_difference_in_kelvin_when_asked() {
        assertThat(FigureText.of(exact(7.75, "K", Origin.DERIVED), "K").text()).isEqualTo("7.75 K");
        assertThat(FigureText.of(exact(20, "degC", Origin.DERIVED), "").text()).isEqualTo("20 degC");
    }

    @Test
    void keeps_six_digits_of_what_somebody_stated() {
        assertThat(FigureText.of(exact(105.1472, "mV s/rad", Origin.DECLARED), "")
                        .text())
                .isEqualTo("105.147 mV s/rad");
        assertThat(FigureText.of(exact(105.1472, "mV s/rad", Origin.DERIVED), "")
                        .text())
                .isEqualTo("105.1 mV s/rad");
    }

    @Test
    void splits_off_a_power_of_ten_where_digits_would_only_be_zeros() {
        assertThat(FigureText.of(exact(1.234e9, "rad/s2", Origin.DERIVED), "").text())
                .isEqualTo("1.234e9 rad/s2");
        Known tiny = Known.of(Quantity.of(3.21e-7, "K/W"), 1e-9, Source.of("x"), Origin.MEASURED, "");
        assertThat(FigureText.of(tiny, "").text()).isEqualTo("(3.210 ± 0.020)e-7 K/W");
    }

    @Test
    void says_base_units_for_what_the_trade_has_no_unit_for() {
        Quantity odd = new Quantity(2, Dimension.MASS.times(Dimension.TEMPERATURE));
        assertThat(FigureText.of(odd, "").text()).isEqualTo("2 kg K");
    }

    /** Student's t for 2 degrees of freedom and 95 %: 4.30 (JCGM 100:2008, table G.2, value from memory). */
    @Test
    void widens_the_interval_for_few_degrees_of_freedom() {
        Known few = Known.of(Quantity.of(10, "V"), 0.1, Source.of("x", 2), Origin.MEASURED, "");
        assertThat(FigureText.of(few, "V").text()).isEqualTo("10.00 ± 0.43 V");
    }
}
