package servowright.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import servowright.app.input.csv.ReadingHints;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.TestResult;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.machine.Figures;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Recording;

/** Holding currents all around a real motor, and one that turns at constant voltage, against figures computed outside. */
class CoggingFieldTest {
    private static Recording read(String folder, String file) {
        ReadingHints hints = ReadingHints.declare()
                .scale("Position", FieldReduction.in("rad"))
                .scale("Velocity", FieldReduction.in("rad/s"))
                .scale("Iq", FieldReduction.in("A"))
                .timeColumn("Time", FieldReduction.unit("s"))
                .build();
        return FieldReduction.read(FieldData.bench(folder).resolve(file), hints);
    }

    private static TestResult held(Motor motor) {
        return FieldReduction.reduced(
                TestKind.HOLD_MAP,
                motor,
                read("m03-cogging-hold-map", "hold_current_map.txt"),
                Map.of("Position", "angle", "Iq", "q axis current"),
                Figures.none());
    }

    private static Motor counted() {
        return FieldReduction.motor(FieldReduction.motor(MotorFigure.POLE_PAIRS, "12"), MotorFigure.SLOTS, "18");
    }

    /** Amplitude of an order per turn, and what it is said to be. */
    private static Phrase order(TestResult result, int order) {
        return result.details().stream()
                .filter(p -> p.template().startsWith("{n} per turn: {A}") && number(p, "n") == order)
                .findFirst()
                .orElseThrow();
    }

    private static double amp(TestResult result, int order) {
        return number(order(result, order), "A");
    }

    @Test
    void finds_friction_cogging_and_its_orders_in_a_hold_map() {
        TestResult result = held(counted());
        Known friction = FieldReduction.figure(result, "friction, half the difference", "f");
        assertThat(friction.si()).isCloseTo(0.0548, within(0.002));
        assertThat(FieldReduction.figure(result, "depends on the position", "pp")
                        .si())
                .isCloseTo(0.543, within(0.01));
        assertThat(FieldReduction.figure(result, "depends on the position", "rms")
                        .si())
                .isCloseTo(0.139, within(0.002));
        assertThat(amp(result, 72)).isCloseTo(0.185, within(0.002));
        assertThat(amp(result, 18)).isCloseTo(0.042, within(0.002));
        assertThat(amp(result, 12)).isCloseTo(0.030, within(0.002));
        assertThat(amp(result, 144)).isCloseTo(0.023, within(0.002));
        assertThat(amp(result, 24)).isCloseTo(0.018, within(0.002));
        assertThat(amp(result, 36)).isCloseTo(0.015, within(0.002));
        assertThat(order(result, 72).template()).contains("cogging").contains("six per electrical turn");
        assertThat(order(result, 12).template()).contains("offset of a current sensor");
        assertThat(FieldReduction.says(result, "the least it can be")).isTrue();
        // Outside ± 0.002 A is stated for the amplitudes.
        assertThat(2 * figure(order(result, 12), "A").standardUncertainty()).isBetween(0.001, 0.004);
        assertThat(FieldReduction.need(result, MotorParameter.COGGING_TORQUE)).contains("torque constant");
    }

    /** Slots and poles are not stated: the strongest order and the ones beside it lead to them. */
    @Test
    void proposes_slots_and_magnets_that_would_cog_like_this() {
        TestResult result = held(FieldReduction.unknownMotor());
        Phrase proposed = result.remarks().stream()
                .filter(p -> p.template().contains("would be the cogging of"))
                .findFirst()
                .orElseThrow();
        assertThat(number(proposed, "slots")).isEqualTo(18);
        assertThat(number(proposed, "poles")).isEqualTo(24);
    }

    private static Known figure(Phrase phrase, String name) {
        return ((Phrase.Figure) Objects.requireNonNull(phrase.figures().get(name))).value();
    }

    private static double number(Phrase phrase, String name) {
        return figure(phrase, name).si();
    }

    /**
     * 30 turns at 484 rpm. The figures outside come from linear interpolation to even angles, which leaves (sin x / x)² of an
     * order, x = π order / samples per turn: 0.970, 0.933, 0.752 and 0.281 of the orders 12, 18, 36 and 72 (recomputed).
     */
    @Test
    void finds_a_current_offset_and_the_encoder_in_a_run_at_speed_and_refuses_its_cogging() {
        TestResult result = FieldReduction.reduced(
                TestKind.COGGING_RUN,
                FieldReduction.motor(counted(), MotorFigure.TORQUE_CONSTANT, "0.028 N m/A [q axis]"),
                read("m02-servo-axis-log", "rolling_uq_const.txt"),
                Map.of("Position", "angle", "Iq", "q axis current", "Velocity", "speed"),
                Figures.none());
        assertThat(amp(result, 12) * 0.970).isCloseTo(0.0485, within(0.001));
        assertThat(amp(result, 36) * 0.752).isCloseTo(0.0131, within(0.001));
        assertThat(amp(result, 72) * 0.281).isCloseTo(0.0035, within(0.0005));
        assertThat(order(result, 12).template()).contains("offset of a current sensor");
        assertThat(speed(result, 1, "A")).isCloseTo(0.090, within(0.003));
        assertThat(speed(result, 12, "A") * 0.970).isCloseTo(0.236, within(0.005));
        assertThat(speed(result, 18, "A") * 0.933).isCloseTo(0.149, within(0.005));
        assertThat(speed(result, 1, "e")).isCloseTo(1.8e-3, within(1e-4));
        assertThat(FieldReduction.need(result, MotorParameter.COGGING_TORQUE)).contains("carries it over");
        assertThat(FieldReduction.says(result, "one direction only")).isTrue();
    }

    private static double speed(TestResult result, int order, String name) {
        return result.details().stream()
                .filter(p -> p.template().startsWith("speed, ") && number(p, "n") == order)
                .mapToDouble(p -> number(p, name))
                .findFirst()
                .orElseThrow();
    }
}
