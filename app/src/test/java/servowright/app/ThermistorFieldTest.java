package servowright.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;
import servowright.app.input.csv.ReadingHints;
import servowright.engine.bench.TestResult;
import servowright.engine.bench.ThermistorParameter;
import servowright.engine.known.Known;
import servowright.engine.machine.Figures;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;

/** A thermistor beside a thermometer on a block held at 30 to 60 °C, in counts of 1023 over a divider of 10 kohm. */
class ThermistorFieldTest {
    private static TestResult reduced() {
        Figures<TestFigure> figures = FieldReduction.with(Figures.none(), TestFigure.DIVIDER, "10 kohm");
        figures = FieldReduction.with(figures, TestFigure.THERMISTOR_A, "1.2666e-3");
        figures = FieldReduction.with(figures, TestFigure.THERMISTOR_B, "2.3661e-4");
        figures = FieldReduction.with(figures, TestFigure.THERMISTOR_C, "9.6094e-8");
        return FieldReduction.reduced(
                TestKind.THERMISTOR_CHECK,
                FieldReduction.unknownMotor(),
                FieldReduction.read(
                        FieldData.bench("f01-inverter-faults-serial-log").resolve("ntc_calibration.txt"),
                        ReadingHints.declare()
                                .scale("column 4", FieldReduction.in("degC"))
                                .scale("column 5", new ReadingHints.Scale(1 / 1023.0, 0, java.util.Optional.empty()))
                                .build()),
                Map.of("column 4", "temperature", "column 5", "divider"),
                figures);
    }

    @Test
    void finds_the_constants_of_the_calibration() {
        TestResult result = reduced();
        holds(result, ThermistorParameter.BETA, 3640, 100);
        Known at25 = result.outcome(ThermistorParameter.RESISTANCE_AT_25)
                .found()
                .orElseThrow()
                .value();
        assertThat(at25.si()).isCloseTo(10.7e3, within(at25.expandedUncertainty()));
    }

    private static void holds(TestResult result, ThermistorParameter what, double outside, double standard) {
        Known found = result.outcome(what).found().orElseThrow().value();
        assertThat(found.si()).isCloseTo(outside, within(found.expandedUncertainty()));
        assertThat(found.standardUncertainty()).isBetween(standard / 2, standard * 2);
    }

    /** 18 to 20 K off between 40 and 60 °C. */
    @Test
    void says_that_the_declared_constants_read_wrong() {
        TestResult result = reduced();
        assertThat(FieldReduction.figure(result, "declared constants", "astray").si())
                .isBetween(17.0, 25.0);
        assertThat(FieldReduction.says(result, "too low")).isFalse();
    }
}
