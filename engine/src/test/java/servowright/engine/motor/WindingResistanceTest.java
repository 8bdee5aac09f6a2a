package servowright.engine.motor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import servowright.engine.quantity.HookUp;

class WindingResistanceTest {

    private static final double ZERO = 273.15;

    /** Meter reading 78 mΩ, leads subtracted (practitioner case, recomputed). */
    @Test
    void splits_78_milliohm_by_hook_up() {
        double two = WindingResistance.phaseOhm(0.078, HookUp.TWO_TERMINALS, 0);
        double one = WindingResistance.phaseOhm(0.078, HookUp.ONE_AGAINST_TWO, 0);
        assertThat(two).isCloseTo(0.0390, within(1e-12));
        assertThat(one).isCloseTo(0.0520, within(1e-12));
        assertThat(one / two - 1).isCloseTo(0.333, within(5e-4));
        assertThat(WindingResistance.deltaCoilOhm(two)).isCloseTo(0.117, within(1e-12)); // 1.5 x line to line
    }

    @ParameterizedTest
    @CsvSource({"TWO_TERMINALS", "ONE_AGAINST_TWO", "PHASE"})
    void comes_back_from_the_reading_it_expects(HookUp hookUp) {
        double reading = WindingResistance.expectedReadingOhm(0.05, hookUp, 0.012);
        assertThat(WindingResistance.phaseOhm(reading, hookUp, 0.012)).isCloseTo(0.05, within(1e-15));
    }

    /** Published student measurement: phase 0.26 Ω with 0.1 Ω of leads (seen). */
    @Test
    void takes_off_the_leads() {
        assertThat(WindingResistance.phaseOhm(0.26, HookUp.PHASE, 0.1)).isCloseTo(0.16, within(1e-12));
        assertThatThrownBy(() -> WindingResistance.phaseOhm(0.26, HookUp.PHASE, 0.3))
                .hasMessageContaining("less leads");
    }

    /** Factors against 20 °C, recomputed for 234.5 and 235. */
    @ParameterizedTest
    @CsvSource({
        "25, 1.01965, 1.01961",
        "80, 1.23576, 1.23529",
        "100, 1.31434, 1.31373",
        "130, 1.43222, 1.43137",
        "155, 1.53045, 1.52941"
    })
    void warms_copper(double celsius, double iacs, double iec) {
        assertThat(WindingResistance.atTemperature(1, ZERO + 20, ZERO + celsius, Conductor.COPPER_IACS))
                .isCloseTo(iacs, within(5e-6));
        assertThat(WindingResistance.atTemperature(1, ZERO + 20, ZERO + celsius, Conductor.COPPER_IEC))
                .isCloseTo(iec, within(5e-6));
    }

    @Test
    void relates_the_temperature_constant_to_that_of_annealed_copper() {
        assertThat(Conductor.COPPER_IACS.relativePerKelvin(ZERO + 20)).isCloseTo(0.00393, within(1e-6));
        assertThat(Conductor.COPPER_IACS.kCelsius()).isCloseTo(1 / 0.00393 - 20, within(0.05));
        assertThat(Conductor.ALUMINIUM.resistanceFactor(ZERO + 20, ZERO + 100)).isCloseTo(325.0 / 245, within(1e-12));
        assertThat(Conductor.COPPER_IEC.words()).contains("235");
        assertThatThrownBy(() -> Conductor.COPPER_IEC.resistanceFactor(ZERO + 20, ZERO - 240))
                .hasMessageContaining("zero resistance");
    }

    /** Worked example in an instrument manual's appendix on IEC 60034 (seen): 200 mΩ at 20 °C, 210 mΩ, 25 °C. */
    @Test
    void agrees_with_a_published_rise_by_resistance() {
        WindingResistance.ByResistance found =
                WindingResistance.temperature(0.200, ZERO + 20, 0.210, ZERO + 25, Conductor.COPPER_IEC);
        assertThat(found.riseKelvin()).isCloseTo(7.75, within(1e-9));
        assertThat(found.windingKelvin() - ZERO).isCloseTo(32.75, within(1e-9));
    }

    /** 0.500 Ω at 22 °C to 0.640 Ω, coolant 25 °C; recomputed. */
    @ParameterizedTest
    @CsvSource({"COPPER_IEC, 68.96, 93.96", "COPPER_IACS, 68.82, 93.82"})
    void finds_the_winding_temperature(Conductor conductor, double rise, double celsius) {
        WindingResistance.ByResistance found =
                WindingResistance.temperature(0.5, ZERO + 22, 0.64, ZERO + 25, conductor);
        assertThat(found.riseKelvin()).isCloseTo(rise, within(5e-3));
        assertThat(found.windingKelvin() - ZERO).isCloseTo(celsius, within(5e-3));
    }

    @Test
    void splits_three_pairs_into_three_phases() {
        WindingResistance.ThreePhases phases = WindingResistance.fromThreePairs(0.105, 0.100, 0.105);
        assertThat(phases.aOhm()).isCloseTo(0.055, within(1e-12));
        assertThat(phases.bOhm()).isCloseTo(0.050, within(1e-12));
        assertThat(phases.cOhm()).isCloseTo(0.050, within(1e-12));
        assertThat(phases.meanOhm()).isCloseTo(0.155 / 3, within(1e-12));
        assertThat(phases.pairSpread()).isCloseTo(0.005 / (0.31 / 3), within(1e-12));
        assertThat(phases.phaseSpread()).isCloseTo(2 * phases.pairSpread(), within(1e-12));
    }

    @Test
    void refuses_three_pairs_that_no_winding_can_show() {
        assertThatThrownBy(() -> WindingResistance.fromThreePairs(0.1, 0.3, 0.1))
                .hasMessageContaining("phase a");
        assertThatThrownBy(() -> WindingResistance.fromThreePairs(0.1, 0.1, 0.3))
                .hasMessageContaining("phase b");
        assertThatThrownBy(() -> WindingResistance.fromThreePairs(0.3, 0.1, 0.1))
                .hasMessageContaining("phase c");
    }

    @Test
    void compares_both_hook_ups_and_shows_a_swap() {
        assertThat(WindingResistance.compare(0.100, 0.075).relativeDifference()).isCloseTo(0, within(1e-12));
        assertThat(WindingResistance.compare(0.100, 0.100).relativeDifference()).isCloseTo(1 / 3.0, within(1e-12));
        assertThat(WindingResistance.compare(0.075, 0.075).relativeDifference()).isCloseTo(1 / 3.0, within(1e-12));
        assertThat(WindingResistance.compare(0.075, 0.100).relativeDifference()).isCloseTo(7 / 9.0, within(1e-12));
    }

    /** 50 mΩ behind 0.24 V of dead-time error: at 5 A one point reads 48 mΩ too much (recomputed). */
    @Test
    void takes_the_dead_time_out_with_two_currents() {
        WindingResistance.Slope slope = WindingResistance.fromTwoCurrents(5, 0.24 + 0.25, 10, 0.24 + 0.5);
        assertThat(slope.ohm()).isCloseTo(0.050, within(1e-12));
        assertThat(slope.offsetVolt()).isCloseTo(0.24, within(1e-12));
        assertThat(slope.firstPointOhm() - slope.ohm()).isCloseTo(0.048, within(1e-12));
        assertThat(slope.secondPointOhm() - slope.ohm()).isCloseTo(0.024, within(1e-12));
        assertThatThrownBy(() -> WindingResistance.fromTwoCurrents(5, 1, 5, 1)).hasMessageContaining("less first");
    }
}
