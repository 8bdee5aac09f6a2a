package servowright.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import servowright.app.input.csv.ReadingHints;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.TestResult;
import servowright.engine.known.Known;
import servowright.engine.machine.Figures;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;

/**
 * A motor on a brake at 4, 8 and 12 V, whose files hold the current of the supply of 12 V, against figures computed outside. Nothing here
 * tells the program that there is a chopper: it has the voltage applied, and power and current as recorded.
 */
class LoadCurveFieldTest {
    private static TestResult reduced(int volt) {
        return FieldReduction.reduced(
                TestKind.LOAD_CURVE,
                FieldReduction.motor(MotorFigure.POLE_PAIRS, "7"),
                FieldReduction.read(
                        FieldData.bench("m07-bldc-curves").resolve("motorA_" + volt + "V.csv"),
                        ReadingHints.declare().sampleInterval(1).build()),
                Map.of("Speed", "speed", "Torque", "torque", "Current", "six-step current", "Supplied Power", "power"),
                FieldReduction.with(Figures.none(), TestFigure.APPLIED_VOLTAGE, volt + " V"));
    }

    @ParameterizedTest
    @CsvSource({"4, 0.067, 0.0236", "8, 0.058, 0.0196", "12, 0.066, 0.0181"})
    void finds_resistance_and_torque_constant_at_each_voltage(int volt, double ohm, double perAmp) {
        TestResult result = reduced(volt);
        assertThat(FieldReduction.figure(result, "between the terminals", "R").si())
                .isCloseTo(ohm, within(0.0005));
        // Found outside as torque over current at standstill; the slope is larger by the drag.
        assertThat(FieldReduction.figure(result, "at the largest current", "k").si())
                .isCloseTo(perAmp, within(5e-5));
        Known flux = FieldReduction.value(result, MotorParameter.FLUX_LINKAGE);
        double sixStep = flux.si() * 7 * 3 * Math.sqrt(3) / Math.PI;
        assertThat(sixStep).isCloseTo(perAmp, within(0.03 * perAmp));
    }

    @Test
    void says_that_the_current_is_that_of_the_supply_and_scales_it() {
        assertThat(FieldReduction.says(reduced(4), "before a chopper")).isTrue();
        assertThat(FieldReduction.says(reduced(8), "before a chopper")).isTrue();
        assertThat(FieldReduction.says(reduced(12), "before a chopper")).isFalse();
        assertThat(FieldReduction.figure(reduced(12), "between the terminals", "Ke")
                        .si())
                .isCloseTo(0.0195, within(5e-5));
    }
}
