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
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Recording;

/** Two motors coupled through a torque sensor, against figures computed outside from the same files. */
class DynoFieldTest {
    /** The pole pairs are not stated beside the files; 21 is put in, and falls out of the torque constant again. */
    private static final int POLE_PAIRS = 21;

    private static Recording read(String file) {
        return FieldReduction.read(FieldData.bench("m04-actuator-dyno").resolve(file), ReadingHints.none());
    }

    private static Motor declared() {
        return FieldReduction.motor(
                FieldReduction.motor(MotorFigure.POLE_PAIRS, String.valueOf(POLE_PAIRS)),
                MotorFigure.TORQUE_CONSTANT,
                "0.1095 N m/A");
    }

    @Test
    void finds_the_torque_constant_and_names_the_conflict_with_the_declared_one() {
        TestResult result = FieldReduction.reduced(
                TestKind.TORQUE_STAIRS,
                declared(),
                read("kt_stall_stairs.csv"),
                Map.of("a1 q-axis", "q axis current", "trs605-5 torque", "torque"),
                FieldReduction.with(Figures.none(), TestFigure.MAGNETS_AT, "20 degC ± 0.1 K"));
        Known perAmp = FieldReduction.figure(result, "torque constant", "Kt");
        assertThat(perAmp.si()).isCloseTo(0.0724, within(perAmp.expandedUncertainty()));
        // A second run of the same day lies 3 % off: our standard uncertainty is that within a factor 2.
        assertThat(perAmp.relativeUncertainty()).isBetween(0.015, 0.06);
        assertThat(FieldReduction.figure(result, "torque constant", "T0").si()).isCloseTo(-0.026, within(0.01));
        assertThat(FieldReduction.figure(result, "torque constant", "rms").si()).isCloseTo(0.026, within(0.01));
        assertThat(FieldReduction.says(result, "near 1/(3/2)")).isTrue();
        Known flux = FieldReduction.value(result, MotorParameter.FLUX_LINKAGE);
        assertThat(1.5 * POLE_PAIRS * flux.si()).isCloseTo(perAmp.si(), within(1e-4));
    }

    @Test
    void finds_the_current_of_the_no_load_run_and_that_its_curve_bends() {
        TestResult result = FieldReduction.reduced(
                TestKind.NO_LOAD,
                declared(),
                read("noload_speed_stairs.csv"),
                Map.of("a1 velocity", "speed", "a1 q-axis", "q axis current"),
                Figures.none());
        assertThat(FieldReduction.figure(result, "two terms: ", "i0").si()).isCloseTo(0.418, within(0.12));
        assertThat(FieldReduction.figure(result, "two terms: ", "i1").si()).isCloseTo(7.2e-3, within(1.2e-3));
        assertThat(FieldReduction.figure(result, "two terms: ", "rms").si()).isCloseTo(0.24, within(0.06));
        assertThat(FieldReduction.says(result, "the drag bends")).isTrue();
        // From 10 to 130 rad/s the current rises from 0.39 to 1.2 A, found outside in bins.
        double slow = at(result, 10);
        double fast = at(result, 100);
        assertThat(slow).isCloseTo(0.39, within(0.08));
        assertThat(fast).isCloseTo(1.15, within(0.06));
    }

    private static double at(TestResult result, double radPerS) {
        return FieldReduction.figure(result, "three terms: ", "i0").si()
                + FieldReduction.figure(result, "three terms: ", "i1").si() * radPerS
                + FieldReduction.figure(result, "three terms: ", "i2").si() * radPerS * radPerS;
    }
}
