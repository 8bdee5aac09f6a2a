package servowright.engine.encoder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import servowright.engine.numeric.Interval;
import servowright.engine.numeric.Statistics;

/** Gap, float and window of a mount: figures recomputed unless a line says otherwise. */
class MountTest {
    private static final RoundMagnet DISC = RoundMagnet.disc(6e-3, 2.5e-3);
    private static final long SEED = 20240607;

    private static GapStack nineParts() {
        double[] tolerances = {0.10, 0.05, 0.03, 0.05, 0.10, 0.05, 0.05, 0.05, 0.03};
        return new GapStack(java.util.Arrays.stream(tolerances)
                .mapToObj(t -> StackPart.widens("part", 0.2e-3, t * 1e-3))
                .toList());
    }

    @Test
    void window_of_30_to_80_millitesla_over_temperature_is_a_gap_of_2_2_to_3_9_millimetres() {
        Interval remanence = new Remanence(1.17, 1.22, -0.0012, 20).overCelsius(-20, 100);
        Interval gap =
                GapWindow.metre(DISC, remanence, new Interval(0.030, 0.080), 1).orElseThrow();
        assertThat(1e3 * gap.low()).isCloseTo(2.2, within(0.05));
        assertThat(1e3 * gap.high()).isCloseTo(3.9, within(0.05));
    }

    @Test
    void no_gap_serves_a_window_narrower_than_the_spread_of_the_magnets() {
        assertThat(GapWindow.metre(DISC, new Interval(1.0, 1.3), new Interval(0.050, 0.060), 1))
                .isEmpty();
        assertThat(GapWindow.metre(DISC, new Interval(1.0, 1.3), new Interval(0.9, 0.95), 1))
                .isEmpty();
    }

    @Test
    void magnet_that_is_never_too_strong_may_come_close_and_iron_moves_the_window_in() {
        Interval alone = GapWindow.metre(DISC, new Interval(1.2, 1.2), new Interval(0.03, 0.5), 1)
                .orElseThrow();
        assertThat(alone.low()).isZero();
        Interval onSteel = GapWindow.metre(DISC, new Interval(1.2, 1.2), new Interval(0.03, 0.08), 0.7)
                .orElseThrow();
        assertThat(onSteel.high()).isLessThan(alone.high());
    }

    @Test
    void stack_of_nine_parts() {
        GapStack stack = nineParts();
        assertThat(1e3 * stack.nominalMetre()).isCloseTo(1.8, within(1e-12));
        assertThat(1e3 * stack.worstMetre()).isCloseTo(0.51, within(1e-9));
        assertThat(1e3 * stack.rootSumOfSquaresMetre()).isCloseTo(0.185, within(5e-4));
        assertThat(1e3 * stack.shiftedMetre()).isCloseTo(1.5 * 0.185, within(1e-3));
        assertThat(1e3 * stack.standardDeviationMetre()).isCloseTo(0.107, within(5e-4));
        double drawn = stack.departureMetre(0.9973, 100_000, new Random(SEED));
        assertThat(1e3 * drawn).as("seed " + SEED).isCloseTo(0.300, within(0.006));
    }

    @Test
    void held_parts_scatter_by_a_third_of_their_tolerance() {
        GapStack stack = new GapStack(List.of(
                StackPart.widens("standoff", 5e-3, 0.1e-3).held(),
                StackPart.narrows("magnet", 2.5e-3, 0.05e-3).held()));
        assertThat(stack.nominalMetre()).isCloseTo(2.5e-3, within(1e-12));
        assertThat(stack.standardDeviationMetre()).isCloseTo(stack.rootSumOfSquaresMetre() / 3, within(1e-12));
        double[] drawn = stack.departuresMetre(20_000, new Random(SEED));
        assertThat(Statistics.standardDeviation(drawn))
                .as("seed " + SEED)
                .isCloseTo(stack.standardDeviationMetre(), within(0.02 * stack.standardDeviationMetre()));
    }

    @Test
    void room_left_is_the_gap_less_all_that_eats_it() {
        GapStack stack = new GapStack(List.of(StackPart.widens("standoff", 2e-3, 0.3e-3)));
        assertThat(stack.leastRoomMetre(0.4e-3, 0.05e-3, 0.02e-3)).isCloseTo(1.23e-3, within(1e-12));
    }

