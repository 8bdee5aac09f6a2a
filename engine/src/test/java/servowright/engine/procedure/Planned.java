package servowright.engine.procedure;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.engine.bench.Candidate;
import servowright.engine.bench.Sought;
import servowright.engine.bench.TestResult;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Place;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Figures;
import servowright.engine.machine.Reading;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.prediction.Invented;
import servowright.engine.quantity.Accuracy;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** Plans of the invented machine, and tests made on it. */
final class Planned {
    private Planned() {}

    static BenchPlan plan(Invented machine, Stake... stakes) {
        return BenchPlan.of(machine.identified(), machine.predictions(), List.of(stakes));
    }

    static Step step(Invented machine, TestKind kind, Stake... stakes) {
        return plan(machine, stakes).steps().stream()
                .filter(s -> s.kind() == kind)
                .findFirst()
                .orElseThrow();
    }

    static Window window(Invented machine, TestKind kind, String what) {
        return step(machine, kind).expectations().stream()
                .filter(e -> e.what().startsWith(what))
                .findFirst()
                .orElseThrow()
                .window()
                .found()
                .orElseThrow();
    }

    static double expected(Invented machine, TestKind kind, String what) {
        return window(machine, kind, what).expected().si();
    }

    /** A test of the motor or of the arm while it is put together. */
    static final class Made {
        private final TestKind kind;
        private final Map<Sought, Outcome<Candidate>> values = new LinkedHashMap<>();
        private final Map<String, Accuracy> instrument = new LinkedHashMap<>();
        private final List<Reading> readings = new ArrayList<>();
        private final List<Phrase> details = new ArrayList<>();
        private final Map<String, String> channels = new LinkedHashMap<>();
        private Figures<TestFigure> figures = Figures.none();

        Made(TestKind kind) {
            this.kind = kind;
        }

        String id() {
            return kind.words() + " spinner 1";
        }

        Made gave(Sought what, Known value) {
            values.put(what, Outcome.answer(new Candidate(value, id(), Working.NONE), Working.NONE));
            return this;
        }

        /** A figure among the details. */
        Made said(String name, double si, Dimension dimension) {
            details.add(Phrase.of("it was {" + name + "}").with(name, new Quantity(si, dimension), ""));
            return this;
        }

        Made channel(String name, String shows) {
            channels.put(name, shows);
            return this;
        }

        Made with(TestFigure figure, String text) {
            figures = figures.with(figure, Invented.declared(text, "tests / 1"));
            return this;
        }

        Made limits(String what, String text) {
            instrument.put(what, Accuracy.parse(text).orElseThrow());
            return this;
        }

        Made reading(ReadingFigure figure, String text) {
            Figures<ReadingFigure> one =
                    Figures.<ReadingFigure>none().with(figure, Invented.declared(text, "tests / 1"));
            readings.add(new Reading(new Place("bench.yaml", 3, ""), "", one));
            return this;
        }

        TestResult done() {
            BenchTest test = new BenchTest(
                    id(),
                    new Place("bench.yaml", 2, "tests / 1"),
                    kind,
                    "spinner",
                    kind.ofAxis() ? Optional.of(Invented.ARM) : Optional.empty(),
                    Optional.empty(),
                    channels,
                    figures,
                    readings,
                    instrument);
            return new TestResult(test, values, details, List.of(), List.of());
        }
    }
}
