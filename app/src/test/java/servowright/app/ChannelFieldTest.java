package servowright.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import servowright.app.input.csv.ReadingHints;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.Identification;
import servowright.engine.bench.TestResult;
import servowright.engine.known.Known;
import servowright.engine.known.Place;
import servowright.engine.machine.Axis;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Bus;
import servowright.engine.machine.Figures;
import servowright.engine.machine.Machine;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Recording;

/** Two raw channels of a real field sensor, outliers and all, against figures found by other means (recomputed). */
class ChannelFieldTest {
    private static final Place NOWHERE = new Place("bench.yaml", 1, "");

    private static TestResult reduced() {
        Recording recording = FieldReduction.read(
                FieldData.files("e02-sincos-ellipse").get(0),
                ReadingHints.declare().orderOnly().build());
        Axis axis = new Axis(
                "joint", NOWHERE, Optional.empty(), Optional.empty(), Optional.empty(), Figures.none(), Map.of());
        Machine machine = new Machine(
                "Field",
                "",
                Figures.none(),
                Optional.empty(),
                Map.of(),
                Map.of(),
                Map.of(),
                Map.of("joint", axis),
                Bus.none());
        BenchTest test = new BenchTest(
                "field 1",
                NOWHERE,
                TestKind.CHANNEL_TURN,
                "",
                Optional.of("joint"),
                Optional.of("field"),
                Map.of("x", "cosine", "y", "sine"),
                Figures.none(),
                List.of(),
                Map.of());
        return Identification.identify(machine, List.of(test), Map.of("field", recording))
                .tests()
                .get(0);
    }

    /** Centre (−109.7, 64.5), half axes 103.7 and 91.5 at −48.6 degrees, 7.1 degrees from a right angle. */
    @Test
    void two_channels_draw_the_ellipse_that_was_found_outside() {
        TestResult result = reduced();
        near(result, "x", -109.7, 1.5);
        near(result, "y", 64.5, 1.5);
        near(result, "a", 103.7, 1.5);
        near(result, "b", 91.5, 1.5);
        near(result, "tilt", Math.toRadians(-48.6), Math.toRadians(3));
        Known quadrature = result.outcome(AxisParameter.CHANNEL_QUADRATURE)
                .found()
                .orElseThrow()
                .value();
        assertThat(Math.abs(quadrature.si())).isCloseTo(Math.toRadians(7.1), within(quadrature.expandedUncertainty()));
        assertThat(Math.toDegrees(quadrature.standardUncertainty())).isBetween(0.05, 1.0);
        assertThat(FieldReduction.says(result, "does not even go round")).isTrue();
    }

    private static void near(TestResult result, String name, double outside, double reach) {
        assertThat(FieldReduction.figure(result, "half axes", name).si())
                .as(name)
                .isCloseTo(outside, within(reach));
    }
}
