package servowright.engine.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import servowright.engine.thermal.TwoNode.Rise;

class TwoNodeTest {

    /** 1.2 K/W, 40 J/K, 2.0 K/W, 400 J/K; 20 W (golden figures by another program, recomputed). */
    private static final TwoNode MOTOR = new TwoNode(1.2, 40, 2.0, 400);

    @Test
    void has_the_time_constants_of_the_pair_and_not_of_its_parts() {
        assertThat(MOTOR.shortTimeConstantSecond()).isCloseTo(43.4099, within(5e-5));
        assertThat(MOTOR.longTimeConstantSecond()).isCloseTo(884.590, within(5e-4));
        assertThat(MOTOR.settled(20)).isEqualTo(new Rise(64, 40));
    }

    @ParameterizedTest
    @CsvSource({
        "10, 4.51676, 0.04812",
        "48, 15.41022, 0.84064",
        "100, 22.32635, 2.63826",
        "300, 32.29539, 10.03623",
        "800, 45.99563, 22.97259",
        "2000, 59.36306, 35.61468",
        "4000, 63.51659, 39.54282"
    })
    void warms_from_cold(double second, double winding, double housing) {
        Rise rise = MOTOR.after(Rise.COLD, 20, second);
        assertThat(rise.windingKelvin()).isCloseTo(winding, within(5.1e-6));
        assertThat(rise.housingKelvin()).isCloseTo(housing, within(5.1e-6));
    }

    @Test
    void goes_the_same_way_in_two_steps_as_in_one() {
        Rise half = MOTOR.after(MOTOR.after(Rise.COLD, 20, 130), 20, 170);
        Rise whole = MOTOR.after(Rise.COLD, 20, 300);
        assertThat(half.windingKelvin()).isCloseTo(whole.windingKelvin(), within(1e-9));
        assertThat(half.housingKelvin()).isCloseTo(whole.housingKelvin(), within(1e-9));
    }

    @Test
    void cools_to_ambient_and_starts_where_it_was() {
        Rise warm = new Rise(60, 30);
        Rise same = MOTOR.after(warm, 0, 0);
        assertThat(same.windingKelvin()).isCloseTo(60, within(1e-9));
        assertThat(same.housingKelvin()).isCloseTo(30, within(1e-9));
        assertThat(MOTOR.after(warm, 0, 1e5).windingKelvin()).isCloseTo(0, within(1e-9));
    }

    @Test
    void refuses_nan() {
        assertThatThrownBy(() -> new TwoNode(1, 1, 1, Double.NaN)).hasMessageContaining("housing");
        assertThatThrownBy(() -> MOTOR.after(Rise.COLD, 1, Double.NaN)).hasMessageContaining("time");
    }
}
