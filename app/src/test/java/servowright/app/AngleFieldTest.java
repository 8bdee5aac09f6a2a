package servowright.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import servowright.app.input.csv.ReadResult;
import servowright.app.input.csv.ReadingHints;
import servowright.app.input.csv.RecordingReader;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.Identification;
import servowright.engine.bench.IdentifiedAxis;
import servowright.engine.bench.IdentifiedMachine;
import servowright.engine.encoder.Ripple;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.known.Place;
import servowright.engine.machine.Axis;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Bus;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Figures;
import servowright.engine.machine.Machine;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.quantity.QuantityText;
import servowright.engine.quantity.Stated;
import servowright.engine.quantity.Units;
import servowright.engine.recording.Clock;
import servowright.engine.recording.Recording;

/** Real recordings of an angle sensor beside a reference, from file to figures found by other means (recomputed). */
class AngleFieldTest {
    private static final Place NOWHERE = new Place("bench.yaml", 1, "");

    private static Recording read(int file) {
        ReadingHints hints = ReadingHints.declare()
                .scale("fActPosition (Internal Counter)", new ReadingHints.Scale(1, 0, Units.find("deg")))
                .scale("fActPosition (Resolver)", new ReadingHints.Scale(1, 0, Units.find("deg")))
                .build();
        ReadResult result =
                RecordingReader.read(FieldData.files("e01-angle-error-resolver").get(file), "field", hints);
        assertThat(result).as(() -> String.valueOf(result)).isInstanceOf(ReadResult.Read.class);
        return ((ReadResult.Read) result).recording();
    }

    private static IdentifiedMachine beside(Recording recording) {
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
        Map<String, String> channels = new LinkedHashMap<>();
        channels.put("fActPosition (Internal Counter)", "reference angle");
        channels.put("fActPosition (Resolver)", "angle");
        BenchTest test = new BenchTest(
                "field 1",
                NOWHERE,
                TestKind.REFERENCE_RUN,
                "",
                Optional.of("joint"),
                Optional.of("field"),
                channels,
                // What is left over is not noise until the many small orders of this sensor are in the fit.
                Figures.<TestFigure>none()
                        .with(TestFigure.ORDERS, Declared.of((Stated) QuantityText.parse("16"), NOWHERE)),
                List.of(),
                Map.of());
        return Identification.identify(machine, List.of(test), Map.of("field", recording));
    }

    @ParameterizedTest
    // File, mean error and delay, and the harmonics of first, second and fourth order in degrees.
    @CsvSource({"0, -0.66, 33.6, 0.35, 0.48, 0.14", "1, -0.30, 33.4, 0.26, 1.545, 0.17"})
    void a_turn_out_and_back_gives_offset_delay_and_harmonics(
            int file, double offset, double delayMilli, double first, double second, double fourth) {
        IdentifiedMachine machine = beside(read(file));
        IdentifiedAxis axis = machine.axis("joint");
        Known mean = machine.tests().get(0).details().stream()
                .flatMap(p -> Optional.ofNullable(p.figures().get("mean")).stream())
                .map(part -> ((Phrase.Figure) part).value())
                .findFirst()
                .orElseThrow();
        assertThat(Math.toDegrees(mean.si())).isCloseTo(offset, within(0.03));
        assertThat(1e3
                        * axis.best(AxisParameter.ANGLE_DELAY)
                                .found()
                                .orElseThrow()
                                .si())
                .isCloseTo(delayMilli, within(0.9));
        List<Ripple> ripples = axis.correction().orElseThrow().fitted().error().ripples();
        assertThat(amplitude(ripples, 1)).isCloseTo(first, within(0.03));
        assertThat(amplitude(ripples, 2)).isCloseTo(second, within(0.03));
        assertThat(amplitude(ripples, 4)).isCloseTo(fourth, within(0.03));
    }

    private static double amplitude(List<Ripple> ripples, int order) {
        return ripples.stream()
                .filter(r -> r.order() == order)
                .mapToDouble(r -> Math.toDegrees(r.amplitudeRad()))
                .findFirst()
                .orElse(0);
    }

    @ParameterizedTest
    @CsvSource({"0", "1"})
    void without_times_the_lag_is_said_to_be_delay_or_play(int file) {
        Recording timed = read(file);
        Recording timeless = new Recording(
                timed.name(), timed.sourceHash(), Clock.order(timed.count()), timed.channels(), timed.remarks());
        IdentifiedMachine machine = beside(timeless);
        String need = machine.tests()
                .get(0)
                .outcome(AxisParameter.ANGLE_DELAY)
                .fold(a -> "nothing", m -> m.needs().get(0).what());
        assertThat(need).contains("delay and play cannot be told apart");
    }
}
