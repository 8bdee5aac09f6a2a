package servowright.engine.motor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import servowright.engine.motor.PolePairs.Accepted;
import servowright.engine.motor.PolePairs.Reason;
import servowright.engine.motor.PolePairs.Refused;
import servowright.engine.quantity.VoltageBasis;

class PolePairsTest {

    @Test
    void halves_the_magnets_and_refuses_an_odd_count() {
        assertThat(PolePairs.fromMagnets(14)).isEqualTo(new Accepted(7, 7, 0, false));
        assertThat(PolePairs.fromMagnets(13)).isEqualTo(new Refused(Reason.ODD_MAGNETS, 13, 1, 0));
    }

    @Test
    void divides_electrical_periods_by_turns() {
        assertThat(PolePairs.fromPeriods(70.3, 10)).isInstanceOfSatisfying(Accepted.class, found -> {
            assertThat(found.polePairs()).isEqualTo(7);
            assertThat(found.relativeOff()).isCloseTo(0.3 / 70, within(1e-12));
            assertThat(found.reversed()).isFalse();
        });
        assertThat(PolePairs.fromPeriods(73, 10))
                .isInstanceOfSatisfying(
                        Refused.class, r -> assertThat(r.reason()).isEqualTo(Reason.NOT_AN_INTEGER));
    }

    @Test
    void accepts_twenty_electrical_turns_that_move_both_ways_alike() {
        assertThat(PolePairs.fromTravel(20, 20 / 7.05, -20 / 6.98)).isInstanceOfSatisfying(Accepted.class, found -> {
            assertThat(found.polePairs()).isEqualTo(7);
            assertThat(found.raw()).isCloseTo(7.015, within(1e-12));
            assertThat(found.reversed()).isFalse();
        });
    }

    @Test
    void says_that_the_shaft_turns_against_the_field() {
        assertThat(PolePairs.fromTravel(20, -20.0 / 7, 20.0 / 7))
                .isInstanceOfSatisfying(
                        Accepted.class, found -> assertThat(found.reversed()).isTrue());
    }

    /** A calibration that reported -5676 pole pairs: the rotor had not followed (practitioner case). */
    @Test
    void refuses_minus_5676_pole_pairs_because_the_rotor_did_not_follow() {
        assertThat(PolePairs.fromTravel(20, -20.0 / 5676, 20.0 / 5676))
                .isInstanceOfSatisfying(
                        Refused.class, r -> assertThat(r.reason()).isEqualTo(Reason.NOT_MOVED));
        assertThat(PolePairs.fromTravel(20, 20.0 / 7, 0))
                .isInstanceOfSatisfying(
                        Refused.class, r -> assertThat(r.reason()).isEqualTo(Reason.NOT_MOVED));
        assertThat(Reason.NOT_MOVED.words()).isEqualTo("the rotor did not follow");
    }

    @ParameterizedTest
    @CsvSource({
        "2.857, 2.857, DIRECTIONS_DISAGREE",
        "2.857, -2.500, DIRECTIONS_DISAGREE",
        "2.740, -2.740, NOT_AN_INTEGER",
        "-2.740, 2.740, NOT_AN_INTEGER"
    })
    void says_why_a_travel_gives_no_pole_pairs(double forward, double backward, Reason reason) {
        assertThat(PolePairs.fromTravel(20, forward, backward))
                .isInstanceOfSatisfying(
                        Refused.class, r -> assertThat(r.reason()).isEqualTo(reason));
    }

    /** At 40 pole pairs two percent would be 0.8 and let every number through. */
    @Test
    void stays_strict_where_two_percent_would_reach_the_next_integer() {
        assertThat(PolePairs.fromPeriods(40.4, 1))
                .isInstanceOfSatisfying(
                        Refused.class, r -> assertThat(r.reason()).isEqualTo(Reason.NOT_AN_INTEGER));
        assertThat(PolePairs.fromPeriods(40.15, 1)).isInstanceOf(Accepted.class);
    }

    /** Modelica Standard Library's machine: 112.3 V RMS per phase at 50 Hz, p 2 (record seen, recomputed). */
    @Test
    void follows_from_emf_and_flux_linkage() {
        double weber = 112.3 * Math.sqrt(2) / (2 * Math.PI * 50);
        MotorConstants motor =
                MotorConstants.ofEmfConstant(112.3 / ElectricalSpeed.mechRadPerS(50, 2), VoltageBasis.PHASE_RMS);
        assertThat(PolePairs.fromFluxLinkage(motor, weber))
                .isInstanceOfSatisfying(
                        Accepted.class, found -> assertThat(found.polePairs()).isEqualTo(2));
        assertThat(PolePairs.fromFluxLinkage(motor, weber * Math.sqrt(1.5))).isInstanceOf(Refused.class);
    }

    @Test
    void refuses_nan() {
        assertThatThrownBy(() -> PolePairs.fromTravel(20, Double.NaN, 1)).hasMessageContaining("travel forward");
        assertThatThrownBy(() -> PolePairs.fromPeriods(Double.NaN, 1)).hasMessageContaining("electrical periods");
        assertThatThrownBy(() -> PolePairs.fromMagnets(0)).hasMessageContaining("magnets");
    }
}
