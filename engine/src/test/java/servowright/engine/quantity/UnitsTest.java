package servowright.engine.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Factors: BIPM SI brochure (9th ed.) and NIST SP 811 appendix B for inch, pound, standard gravity. */
class UnitsTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "rpm|0.10471975511965977",
                "krpm|104.71975511965977",
                "turns/s|6.283185307179586",
                "deg/s|0.017453292519943295",
                "rad/s|1",
                "mV|1e-3",
                "mohm|1e-3",
                "µohm|1e-6",
                "mΩ|1e-3",
                "µH|1e-6",
                "uH|1e-6",
                "N m|1",
                "Nm|1",
                "mN m|1e-3",
                "mNm|1e-3",
                "kg cm|0.0980665",
                "kgf.cm|0.0980665",
                "oz-in|0.00706155181422604",
                "ozf.in|0.00706155181422604",
                "kg m2|1",
                "g cm2|1e-7",
                "kg cm²|1e-4",
                "rpm/V|0.10471975511965977",
                "V/krpm|0.009549296585513721",
                "V s/rad|1",
                "mV s/rad|1e-3",
                "N m/A|1",
                "bit/s|1",
                "Mbit/s|1e6",
                "turns/s2|6.283185307179586",
                "A h|3600",
                "K/W|1",
                "mN·m|1e-3",
                "m/s^2|1",
                "%|0.01",
            })
    void knows_the_units_people_write(String text, double factor) {
        assertThat(Units.named(text).factor()).isCloseTo(factor, within(1e-12 * factor));
    }

    @Test
    void tells_torque_from_energy_and_speed_from_frequency() {
        assertThat(Units.named("N m").dimension()).isEqualTo(Dimension.TORQUE).isNotEqualTo(Dimension.ENERGY);
        assertThat(Units.named("rpm").dimension()).isEqualTo(Dimension.SPEED).isNotEqualTo(Dimension.FREQUENCY);
        assertThat(Units.named("kg cm").dimension()).isEqualTo(Dimension.TORQUE);
        assertThat(Units.named("kg cm2").dimension()).isEqualTo(Dimension.INERTIA);
        assertThat(Units.named("V s").dimension()).isEqualTo(Dimension.FLUX_LINKAGE);
        assertThat(Units.named("V s/rad").dimension()).isEqualTo(Dimension.TORQUE_CONSTANT);
        assertThat(Units.named("N m s/rad").dimension()).isEqualTo(Dimension.VISCOUS_FRICTION);
        assertThat(Units.named("N m s").dimension()).isEqualTo(Dimension.VISCOUS_FRICTION);
        assertThat(Units.named("N m/sqrt(W)").dimension()).isEqualTo(Dimension.MOTOR_CONSTANT);
    }

    @Test
    void a_temperature_has_a_zero_but_a_difference_has_none() {
        assertThat(Units.named("degC").toSi(20)).isCloseTo(293.15, within(1e-12));
        assertThat(Units.named("°F").toSi(212)).isCloseTo(373.15, within(1e-9));
        assertThat(Units.named("degC").difference(20).si()).isEqualTo(20);
        assertThat(Units.named("W/degC").factor()).isEqualTo(1);
    }

    @Test
    void suggests_the_nearest_unit_and_refuses_nonsense() {
        assertThat(Units.find("rmp")).isEmpty();
        assertThat(Units.nearest("rmp")).contains("rpm");
        assertThat(Units.find("apples")).isEmpty();
        assertThat(Units.find("V//A")).isEmpty();
        assertThat(Units.find("degC2")).isEmpty();
    }

    @Test
    void every_unit_reads_back_from_its_own_symbol() {
        assertThat(UnitTable.ALL).isNotEmpty().allSatisfy((symbol, unit) -> {
            assertThat(Units.named(symbol).factor()).isEqualTo(unit.factor());
            assertThat(unit.fromSi(unit.toSi(1.25))).isCloseTo(1.25, within(1e-9));
        });
    }

    @Test
    void the_root_of_a_power_is_a_dimension_and_of_its_root_is_none() {
        assertThat(Dimension.POWER.root().power(2)).isEqualTo(Dimension.POWER);
        assertThat(Dimension.MOTOR_CONSTANT.symbol()).isEqualTo("kg0.5 m s-0.5 rad-1");
        org.assertj.core.api.Assertions.assertThatThrownBy(
                        () -> Dimension.POWER.root().root())
                .isInstanceOf(IllegalArgumentException.class);
        assertThat(Dimension.NUMBER.symbol()).isEqualTo("1");
        assertThat(Dimension.TORQUE.withoutAngle()).isEqualTo(Dimension.ENERGY);
    }

    @Test
    void refuses_to_count_a_torque_in_joule() {
        Quantity torque = Quantity.of(1, "N m");
        assertThat(torque.in("mN m")).isEqualTo(1000);
        org.assertj.core.api.Assertions.assertThatThrownBy(() -> torque.in("J"))
                .hasMessageContaining("cannot be counted in J");
        org.assertj.core.api.Assertions.assertThatThrownBy(() -> Quantity.number(Double.NaN))
                .hasMessageContaining("must be finite");
    }
}
