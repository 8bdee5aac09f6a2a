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
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Recording;

/**
 * Coast-downs of a real flywheel with and without its motor, against figures computed outside from the same files. Which
 * stretch is fitted moves the terms by up to 5 %: the drag is no polynomial near standstill.
 */
class CoastDownFieldTest {
    private static TestResult reduced(String file) {
        ReadingHints hints = ReadingHints.declare()
                .timeColumn("6", FieldReduction.unit("ms"))
                .scale("column 4", FieldReduction.in("rpm"))
                .build();
        Recording recording =
                FieldReduction.read(FieldData.bench("m01-flywheel-dyno").resolve(file), hints);
        return FieldReduction.reduced(
                TestKind.COAST_DOWN,
                FieldReduction.unknownMotor(),
                recording,
                Map.of("column 4", "speed"),
                FieldReduction.with(Figures.none(), TestFigure.INERTIA, "0.8489 kg m2"));
    }

    @Test
    void finds_the_drag_of_flywheel_and_motor_with_the_spread_of_the_models() {
        TestResult result = reduced("spindown_motor_unplugged.txt");
        assertThat(FieldReduction.figure(result, "two terms: ", "a").si()).isCloseTo(0.0848, within(0.003));
        assertThat(FieldReduction.figure(result, "two terms: ", "b").si()).isCloseTo(2.64e-3, within(8e-5));
        assertThat(FieldReduction.figure(result, "three terms: ", "a").si()).isCloseTo(0.0759, within(0.004));
        assertThat(FieldReduction.figure(result, "three terms: ", "b").si()).isCloseTo(3.10e-3, within(1.6e-4));
        assertThat(FieldReduction.figure(result, "three terms: ", "c").si()).isCloseTo(-4.5e-6, within(1.2e-6));
        holds(FieldReduction.value(result, MotorParameter.DRY_DRAG), 0.0645, 0.12);
        holds(FieldReduction.value(result, MotorParameter.VISCOUS_DRAG), 2.6e-3, 0.17);
    }

    /** The value lies within what we state, and our half-width is within a factor 2 of the spread of the models. */
    private static void holds(Known found, double outside, double spread) {
        assertThat(found.si()).isCloseTo(outside, within(found.expandedUncertainty()));
        assertThat(found.expandedUncertainty() / found.si()).isBetween(spread / 2, spread * 2);
    }

    @Test
    void repairs_ten_samples_that_fell_out() {
        TestResult result = reduced("spindown_motor_unplugged.txt");
        Phrase repaired = result.remarks().stream()
                .filter(p -> p.template().contains("single samples of 0"))
                .findFirst()
                .orElseThrow();
        Phrase.Part count = Objects.requireNonNull(repaired.figures().get("count"));
        assertThat(((Phrase.Figure) count).value().si()).isEqualTo(10);
    }

    @Test
    void finds_the_drag_of_the_flywheel_alone() {
        TestResult result = reduced("spindown_no_motor.txt");
        assertThat(FieldReduction.figure(result, "three terms: ", "a").si()).isCloseTo(0.0406, within(0.002));
        assertThat(FieldReduction.figure(result, "three terms: ", "b").si()).isCloseTo(2.26e-3, within(1.1e-4));
        Known dry = FieldReduction.value(result, MotorParameter.DRY_DRAG);
        assertThat(dry.si()).isCloseTo(0.0345, within(dry.expandedUncertainty()));
        // Motor alone by difference: 0.030 N m, known outside to about 15 %.
        Known both = FieldReduction.value(reduced("spindown_motor_unplugged.txt"), MotorParameter.DRY_DRAG);
        assertThat(both.si() - dry.si()).isCloseTo(0.030, within(0.0045));
    }
}
