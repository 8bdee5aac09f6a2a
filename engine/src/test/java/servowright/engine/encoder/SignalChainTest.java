package servowright.engine.encoder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Resolution, observers, delay, edges and wires: figures recomputed unless a line says otherwise. */
class SignalChainTest {
    private static final double FULL_SPEED = 3000 * Math.PI / 30;

    @ParameterizedTest
    @CsvSource({"10, 0.3516, 0.1015", "12, 0.0879, 0.0254", "14, 0.02197, 0.00634", "17, 0.00275, 0.00079"})
    void step_and_rounding(int bits, double stepDegree, double roundingDegree) {
        Resolution resolution = Resolution.ofBits(bits);
        assertThat(Math.toDegrees(resolution.stepRad())).isCloseTo(stepDegree, within(5e-5));
        assertThat(Math.toDegrees(resolution.roundingRad())).isCloseTo(roundingDegree, within(5e-5));
    }

    @ParameterizedTest
    @CsvSource({"12, 1e-3, 1.53", "14, 1e-3, 0.383", "14, 50e-6, 7.67", "17, 125e-6, 0.38"})
    void smallest_speed_of_a_difference(int bits, double second, double speed) {
        assertThat(Resolution.ofBits(bits).speedStep(second)).isCloseTo(speed, within(0.006));
    }

    @Test
    void noise_of_differences() {
        double noise = Math.toRadians(0.05);
        assertThat(Resolution.differenced(noise, 1e-4)).isCloseTo(12.3, within(0.05));
        assertThat(Resolution.ofBits(12).speedNoise(1e-3))
                .isCloseTo(Resolution.ofBits(12).speedStep(1e-3) / Math.sqrt(6), within(1e-12));
        // Simulated 0.1097, 0.5557 and 2.978 rad/s at 20, 100 and 500 Hz.
        assertThat(filtered(noise, 20)).isCloseTo(0.1097, within(0.001));
        assertThat(filtered(noise, 100)).isCloseTo(0.5557, within(0.005));
        assertThat(filtered(noise, 500)).isCloseTo(2.978, within(0.03));
    }

    private static double filtered(double noise, double hertz) {
        return Resolution.differencedAndFiltered(noise, 1e-4, 2 * Math.PI * hertz);
    }

    @Test
    void counts_cut_to_whole_ones_per_electrical_turn_add_up() {
        // 21 pole pairs, 952.381 counts per period: 7.62 counts, 2.88 degrees electrical (a field report, recomputed).
        Resolution line = new Resolution(20000);
        assertThat(Math.toDegrees(line.truncationElectricalRad(21))).isCloseTo(2.88, within(0.005));
        assertThat(Resolution.ofBits(14).truncationElectricalRad(8)).isCloseTo(0, within(1e-9));
    }

    @Test
    void single_precision_runs_out_of_digits() {
        // Spacing of floats by their definition: at 8192 rad it is 2^-10 rad, above the step of 14 bits from 4096 rad
        // on.
        double turns = Resolution.ofBits(14).turnsInFloat(24);
        float angle = (float) (turns * 2 * Math.PI);
        assertThat((double) Math.ulp(angle * 1.01f))
                .isGreaterThan(Resolution.ofBits(14).stepRad());
        assertThat((double) Math.ulp(angle * 0.99f))
                .isLessThanOrEqualTo(Resolution.ofBits(14).stepRad());
        assertThat(Resolution.ofBits(14).turnsInCounter(32)).isEqualTo(131072);
    }

    @ParameterizedTest
    // Simulated in a field report: 30000 rad at 1 kHz, 0.9 rad/s stands still, 1.0 rad/s reads 1.95.
    @CsvSource({"0.9, 0", "1.0, 1.953"})
    void an_angle_added_up_in_single_precision_stands_still(double asked, double read) {
        float angle = 30000;
        for (int i = 0; i < 1000; i++) {
            angle += (float) (asked / 1000);
        }
        assertThat(angle - 30000.0).isCloseTo(read, within(0.001));
        double limit = SinglePrecision.standsBelowRadPerSecond(30000, 1000);
        assertThat(asked > limit).isEqualTo(read > 0);
    }

