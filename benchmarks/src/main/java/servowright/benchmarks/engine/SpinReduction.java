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
import servowright.engine.machine.TestKind;
import servowright.engine.numeric.HarmonicFit;
import servowright.engine.numeric.HarmonicTerms;
import servowright.engine.quantity.QuantityText;
import servowright.engine.quantity.Stated;
import servowright.engine.quantity.Units;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Clock;
import servowright.engine.recording.Recording;

/**
 * An open-circuit voltage of a million samples, invented: fundamental with fifth and seventh harmonic, noise of 1 % and a
 * quantisation of 8 bits. The bare fit of seven orders, and the whole bench test with its checks for drift, hum and spread.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class SpinReduction {
    private static final int SAMPLES = 1_000_000;
    private static final double INTERVAL_SECOND = 2e-6;
    private static final double HERTZ = 68.3;

    private double[] samples = {};
    private Machine machine = Invented.machine(Figures.none());
    private BenchTest test = spin();
    private Recording recording = recording(new double[] {0, 0});

    @Setup(Level.Trial)
    public void turn() {
        Random random = new Random(5);
        samples = new double[SAMPLES];
        for (int i = 0; i < SAMPLES; i++) {
            double angle = 2 * Math.PI * HERTZ * i * INTERVAL_SECOND + 0.4;
            double volt = Math.sin(angle) + 0.03 * Math.sin(5 * angle + 1) - 0.02 * Math.sin(7 * angle);
            samples[i] = Math.rint((volt + 0.01 * random.nextGaussian()) * 100) / 100;
        }
        Stated pairs = (Stated) QuantityText.parse("7");
        machine = Invented.machine(Figures.<MotorFigure>none()
                .with(MotorFigure.POLE_PAIRS, Declared.of(pairs, new Place("machine.yaml", 2, "pole_pairs"))));
        test = spin();
        recording = recording(samples);
    }

    @Benchmark
    public double fit() {
        return HarmonicFit.ofSamples(HarmonicTerms.ofOrders(1, 3, 5, 7, 9, 11, 13), samples, INTERVAL_SECOND)
                .frequency();
    }

    @Benchmark
    public IdentifiedMachine benchTest() {
        return Identification.identify(machine, List.of(test), Map.of("spin.csv", recording));
    }

    private static BenchTest spin() {
        return new BenchTest(
                "spin hub 1",
                new Place("bench.yaml", 1, "spin hub 1"),
                TestKind.SPIN,
                "hub",
                Optional.of("spin.csv"),
                Map.of("CH1", "A to B"),
                Figures.none(),
                List.of(),
                Map.of());
    }

    private static Recording recording(double[] volts) {
        Channel channel = new Channel("CH1", Units.find("V"), volts);
        return new Recording(
                "spin.csv", "0", Clock.uniform(0, INTERVAL_SECOND, volts.length), List.of(channel), List.of());
    }
}
