package servowright.engine.motor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.VoltageBasis;

class ConstantsClosureTest {

    private static final double RPM = Math.PI / 30;
    private static final double PER_KRPM = 1 / (1000 * RPM);
    private static final double U = 0.02;

    /** Kt 0.55 N m/A and Ke 0.318 V s/rad, both "rms" (practitioner case; ratio recomputed). */
    @Test
    void reads_055_and_0318_as_line_rms_and_ampere_rms() {
        ConstantsClosure closure = ConstantsClosure.of(
                List.of(StatedConstant.torqueConstant(0.55, U), StatedConstant.emfConstant(0.318, U)));
        assertThat(words(closure.best())).containsExactly("phase rms", "line rms");
        assertThat(closure.consistent()).isTrue();
        assertThat(closure.tied()).hasSize(1);
        assertThat(0.55 / 0.318 / Math.sqrt(3) - 1).isCloseTo(-0.0014, within(5e-5));
        assertThat(MotorConstants.ofTorqueConstant(0.55, CurrentBasis.PHASE_RMS).torqueConstant(CurrentBasis.Q_AXIS))
                .isCloseTo(0.3889, within(5e-5));
        assertThat(MotorConstants.ofEmfConstant(0.318, VoltageBasis.LINE_RMS).speedConstant(VoltageBasis.LINE_PEAK)
                        / RPM)
                .isCloseTo(21.23, within(5e-3));
    }

    /** Ratio torque constant over EMF constant to the pair of bases; ties in the order of common use. Recomputed. */
    @ParameterizedTest
    @CsvSource({
        "0.866, line peak, q axis, 1",
        "1.000, six-step, six-step, 1",
        "1.2247, line peak, phase rms, 2",
        "1.5, phase peak, q axis, 1",
        "1.7321, line rms, phase rms, 1",
        "2.1213, phase peak, phase rms, 2",
        "3.0, phase rms, phase rms, 1"
    })
    void classifies_by_the_ratio_and_says_when_two_readings_tie(double ratio, String volts, String amps, int tied) {
        ConstantsClosure closure = ConstantsClosure.of(
                List.of(StatedConstant.emfConstant(0.1, U), StatedConstant.torqueConstant(0.1 * ratio, U)));
        assertThat(words(closure.best())).containsExactly(volts, amps);
        assertThat(closure.best().worstOff()).isLessThan(1e-3);
        // 1.2247 and 2.1213 belong to two pairs each, an exact tie for an exact ratio.
        List<StatedConstant> exact = List.of(
                StatedConstant.emfConstant(0.1, U),
                new StatedConstant(
                        StatedConstant.Kind.TORQUE_CONSTANT,
                        closure.best().bases().get(1).perFlux()
                                / closure.best().bases().get(0).perFlux()
                                / 10,
                        1,
                        StatedConstant.torqueConstant(1, U).candidates(),
                        U));
        assertThat(ConstantsClosure.of(exact).tied()).hasSize(tied);
    }

    /** Small servo motor, p 4, 3.8 V line peak per 1000 rpm, 0.034 N m/A (page seen, identity dropped; recomputed). */
    @Test
    void reads_the_torque_constant_of_the_teaching_set_as_six_step() {
        StatedConstant emf = StatedConstant.emfConstant(3.8 * PER_KRPM, VoltageBasis.LINE_PEAK, 0.01);
        assertThat(emf.on(emf.candidates().get(0)).fluxLinkageWeberPeak(4)).isCloseTo(5.2376e-3, within(5e-8));
        ConstantsClosure closure = ConstantsClosure.of(List.of(emf, StatedConstant.torqueConstant(0.034, 0.01)));
        assertThat(words(closure.best())).containsExactly("line peak", "six-step");
        MotorConstants motor = emf.on(emf.candidates().get(0));
        assertThat(motor.torqueConstant(CurrentBasis.SIX_STEP) / 0.034 - 1).isCloseTo(0.019, within(5e-4));
        assertThat(0.034 / motor.torqueConstant(CurrentBasis.Q_AXIS) - 1).isCloseTo(0.082, within(5e-4));
        assertThat(motor.torqueConstant(CurrentBasis.PHASE_RMS)).isCloseTo(0.04444, within(6e-6));
    }

