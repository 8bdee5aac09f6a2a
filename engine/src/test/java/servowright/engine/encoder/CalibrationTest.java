package servowright.engine.encoder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Fits of invented sensors whose error is known; limits from the statistics of least squares. */
class CalibrationTest {
    private static final long SEED = 71;
    private static final int BITS = 14;
    private static final double NOISE = Math.toRadians(0.02);
    private static final HarmonicError TRUTH = new HarmonicError(
            0, List.of(ripple(1, 0.5, 0.30), ripple(2, 0.25, 1.10), ripple(3, 0.02, 2.00), ripple(4, 0.05, -0.70)));

    private static Ripple ripple(int order, double degree, double phase) {
        double amplitude = Math.toRadians(degree);
        return new Ripple(order, amplitude * Math.sin(phase), amplitude * Math.cos(phase));
    }

    private static double[] turn(int samples, double part) {
        return IntStream.range(0, samples)
                .mapToDouble(i -> part * 2 * Math.PI * i / samples)
                .toArray();
    }

    private static double quantised(double rad) {
        double step = 2 * Math.PI / (1 << BITS);
        return step * Math.rint(rad / step);
    }

    private static double[] read(double[] shaft, HarmonicError error, Random random) {
        return Arrays.stream(shaft)
                .map(a -> quantised(a + error.atRad(a) + NOISE * random.nextGaussian()))
                .toArray();
    }

    private static Calibration.Fitted fitted(Calibration calibration) {
        assertThat(calibration).isInstanceOf(Calibration.Fitted.class);
        return (Calibration.Fitted) calibration;
    }

    private static Calibration.Refused refused(Calibration calibration) {
        assertThat(calibration).isInstanceOf(Calibration.Refused.class);
        return (Calibration.Refused) calibration;
    }

    @Test
    void amplitudes_lie_within_three_deviations_in_99_of_100_recordings() {
        double[] shaft = turn(360, 1);
        double deviation = Math.hypot(NOISE, 2 * Math.PI / (1 << BITS) / Math.sqrt(12)) * Math.sqrt(2.0 / 360);
        int within = 0;
        int all = 0;
        double spread = 0;
        for (int seed = 0; seed < 1000; seed++) {
            double[] read = read(shaft, TRUTH, new Random(SEED + seed));
            Calibration.Fitted found = fitted(ReferencedFit.of(shaft, read, 4));
            spread += Math.pow(found.residualSdRad() / (deviation / Math.sqrt(2.0 / 360)), 2);
            for (Ripple ripple : found.error().ripples()) {
                Ripple truth = TRUTH.ripples().get(ripple.order() - 1);
                within += Math.abs(ripple.cosineRad() - truth.cosineRad()) < 3 * deviation ? 1 : 0;
                within += Math.abs(ripple.sineRad() - truth.sineRad()) < 3 * deviation ? 1 : 0;
                all += 2;
            }
        }
        assertThat((double) within / all).as("seeds from " + SEED).isGreaterThan(0.99);
        assertThat(spread / 1000).as("chi-square per degree of freedom").isCloseTo(1, within(0.02));
    }

    @ParameterizedTest
    // Scatter of an amplitude in degrees for a noise of 0.02 degrees (recomputed).
    @CsvSource({"36, 0.0049", "360, 0.0016", "3600, 0.00050"})
    void amplitude_error_shrinks_with_the_root_of_the_samples(int samples, double degree) {
        double[] shaft = turn(samples, 1);
        Random random = new Random(SEED);
        double[] read = Arrays.stream(shaft)
                .map(a -> a + TRUTH.atRad(a) + NOISE * random.nextGaussian())
                .toArray();
        assertThat(Math.toDegrees(fitted(ReferencedFit.of(shaft, read, 4)).amplitudeErrorRad()))
                .isCloseTo(degree, within(0.5 * degree));
    }

