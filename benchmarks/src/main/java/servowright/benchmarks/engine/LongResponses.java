package servowright.benchmarks.engine;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import servowright.engine.bench.Identification;
import servowright.engine.bench.IdentifiedMachine;
import servowright.engine.known.Place;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Figures;
import servowright.engine.machine.Machine;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.quantity.QuantityText;
import servowright.engine.quantity.Stated;
import servowright.engine.quantity.Units;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Clock;
import servowright.engine.recording.Recording;

/**
 * Recordings of a million samples, invented, from the numbers in memory to values with uncertainty: steps through a lag, one sine
 * through it, a load curve, one event on two recorders, a thermistor warmed in steps. The goal is below one second each. A reduction
 * that gives no value is a fault here, for a refusal is quick.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class LongResponses {
    private static final int SAMPLES = 1_000_000;
    private static final double STEP = 20e-6;
    private static final double TAU = 0.1;
    private static final int DELAY = 470;

    private final Random random = new Random(5);
    private final Machine machine = machine();
    private final Map<TestKind, List<Recording>> recorded = new LinkedHashMap<>();

    @Setup(Level.Trial)
    public void record() {
        double[] steps = steps();
        recorded.put(
                TestKind.RESPONSE_RUN,
                List.of(recording(
                        "a.csv", channel("u", "V", i -> steps[i]), channel("y", "rad/s", noisy(lag(steps))))));
        double[] sine = rows(i -> 2 + Math.sin(2 * Math.PI * 1.7 * i * STEP));
        recorded.put(
                TestKind.SINE_RESPONSE,
                List.of(recording("a.csv", channel("u", "V", i -> sine[i]), channel("y", "rad/s", noisy(lag(sine))))));
        recorded.put(TestKind.LOAD_CURVE, List.of(loaded()));
        recorded.put(TestKind.SHARED_EVENT, List.of(knock("a.csv", 0), knock("b.csv", 3.1)));
        recorded.put(TestKind.THERMISTOR_CHECK, List.of(warmed()));
    }

    @Benchmark
    public IdentifiedMachine responseRun() {
        return reduced(TestKind.RESPONSE_RUN, Map.of("u", "input", "y", "output"), Figures.none());
    }

    @Benchmark
    public IdentifiedMachine sineResponse() {
        return reduced(TestKind.SINE_RESPONSE, Map.of("u", "input", "y", "output"), Figures.none());
    }

    @Benchmark
    public IdentifiedMachine loadCurve() {
        Figures<TestFigure> stated = Figures.<TestFigure>none().with(TestFigure.APPLIED_VOLTAGE, declared("12 V"));
        return reduced(TestKind.LOAD_CURVE, Map.of("n", "speed", "i", "current", "t", "torque"), stated);
    }

    @Benchmark
    public IdentifiedMachine sharedEvent() {
        return reduced(TestKind.SHARED_EVENT, Map.of("x", "event"), Figures.none());
    }

    @Benchmark
    public IdentifiedMachine thermistorCheck() {
        Figures<TestFigure> stated = Figures.<TestFigure>none().with(TestFigure.DIVIDER, declared("10 kohm"));
        return reduced(TestKind.THERMISTOR_CHECK, Map.of("T", "temperature", "q", "divider"), stated);
    }

    private IdentifiedMachine reduced(TestKind kind, Map<String, String> shown, Figures<TestFigure> stated) {
        List<Recording> all = recorded.getOrDefault(kind, List.of());
        List<BenchTest> tests = all.stream()
                .map(r -> new BenchTest(
                        kind.words() + " hub " + r.name(),
                        new Place("bench.yaml", 1, kind.words()),
                        kind,
                        "hub",
                        Optional.of(r.name()),
                        shown,
                        stated,
                        List.of(),
                        Map.of()))
                .toList();
        Map<String, Recording> byName = new LinkedHashMap<>();
        all.forEach(r -> byName.put(r.name(), r));
        IdentifiedMachine found = Identification.identify(machine, tests, byName);
        found.tests().stream()
                .filter(t ->
                        t.values().values().stream().noneMatch(v -> v.found().isPresent()))
                .forEach(t -> {
                    throw new IllegalStateException(t.test().id() + " gave nothing: " + t.values());
                });
        return found;
    }

    /** Another level every 80 to 600 ms. */
    private double[] steps() {
        double[] u = new double[SAMPLES];
        double level = 1;
        int until = 0;
        for (int i = 0; i < SAMPLES; i++) {
            if (i >= until) {
                level = 2 * random.nextDouble() - 1;
                until = i + 4000 + random.nextInt(26_000);
            }
            u[i] = level;
        }
        return u;
    }

    /** Gain 25, time constant TAU, late by DELAY samples. */
    private static double[] lag(double... u) {
        double[] y = new double[u.length];
        double keep = Math.exp(-STEP / TAU);
        double now = 25 * u[0];
        for (int i = 0; i < u.length; i++) {
            y[i] = now;
            now = keep * now + (1 - keep) * 25 * u[Math.max(0, i - DELAY)];
        }
        return y;
    }

    private IntToDoubleFunction noisy(double... y) {
        return i -> y[i] + 0.2 * random.nextGaussian();
    }

    /** 0.5 ohm and 40 mV s/rad between the terminals, braked from free to standing still. */
    private Recording loaded() {
        double[] speed = rows(i -> 300 * (1 - (double) i / SAMPLES));
        double[] amp = rows(i -> (12 - 0.04 * speed[i]) / 0.5 + 0.05 * random.nextGaussian());
        return recording(
                "a.csv",
                channel("n", "rad/s", i -> speed[i] + 0.3 * random.nextGaussian()),
                channel("i", "A", i -> amp[i]),
                channel("t", "N m", i -> 0.04 * amp[i] - 0.01 + 0.002 * random.nextGaussian()));
    }

    private Recording knock(String name, double later) {
        return recording(name, channel("x", "A", i -> {
            double t = i * STEP + later - 9;
            return (t < 0 ? 0 : 5 * Math.exp(-t / 0.4) * Math.sin(9 * t)) + 0.02 * random.nextGaussian();
        }));
    }

    /** Steps of 8 K, read by a divider. */
    private Recording warmed() {
        double[] kelvin = new double[SAMPLES];
        double now = 293;
        for (int i = 0; i < SAMPLES; i++) {
            now += (293 + 8 * Math.floor(8.0 * i / SAMPLES) - now) / 5000;
            kelvin[i] = now;
        }
        return recording(
                "a.csv", channel("T", "degC", i -> kelvin[i] + 0.02 * random.nextGaussian()), channel("q", "", i -> {
                    double ohm = 10_000 * Math.exp(3600 * (1 / kelvin[i] - 1 / 298.15));
                    return ohm / (ohm + 10_000) + 0.0005 * random.nextGaussian();
                }));
    }

    private static double[] rows(IntToDoubleFunction value) {
        return IntStream.range(0, SAMPLES).mapToDouble(value).toArray();
    }

    private static Channel channel(String name, String unit, IntToDoubleFunction value) {
        return new Channel(name, unit.isEmpty() ? Optional.empty() : Units.find(unit), rows(value));
    }

    private static Recording recording(String name, Channel... channels) {
        return new Recording(name, "0", Clock.uniform(0, STEP, SAMPLES), List.of(channels), List.of());
    }

    private static Declared declared(String text) {
        return Declared.of((Stated) QuantityText.parse(text), new Place("machine.yaml", 2, text));
    }

    private static Machine machine() {
        return Invented.machine(Figures.<MotorFigure>none().with(MotorFigure.POLE_PAIRS, declared("7")));
    }
}