    @Test
    void published_lines_are_slower_than_the_bound() {
        // Trade tables, seen: metres and hertz.
        double[][] table = {{50, 400e3}, {100, 300e3}, {200, 200e3}, {400, 100e3}};
        for (double[] row : table) {
            assertThat(row[1] / SerialLine.fastestClockHertz(row[0], 0.3e-6)).isBetween(0.63, 0.93);
        }
    }

    @ParameterizedTest
    // Noise in degrees, natural frequency in hertz, speed noise in rad/s; 100 us, damping 1.
    @CsvSource({"0.00634, 100, 0.0087", "0.0254, 50, 0.0123", "0.05, 200, 0.194", "0.1, 20, 0.0123", "0.05, 100, 0.069"
    })
    void observer_noise(double degree, double hertz, double speed) {
        TrackingObserver observer = new TrackingObserver(2 * Math.PI * hertz, 1);
        assertThat(observer.speedNoise(Math.toRadians(degree), 1e-4)).isCloseTo(speed, within(0.01 * speed + 5e-5));
    }

    @Test
    void observer_bandwidth_and_lag() {
        TrackingObserver one = new TrackingObserver(2 * Math.PI * 100, 1);
        TrackingObserver less = new TrackingObserver(1, Math.sqrt(0.5));
        assertThat(less.angleBandwidth()).isCloseTo(2.06, within(0.005));
        assertThat(less.speedBandwidth()).isCloseTo(1.00, within(0.005));
        assertThat(one.angleBandwidth() / one.naturalRadPerSecond()).isCloseTo(2.48, within(0.005));
        assertThat(one.speedBandwidth() / one.naturalRadPerSecond()).isCloseTo(0.644, within(0.001));
        assertThat(one.speedDelaySecond()).isCloseTo(3.2e-3, within(0.02e-3));
        assertThat(Math.toDegrees(one.angleLagRad(1000))).isCloseTo(0.145, within(0.001));
        assertThat(one.speedLag(1000)).isCloseTo(3.18, within(0.01));
        assertThat(one.angleNoiseRad(1e-3, 1e-4)).isCloseTo(1e-3 * Math.sqrt(0.0628 * 1.25), within(1e-6));
        assertThatIllegalArgumentException().isThrownBy(() -> one.speedNoise(1e-3, 1e-2));
    }

    @ParameterizedTest
    @CsvSource({"1000, 100, 4.2", "3000, 20, 2.5", "3000, 100, 12.6", "3000, 500, 63", "6000, 500, 126"})
    void angle_lost_to_delay(double rpm, double micro, double degree) {
        double lost = new Latency(micro * 1e-6).electricalRad(7, rpm * Math.PI / 30);
        assertThat(Math.toDegrees(lost)).isCloseTo(degree, within(0.05));
    }

    @Test
    void delay_of_filters_and_of_what_is_left() {
        assertThat(Latency.ofFilter(2 * Math.PI * 1000).second()).isCloseTo(159e-6, within(0.5e-6));
        assertThat(Latency.ofMean(5, 1e-4).plus(new Latency(1e-4)).second()).isCloseTo(3e-4, within(1e-12));
        assertThat(new Latency(1e-4).compensatedElectricalRad(7, 1000)).isCloseTo(3.5e-5, within(1e-12));
        assertThat(Latency.budget(Math.toRadians(12.6), 7, FULL_SPEED).second()).isCloseTo(1e-4, within(1e-6));
        assertThat(Math.toDegrees(new Latency(5e-6).electricalRad(7, FULL_SPEED)))
                .isCloseTo(0.63, within(0.001));
    }

