package servowright.engine.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import servowright.engine.thermal.TwoNode.Rise;

/** 1.2 K/W, 40 J/K, 2.0 K/W, 400 J/K and its table of rises for 20 W (golden figures by another program, recomputed). */
class TwoNodeDutyTest {
    private static final TwoNode MOTOR = new TwoNode(1.2, 40, 2.0, 400);
    private static final double COPPER = 0.00393;

    /** Copper at 25 degC when the coefficient 0.00393 counts from 20 degC. */
    private static final double AT_25 = COPPER / (1 + COPPER * 5);

    /** Settled 64 K over the rise in the table: the loss for the same limit is larger by that, the current by its root. */
    @ParameterizedTest
    @CsvSource({"10, 4.51676", "48, 15.41022", "100, 22.32635", "300, 32.29539", "800, 45.99563", "2000, 59.36306"})
    void short_time_factors_follow_from_the_table_of_rises(double second, double rise) {
        TwoNodeDuty duty = new TwoNodeDuty(MOTOR, 0, 64);
        assertThat(duty.continuousWatt()).isCloseTo(20, within(1e-12));
        assertThat(duty.shortTimeFactor(second)).isCloseTo(Math.sqrt(64 / rise), within(3e-6));
    }

    /** Copper of 1/256 per kelvin, 89 K: the heat balance integrated step by step by SciPy's LSODA and a root search. */
    @ParameterizedTest
    @CsvSource({"10, 4.02910", "60, 2.00348", "600, 1.26912"})
    void bursts_agree_with_a_heat_balance_in_steps(double on, double factor) {
        assertThat(new TwoNodeDuty(MOTOR, 1 / 256.0, 89).shortTimeFactor(on)).isCloseTo(factor, within(2e-5));
    }

    /** The same, forty cycles of ten minutes from cold. */
    @ParameterizedTest
    @CsvSource({"0.15, 1.62675", "0.25, 1.42391", "0.40, 1.26979", "0.60, 1.14622"})
    void cycles_agree_with_a_heat_balance_in_steps(double share, double factor) {
        assertThat(new TwoNodeDuty(MOTOR, 1 / 256.0, 89).periodicFactor(600, share))
                .isCloseTo(factor, within(2e-5));
    }

    /** IEC 60034-1 duty S3 of 10 min with one time constant of 800 s (golden figures, recomputed); the winding stores next to nothing. */
    @ParameterizedTest
    @CsvSource({"0.15, 2.2268", "0.25, 1.7567", "0.40, 1.4268", "0.60, 1.2067"})
    void periodic_factors_tend_to_those_of_one_time_constant(double share, double factor) {
        TwoNodeDuty duty = new TwoNodeDuty(new TwoNode(1e-6, 1e-3, 2.0, 400), 0, 80);
        assertThat(duty.periodicFactor(600, share)).isCloseTo(factor, within(1e-4));
    }

    @Test
    void periodic_factors_tend_to_the_root_mean_square_and_to_one() {
        TwoNodeDuty duty = new TwoNodeDuty(MOTOR, 0, 64);
        assertThat(duty.periodicFactor(0.01, 0.25)).isCloseTo(2, within(1e-3));
        assertThat(duty.periodicFactor(600, 1)).isCloseTo(1, within(1e-9));
        // The winding alone, 43 s, follows a cycle of ten minutes: far less than the root of 1/0.25.
        assertThat(duty.periodicFactor(600, 0.25)).isBetween(1.2, 1.6);
        assertThat(duty.periodicFactor(1e7, 0.5)).isCloseTo(1, within(1e-6));
    }

    /** Next to nothing changes in such a cycle: what counts is the mean heat, factor √(1/share). */
    @ParameterizedTest
    @CsvSource({"1e-12, 0.1", "1e-6, 0.1", "1e-3, 0.25", "1e-3, 1e-4"})
    void cycles_without_any_length_allow_the_root_mean_square(double cycle, double share) {
        TwoNodeDuty duty = new TwoNodeDuty(MOTOR, COPPER, 85);
        assertThat(duty.periodicFactor(cycle, share) * Math.sqrt(share)).isCloseTo(1, within(2e-5));
    }

    @ParameterizedTest
    @CsvSource({
        "1e-4, 1e-6, 1e5, 1e9, 600, 1e-6",
        "1e5, 1e9, 1e-4, 1e-6, 600, 0.3",
        "1, 1, 1, 1, 1e9, 1e-6",
        "1e-4, 1e9, 1e-4, 1e9, 1e-9, 0.5"
    })
    void factors_stay_between_one_and_the_root_mean_square(
            double rwh, double cw, double rha, double ch, double cycle, double share) {
        TwoNodeDuty duty = new TwoNodeDuty(new TwoNode(rwh, cw, rha, ch), COPPER, 85);
        double factor = duty.periodicFactor(cycle, share);
        assertThat(factor).isBetween(1.0, (1 + 1e-6) / Math.sqrt(share));
        assertThat(factor).isGreaterThan(cycle > 1e6 ? 0.99 : 1.01);
        assertThat(duty.shortTimeFactor(cycle)).isGreaterThanOrEqualTo(1);
    }

