package servowright.engine.bench;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Predicate;
import java.util.stream.Stream;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Place;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Bus;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Figures;
import servowright.engine.machine.Machine;
import servowright.engine.machine.MagnetMaterial;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.Reading;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.numeric.Quantile;
import servowright.engine.quantity.Accuracy;
import servowright.engine.quantity.ParsedQuantity;
import servowright.engine.quantity.QuantityText;
import servowright.engine.quantity.Stated;
import servowright.engine.quantity.Units;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Clock;
import servowright.engine.recording.Recording;

/** Motors, tests and recordings as they would be read from files, for the tests of this package. All invented. */
final class Given {
    private static int line;

    private Given() {}

    static Declared declared(String text) {
        ParsedQuantity parsed = QuantityText.parse(text);
        if (!(parsed instanceof Stated stated)) {
            throw new IllegalArgumentException("not a quantity: " + text);
        }
        line++;
        return Declared.of(stated, new Place("machine.yaml", line, "line " + line));
    }

    /** A motor from pairs of figure and text. */
    static Motor motor(Object... figures) {
        Figures<MotorFigure> all = Figures.none();
        for (int i = 0; i < figures.length; i += 2) {
            all = all.with((MotorFigure) figures[i], declared((String) figures[i + 1]));
        }
        return new Motor(
                "hub", new Place("machine.yaml", 1, "motors / hub"), all, Optional.of(MagnetMaterial.NEODYMIUM));
    }

    static Machine machine(Motor motor) {
        return new Machine(
                "Frost cart",
                "",
                Figures.none(),
                Optional.empty(),
                Map.of(motor.name(), motor),
                Map.of(),
                Map.of(),
                Map.of(),
                Bus.none());
    }

    /** A test while it is put together. */
    static final class Test {
        private final TestKind kind;
        private final String id;
        private Optional<String> recording = Optional.empty();
        private final Map<String, String> channels = new LinkedHashMap<>();
        private Figures<TestFigure> figures = Figures.none();
        private final List<Reading> readings = new java.util.ArrayList<>();
        private final Map<String, Accuracy> instrument = new LinkedHashMap<>();

        Test(TestKind kind, String id) {
            this.kind = kind;
            this.id = id;
        }

        Test recorded(String name) {
            recording = Optional.of(name);
            return this;
        }

        Test channel(String name, String shows) {
            channels.put(name, shows);
            return this;
        }

        Test with(TestFigure figure, String text) {
            figures = figures.with(figure, declared(text));
            return this;
        }

        Test limits(String what, String text) {
            instrument.put(what, Accuracy.parse(text).orElseThrow());
            return this;
        }

        /** A reading from pairs of figure and text. */
        Test reading(String contacts, Object... values) {
            Figures<ReadingFigure> all = Figures.none();
            for (int i = 0; i < values.length; i += 2) {
                all = all.with((ReadingFigure) values[i], declared((String) values[i + 1]));
            }
            readings.add(new Reading(new Place("bench.yaml", readings.size() + 10, id), contacts, all));
            return this;
        }

        BenchTest done() {
            return new BenchTest(
                    id,
                    new Place("bench.yaml", 3, id),
                    kind,
                    "hub",
                    recording,
                    channels,
                    figures,
                    readings,
                    instrument);
        }
    }

    static Test spin(String id) {
        return new Test(TestKind.SPIN, id);
    }

    static Test resistance(String id) {
        return new Test(TestKind.RESISTANCE, id);
    }

    static Test step(String id) {
        return new Test(TestKind.INDUCTANCE_STEP, id);
    }

    static Test coastDown(String id) {
        return new Test(TestKind.COAST_DOWN, id);
    }

    static Test test(TestKind kind) {
        return new Test(kind, kind.words() + " hub 1");
    }

    /** The result of one test of one motor. */
    static TestResult reduced(Motor motor, BenchTest test, Recording... recordings) {
        Map<String, Recording> named = new LinkedHashMap<>();
        for (Recording recording : recordings) {
            named.put(recording.name(), recording);
        }
        return Identification.identify(machine(motor), List.of(test), named)
                .tests()
                .get(0);
    }

    static Known value(TestResult result, MotorParameter what) {
        return result.outcome(what).found().orElseThrow().value();
    }

    /** Whether the 95 % interval holds the truth. */
    static boolean holds(Known found, double truth) {
        double k = Quantile.coverageFactor(0.95, found.degreesOfFreedom());
        return Math.abs(found.si() - truth) <= k * found.standardUncertainty();
    }

    /** Share of 300 seeded draws that hold. */
    static double share(String what, long seed, Predicate<Random> draw) {
        int held = 0;
        for (int k = 0; k < 300; k++) {
            held += draw.test(new Random(seed + k)) ? 1 : 0;
        }
        System.out.printf(Locale.ROOT, "%s, seed %d: %d of 300 intervals hold the truth%n", what, seed, held);
        return held / 300.0;
    }

    static double within(Random random, double halfWidth) {
        return halfWidth * (2 * random.nextDouble() - 1);
    }

    /** A number written with some digits. */
    static String text(double value, int decimals, String unit) {
        return String.format(Locale.ROOT, "%." + decimals + "f %s", value, unit);
    }

    static boolean says(TestResult result, String words) {
        return Stream.concat(result.details().stream(), result.remarks().stream())
                .anyMatch(p -> p.template().contains(words));
    }

    static Channel channel(String name, String unit, double[] samples) {
        return new Channel(name, unit.isEmpty() ? Optional.empty() : Units.find(unit), samples);
    }

    static Recording recording(String name, double intervalS, Channel... channels) {
        return new Recording(
                name, "0", Clock.uniform(0, intervalS, channels[0].samples().length), List.of(channels), List.of());
    }

    /** Samples of a function of time. */
    static double[] sampled(int count, double intervalS, DoubleUnaryOperator f) {
        double[] samples = new double[count];
        for (int i = 0; i < count; i++) {
            samples[i] = f.applyAsDouble(i * intervalS);
        }
        return samples;
    }

    static double[] noisy(double[] samples, double sigma, Random random) {
        double[] noisy = samples.clone();
        for (int i = 0; i < noisy.length; i++) {
            noisy[i] += sigma * random.nextGaussian();
        }
        return noisy;
    }

    /** What a converter of 8 bits makes of samples within plus and minus the full scale. */
    static double[] eightBit(double[] samples, double fullScale) {
        double step = 2 * fullScale / 256;
        double[] coarse = samples.clone();
        for (int i = 0; i < coarse.length; i++) {
            double count = Math.max(-128, Math.min(127, Math.rint(coarse[i] / step)));
            coarse[i] = count * step;
        }
        return coarse;
    }

    /** A figure in the detail whose words are given. */
    static Known figure(TestResult result, String words, String name) {
        return result.details().stream()
                .filter(p -> p.template().contains(words))
                .flatMap(p -> Stream.ofNullable(p.figures().get(name)))
                .map(part -> ((Phrase.Figure) part).value())
                .findFirst()
                .orElseThrow();
    }

    /** What an outcome without an answer asks for first. */
    static String need(Outcome<Candidate> outcome) {
        return outcome.fold(
                answer -> "nothing, there is " + answer.value().value(),
                missing -> missing.needs().get(0).what());
    }
}