    @Test
    void edges_of_a_quadrature_line() {
        QuadratureLine line = new QuadratureLine(1024);
        assertThat(line.edgesPerSecond(FULL_SPEED)).isCloseTo(204_800, within(1.0));
        assertThat(line.resolution().countsPerTurn()).isEqualTo(4096);
        double least = line.leastSeparationSecond(FULL_SPEED, Math.toRadians(45));
        assertThat(least).isCloseTo(45.0 / 360 * 60 / (3000.0 * 1024), within(1e-12));
        assertThat(line.fastestThroughFilter(least / 2, Math.toRadians(45))).isCloseTo(FULL_SPEED, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"7, 0.5, 5.8", "7, 1, 11.7", "7, 2, 23", "11, 1, 18"})
    void misplaced_switches_err_in_speed(int polePairs, double degree, double percent) {
        assertThat(100 * HallTriple.speedErrorShare(polePairs, Math.toRadians(degree)))
                .isCloseTo(percent, within(0.4));
    }

    @Test
    void states_of_three_switches() {
        assertThat(Math.toDegrees(HallTriple.stateErrorElectricalRad())).isCloseTo(17.3, within(0.05));
        assertThat(HallTriple.BLOCK_TORQUE).isCloseTo(0.955, within(5e-4));
        assertThat(HallTriple.step(0b101, 0b100)).hasValue(1);
        assertThat(HallTriple.step(0b101, 0b001)).hasValue(-1);
        assertThat(HallTriple.step(0b101, 0b101)).hasValue(0);
        assertThat(HallTriple.step(0b101, 0b110)).isEmpty();
        assertThat(HallTriple.step(0b111, 0b110)).isEmpty();
        assertThat(HallTriple.step(0b110, 0b000)).isEmpty();
        // cos α from sin α and a second switch eight degrees off, exact for every α.
        double off = Math.toRadians(8);
        for (double angle = 0; angle < 6; angle += 0.4) {
            assertThat(HallTriple.squaredCosine(Math.cos(angle + off), Math.sin(angle), off))
                    .isCloseTo(Math.cos(angle), within(1e-12));
        }
        // Eight degrees of quadrature: mean 4, ripple 4 (a field report, seen).
        assertThat(Math.toDegrees(HallTriple.quadratureRippleElectricalRad(Math.toRadians(8))))
                .isCloseTo(4, within(1e-9));
    }

    @Test
    void clocks_of_long_lines() {
        assertThat(SerialLine.fastestClockHertz(100, 0.3e-6)).isCloseTo(385e3, within(1e3));
        assertThat(SerialLine.fastestClockHertz(400, 0.3e-6)).isCloseTo(116e3, within(1e3));
        assertThat(SerialLine.fastestClockHertz(0.3, 50e-9)).isCloseTo(9.4e6, within(0.05e6));
        assertThat(SerialLine.synchronousFrameSecond(16, 1e6, 20e-6)).isCloseTo(37e-6, within(1e-12));
        assertThat(SerialLine.checkedFrameSecond(18, 10e6, 5e-6, 10e-6)).isCloseTo(18e-6, within(1e-12));
        assertThat(SerialLine.widestStepRad(100, 1e-3, 1e-3)).isCloseTo(0.105, within(1e-12));
    }

    @Test
    void check_of_six_bits_finds_every_single_and_double_fault() {
        int bits = 26;
        long data = 0x2ABCDEFL;
        int check = SerialLine.checkOfSix(data, bits);
        for (int i = 0; i < bits; i++) {
            assertThat(SerialLine.checkOfSix(data ^ (1L << i), bits)).isNotEqualTo(check);
            for (int j = 0; j < i; j++) {
                assertThat(SerialLine.checkOfSix(data ^ (1L << i) ^ (1L << j), bits))
                        .isNotEqualTo(check);
            }
        }
        // Remainder of x^6 is x + 1, inverted: by hand.
        assertThat(SerialLine.checkOfSix(1, 1)).isEqualTo(0b111100);
    }