    /** The periodic answer walked through, cycle by cycle, from cold. */
    @Test
    void many_cycles_in_a_row_end_at_the_limit() {
        TwoNodeDuty duty = new TwoNodeDuty(MOTOR, COPPER, 80);
        double factor = duty.periodicFactor(600, 0.25);
        TwoNodeCurrent on = new TwoNodeCurrent(MOTOR, factor * factor * duty.continuousWatt(), COPPER);
        Rise rise = Rise.COLD;
        double most = 0;
        for (int cycle = 0; cycle < 60; cycle++) {
            rise = on.after(rise, 150);
            most = rise.windingKelvin();
            rise = MOTOR.after(rise, 0, 450);
        }
        assertThat(most).isCloseTo(80, within(1e-6));
    }

    /** Settled temperatures with copper feedback, 3.2 K/W in air of 25 degC (golden figures, recomputed). */
    @ParameterizedTest
    @CsvSource({"10, 62.322", "20, 112.187", "40, 287.63"})
    void settles_with_copper_that_warms(double wattAt20, double celsius) {
        TwoNodeCurrent held = new TwoNodeCurrent(MOTOR, wattAt20 * (1 + COPPER * 5), AT_25);
        double settled = held.settled().orElseThrow().windingKelvin();
        assertThat(25 + settled).isCloseTo(celsius, within(5e-3));
        assertThat(held.after(Rise.COLD, 1e6).windingKelvin()).isCloseTo(settled, within(1e-6));
    }

    @Test
    void runs_away_above_the_limit_of_the_feedback() {
        // 79.517 W at 20 degC (golden figure, recomputed).
        assertThat(new TwoNodeCurrent(MOTOR, 79.516 * (1 + COPPER * 5), AT_25).settled())
                .isPresent();
        assertThat(new TwoNodeCurrent(MOTOR, 79.518 * (1 + COPPER * 5), AT_25).settled())
                .isEmpty();
        TwoNodeCurrent hot = new TwoNodeCurrent(MOTOR, 120, COPPER);
        assertThat(hot.slowRate()).isPositive();
        assertThat(hot.after(Rise.COLD, 1e4).windingKelvin()).isGreaterThan(1e3);
        // Exactly at the limit nothing breaks: the winding climbs in a straight line in the end.
        TwoNodeCurrent edge = new TwoNodeCurrent(MOTOR, 1 / (COPPER * 3.2), COPPER);
        double early = edge.after(Rise.COLD, 1e4).windingKelvin();
        double late = edge.after(Rise.COLD, 2e4).windingKelvin();
        double later = edge.after(Rise.COLD, 3e4).windingKelvin();
        assertThat(later - late).isCloseTo(late - early, within(1e-6 * late));
    }

    /** Against steps of a Runge-Kutta method of fourth order written out here. */
    @Test
    void follows_the_equations() {
        TwoNodeCurrent held = new TwoNodeCurrent(MOTOR, 50, COPPER);
        double[] y = {5, 2};
        for (int k = 0; k < 4000; k++) {
            double[] a = slopes(y, 50);
            double[] b = slopes(moved(y, a, 0.05), 50);
            double[] c = slopes(moved(y, b, 0.05), 50);
            double[] d = slopes(moved(y, c, 0.1), 50);
            for (int i = 0; i < 2; i++) {
                y[i] += 0.1 / 6 * (a[i] + 2 * b[i] + 2 * c[i] + d[i]);
            }
        }
        Rise rise = held.after(new Rise(5, 2), 400);
        assertThat(rise.windingKelvin()).isCloseTo(y[0], within(1e-6));
        assertThat(rise.housingKelvin()).isCloseTo(y[1], within(1e-6));
    }

    private static double[] slopes(double[] y, double watt) {
        double between = (y[0] - y[1]) / 1.2;
        return new double[] {(watt * (1 + COPPER * y[0]) - between) / 40, (between - y[1] / 2.0) / 400};
    }

    private static double[] moved(double[] y, double[] slope, double step) {
        return new double[] {y[0] + step * slope[0], y[1] + step * slope[1]};
    }

    @Test
    void copper_that_warms_allows_shorter_bursts() {
        double plain = new TwoNodeDuty(MOTOR, 0, 80).shortTimeFactor(30);
        double copper = new TwoNodeDuty(MOTOR, COPPER, 80).shortTimeFactor(30);
        // Counted against its own continuous current, which the warm copper lowers more than the burst.
        assertThat(copper).isGreaterThan(plain);
        assertThat(copper / plain).isLessThan(Math.sqrt(1 + COPPER * 80));
    }

    @Test
    void refuses_what_is_no_duty() {
        TwoNodeDuty duty = new TwoNodeDuty(MOTOR, 0, 64);
        assertThatThrownBy(() -> duty.shortTimeFactor(0)).hasMessageContaining("time on");
        assertThatThrownBy(() -> duty.periodicFactor(600, 1.2)).hasMessageContaining("share");
        assertThatThrownBy(() -> new TwoNodeDuty(MOTOR, 0, 0)).hasMessageContaining("limit");
    }
}
