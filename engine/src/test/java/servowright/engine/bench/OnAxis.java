package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import servowright.engine.encoder.HarmonicError;
import servowright.engine.encoder.Ripple;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Place;
import servowright.engine.machine.Axis;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Bus;
import servowright.engine.machine.Figures;
import servowright.engine.machine.Machine;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.Reading;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.machine.Sensor;
import servowright.engine.machine.SensorFigure;
import servowright.engine.machine.SensorKind;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Recording;

/** An invented axis with a sensor of 14 bits before a motor of seven pole pairs, and tests and recordings of it. */
final class OnAxis {
    static final int COUNTS = 1 << 14;
    static final int POLE_PAIRS = 7;
    static final double NOISE = Math.toRadians(0.02);

    /** What the sensor has wrong: 0.5, 0.25, 0.02 and 0.05 degrees at orders 1 to 4. */
    static final HarmonicError TRUTH = new HarmonicError(
            0, List.of(ripple(1, 0.5, 0.30), ripple(2, 0.25, 1.10), ripple(3, 0.02, 2.00), ripple(4, 0.05, -0.70)));

    private final List<BenchTest> tests = new ArrayList<>();
    private final Map<String, Recording> recordings = new LinkedHashMap<>();
    private String magnets = "14";

    static Ripple ripple(int order, double degree, double phase) {
        double amplitude = Math.toRadians(degree);
        return new Ripple(order, amplitude * Math.sin(phase), amplitude * Math.cos(phase));
    }

    /** Counts that a sensor gives at the angles, its error and noise included. */
    static double[] counted(double[] shaft, double offset, Random random) {
        return Arrays.stream(shaft)
                .map(a -> a + offset + TRUTH.atRad(a) + NOISE * random.nextGaussian())
                .map(a -> Math.floorMod(Math.round(a / (2 * Math.PI) * COUNTS), COUNTS))
                .toArray();
    }

    static double[] rows(int count, java.util.function.IntToDoubleFunction f) {
        return IntStream.range(0, count).mapToDouble(f).toArray();
    }

    static Known found(Outcome<Known> outcome) {
        return outcome.found().orElseThrow();
    }

    static double degrees(Known known) {
        return Math.toDegrees(known.si());
    }

    /** What an outcome without an answer asks for first. */
    static String need(Outcome<?> outcome) {
        return outcome.fold(a -> "nothing", m -> m.needs().get(0).what());
    }

    OnAxis magnets(String text) {
        magnets = text;
        return this;
    }

    /** A test with a recording. */
    OnAxis recorded(TestKind kind, Recording recording, Map<String, String> channels) {
        recordings.put(recording.name(), recording);
        return add(kind, Optional.of(recording.name()), channels, Figures.none(), List.of());
    }

    /** The same with one figure more. */
    OnAxis recorded(TestKind kind, Recording recording, Map<String, String> channels, TestFigure figure, String text) {
        recordings.put(recording.name(), recording);
        Figures<TestFigure> figures = Figures.<TestFigure>none().with(figure, Given.declared(text));
        return add(kind, Optional.of(recording.name()), channels, figures, List.of());
    }

    /** A test of readings, each of pairs of figure and text. */
    OnAxis read(TestKind kind, Object[]... readings) {
        List<Reading> all = new ArrayList<>();
        for (Object[] pairs : readings) {
            Figures<ReadingFigure> figures = Figures.none();
            for (int i = 0; i < pairs.length; i += 2) {
                figures = figures.with((ReadingFigure) pairs[i], Given.declared((String) pairs[i + 1]));
            }
            all.add(new Reading(new Place("bench.yaml", 1, "reading"), "", figures));
        }
        return add(kind, Optional.empty(), Map.of(), Figures.none(), all);
    }

    private OnAxis add(
            TestKind kind,
            Optional<String> recording,
            Map<String, String> channels,
            Figures<TestFigure> figures,
            List<Reading> readings) {
        tests.add(new BenchTest(
                kind.words() + " wheel " + (tests.size() + 1),
                new Place("bench.yaml", 3, "tests"),
                kind,
                "hub",
                Optional.of("wheel"),
                recording,
                channels,
                figures,
                readings,
                Map.of()));
        return this;
    }

    IdentifiedMachine identified() {
        Figures<SensorFigure> figures =
                Figures.<SensorFigure>none().with(SensorFigure.RESOLUTION, Given.declared("14 bit"));
        Place place = new Place("machine.yaml", 1, "");
        Axis wheel = new Axis(
                "wheel", place, Optional.of("hub"), Optional.empty(), Optional.of("ring"), Figures.none(), Map.of());
        Machine machine = new Machine(
                "Frost cart",
                "",
                Figures.none(),
                Optional.empty(),
                Map.of("hub", magnets.isEmpty() ? Given.motor() : Given.motor(MotorFigure.MAGNETS, magnets)),
                Map.of(),
                Map.of("ring", new Sensor("ring", place, figures, Optional.of(SensorKind.ON_AXIS_MAGNETIC))),
                Map.of("wheel", wheel),
                Bus.none());
        return Identification.identify(machine, tests, recordings);
    }

    IdentifiedAxis axis() {
        return identified().axis("wheel");
    }
}
