package servowright.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;
import servowright.app.input.csv.ReadingHints;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.TestResult;
import servowright.engine.machine.Figures;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Recording;

/** Shafts that a current drives, from three laboratories, against figures computed outside from the same files. */
class DrivenFieldTest {
    private static Recording read(String folder, String file, ReadingHints.Builder hints) {
        return FieldReduction.read(FieldData.bench(folder).resolve(file), hints.build());
    }

    /** Torque in percent of a rated torque that is not stated: it stands in for a current, and no inertia comes of it. */
    @Test
    void finds_what_a_servo_trace_says_in_percent() {
        TestResult result = FieldReduction.reduced(
                TestKind.ACCELERATION,
                FieldReduction.unknownMotor(),
                read(
                        "m06-servo-trace-and-force",
                        "servo_trace.csv",
                        ReadingHints.declare()
                                .scale("Servo motor speed", FieldReduction.in("rpm"))
                                .scale("Torque", FieldReduction.in("A"))),
                Map.of("Servo motor speed", "speed", "Torque", "q axis current"),
                Figures.none());
        assertThat(1 / FieldReduction.figure(result, "two terms: ", "g").si()).isCloseTo(0.01156, within(1e-4));
        assertThat(FieldReduction.figure(result, "two terms: ", "a").si()).isCloseTo(4.9, within(0.3));
        assertThat(FieldReduction.figure(result, "two terms: ", "b").si()).isCloseTo(0.030, within(0.003));
        assertThat(FieldReduction.need(result, MotorParameter.ROTOR_INERTIA)).contains("torque constant");
    }

    @Test
    void refuses_the_current_of_the_supply_for_that_of_the_motor() {
        TestResult run = FieldReduction.reduced(
                TestKind.ACCELERATION,
                FieldReduction.unknownMotor(),
                read(
                        "m01-flywheel-dyno",
                        "accel_30V_4A.txt",
                        ReadingHints.declare()
                                .timeColumn("6", FieldReduction.unit("ms"))
                                .scale("column 2", FieldReduction.in("A"))
                                .scale("column 4", FieldReduction.in("rpm"))),
                Map.of("column 2", "supply current", "column 4", "speed"),
                FieldReduction.with(Figures.none(), TestFigure.INERTIA, "0.8489 kg m2"));
        assertThat(run.values().toString()).contains("the supply's current is not the motor's");
        TestResult stairs = stairs("motorA_4V.csv", "supply current");
        assertThat(FieldReduction.need(stairs, MotorParameter.FLUX_LINKAGE))
                .contains("the supply's current is not the motor's");
    }

    private static TestResult stairs(String file, String current) {
        return FieldReduction.reduced(
                TestKind.TORQUE_STAIRS,
                FieldReduction.motor(MotorFigure.POLE_PAIRS, "7"),
                read("m07-bldc-curves", file, ReadingHints.declare().sampleInterval(1)),
                Map.of("Current", current, "Torque", "torque"),
                Figures.none());
    }

    /** At 12 V the bridge is fully on, so that the current of the supply is the six-step current of the motor. */
    @Test
    void finds_the_torque_constant_where_the_bridge_is_fully_on() {
        TestResult result = stairs("motorA_12V.csv", "six-step current");
        double perAmp = FieldReduction.figure(result, "torque constant", "Kt").si();
        // 0.0181 N m/A of six-step current is 0.0181 · (3/2)/(3√3/π) per q-axis ampere (recomputed).
        assertThat(perAmp).isCloseTo(0.0181 * 1.5 / 1.653987, within(3e-4));
    }
}