    @ParameterizedTest
    // Degrees of travel and condition number of a constant and four orders (recomputed).
    @CsvSource({"360, 1.5", "300, 5", "240, 42", "180, 670"})
    void condition_grows_as_the_travel_shrinks(int travel, double condition) {
        double[] shaft = turn(720, travel / 360.0);
        double[] read = read(shaft, TRUTH, new Random(SEED));
        Calibration found = ReferencedFit.of(shaft, read, 4);
        if (condition < ReferencedFit.MOST_CONDITION) {
            assertThat(fitted(found).conditionNumber()).isCloseTo(condition, within(0.1 * condition));
        } else {
            assertThat(refused(found).reason()).isEqualTo(Calibration.Reason.TRAVEL_TOO_SMALL);
            assertThat(refused(found).figure()).isCloseTo(condition, within(0.1 * condition));
        }
    }

    @Test
    void fewer_orders_need_less_travel() {
        double[] shaft = turn(720, 240 / 360.0);
        double[] read = read(shaft, TRUTH, new Random(SEED));
        assertThat(ReferencedFit.of(shaft, read, 2)).isInstanceOf(Calibration.Fitted.class);
        assertThat(refused(ReferencedFit.of(turn(12, 1), turn(12, 1), 4)).reason())
                .isEqualTo(Calibration.Reason.TOO_FEW_SAMPLES);
    }

    @Test
    void only_orders_that_stand_out_are_kept() {
        HarmonicError two = new HarmonicError(0.3, List.of(ripple(1, 0.5, 0.3), ripple(4, 0.05, -0.7)));
        double[] shaft = turn(2000, 1);
        Calibration.Fitted found = fitted(ReferencedFit.of(shaft, read(shaft, two, new Random(SEED)), 6));
        assertThat(found.error().ripples())
                .extracting(Ripple::order)
                .contains(1, 4)
                .hasSizeLessThan(4);
        assertThat(found.error().meanRad()).isCloseTo(0.3, within(5e-4));
        assertThat(found.ordersMissing()).isFalse();
    }

    @Test
    void a_reading_that_wraps_about_an_offset_of_half_a_turn_is_fitted_alike() {
        HarmonicError half = new HarmonicError(Math.PI - 0.001, TRUTH.ripples());
        double[] shaft = turn(720, 1);
        double[] read = Arrays.stream(read(shaft, half, new Random(SEED)))
                .map(Angles::wrapped)
                .toArray();
        assertThat(Angles.wrapped(
                        fitted(ReferencedFit.of(shaft, read, 4)).error().meanRad() - Math.PI + 0.001))
                .isCloseTo(0, within(2e-4));
    }

    @Test
    void evened_weights_make_slow_places_count_no_more_than_fast_ones() {
        double[] slow = IntStream.range(0, 2000)
                .mapToDouble(i -> 2 * Math.PI * i / 2000)
                .map(a -> a + 0.8 * Math.sin(a))
                .toArray();
        double[] sigma = ReferencedFit.evening(slow, 32);
        assertThat(Arrays.stream(sigma).max().orElseThrow())
                .isGreaterThan(2 * Arrays.stream(sigma).min().orElseThrow());
        Calibration.Fitted found = fitted(ReferencedFit.of(slow, read(slow, TRUTH, new Random(SEED)), sigma, 4));
        assertThat(Math.toDegrees(found.error().ripples().get(0).amplitudeRad()))
                .isCloseTo(0.5, within(0.005));
    }

    /** A rotor dragged both ways with friction and cogging, as its torque balance says. */
    private static double[][] dragged(int polePairs, double friction, double orderTwelve, int[] directions) {
        int perTurn = 1680;
        double[][] columns = new double[3][perTurn * directions.length];
        Random random = new Random(SEED);
        for (int run = 0; run < directions.length; run++) {
            for (int i = 0; i < perTurn; i++) {
                int at = run * perTurn + i;
                int step = directions[run] > 0 ? i : perTurn - 1 - i;
                double command = 2 * Math.PI * step / perTurn;
                double shaft = command;
                for (int round = 0; round < 30; round++) {
                    double share = directions[run] * friction
                            + orderTwelve * Math.sin(12 * shaft + 0.4)
                            + 0.04 * Math.sin(14 * shaft)
                            + 0.002 * Math.sin(84 * shaft);
                    shaft += 0.3 * (command - Math.asin(share) / polePairs - shaft);
                }
                columns[0][at] = directions[run];
                columns[1][at] = polePairs * command;
                columns[2][at] = quantised(shaft + 1.234 + TRUTH.atRad(shaft) + NOISE * random.nextGaussian());
            }
        }
        return columns;
    }

