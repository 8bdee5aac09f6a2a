package servowright.engine.encoder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Stray fields, iron, channel errors and temperature: figures recomputed unless a line says otherwise. */
class DisturbanceTest {
    private static final RoundMagnet DISC = RoundMagnet.disc(6e-3, 2.5e-3);

    @ParameterizedTest
    @CsvSource({"0.05, 0.022", "0.5, 0.216", "1, 0.431", "5, 2.16"})
    void stray_field_gives_a_first_harmonic(double milliTesla, double degree) {
        assertThat(Math.toDegrees(StrayField.firstHarmonicRad(milliTesla * 1e-3, 0.1329)))
                .isCloseTo(degree, within(0.005));
    }

    @Test
    void full_phasor_with_a_stray_field_agrees_with_the_series() {
        FullTurn turn = FullTurn.of(shaft -> Planar.along(1, shaft).plus(new Planar(0.1, 0)), 360);
        assertThat(turn.error().ripple(1).amplitudeRad())
                .isCloseTo(StrayField.firstHarmonicRad(0.005, 0.05), within(1e-12));
        assertThat(turn.error().ripple(2).amplitudeRad()).isCloseTo(0.1 * 0.1 / 2, within(1e-12));
        assertThat(turn.error().peakRad()).isCloseTo(StrayField.peakRad(0.005, 0.05), within(1e-5));
    }

    @Test
    void conductor_below_the_sensor() {
        double field = StrayField.ofConductorTesla(-10, 5e-3);
        assertThat(field).isCloseTo(0.4e-3, within(1e-12));
        assertThat(Math.toDegrees(StrayField.firstHarmonicRad(field, 0.133))).isCloseTo(0.17, within(0.005));
        assertThat(StrayField.phaseLeadSideHarmonicRad(field, 0.04)).isCloseTo(0.005, within(1e-12));
    }

    @Test
    void refuses_a_stray_field_above_that_of_the_magnet() {
        assertThatIllegalArgumentException().isThrownBy(() -> StrayField.firstHarmonicRad(0.06, 0.05));
    }

    @ParameterizedTest
    @CsvSource({"0, -30.5", "0.5, -19.7", "1, -13.2", "2, -6.6", "5, -1.5"})
    void steel_behind_the_magnet_weakens(double distance, double percent) {
        assertThat(100 * IronBound.behindMagnet(DISC, 1e-3, distance * 1e-3)).isCloseTo(percent, within(0.051));
    }

    @ParameterizedTest
    @CsvSource({"0.5, -62.6", "1, -38.6", "2, -16.0", "5, -2.6", "10, -0.5"})
    void steel_behind_the_sensor_weakens(double distance, double percent) {
        assertThat(100 * IronBound.behindSensor(DISC, 1e-3, distance * 1e-3)).isCloseTo(percent, within(0.051));
    }

    @ParameterizedTest
    @CsvSource({"1, 5, 0.099", "1, 8, 0.012", "1.5, 5, 0.337", "1.5, 6, 0.165", "2, 6, 0.39", "2, 10, 0.029"})
    void screw_of_soft_iron_gives_a_second_harmonic(double radius, double distance, double degree) {
        assertThat(Math.toDegrees(IronBound.screwSecondHarmonicRad(DISC, 1e-3, radius * 1e-3, distance * 1e-3, 0.5e-3)))
                .isCloseTo(degree, within(0.02 * degree + 5e-4));
    }

    @Test
    void channel_errors_land_in_their_harmonics() {
        ChannelErrors offset = new ChannelErrors(0.01, 0, 0, 0, 0);
        assertThat(Math.toDegrees(offset.turn(360).error().ripple(1).amplitudeRad()))
                .isCloseTo(0.573, within(5e-4));
        assertThat(offset.firstHarmonicRad()).isCloseTo(0.01, within(1e-15));
        ChannelErrors gain = new ChannelErrors(0, 0, 0.01, 0, 0);
        assertThat(Math.toDegrees(gain.turn(360).error().ripple(2).amplitudeRad()))
                .isCloseTo(0.285, within(5e-4));
        assertThat(gain.secondHarmonicRad()).isCloseTo(0.01 / 2.01, within(1e-12));
        ChannelErrors skew = new ChannelErrors(0, 0, 0, Math.toRadians(1), 0);
        AngleError skewed = skew.turn(360).error();
        assertThat(Math.toDegrees(skewed.meanRad())).isCloseTo(0.5, within(1e-4));
        assertThat(Math.toDegrees(skewed.ripple(2).amplitudeRad())).isCloseTo(0.5, within(1e-3));
        ChannelErrors bent = new ChannelErrors(0, 0, 0, 0, 0.02);
        assertThat(Math.toDegrees(bent.turn(360).error().ripple(4).amplitudeRad()))
                .isCloseTo(0.291, within(5e-4));
        assertThat(Math.toDegrees(bent.fourthHarmonicRad())).isCloseTo(0.291, within(5e-4));
    }

    @Test
    void ripple_and_its_parts_agree() {
        Ripple ripple = new Ripple(2, 0.3, -0.4);
        assertThat(ripple.amplitudeRad()).isCloseTo(0.5, within(1e-15));
        assertThat(ripple.atRad(Math.PI / 4)).isCloseTo(-0.4, within(1e-15));
    }

    @Test
    void remanence_over_temperature() {
        Remanence n35 = new Remanence(1.17, 1.22, -0.0012, 20);
        assertThat(n35.overCelsius(-20, 100).high()).isCloseTo(1.279, within(5e-4));
        assertThat(n35.overCelsius(-20, 100).low()).isCloseTo(1.058, within(5e-4));
        double at80 = DISC.onAxis(n35.atCelsius(80).low(), 1e-3).strengthTesla();
        assertThat(1e3 * at80).isCloseTo(120.3, within(0.06));
        assertThatIllegalArgumentException().isThrownBy(() -> n35.atCelsius(1000));
        assertThatIllegalArgumentException().isThrownBy(() -> new Remanence(1.2, 1.1, 0, 20));
    }

    @Test
    void recoil_takes_about_one_percent_from_a_disc() {
        assertThat(Remanence.recoilLoss(DISC, 1.05)).isBetween(0.001, 0.015);
        assertThat(Remanence.recoilLoss(RoundMagnet.ring(6e-3, 2e-3, 2.5e-3), 1.05))
                .isBetween(0.0, 0.03);
        assertThat(Remanence.recoilLoss(DISC, 1)).isZero();
    }
}
