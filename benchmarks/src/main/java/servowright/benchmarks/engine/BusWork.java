package servowright.benchmarks.engine;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import servowright.engine.bus.FaultModel;
import servowright.engine.bus.Message;
import servowright.engine.bus.ResponseTime;
import servowright.engine.bus.traffic.Sender;
import servowright.engine.bus.traffic.Stream;
import servowright.engine.bus.traffic.Traffic;
import servowright.engine.bus.traffic.TrafficFigures;
import servowright.engine.bus.traffic.TrafficSimulation;
import servowright.engine.bus.traffic.Watcher;

/** Response times of a thousand messages, and simulated traffic. One thread. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class BusWork {
    private static final int MESSAGES = 1000;
    private static final int STREAMS = 20;
    private static final long BIT_NS = 1000;
    private static final long PERIOD_NS = 5_000_000;
    private static final long FRAMES = 200_000;

    private final List<Message> messages = messages();
    private final Traffic random = traffic(Stream.Fill.RANDOM);
    private final Traffic counting = traffic(Stream.Fill.COUNT);

    /** 62 % load, periods of 100 to 400 ms. */
    private static List<Message> messages() {
        SplittableRandom random = new SplittableRandom(3);
        List<Message> all = new ArrayList<>();
        for (int k = 0; k < MESSAGES; k++) {
            long period = 100_000_000L + random.nextLong(300_000_000L);
            all.add(new Message("m" + k, 135 * BIT_NS, period, 0, period));
        }
        return all;
    }

    private static Traffic traffic(Stream.Fill fill) {
        List<Sender> senders = new ArrayList<>();
        List<Stream> streams = new ArrayList<>();
        for (int k = 0; k < STREAMS; k++) {
            senders.add(Sender.good("node " + k));
            streams.add(Stream.of("message " + k, k, 0x181 + k, 8, PERIOD_NS, k * 200_000L)
                    .filled(fill));
        }
        return Traffic.classical(BIT_NS, senders, streams);
    }

    private static TrafficFigures run(Traffic traffic) {
        return TrafficSimulation.run(traffic, FRAMES / STREAMS * PERIOD_NS, new SplittableRandom(5), Watcher.NONE);
    }

    @Benchmark
    public List<ResponseTime> responseTimesOfAThousandMessages() {
        return ResponseTime.of(messages, BIT_NS, FaultModel.none());
    }

    @Benchmark
    public TrafficFigures twoHundredThousandFramesOfRandomBytes() {
        return run(random);
    }

    @Benchmark
    public TrafficFigures twoHundredThousandFramesThatCount() {
        return run(counting);
    }
}
