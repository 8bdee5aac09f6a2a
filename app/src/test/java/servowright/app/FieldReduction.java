package servowright.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import servowright.app.input.csv.ReadResult;
import servowright.app.input.csv.ReadingHints;
import servowright.app.input.csv.RecordingReader;
import servowright.engine.bench.Identification;
import servowright.engine.bench.IdentifiedMachine;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.TestResult;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.known.Place;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Bus;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Figures;
import servowright.engine.machine.Machine;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.quantity.QuantityText;
import servowright.engine.quantity.Stated;
import servowright.engine.quantity.Unit;
import servowright.engine.quantity.Units;
import servowright.engine.recording.Recording;

/** One real recording as one bench test of one motor, and what was found. */
final class FieldReduction {
    private static final Place NOWHERE = new Place("bench.yaml", 1, "");

    private FieldReduction() {}

    static Recording read(Path file, ReadingHints hints) {
        ReadResult result = RecordingReader.read(file, "field", hints);
        assertThat(result).isInstanceOf(ReadResult.Read.class);
        return ((ReadResult.Read) result).recording();
    }

    /** Samples in a unit that the file does not say. */
    static ReadingHints.Scale in(String unit) {
        return new ReadingHints.Scale(1, 0, Units.find(unit));
    }

    static Unit unit(String name) {
        return Units.named(name);
    }

    static Figures<TestFigure> with(Figures<TestFigure> figures, TestFigure figure, String text) {
        return figures.with(figure, declared(text));
    }

    static Motor motor(MotorFigure figure, String text) {
        Figures<MotorFigure> figures = Figures.none();
        return new Motor("m", NOWHERE, figures.with(figure, declared(text)), Optional.empty());
    }

    static Motor motor(Motor motor, MotorFigure figure, String text) {
        return new Motor(
                motor.name(), motor.place(), motor.figures().with(figure, declared(text)), motor.magnetMaterial());
    }

    static Motor unknownMotor() {
        return new Motor("m", NOWHERE, Figures.none(), Optional.empty());
    }

    private static Declared declared(String text) {
        return Declared.of((Stated) QuantityText.parse(text), NOWHERE);
    }

    /** Several recordings as as many tests of one kind, in their order. */
    static List<TestResult> reduced(
            TestKind kind,
            Map<String, Recording> recordings,
            Map<String, String> channels,
            Map<String, Figures<TestFigure>> figures) {
        List<BenchTest> tests = recordings.keySet().stream()
                .map(name -> new BenchTest(
                        "field " + name,
                        NOWHERE,
                        kind,
                        "m",
                        Optional.of(name),
                        channels,
                        figures.getOrDefault(name, Figures.none()),
                        List.of(),
                        Map.of()))
                .toList();
        return Identification.identify(machine(unknownMotor()), tests, recordings)
                .tests();
    }

    private static Machine machine(Motor motor) {
        return new Machine(
                "Field",
                "",
                Figures.none(),
                Optional.empty(),
                Map.of("m", motor),
                Map.of(),
                Map.of(),
                Map.of(),
                Bus.none());
    }

    static IdentifiedMachine identified(
            TestKind kind,
            Motor motor,
            Recording recording,
            Map<String, String> channels,
            Figures<TestFigure> figures) {
        BenchTest test = new BenchTest(
                "field 1", NOWHERE, kind, "m", Optional.of(recording.name()), channels, figures, List.of(), Map.of());
        return Identification.identify(machine(motor), List.of(test), Map.of(recording.name(), recording));
    }

    static TestResult reduced(
            TestKind kind,
            Motor motor,
            Recording recording,
            Map<String, String> channels,
            Figures<TestFigure> figures) {
        return identified(kind, motor, recording, channels, figures).tests().get(0);
    }

    static Known value(TestResult result, MotorParameter what) {
        return result.outcome(what).found().orElseThrow().value();
    }

    static String need(TestResult result, MotorParameter what) {
        return result.outcome(what)
                .fold(
                        answer -> "nothing, there is " + answer.value().value(),
                        missing -> missing.needs().get(0).what());
    }

    /** A figure in the details, in SI. */
    static Known figure(TestResult result, String words, String name) {
        return result.details().stream()
                .filter(p -> p.template().contains(words))
                .flatMap(p -> Stream.ofNullable(p.figures().get(name)))
                .map(part -> ((Phrase.Figure) part).value())
                .findFirst()
                .orElseThrow();
    }

    static boolean says(TestResult result, String words) {
        return Stream.concat(result.details().stream(), result.remarks().stream())
                .anyMatch(p -> p.template().contains(words));
    }
}