    /** The same set with its printed flux linkage 5.2 mWb: flux and EMF agree, the torque constant does not. */
    @Test
    void agrees_on_flux_and_emf_of_the_teaching_set_but_not_on_a_q_axis_torque_constant() {
        ConstantsClosure closure = ConstantsClosure.of(List.of(
                StatedConstant.emfConstant(3.8 * PER_KRPM, VoltageBasis.LINE_PEAK, 0.01),
                StatedConstant.fluxLinkage(5.2e-3, 4, VoltageBasis.PHASE_PEAK, 0.01),
                StatedConstant.torqueConstant(0.034, CurrentBasis.Q_AXIS, 0.01)));
        assertThat(closure.consistent()).isFalse();
        assertThat(closure.disagreements(0.03, List.of()))
                .extracting(ConstantsClosure.Disagreement::second)
                .containsOnly(2);
        assertThat(closure.suspects().get(0).figure()).isEqualTo(2);
        assertThat(words(closure.suspects().get(0).closing())).containsExactly("line peak", "phase peak", "six-step");
    }

    /** Servo machine, p 4, flux linkage 0.12258 Wb, printed torque constant 1.01 (repository seen; recomputed). */
    @Test
    void reads_a_printed_1_01_as_per_rms_ampere() {
        StatedConstant flux = StatedConstant.fluxLinkage(0.12258, 4, VoltageBasis.PHASE_PEAK, 0.02);
        ConstantsClosure closure = ConstantsClosure.of(List.of(flux, StatedConstant.torqueConstant(1.01, 0.02)));
        assertThat(words(closure.best())).containsExactly("phase peak", "phase rms");
        MotorConstants motor = flux.on(flux.candidates().get(0));
        assertThat(motor.torqueConstant(CurrentBasis.Q_AXIS)).isCloseTo(0.7355, within(5e-5));
        assertThat(motor.torqueConstant(CurrentBasis.PHASE_RMS)).isCloseTo(1.0401, within(5e-5));
        assertThat(1.01 / motor.torqueConstant(CurrentBasis.PHASE_RMS) - 1).isCloseTo(-0.029, within(5e-4));
    }

    /**
     * 51 V per 1000 rpm and 0.49 N m/A (published table quoted on a page). Equal in SI, so for sines both are six-step;
     * for an ideal trapezoid that is the line peak too ({@link Waveform}).
     */
    @Test
    void reads_equal_si_figures_as_the_direct_current_convention() {
        assertThat(51 * PER_KRPM).isCloseTo(0.487, within(5e-4));
        ConstantsClosure closure = ConstantsClosure.of(
                List.of(StatedConstant.emfConstant(51 * PER_KRPM, U), StatedConstant.torqueConstant(0.49, U)));
        assertThat(words(closure.best())).containsExactly("six-step", "six-step");
        assertThat(closure.best().worstOff()).isLessThan(0.004);
        assertThat(0.49 * 4.52).isCloseTo(2.21, within(0.005));
    }

