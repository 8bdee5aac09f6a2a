package servowright.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;
import servowright.app.input.csv.ReadingHints;
import servowright.engine.bench.TestResult;
import servowright.engine.machine.Figures;
import servowright.engine.machine.TestKind;

/** The first joint of an arm moved alone: friction and inertia from speed and motor current, against figures computed outside. */
class JointFieldTest {
    /** Drive gain of the joint, stated beside the file. */
    private static final double NEWTON_METRE_PER_AMP = 10;

    private static TestResult reduced() {
        return FieldReduction.reduced(
                TestKind.NO_LOAD,
                FieldReduction.unknownMotor(),
                FieldReduction.read(
                        FieldData.bench("j02-arm-single-joint").resolve("joint1.csv"),
                        ReadingHints.declare()
                                .timeColumn("1", FieldReduction.unit("s"))
                                .scale("column 8", FieldReduction.in("rad/s"))
                                .scale("column 14", FieldReduction.in("A"))
                                .build()),
                Map.of("column 8", "speed", "column 14", "q axis current"),
                Figures.none());
    }

    /** Those who measured found 12.55 N m and 21.26 N m s. */
    @Test
    void finds_friction_and_inertia_of_the_joint() {
        TestResult result = reduced();
        double dry = NEWTON_METRE_PER_AMP
                * FieldReduction.figure(result, "two terms: ", "i0").si();
        double viscous = NEWTON_METRE_PER_AMP
                * FieldReduction.figure(result, "two terms: ", "i1").si();
        double inertia = NEWTON_METRE_PER_AMP
                * FieldReduction.figure(result, "two terms take", "m").si();
        // The standard errors from outside are 3 to 6 %; a drag of three terms has 11.5 N m, which is where the 12.55
        // of the others lies.
        assertThat(dry).isCloseTo(13.5, within(0.06 * 13.5));
        assertThat(dry).isCloseTo(12.55, within(0.15 * 12.55));
        assertThat(viscous).isCloseTo(22.2, within(0.06 * 22.2));
        assertThat(viscous).isCloseTo(21.26, within(0.1 * 21.26));
        assertThat(inertia).isCloseTo(5.8, within(0.12 * 5.8));
    }
}