    @Test
    void refuses_a_part_without_direction_and_an_empty_stack() {
        assertThatIllegalArgumentException().isThrownBy(() -> new StackPart("x", 0, 1, 0, StackPart.Scatter.EVEN));
        assertThatIllegalArgumentException().isThrownBy(() -> new GapStack(List.of()));
        assertThatIllegalArgumentException().isThrownBy(() -> StackPart.widens("x", 1, -1));
    }

    @Test
    void shim_to_take_follows_from_the_field_read() {
        double wanted = Shims.wantedMetre(DISC, 1.2, 0.132909, 0.070).orElseThrow();
        assertThat(1e3 * wanted).isCloseTo(1.35, within(0.006));
        assertThat(Shims.wantedMetre(DISC, 1.2, 0.9, 0.070)).isEmpty();
        assertThat(Shims.nearest(0.24e-3, List.of(0.1e-3, 0.2e-3, 0.5e-3))).containsExactly(0.2e-3);
        assertThat(Shims.nearest(0.29e-3, List.of(0.1e-3, 0.2e-3, 0.5e-3))).containsExactlyInAnyOrder(0.1e-3, 0.2e-3);
        assertThat(Shims.nearest(-0.2e-3, List.of(0.1e-3))).isEmpty();
        assertThat(Shims.nearest(0.2e-3, List.of(0.1e-3, 0.2e-3))).containsExactly(0.2e-3);
    }

    @Test
    void three_shims_tell_kappa_and_slope_of_the_magnet() {
        double[] shims = {0, 0.2e-3, 0.4e-3, 0.6e-3};
        double[] read = java.util.Arrays.stream(shims)
                .map(s -> 1000 * DISC.onAxis(1.2, 0.7e-3 + s).strengthTesla())
                .toArray();
        AxisField truth = DISC.onAxis(1.2, 1e-3);
        MeasuredAxisField found = MeasuredAxisField.of(shims, read).orElseThrow();
        assertThat(found.relativeSlopePerMetre())
                .isCloseTo(truth.relativeSlopePerMetre(), within(0.005 * Math.abs(truth.relativeSlopePerMetre())));
        assertThat(found.kappaPerSquareMetre()).isCloseTo(truth.kappaPerSquareMetre(), within(700.0));
        assertThat(found.strength()).isCloseTo(1000 * truth.strengthTesla(), within(0.05));
        assertThat(found.kappaError()).isPositive();
        double[] three = {read[0], read[1], read[3]};
        MeasuredAxisField bare =
                MeasuredAxisField.of(new double[] {0, 0.2e-3, 0.6e-3}, three).orElseThrow();
        assertThat(bare.kappaPerSquareMetre()).isCloseTo(truth.kappaPerSquareMetre(), within(700.0));
        assertThat(bare.kappaError()).isNaN();
        assertThat(MeasuredAxisField.of(new double[] {1, 1, 1}, new double[] {1, 1, 1}))
                .isEmpty();
    }

    @ParameterizedTest
    // ISO 273 by trade tables (seen).
    @CsvSource({"M2, FINE, 0.10", "M2_5, MEDIUM, 0.20", "M3, COARSE, 0.30", "M4, FINE, 0.15"})
    void float_of_a_screw_in_its_hole(ClearanceHole hole, ClearanceHole.Fit fit, double floatMm) {
        assertThat(1e3 * hole.floatMetre(fit)).isCloseTo(floatMm, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"2.2, 2", "2.6, 2", "2.7, 2.5", "3.3, 3", "4.8, 4", "2.65, 0", "2.1, 0", "5.5, 0"})
    void a_hole_tells_its_screw_where_it_is_one_of_the_series(double hole, double screw) {
        assertThat(1e3 * ClearanceHole.screwMetre(1e-3 * hole).orElse(0)).isCloseTo(screw, within(1e-9));
    }

    @Test
    void widest_hole_and_thinnest_screw_float_farther() {
        assertThat(1e3 * ClearanceHole.floatMetre(3.58e-3, 2.874e-3)).isCloseTo(0.353, within(1e-9));
        assertThat(Math.toDegrees(ClearanceHole.turnRad(0.2e-3, 10e-3))).isCloseTo(1.15, within(0.005));
        assertThatIllegalArgumentException().isThrownBy(() -> ClearanceHole.floatMetre(2.9e-3, 3e-3));
    }

