package servowright.engine.motor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class CoilTest {

    private static final Coil COIL = new Coil(0.117, 180e-6, 5e-3);

    /** 117 mΩ per delta coil reads 78 mΩ between terminals and is a 39 mΩ phase (practitioner case, recomputed). */
    @Test
    void turns_delta_into_the_equivalent_star() {
        Coil star = COIL.starEquivalent();
        assertThat(star.ohm()).isCloseTo(0.039, within(1e-15));
        assertThat(star.henry()).isCloseTo(60e-6, within(1e-18));
        assertThat(star.weberPeak()).isCloseTo(5e-3 / Math.sqrt(3), within(1e-18));
        assertThat(COIL.twoTerminalsOhmInDelta()).isCloseTo(0.078, within(1e-15));
        assertThat(star.twoTerminalsOhmInStar()).isCloseTo(COIL.twoTerminalsOhmInDelta(), within(1e-15));
        assertThat(star.deltaEquivalent().weberPeak()).isCloseTo(COIL.weberPeak(), within(1e-15));
        assertThat(star.deltaEquivalent().ohm()).isCloseTo(COIL.ohm(), within(1e-15));
    }

    /** The same coils in star and in delta, computed as two motors, against the factors √3, 1/√3, 1/3 and 1. */
    @Test
    void agrees_with_two_motors_made_of_the_same_coils() {
        Coil.Reconnection change = Coil.starToDelta();
        MotorConstants star = MotorConstants.ofFluxLinkage(COIL.weberPeak(), 7);
        MotorConstants delta =
                MotorConstants.ofFluxLinkage(COIL.starEquivalent().weberPeak(), 7);
        double speed = star.emfPhasePeakVoltSecondPerRad() / delta.emfPhasePeakVoltSecondPerRad();
        assertThat(change.speedConstant()).isCloseTo(speed, within(1e-12));
        assertThat(change.torqueConstant()).isCloseTo(1 / speed, within(1e-12));
        assertThat(change.resistance())
                .isCloseTo(COIL.twoTerminalsOhmInDelta() / COIL.twoTerminalsOhmInStar(), within(1e-12));
        assertThat(change.current()).isCloseTo(Math.sqrt(3), within(1e-12));
        assertThat(delta.perRootWatt(COIL.starEquivalent().ohm()) / star.perRootWatt(COIL.ohm()))
                .isCloseTo(change.motorConstant(), within(1e-12));
        assertThat(change.motorConstant()).isCloseTo(1, within(1e-12));
        assertThat(Coil.deltaToStar().speedConstant() * change.speedConstant()).isCloseTo(1, within(1e-12));
    }

    @Test
    void refuses_nan() {
        assertThatThrownBy(() -> new Coil(Double.NaN, 1, 1)).hasMessageContaining("coil resistance");
    }
}