    /** Friction laboratory set, p 4, 0.31 N m/A (script seen): flux linkage on the two sinusoidal bases. */
    @Test
    void keeps_every_basis_open_when_one_figure_stands_alone() {
        StatedConstant torque = StatedConstant.torqueConstant(0.31, U);
        ConstantsClosure closure = ConstantsClosure.of(List.of(torque));
        assertThat(closure.tied()).hasSize(3);
        assertThat(torque.on(ConstantBasis.of(CurrentBasis.Q_AXIS)).fluxLinkageWeberPeak(4))
                .isCloseTo(0.0517, within(5e-5));
        assertThat(closure.suspects()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"LINE_PEAK, LINE_RMS, √2", "LINE_PEAK, PHASE_PEAK, √3", "LINE_PEAK, PHASE_RMS, √6"})
    void names_the_ratio_when_a_speed_constant_was_read_on_another_basis(
            VoltageBasis real, VoltageBasis typed, String name) {
        MotorConstants motor = MotorConstants.ofFluxLinkage(2.5e-3, 7);
        ConstantsClosure closure = ConstantsClosure.of(List.of(
                StatedConstant.speedConstant(motor.speedConstant(real), typed, U),
                StatedConstant.torqueConstant(motor.torqueConstant(CurrentBasis.Q_AXIS), CurrentBasis.Q_AXIS, U),
                StatedConstant.fluxLinkage(2.5e-3, 7, VoltageBasis.PHASE_PEAK, U)));
        ConstantsClosure.Disagreement first =
                closure.disagreements(0.03, List.of()).get(0);
        assertThat(first.names().get(0).words()).isEqualTo(name);
        assertThat(first.allowed()).isCloseTo(Math.exp(2 * Math.hypot(U, U)), within(1e-12));
        assertThat(closure.suspects().get(0).figure()).isZero();
        assertThat(words(closure.suspects().get(0).closing()).get(0)).isEqualTo(real.words());
    }

    /** Geared actuator with a torque constant of the load side against one of the motor side (confirmed cause). */
    @Test
    void names_the_gear_between_two_torque_constants() {
        ConstantsClosure closure = ConstantsClosure.of(List.of(
                StatedConstant.torqueConstant(2.6, CurrentBasis.PHASE_RMS, U),
                StatedConstant.torqueConstant(0.29, CurrentBasis.PHASE_RMS, U)));
        assertThat(closure.disagreements(0.03, List.of(RatioName.gear(9)))
                        .get(0)
                        .names())
                .extracting(match -> match.name().words())
                .containsExactly("gear (9.0)");
        assertThat(closure.disagreements(0.03, List.of()).get(0).names()).isEmpty();
    }

    @Test
    void weighs_figures_by_their_uncertainty() {
        ConstantsClosure closure = ConstantsClosure.of(List.of(
                StatedConstant.emfConstant(0.100, VoltageBasis.PHASE_PEAK, 0.001),
                StatedConstant.emfConstant(0.110, VoltageBasis.PHASE_PEAK, 0.1)));
        assertThat(closure.best().motor().emfPhasePeakVoltSecondPerRad()).isCloseTo(0.1, within(2e-5));
        assertThat(closure.best().chiSquare()).isCloseTo(Math.pow(Math.log(1.1) / 0.1, 2), within(1e-3));
    }

    @Test
    void opens_a_stated_speed_constant_again() {
        StatedConstant open =
                StatedConstant.speedConstant(30, VoltageBasis.LINE_RMS, U).withBasisOpen();
        assertThat(open.basisStated()).isFalse();
        assertThat(open).isEqualTo(StatedConstant.speedConstant(30, U));
        assertThat(StatedConstant.fluxLinkage(1e-3, 5, U).candidates()).hasSize(4);
        assertThat(StatedConstant.Kind.FLUX_LINKAGE.words()).isEqualTo("flux linkage");
    }

    @Test
    void refuses_no_figures_too_many_and_nan() {
        assertThatThrownBy(() -> ConstantsClosure.of(List.of())).hasMessageContaining("number of figures");
        List<StatedConstant> many = Collections.nCopies(7, StatedConstant.emfConstant(1, U));
        assertThatThrownBy(() -> ConstantsClosure.of(many)).hasMessageContaining("number of figures");
        assertThatThrownBy(() -> StatedConstant.torqueConstant(Double.NaN, U)).hasMessageContaining("torque constant");
        assertThatThrownBy(() -> StatedConstant.torqueConstant(1, Double.NaN)).hasMessageContaining("uncertainty");
    }

    private static List<String> words(ConstantsClosure.Candidate candidate) {
        return candidate.bases().stream().map(ConstantBasis::words).toList();
    }
}
