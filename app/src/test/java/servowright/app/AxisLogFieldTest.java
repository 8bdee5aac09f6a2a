package servowright.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;
import servowright.app.input.csv.ReadingHints;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.TestResult;
import servowright.engine.known.Known;
import servowright.engine.machine.Figures;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Recording;

/** The log of a free motor under a sinusoidal torque current, against figures computed outside from the same file. */
class AxisLogFieldTest {
    private static TestResult reduced() {
        ReadingHints hints = ReadingHints.declare()
                .timeColumn("Time", FieldReduction.unit("s"))
                .scale("Velocity", FieldReduction.in("rad/s"))
                .scale("Iq", FieldReduction.in("A"))
                .scale("Uq", FieldReduction.in("V"))
                .build();
        Recording recording =
                FieldReduction.read(FieldData.bench("m02-servo-axis-log").resolve("acc_current.txt"), hints);
        return FieldReduction.reduced(
                TestKind.AXIS_LOG,
                FieldReduction.motor(MotorFigure.POLE_PAIRS, "12"),
                recording,
                Map.of("Velocity", "speed", "Iq", "q axis current", "Uq", "q axis voltage"),
                FieldReduction.with(
                        FieldReduction.with(Figures.none(), TestFigure.WINDING_AT, "20 degC ± 0.1 K"),
                        TestFigure.MAGNETS_AT,
                        "20 degC ± 0.1 K"));
    }

    @Test
    void finds_the_winding_with_the_spread_of_the_dead_zone() {
        TestResult result = reduced();
        holds(FieldReduction.value(result, MotorParameter.PHASE_RESISTANCE), 0.713);
        // 0.018667 V s/rad over 12 pole pairs.
        holds(FieldReduction.value(result, MotorParameter.FLUX_LINKAGE), 0.018667 / 12);
        assertThat(FieldReduction.figure(result, "sense of the speed", "R").si())
                .isCloseTo(0.713, within(0.01));
        assertThat(FieldReduction.figure(result, "sense of the speed", "Ke").si())
                .isCloseTo(0.018667, within(1e-4));
        assertThat(FieldReduction.figure(result, "sense of the speed", "Ud").si())
                .isCloseTo(-0.014, within(0.008));
    }

    @Test
    void finds_inertia_and_drag() {
        TestResult result = reduced();
        // Kt/J 5121 (rad/s²)/A, Coulomb 0.0757 A, viscous 1.89e-4 A s/rad, Kt = 1.5 · 0.018667.
        assertThat(FieldReduction.figure(result, "three terms: ", "g").si()).isCloseTo(5121, within(40.0));
        holds(FieldReduction.value(result, MotorParameter.ROTOR_INERTIA), 5.47e-6);
        holds(FieldReduction.value(result, MotorParameter.DRY_DRAG), 0.0757 * 1.5 * 0.018667);
        holds(FieldReduction.value(result, MotorParameter.VISCOUS_DRAG), 1.89e-4 * 1.5 * 0.018667);
    }

    private static void holds(Known found, double outside) {
        assertThat(found.si()).isCloseTo(outside, within(found.expandedUncertainty()));
    }

    @Test
    void reports_the_gap_and_uses_the_time_stamps() {
        assertThat(FieldReduction.says(reduced(), "the time stamps were used")).isTrue();
    }
}