    @Test
    void friction_cancels_between_the_directions_and_cogging_does_not_leak_into_low_orders() {
        double[][] run = dragged(7, 0.1, 0.02, new int[] {1, -1});
        Calibration.Fitted found = fitted(DragFit.of(run[0], run[1], run[2], 7, 4));
        assertThat(Math.toDegrees(found.error().meanRad() - 1.234)).isCloseTo(0, within(0.01));
        assertThat(Math.toDegrees(found.lagRad())).isCloseTo(0.820, within(0.01));
        for (Ripple ripple : found.error().ripples()) {
            assertThat(Math.toDegrees(ripple.amplitudeRad()))
                    .isCloseTo(
                            Math.toDegrees(
                                    TRUTH.ripples().get(ripple.order() - 1).amplitudeRad()),
                            within(0.01));
        }
    }

    @Test
    void more_friction_makes_more_lag_of_the_same_sign() {
        double[][] run = dragged(7, 0.2, 0.0, new int[] {-1, 1});
        Calibration.Fitted found = fitted(DragFit.of(run[0], run[1], run[2], 7, 4));
        assertThat(found.lagRad()).isCloseTo(Math.asin(0.2) / 7, within(2e-4));
        assertThat(Math.toDegrees(found.error().meanRad() - 1.234)).isCloseTo(0, within(0.01));
    }

    @Test
    void one_direction_a_wrong_pole_pair_count_and_a_reversed_count_are_refused() {
        double[][] run = dragged(7, 0.1, 0.0, new int[] {1});
        assertThat(refused(DragFit.of(run[0], run[1], run[2], 7, 4)).reason())
                .isEqualTo(Calibration.Reason.ONE_DIRECTION);
        double[][] both = dragged(7, 0.1, 0.0, new int[] {1, -1});
        Calibration.Refused wrong = refused(DragFit.of(both[0], both[1], both[2], 8, 4));
        assertThat(wrong.reason()).isEqualTo(Calibration.Reason.DOES_NOT_FOLLOW);
        assertThat(wrong.figure()).isCloseTo(8.0 / 7, within(0.01));
        double[] reversed = Arrays.stream(both[2]).map(a -> -a).toArray();
        assertThat(refused(DragFit.of(both[0], both[1], reversed, 7, 4)).reason())
                .isEqualTo(Calibration.Reason.REVERSED);
    }

    @Test
    void a_slipping_magnet_does_not_follow() {
        double[][] both = dragged(7, 0.1, 0.0, new int[] {1, -1});
        double[] slipping = IntStream.range(0, both[2].length)
                .mapToDouble(i -> both[2][i] + 0.2 * (both[1][i] / 7))
                .toArray();
        assertThat(refused(DragFit.of(both[0], both[1], slipping, 7, 4)).reason())
                .isEqualTo(Calibration.Reason.DOES_NOT_FOLLOW);
    }

    @Test
    void drag_stays_below_a_third_of_the_resonance() {
        // Seven pole pairs, 0.1 N m, 1e-5 kg m2, order 84: 0.95 rad/s (recomputed).
        assertThat(DragFit.fastestRadPerSecond(7, 0.1, 1e-5, 84)).isCloseTo(0.95, within(0.006));
    }

    @Test
    void free_run_over_less_than_a_turn_is_refused() {
        double[] second = IntStream.range(0, 500).mapToDouble(i -> 1e-3 * i).toArray();
        double[] read = Arrays.stream(second).map(t -> 4 * t).toArray();
        assertThat(refused(FreeRunFit.of(second, read, 4)).reason()).isEqualTo(Calibration.Reason.TRAVEL_TOO_SMALL);
        assertThat(refused(FreeRunFit.of(new double[] {0, 1}, new double[] {0, 1}, 4))
                        .reason())
                .isEqualTo(Calibration.Reason.TOO_FEW_SAMPLES);
    }

