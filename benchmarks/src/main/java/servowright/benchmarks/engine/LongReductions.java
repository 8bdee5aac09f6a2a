package servowright.benchmarks.engine;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
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
import servowright.engine.motion.CoastDown;
import servowright.engine.quantity.QuantityText;
import servowright.engine.quantity.Stated;
import servowright.engine.quantity.Units;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Clock;
import servowright.engine.recording.Recording;
import servowright.engine.thermal.TwoNode;

/**
 * Recordings of a million samples, invented, from the numbers in memory to values with uncertainty: a coast-down, an axis log of three
 * channels, a hold map,
 * three phase currents, a winding heated from cold. The goal is below one second each.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class LongReductions {
    private static final int SAMPLES = 1_000_000;
    private static final double STEP = 12e-6;
    private static final double KT = 1.5 * 7 * 2.5e-3;

    private final Machine machine = machine();
    private final double[] speed = new double[SAMPLES];
    private final double[] amp = new double[SAMPLES];
    private final double[] volt = new double[SAMPLES];
    private final double[] fallen = new double[SAMPLES];
    private final double[] angle = new double[SAMPLES];
    private final double[] held = new double[SAMPLES];
    private final double[][] phases = new double[3][SAMPLES];
    private final double[][] heated = new double[2][SAMPLES];

    @Setup(Level.Trial)
    public void record() {
        Random random = new Random(5);
        CoastDown shaft = new CoastDown(4e-4, 0.01, 2e-5, 0);
        double w = 20;
        for (int i = 0; i < SAMPLES; i++) {
            double t = i * STEP;
            double current = 8 * Math.sin(2 * Math.PI * 0.45 * t) + 5 * Math.sin(2 * Math.PI * 1.3 * t + 1);
            speed[i] = w + 0.5 * random.nextGaussian();
            amp[i] = current + 0.03 * random.nextGaussian();
            volt[i] = 0.05 * current + 7 * 2.5e-3 * w + 0.05 * Math.signum(current) + 0.01 * random.nextGaussian();
            w += (KT * current - 2e-5 * w - 0.01 * Math.signum(w)) / 4e-4 * STEP;
            fallen[i] = shaft.radPerS(500, t) + 0.3 * random.nextGaussian();
            angle[i] = 4 * Math.PI * (i < SAMPLES / 2 ? i : SAMPLES - i) / SAMPLES;
            held[i] = 0.2 * Math.cos(84 * angle[i]) + (i < SAMPLES / 2 ? 0.05 : -0.05) + 0.02 * random.nextGaussian();
            for (int k = 0; k < 3; k++) {
                phases[k][i] = 5 * Math.cos(2 * Math.PI * (40 * t - k / 3.0)) + 0.02 * random.nextGaussian();
            }
        }
        heat(random);
    }

    /** 8 A for an hour, 3.6 ms from sample to sample. */
    private void heat(Random random) {
        TwoNode pair = new TwoNode(1.2, 40, 2.0, 400);
        TwoNode.Lapse step = pair.lapse(3.6e-3);
        TwoNode.Rise rise = TwoNode.Rise.COLD;
        for (int i = 0; i < SAMPLES; i++) {
            double ohm = 0.24 * (1 + rise.windingKelvin() / 256);
            heated[0][i] = 8 * ohm + 1e-3 * random.nextGaussian();
            heated[1][i] = 8 + 2e-3 * random.nextGaussian();
            rise = step.of(rise, 64 * ohm);
        }
    }

    @Benchmark
    public IdentifiedMachine heating() {
        return reduced(
                TestKind.HEATING,
                3.6e-3,
                Map.of("u", "voltage", "i", "current"),
                channel("u", "V", heated[0]),
                channel("i", "A", heated[1]));
    }

    @Benchmark
    public IdentifiedMachine coastDown() {
        return reduced(TestKind.COAST_DOWN, Map.of("n", "speed"), channel("n", "rad/s", fallen));
    }

    @Benchmark
    public IdentifiedMachine axisLog() {
        return reduced(
                TestKind.AXIS_LOG,
                Map.of("n", "speed", "i", "q axis current", "u", "q axis voltage"),
                channel("n", "rad/s", speed),
                channel("i", "A", amp),
                channel("u", "V", volt));
    }

    @Benchmark
    public IdentifiedMachine holdMap() {
        return reduced(
                TestKind.HOLD_MAP,
                Map.of("x", "angle", "i", "q axis current"),
                channel("x", "rad", angle),
                channel("i", "A", held));
    }

    @Benchmark
    public IdentifiedMachine currentSensing() {
        return reduced(
                TestKind.CURRENT_SENSING,
                Map.of("a", "current A", "b", "current B", "c", "current C"),
                channel("a", "A", phases[0]),
                channel("b", "A", phases[1]),
                channel("c", "A", phases[2]));
    }

    private IdentifiedMachine reduced(TestKind kind, Map<String, String> shown, Channel... channels) {
        return reduced(kind, STEP, shown, channels);
    }

    private IdentifiedMachine reduced(TestKind kind, double step, Map<String, String> shown, Channel... channels) {
        BenchTest test = new BenchTest(
                kind.words() + " hub 1",
                new Place("bench.yaml", 1, kind.words()),
                kind,
                "hub",
                Optional.of("a.csv"),
                shown,
                Figures.<TestFigure>none()
                        .with(TestFigure.INERTIA, declared("4 kg cm2"))
                        .with(TestFigure.WINDING_AT, declared("21 degC"))
                        .with(TestFigure.AIR_AT, declared("21 degC")),
                List.of(),
                Map.of());
        Recording recording =
                new Recording("a.csv", "0", Clock.uniform(0, step, SAMPLES), List.of(channels), List.of());
        return Identification.identify(machine, List.of(test), Map.of("a.csv", recording));
    }

    private static Channel channel(String name, String unit, double[] samples) {
        return new Channel(name, Units.find(unit), samples);
    }

    private static Declared declared(String text) {
        return Declared.of((Stated) QuantityText.parse(text), new Place("machine.yaml", 2, text));
    }

    private static Machine machine() {
        Figures<MotorFigure> figures = Figures.<MotorFigure>none()
                .with(MotorFigure.POLE_PAIRS, declared("7"))
                .with(MotorFigure.SLOTS, declared("12"))
                .with(MotorFigure.FLUX_LINKAGE, declared("2.5 mWb"));
        return Invented.machine(figures);
    }
}