    @Test
    void gear_makes_one_reading_mean_several_places() {
        assertThat(GearedAngle.meanings(10, Math.toRadians(270))).isEqualTo(8);
        assertThat(GearedAngle.meanings(1, 2 * Math.PI)).isEqualTo(1);
        assertThat(Math.toDegrees(GearedAngle.tellsTurnWithinRad(10, 0))).isCloseTo(18, within(1e-9));
        assertThat(GearedAngle.turnsOfPair(30, 31, 32)).isCloseTo(992 / 30.0, within(1e-12));
        assertThat(GearedAngle.turnsOfPair(10, 20, 40)).isCloseTo(4, within(1e-12));
        assertThat(Math.toDegrees(GearedAngle.throughGearElectricalRad(Math.toRadians(0.1), 7, 10)))
                .isCloseTo(7, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"7, 0.5, .998", "7, 2, .970", "14, 2, .883", "21, 1, .934", "21, 2, .743"})
    void torque_left_by_a_constant_error(int polePairs, double degree, double share) {
        assertThat(AngleErrorCost.torqueShare(polePairs * Math.toRadians(degree)))
                .isCloseTo(share, within(6e-4));
    }

    @ParameterizedTest
    @CsvSource({"7, 0.5, 0.09", "7, 1, 0.37", "7, 2, 1.5", "14, 1, 1.5", "21, 1, 3.3"})
    void torque_ripple_of_a_cyclic_error(int polePairs, double degree, double percent) {
        assertThat(100 * AngleErrorCost.torqueRippleShare(polePairs, Math.toRadians(degree)))
                .isCloseTo(percent, within(0.05));
    }

    @Test
    void figures_of_an_alignment() {
        // Mean 0.97, deviation 3.50 electrical degrees: 0.014 and 0.19 percent (a field report, recomputed).
        assertThat(100 * (1 - AngleErrorCost.torqueShare(Math.toRadians(0.97)))).isCloseTo(0.014, within(5e-4));
        assertThat(100 * (1 - AngleErrorCost.torqueShare(Math.toRadians(3.50)))).isCloseTo(0.19, within(5e-3));
        assertThat(AngleErrorCost.fluxCurrentShare(Math.toRadians(12.6))).isCloseTo(0.218, within(5e-4));
        assertThat(AngleErrorCost.extraLossShare(Math.toRadians(60))).isCloseTo(3, within(1e-9));
        assertThat(AngleErrorCost.meanTorqueShare(7, Math.toRadians(1))).isCloseTo(1 - 0.01493 / 4, within(1e-5));
        assertThat(AngleErrorCost.fluxRippleShare(7, Math.toRadians(1))).isCloseTo(0.1222 * (1 - 0.0019), within(1e-4));
    }

    @ParameterizedTest
    // Simulated with 1e-4 kg m2, 20 Hz: speed in rad/s, true ripple in rad/s, torque in mN m.
    @CsvSource({"100, 0.994, 19.8", "300, 1.085, 65.1"})
    void speed_loop_chases_an_error(double speed, double ripple, double milliNewtonMetre) {
        AngleErrorCost.Chased chased = AngleErrorCost.chased(2, Math.toRadians(0.5), speed, 1e-4, 2 * Math.PI * 20, 5);
        assertThat(chased.trueSpeedRipple()).isCloseTo(ripple, within(0.005 * ripple));
        assertThat(1e3 * chased.torqueRipple()).isCloseTo(milliNewtonMetre, within(0.005 * milliNewtonMetre));
        assertThat(chased.heatWatt(0.05, 0.1))
                .isCloseTo(0.75 * 0.1 * Math.pow(chased.torqueRipple() / 0.05, 2), within(1e-12));
    }

    @Test
    void speed_that_is_not_there() {
        assertThat(100 * AngleErrorCost.speedRippleShare(2, Math.toRadians(0.5)))
                .isCloseTo(1.75, within(0.005));
        assertThat(100 * AngleErrorCost.speedRippleShare(1, Math.toRadians(0.1)))
                .isCloseTo(0.175, within(0.001));
    }
}
