package servowright.engine.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import servowright.engine.quantity.ParsedQuantity.Malformed;
import servowright.engine.quantity.Stated.Spread;

class QuantityTextTest {
    private static Stated stated(String text) {
        assertThat(QuantityText.parse(text)).as(text).isInstanceOf(Stated.class);
        return (Stated) QuantityText.parse(text);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "24 V|24|24|24",
                "24V|24|24|24",
                "0.24 ohm ± 2 %|0.24|0.2352|0.2448",
                "0.24 ohm +/- 2 %|0.24|0.2352|0.2448",
                "1.4 mm +0.1/-0.2 mm|0.0014|0.0012|0.0015",
                "1.0 mm (+0.1/-0.2)|0.001|0.0008|0.0011",
                "24 V ± 0.5 V|24|23.5|24.5",
                "24 ± 0.5 V|24|23.5|24.5",
                "1.9 mm ± 200 um|0.0019|0.0017|0.0021",
                "19.5..29.2 V|24.35|19.5|29.2",
                "900 mV..1.1 V|1|0.9|1.1",
                "0,9 mNm|9e-4|9e-4|9e-4",
                "−12 degC|261.15|261.15|261.15",
                "-5..30 degC|285.65|268.15|303.15",
                "+158.65E-03 V|0.15865|0.15865|0.15865",
                "14|14|14|14",
            })
    void reads_value_tolerance_and_range(String text, double nominal, double lower, double upper) {
        Stated s = stated(text);
        assertThat(s.nominal().si()).isCloseTo(nominal, within(1e-12));
        assertThat(s.lower().si()).isCloseTo(lower, within(1e-12));
        assertThat(s.upper().si()).isCloseTo(upper, within(1e-12));
    }

    @Test
    void reads_how_a_figure_was_stated() {
        Stated speed = stated("42 rpm/V [line peak, label]");
        assertThat(speed.voltageBasis()).contains(VoltageBasis.LINE_PEAK);
        assertThat(speed.origin()).contains(StatedOrigin.LABEL);
        Stated resistance = stated("0.24 ohm [two terminals, 20 degC, measured]");
        assertThat(resistance.hookUp()).contains(HookUp.TWO_TERMINALS);
        assertThat(resistance.temperature()).contains(Quantity.of(20, "degC"));
        assertThat(stated("6 A [q axis]").currentBasis()).contains(CurrentBasis.Q_AXIS);
        assertThat(stated("1 N m [load side]").side()).contains(Side.LOAD);
        assertThat(stated("1 N m [loud side, guess]").unknownQualifiers()).containsExactly("loud side");
        assertThat(stated("42 rpm/V").voltageBasis()).isEmpty();
    }

    @Test
    void tells_a_tolerance_from_a_range() {
        assertThat(stated("24 V").spread()).isEqualTo(Spread.VALUE);
        assertThat(stated("24 V ± 1 V").spread()).isEqualTo(Spread.TOLERANCE);
        assertThat(stated("20..28 V").spread()).isEqualTo(Spread.RANGE);
    }

    /** ASTM B258: AWG 36 is 0.0050 in, AWG 0000 is 0.4600 in; the usual wire tables print 0.518 mm2 for 20 (value from memory). */
    @ParameterizedTest
    @CsvSource({"AWG 20,0.5176e-6", "AWG 36,0.012668e-6", "AWG 0000,107.22e-6", "AWG 4/0,107.22e-6", "awg 0,53.475e-6"})
    void reads_a_wire_gauge_as_a_cross_section(String text, double area) {
        assertThat(stated(text).dimension()).isEqualTo(Dimension.AREA);
        assertThat(stated(text).nominal().si()).isCloseTo(area, within(2e-4 * area));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "unknown",
                "V 24",
                "24 apples",
                "1,200 rpm",
                "29..19 V",
                "1 V ± 2 A",
                "1..2 V..A",
                "1e999 V",
                "1 V..2 A",
                "24 V ± 1e400 V",
                "twelve",
                "[label]",
                "±",
            })
    void says_what_is_wrong_with_the_rest(String text) {
        assertThat(QuantityText.parse(text)).isInstanceOfSatisfying(Malformed.class, m -> {
            assertThat(m.reason()).isNotBlank();
            assertThat(m.remedy()).isNotBlank();
        });
    }

    @Test
    void asks_whether_a_comma_means_a_thousand() {
        Malformed m = (Malformed) QuantityText.parse("1,200 rpm");
        assertThat(m.remedy()).isEqualTo("write 1200 or 1.200");
        assertThat(stated("0,200 V").nominal().si()).isEqualTo(0.2);
    }

    @Test
    void proposes_the_unit_that_was_probably_meant() {
        Malformed m = (Malformed) QuantityText.parse("410 rmp");
        assertThat(m.remedy()).isEqualTo("did you mean rpm?");
    }

    @Test
    void a_very_long_text_is_refused_at_once() {
        assertThat(QuantityText.parse("9".repeat(100_000))).isInstanceOf(Malformed.class);
    }

    @Test
    void reads_the_limits_of_an_instrument() {
        Accuracy both = Accuracy.parse("± 0.1 % ± 2 mV").orElseThrow();
        assertThat(both.halfWidth(10)).isCloseTo(0.012, within(1e-15));
        assertThat(both.standardUncertainty(10)).isCloseTo(0.012 / Math.sqrt(3), within(1e-15));
        assertThat(Accuracy.parse("± 0,3 %").orElseThrow().relative()).isCloseTo(0.003, within(1e-15));
        assertThat(Accuracy.parse("± (0.5 % + 3 mA)").orElseThrow().absolute()).isEqualTo(Quantity.of(3, "mA"));
        assertThat(Accuracy.parse("good")).isEmpty();
        assertThat(Accuracy.parse("± 2")).isEmpty();
        assertThat(Accuracy.EXACT.halfWidth(5)).isZero();
    }

    @ParameterizedTest
    @ValueSource(strings = {"1.7e308..1.7e308 V", "1.7e308 V ± 1.7e308 V", "1e308 V ± 200 %", "1e308 kV"})
    void refuses_what_cannot_be_held(String text) {
        assertThat(QuantityText.parse(text)).isInstanceOf(ParsedQuantity.Malformed.class);
    }

    @ParameterizedTest
    @ValueSource(strings = {"± 1e999 %", "± 1e308 kV", "± 1 mV ± 2 A", "± 1", "", "%"})
    void refuses_limits_that_are_none(String text) {
        assertThat(Accuracy.parse(text)).isEmpty();
    }
}
