package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import servowright.engine.known.Known;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Recording;

/** One bump of known shape, sampled by two recorders of different pace whose clocks start apart. */
class SharedEventTestTest {
    static final double PACE = 0.667e-3;
    static final double OTHER_PACE = 0.5e-3;

    static double bump(double t) {
        return 5 * Math.exp(-Math.pow((t - 0.25) / 0.03, 2)) - 3 * Math.exp(-Math.pow((t - 0.4) / 0.05, 2));
    }

    static BenchTest test(int number) {
        return new Given.Test(TestKind.SHARED_EVENT, "shared event hub " + number)
                .recorded(number + ".csv")
                .channel("x", "event")
                .done();
    }

    private static List<TestResult> reduced(double[] first, double[] second) {
        Map<String, Recording> recordings = Map.of(
                "1.csv", Given.recording("1.csv", PACE, Given.channel("x", "N m", first)),
                "2.csv", Given.recording("2.csv", OTHER_PACE, Given.channel("x", "V", second)));
        return Identification.identify(Given.machine(Given.motor()), List.of(test(1), test(2)), recordings)
                .tests();
    }

    static double[] seen(int count, double pace, double later, DoubleUnaryOperator shape) {
        return Given.sampled(count, pace, t -> shape.applyAsDouble(t + later));
    }

    private static Known offset(List<TestResult> results) {
        return results.get(1)
                .outcome(RecorderParameter.CLOCK_OFFSET)
                .found()
                .orElseThrow()
                .value();
    }

    @Test
    void finds_by_how_much_clocks_are_apart_whichever_sign_and_scale() {
        for (double scale : new double[] {0.4, -0.4}) {
            Random random = new Random(1);
            double[] first = Given.noisy(seen(1000, PACE, 0, SharedEventTestTest::bump), 0.05, random);
            double[] second = Given.noisy(seen(1000, OTHER_PACE, 0.0235, t -> 0.7 + scale * bump(t)), 0.02, random);
            List<TestResult> results = reduced(first, second);
            assertThat(offset(results).si()).isCloseTo(0.0235, within(3e-4));
            assertThat(offset(results).standardUncertainty()).isBetween(1e-5, 3e-4);
            assertThat(Given.says(results.get(1), "opposite senses")).isEqualTo(scale < 0);
            assertThat(results.get(1).curves()).hasSize(3);
        }
    }

    @Test
    void refuses_pairs_that_carry_no_answer_and_says_why() {
        Random random = new Random(2);
        double[] first = Given.noisy(seen(1000, PACE, 0, SharedEventTestTest::bump), 0.05, random);
        double[] second = Given.noisy(seen(1000, OTHER_PACE, 0.02, SharedEventTestTest::bump), 0.05, random);
        assertThat(need(first, Given.noisy(new double[1000], 1, random))).contains("both show");
        assertThat(need(first, new double[1000])).contains("all samples are equal");
        assertThat(need(new double[1000], second)).contains("the event of");
        assertThat(need(first, new double[] {1})).contains("enough samples");
        double[] holes = second.clone();
        Arrays.fill(holes, 0, 700, Double.NaN);
        assertThat(need(first, holes)).contains("that are not");
        DoubleUnaryOperator hum = t -> Math.sin(2 * Math.PI * 20 * t);
        assertThat(need(
                        Given.noisy(seen(1000, PACE, 0, hum), 0.05, random),
                        Given.noisy(seen(1000, OTHER_PACE, 0.02, hum), 0.05, random)))
                .contains("repeat itself");
        TestResult alone =
                Given.reduced(Given.motor(), test(1), Given.recording("1.csv", PACE, Given.channel("x", "V", first)));
        assertThat(Given.need(alone.outcome(RecorderParameter.CLOCK_OFFSET))).contains("a second recording");
        TestResult wrong =
                Given.reduced(Given.motor(), test(1), Given.recording("1.csv", PACE, Given.channel("y", "V", first)));
        assertThat(Given.need(wrong.outcome(RecorderParameter.CLOCK_OFFSET))).contains("the event in");
        double[] cut = Arrays.stream(second).map(v -> Math.min(v, 1.5)).toArray();
        assertThat(Given.says(reduced(first, cut).get(1), "is cut off")).isTrue();
    }

    private static String need(double[] first, double[] second) {
        return Given.need(reduced(first, second).get(1).outcome(RecorderParameter.CLOCK_OFFSET));
    }

    /** Noise, a converter of 8 bits, hum and a drift of the offset in the second recorder. */
    @Test
    void intervals_hold_the_truth_as_often_as_they_say() {
        assertThat(Given.share("shared event", 6500, random -> {
                    double later = Given.within(random, 0.05);
                    double hum = 6.28 * random.nextDouble();
                    double drift = Given.within(random, 0.1);
                    double[] first = Given.noisy(seen(1000, PACE, 0, SharedEventTestTest::bump), 0.05, random);
                    double[] second = Given.noisy(
                            Given.sampled(
                                    1100,
                                    OTHER_PACE,
                                    t -> 0.4 * bump(t + later)
                                            + drift * t
                                            + 0.01 * Math.sin(2 * Math.PI * 50.02 * t + hum)),
                            0.03,
                            random);
                    return Given.holds(offset(reduced(first, Given.eightBit(second, 3))), later);
                }))
                .isBetween(0.92, 0.98);
    }
}