    @Test
    void free_run_at_falling_speed_finds_the_ripples_and_its_own_order() {
        Random random = new Random(SEED);
        double[] second = IntStream.range(0, 2000).mapToDouble(i -> 1e-3 * i).toArray();
        double[] read = Arrays.stream(second)
                .map(t -> 60 * t - 8 * t * t)
                .map(a -> quantised(a + TRUTH.atRad(a) + NOISE * random.nextGaussian()))
                .toArray();
        Calibration.Fitted found = fitted(FreeRunFit.of(second, read, 4));
        assertThat(found.polynomialOrder()).isEqualTo(2);
        assertThat(found.ordersMissing()).isFalse();
        assertThat(Math.toDegrees(found.error().ripples().get(0).amplitudeRad()))
                .isCloseTo(0.5, within(0.003));
        assertThat(fitted(FreeRunFit.of(second, read, 4, 1)).ordersMissing()).isTrue();
    }

    @Test
    void ripple_of_the_speed_is_told_from_ripple_of_the_sensor_by_three_speeds() {
        double[] speeds = {50, 80, 120};
        Ripple[] seen = Arrays.stream(speeds)
                .mapToObj(w -> new Ripple(1, 0.004 + 10 / (w * w), -0.002 - 3 / (w * w)))
                .toArray(Ripple[]::new);
        Ripple sensor = FreeRunFit.apart(speeds, seen);
        assertThat(sensor.cosineRad()).isCloseTo(0.004, within(1e-12));
        assertThat(sensor.sineRad()).isCloseTo(-0.002, within(1e-12));
    }

    @Test
    void correction_solves_for_the_true_angle() {
        double shaft = 1.1;
        assertThat(TRUTH.trueRad(shaft + TRUTH.atRad(shaft))).isCloseTo(shaft, within(1e-9));
        assertThat(TRUTH.canBeCorrected()).isTrue();
        assertThat(new HarmonicError(0, List.of(ripple(4, 20, 0))).canBeCorrected())
                .isFalse();
    }

    @ParameterizedTest
    // Residue in degrees of the four orders in a table, read linearly and at the nearest entry (recomputed).
    @CsvSource({
        "16, 0.036, 0.176",
        "32, 0.0096, 0.089",
        "64, 0.0024, 0.044",
        "128, 0.0006, 0.022",
        "256, 0.00015, 0.011"
    })
    void table_of_more_entries_leaves_less(int entries, double linear, double nearest) {
        CorrectionTable table = CorrectionTable.of(TRUTH, entries);
        assertThat(Math.toDegrees(table.residueRad(TRUTH, CorrectionTable.Reading.LINEAR)))
                .isCloseTo(linear, within(0.04 * linear + 5e-5));
        assertThat(Math.toDegrees(table.residueRad(TRUTH, CorrectionTable.Reading.NEAREST)))
                .isCloseTo(nearest, within(0.04 * nearest + 5e-4));
        assertThat(table.correctionRad().stream().average().orElseThrow()).isCloseTo(0, within(1e-4));
    }

    @Test
    void residue_of_one_order_follows_its_formula() {
        double amplitude = Math.toRadians(0.5);
        HarmonicError one = new HarmonicError(0.2, List.of(ripple(2, 0.5, 0.0)));
        CorrectionTable table = CorrectionTable.of(one, 64);
        for (CorrectionTable.Reading reading : CorrectionTable.Reading.values()) {
            double formula = CorrectionTable.residueRad(amplitude, 2, 64, reading);
            assertThat(table.residueRad(one, reading)).isCloseTo(formula, within(0.05 * formula));
        }
        assertThat(CorrectionTable.noiseAgainstSeries(64, 4)).isCloseTo(64 / 9.0, within(1e-12));
        assertThatIllegalArgumentException().isThrownBy(() -> CorrectionTable.of(one, 3));
    }
}