    @ParameterizedTest
    @CsvSource({"0.1, 0.106, 0.196, 0.252", "0.2, 0.155, 0.274, 0.337", "0.3, 0.215, 0.358, 0.428"})
    void eccentricity_of_a_screwed_board(double floatMm, double mean, double p95, double p997) {
        Eccentricity board = new Eccentricity(List.of(
                new Eccentricity.Part("screws", Eccentricity.Way.DISC, floatMm * 1e-3),
                new Eccentricity.Part("holes to copper", Eccentricity.Way.SQUARE, 0.1e-3),
                new Eccentricity.Part("chip", Eccentricity.Way.SCATTER, 0.033e-3)));
        double[] drawn = board.distancesMetre(100_000, new Random(SEED));
        assertThat(1e3 * Statistics.mean(drawn)).as("seed " + SEED).isCloseTo(mean, within(0.02 * mean));
        assertThat(1e3 * Statistics.quantile(drawn, 0.95)).isCloseTo(p95, within(0.02 * p95));
        assertThat(1e3 * Statistics.quantile(drawn, 0.997)).isCloseTo(p997, within(0.02 * p997));
        assertThat(Statistics.rootMeanSquare(drawn))
                .isCloseTo(board.rootMeanSquareMetre(), within(0.01 * board.rootMeanSquareMetre()));
        assertThat(Stream.of(drawn[0], drawn[1])).allMatch(d -> d < board.worstMetre());
    }

    @Test
    void half_a_runout_is_a_fixed_distance() {
        Eccentricity shaft =
                new Eccentricity(List.of(new Eccentricity.Part("runout", Eccentricity.Way.CIRCLE, 0.02e-3)));
        assertThat(shaft.quantileMetre(0.5, 1000, new Random(SEED))).isCloseTo(0.02e-3, within(1e-12));
        assertThat(shaft.worstMetre()).isEqualTo(0.02e-3);
        assertThat(shaft.rootMeanSquareMetre()).isCloseTo(0.02e-3, within(1e-12));
    }

    @Test
    void aluminium_over_steel_widens_by_a_fiftieth_of_a_millimetre() {
        assertThat(1e3
                        * ThermalGrowth.gapMetre(
                                30e-3, ThermalGrowth.Material.ALUMINIUM, ThermalGrowth.Material.STEEL, 60))
                .isCloseTo(0.021, within(5e-4));
    }

    @Test
    void bearing_without_preload_has_play() {
        assertThat(1e3 * ThermalGrowth.bearingEndPlayMetre(8e-6, 1.5e-3, 1.05)).isCloseTo(0.048, within(1e-3));
        assertThat(1e3 * ThermalGrowth.bearingEndPlayMetre(13e-6, 1.5e-3, 1.05)).isCloseTo(0.062, within(1e-3));
    }

    @ParameterizedTest
    // Gap, then H1 and H2 at median, 95 % and 99.7 % in degrees, Monte Carlo with the formula (recomputed).
    @CsvSource({
        "6, 2.5, 1.00, 0.110, 0.40, 0.77, 0.030, 0.12, 0.23",
        "6, 2.5, 2.35, 0.119, 0.46, 0.89, 0.055, 0.23, 0.45",
        "8, 2.5, 1.00, 0.079, 0.30, 0.56, 0.019, 0.06, 0.11",
        "10, 2.5, 1.44, 0.067, 0.25, 0.48, 0.015, 0.05, 0.09"
    })
    void spread_of_a_plausible_assembly(
            double d, double l, double gap, double a1, double b1, double c1, double a2, double b2, double c2) {
        double degree = Math.toRadians(1);
        MountSpread spread = MountSpread.draw(
                RoundMagnet.disc(d * 1e-3, l * 1e-3).onAxis(1.2, gap * 1e-3),
                new MountSpread.Misplacement(0.2e-3, 0.08e-3, degree, degree, 2 * degree),
                100_000,
                new Random(SEED));
        double[] shares = {0.5, 0.95, 0.997};
        double[] first = {a1, b1, c1};
        double[] second = {a2, b2, c2};
        for (int i = 0; i < shares.length; i++) {
            assertThat(Math.toDegrees(spread.firstRad(shares[i])))
                    .as("H1, seed " + SEED)
                    .isCloseTo(first[i], within(0.05 * first[i]));
            assertThat(Math.toDegrees(spread.secondRad(shares[i])))
                    .as("H2, seed " + SEED)
                    .isCloseTo(second[i], within(0.05 * second[i] + 0.005));
        }
        assertThat(spread.peakRad(0.95)).isBetween(spread.firstRad(0.95), spread.firstRad(0.95) + spread.secondRad(1));
    }
}
