package servowright.benchmarks;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Arrays;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/**
 * What {@link EncoderBenchmark} measures by the clock, by the time that this thread spent computing: neighbours on a busy
 * machine count less. Median, least and most of the repetitions.
 */
public final class EncoderProcessorTime {
    private static final int WARM_UP = 5;
    private static final int REPETITIONS = 7;
    private static final double LEAST_SECOND = 0.5;
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    /** Keeps results from being thrown away. */
    private static double kept;

    private EncoderProcessorTime() {}

    /** Takes no arguments. */
    public static void main(String[] arguments) {
        int points = EncoderBenchmark.POINTS;
        show("field point near the axis", points, EncoderBenchmark::fieldNearAxis);
        show("field point anywhere", points, EncoderBenchmark::fieldAnywhere);
        show("one turn of an assembly", 1, b -> b.assemblyTurn().hashCode());
        show("100 000 drawn assemblies", 1, b -> b.spread().hashCode());
        System.out.println(kept == 0 ? "" : "processor time of one thread, microseconds each");
    }

    private static void show(String what, int each, ToDoubleFunction<EncoderBenchmark> work) {
        EncoderBenchmark benchmark = new EncoderBenchmark();
        double[] micro = new double[REPETITIONS];
        for (int i = -WARM_UP; i < REPETITIONS; i++) {
            double second = repetition(benchmark, work) / each;
            if (i >= 0) {
                micro[i] = 1e6 * second;
            }
        }
        Arrays.sort(micro);
        System.out.printf(
                Locale.ROOT,
                "%-26s %12.3f (%.3f to %.3f)%n",
                what,
                micro[REPETITIONS / 2],
                micro[0],
                micro[REPETITIONS - 1]);
    }

    /** Seconds of one call, from as many as fill half a second of the processor. */
    private static double repetition(EncoderBenchmark benchmark, ToDoubleFunction<EncoderBenchmark> work) {
        long start = THREADS.getCurrentThreadCpuTime();
        long calls = 0;
        double spent = 0;
        while (spent < LEAST_SECOND) {
            kept += work.applyAsDouble(benchmark);
            calls++;
            spent = 1e-9 * (THREADS.getCurrentThreadCpuTime() - start);
        }
        return spent / calls;
    }
}
