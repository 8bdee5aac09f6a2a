package servowright.benchmarks;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
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
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import servowright.app.input.capture.CaptureReader;
import servowright.engine.bus.traffic.LogText;
import servowright.engine.bus.traffic.Sender;
import servowright.engine.bus.traffic.Stream;
import servowright.engine.bus.traffic.TrafficSimulation;
import servowright.engine.capture.BitTimes;
import servowright.engine.capture.Traffic;

/**
 * Reads a log of four million frames that the simulation wrote, from the page cache, with and without the analysis: frame lengths with
 * real stuffing, load windows, periods, nodes, stamps. One thread.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4)
@Measurement(iterations = 7)
@Fork(
        value = 1,
        jvmArgs = {"-Xmx256m", "-XX:+UseSerialGC"})
public class CaptureReading {
    private static final long FRAMES = 4_000_000;
    private static final int STREAMS = 40;
    private static final long PERIOD_NS = 10_000_000;

    private Path file = Path.of("");

    @Setup(Level.Trial)
    public void write() throws IOException {
        file = Files.createTempFile("bus", ".log");
        List<Sender> senders = new ArrayList<>();
        List<Stream> streams = new ArrayList<>();
        for (int k = 0; k < STREAMS; k++) {
            senders.add(Sender.good("node " + k));
            streams.add(Stream.of("message " + k, k, 0x181 + 7 * k, 8, PERIOD_NS, k * 200_000L));
        }
        try (Writer out = Files.newBufferedWriter(file)) {
            TrafficSimulation.run(
                    servowright.engine.bus.traffic.Traffic.classical(1000, senders, streams),
                    FRAMES / STREAMS * PERIOD_NS,
                    new SplittableRandom(1),
                    new LogText(out, "can0", 1_770_000_000_000_000_000L));
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    @TearDown(Level.Trial)
    public void remove() throws IOException {
        Files.delete(file);
    }

    @Benchmark
    public Object readAndAnalyse() {
        Traffic traffic = Traffic.at(new BitTimes(1000, 1000));
        CaptureReader.read(file, "bus.log", traffic);
        return traffic.seen();
    }

    @Benchmark
    public Object readOnly() {
        return CaptureReader.read(file, "bus.log", frame -> {});
    }
}
