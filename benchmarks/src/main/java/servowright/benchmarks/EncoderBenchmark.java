package servowright.benchmarks;

import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import servowright.engine.encoder.Assembly;
import servowright.engine.encoder.FullTurn;
import servowright.engine.encoder.MountSpread;
import servowright.engine.encoder.Planar;
import servowright.engine.encoder.RoundMagnet;
import servowright.engine.encoder.Sensing;
import servowright.engine.encoder.Vector;

/** Field points, one turn of a misplaced assembly, and the spread of many assemblies, on one core. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class EncoderBenchmark {
    static final int POINTS = 1000;
    private static final int ANGLES = 360;
    private static final int ASSEMBLIES = 100_000;

    private final RoundMagnet disc = RoundMagnet.disc(6e-3, 2.5e-3);
    private final Vector polarisation = new Vector(1.2, 0, 0);
    private final Vector[] near = points(0.5e-3);
    private final Vector[] anywhere = points(6e-3);
    private final Assembly askew = Assembly.centred(disc, 1.2, 1e-3)
            .withOffsets(new Planar(0.2e-3, 0.1e-3), new Planar(0.1e-3, 0))
            .withTilts(new Planar(0.02, 0.01), new Planar(0.01, 0.02));
    private final MountSpread.Misplacement misplacement =
            new MountSpread.Misplacement(0.2e-3, 0.08e-3, 0.017, 0.017, 0.035);

    private static Vector[] points(double reach) {
        Random random = new Random(1);
        Vector[] points = new Vector[POINTS];
        for (int i = 0; i < POINTS; i++) {
            points[i] =
                    new Vector(reach * (2 * random.nextDouble() - 1), reach * (2 * random.nextDouble() - 1), 2.25e-3);
        }
        return points;
    }

    private double sum(Vector[] points) {
        double sum = 0;
        for (Vector point : points) {
            sum += disc.fieldTesla(polarisation, point).x();
        }
        return sum;
    }

    /** Points within half a millimetre of the axis, where a sensor is. */
    @Benchmark
    @OperationsPerInvocation(POINTS)
    public double fieldNearAxis() {
        return sum(near);
    }

    /** Points all over and beyond the face, the band around the mantle included. */
    @Benchmark
    @OperationsPerInvocation(POINTS)
    public double fieldAnywhere() {
        return sum(anywhere);
    }

    @Benchmark
    public FullTurn assemblyTurn() {
        return askew.turn(new Sensing.Point(), ANGLES);
    }

    @Benchmark
    public MountSpread spread() {
        return MountSpread.draw(disc.onAxis(1.2, 1e-3), misplacement, ASSEMBLIES, new Random(1));
    }
}
