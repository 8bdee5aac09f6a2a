package servowright.benchmarks.engine;

import java.util.List;
import java.util.Map;
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
import servowright.engine.known.Outcome;
import servowright.engine.worksheet.Filled;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.Worksheet;
import servowright.engine.worksheet.Worksheets;

/** Worksheets from typed inputs to results with their working, as the command line and the page ask for them. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class WorksheetWork {
    private static final Map<String, List<String>> CONSTANTS = Map.of(
            "speed_constant", List.of("150 rpm/V ± 5 % [line peak]"),
            "torque_constant", List.of("0.055 N m/A ± 3 %"),
            "magnets", List.of("14"),
            "resistance", List.of("0.19 ohm [two terminals]"));
    private static final Map<String, List<String>> MESSAGES = Map.of(
            "message", List.of("a, 8, 2 ms", "b, 8, 2 ms", "c, 8, 5 ms", "d, 4, 10 ms", "e, 8, 20 ms"),
            "rate", List.of("500 kbit/s"));

    private final Worksheet constants = Worksheets.named("motor-constants").orElseThrow();
    private final Worksheet messages = Worksheets.named("response-times").orElseThrow();

    @Benchmark
    public Outcome<Results> motorConstants() {
        return work(constants, CONSTANTS);
    }

    @Benchmark
    public Outcome<Results> responseTimes() {
        return work(messages, MESSAGES);
    }

    private static Outcome<Results> work(Worksheet sheet, Map<String, List<String>> given) {
        return sheet.compute(((Filled.Ready) Filled.of(sheet, given)).inputs());
    }
}
