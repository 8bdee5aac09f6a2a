package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import servowright.engine.known.Known;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.motion.CoastDown;
import servowright.engine.numeric.Quantile;
import servowright.engine.recording.Recording;

/** Shaft with J = 4e-4 kg m², T_c = 0.01 N m, b = 2e-5 N m s from 500 rad/s: stops after 13.862944 s (recomputed). */
class CoastDownTestTest {
    private static final int DRAWS = 300;

    /** A run of 300 tells a share of 97 % to 1 % only. */
    private static final int MORE_DRAWS = 600;

    private static double[] speeds(CoastDown shaft, int count, double intervalS) {
        return Given.sampled(count, intervalS, t -> t < 0.5 ? 500 : shaft.radPerS(500, t - 0.5));
    }

    private static Recording recording(String name, double[] radPerS) {
        return Given.recording(name, 5e-3, Given.channel("n", "rad/s", radPerS));
    }

    private static Recording plain(Random random) {
        return recording("a.csv", Given.noisy(speeds(new CoastDown(4e-4, 0.01, 2e-5, 0), 3000, 5e-3), 0.3, random));
    }

    private static Given.Test test(String id) {
        return Given.coastDown(id).recorded("a.csv").channel("n", "speed").limits("speed", "± 0.1 %");
    }

    private static IdentifiedMachine identified(Motor motor, Map<String, Recording> recordings, BenchTest... tests) {
        return Identification.identify(Given.machine(motor), List.of(tests), recordings);
    }

    private static TestResult reduced(BenchTest test, Recording recording) {
        return identified(Given.motor(), Map.of("a.csv", recording), test)
                .tests()
                .get(0);
    }

    private static Known value(TestResult result, MotorParameter what) {
        return result.outcome(what).found().orElseThrow().value();
    }

    @Test
    void finds_both_terms_of_the_drag() {
        TestResult result = reduced(
                test("coast-down hub 1").with(TestFigure.INERTIA, "4 kg cm2").done(), plain(new Random(1)));
        assertThat(value(result, MotorParameter.DRY_DRAG).si()).isCloseTo(0.01, within(1e-4));
        assertThat(value(result, MotorParameter.VISCOUS_DRAG).si()).isCloseTo(2e-5, within(5e-7));
        assertThat(result.remarks()).anyMatch(p -> p.template().contains("both are drag"));
        assertThat(result.details()).anyMatch(p -> p.template().startsWith("three terms: "));
    }

    @Test
    void takes_the_inertia_of_the_data_sheet_and_asks_when_there_is_none() {
        Motor motor = Given.motor(MotorFigure.ROTOR_INERTIA, "4 kg cm2 [data sheet]");
        IdentifiedMachine machine = identified(
                motor,
                Map.of("a.csv", plain(new Random(2))),
                test("coast-down hub 1").done());
        IdentifiedMotor hub = machine.motor("hub").orElseThrow();
        assertThat(hub.best(MotorParameter.DRY_DRAG).found().orElseThrow().si()).isCloseTo(0.01, within(1e-4));
        TestResult bare = reduced(test("coast-down hub 1").done(), plain(new Random(2)));
        assertThat(Given.need(bare.outcome(MotorParameter.DRY_DRAG))).contains("inertia of all that turned");
    }

    @Test
    void finds_the_inertia_when_a_known_one_is_added() {
        double[] heavier = speeds(new CoastDown(6e-4, 0.01, 2e-5, 0), 4000, 5e-3);
        BenchTest second = Given.coastDown("coast-down hub 2")
                .recorded("b.csv")
                .channel("n", "speed")
                .with(TestFigure.ADDED_INERTIA, "2 kg cm2 ± 0.5 %")
                .done();
        Map<String, Recording> recordings = Map.of(
                "a.csv", plain(new Random(3)), "b.csv", recording("b.csv", Given.noisy(heavier, 0.3, new Random(4))));
        IdentifiedMotor hub = identified(
                        Given.motor(), recordings, test("coast-down hub 1").done(), second)
                .motor("hub")
                .orElseThrow();
        Known inertia = hub.best(MotorParameter.ROTOR_INERTIA).found().orElseThrow();
        assertThat(inertia.si()).isCloseTo(4e-4, within(inertia.expandedUncertainty()));
        assertThat(inertia.relativeUncertainty()).isBetween(0.0028, 0.02);
        assertThat(hub.best(MotorParameter.DRY_DRAG).found().orElseThrow().si()).isCloseTo(0.01, within(2e-4));
    }

    @Test
    void replaces_single_samples_that_fell_out_and_lists_them() {
        double[] speeds = plain(new Random(5)).channels().get(0).samples().clone();
        speeds[700] = 0;
        speeds[1400] = 0;
        TestResult result = reduced(
                test("coast-down hub 1").with(TestFigure.INERTIA, "4 kg cm2").done(), recording("a.csv", speeds));
        assertThat(value(result, MotorParameter.DRY_DRAG).si()).isCloseTo(0.01, within(1e-4));
        assertThat(result.remarks()).anyMatch(p -> p.template().contains("single samples of 0"));
    }

    @Test
    void counts_a_negative_speed_the_other_way_round() {
        double[] backward = Arrays.stream(plain(new Random(6)).channels().get(0).samples())
                .map(w -> -w)
                .toArray();
        TestResult result = reduced(
                test("coast-down hub 1").with(TestFigure.INERTIA, "4 kg cm2").done(), recording("a.csv", backward));
        assertThat(value(result, MotorParameter.DRY_DRAG).si()).isCloseTo(0.01, within(1e-4));
    }

    @Test
    void refuses_what_is_no_run_out_and_says_why() {
        assertThat(refusal(new double[3000])).contains("all samples are equal");
        assertThat(refusal(new double[] {500})).contains("enough samples");
        assertThat(refusal(Given.noisy(Given.sampled(3000, 5e-3, t -> 500), 0.3, new Random(7))))
                .contains("falls by less than a third");
        assertThat(refusal(Given.sampled(3000, 5e-3, t -> 30 * t))).contains("falls by less than a third");
        double[] holes = plain(new Random(8)).channels().get(0).samples().clone();
        Arrays.fill(holes, 500, 1500, Double.NaN);
        assertThat(refusal(holes)).contains("1000 that are not");
        Recording volts = Given.recording(
                "a.csv",
                5e-3,
                Given.channel("n", "V", plain(new Random(9)).channels().get(0).samples()));
        assertThat(Given.need(reduced(test("coast-down hub 1").done(), volts).outcome(MotorParameter.DRY_DRAG)))
                .contains("a speed in");
    }

    private static String refusal(double[] speeds) {
        TestResult result = reduced(
                test("coast-down hub 1").with(TestFigure.INERTIA, "4 kg cm2").done(), recording("a.csv", speeds));
        return Given.need(result.outcome(MotorParameter.DRY_DRAG));
    }

    /** A run-out with every disturbance a bench has. */
    static TestResult drawn(Random random, double dry, double viscous, double quadratic) {
        double gain = 1 + 0.001 * (2 * random.nextDouble() - 1);
        double step = 0.2 + 0.4 * random.nextDouble();
        double hum = 0.2 * random.nextDouble();
        double[] speeds = speeds(new CoastDown(4e-4, dry, viscous, quadratic), 5000, 5e-3);
        for (int i = 0; i < speeds.length; i++) {
            double noisy =
                    gain * speeds[i] + 0.5 * random.nextGaussian() + hum * Math.sin(2 * Math.PI * 50.01 * i * 5e-3 + 1);
            speeds[i] = step * Math.rint(noisy / step);
        }
        return reduced(
                test("coast-down hub 1").with(TestFigure.INERTIA, "4 kg cm2").done(), recording("a.csv", speeds));
    }

    /** Whether the intervals for dry and for viscous drag hold the truth. */
    private static boolean[] holds(Random random, double quadratic) {
        double dry = 0.005 * Math.exp(2 * random.nextDouble());
        double viscous = 2e-5 * (0.5 + random.nextDouble());
        TestResult result = drawn(random, dry, viscous, quadratic);
        return new boolean[] {
            holds(value(result, MotorParameter.DRY_DRAG), dry),
            holds(value(result, MotorParameter.VISCOUS_DRAG), viscous)
        };
    }

    private static boolean holds(Known found, double truth) {
        double k = Quantile.coverageFactor(0.95, found.degreesOfFreedom());
        return Math.abs(found.si() - truth) <= k * found.standardUncertainty();
    }

    private static double[] coverage(long seed, int draws, double quadratic) {
        int[] held = new int[2];
        for (int draw = 0; draw < draws; draw++) {
            boolean[] both = holds(new Random(seed + draw), quadratic);
            held[0] += both[0] ? 1 : 0;
            held[1] += both[1] ? 1 : 0;
        }
        System.out.printf(
                Locale.ROOT, "coast-down seed %d: dry drag %d, viscous drag %d of %d%n", seed, held[0], held[1], draws);
        return new double[] {(double) held[0] / draws, (double) held[1] / draws};
    }

    @Test
    void intervals_of_two_terms_cover() {
        double[] shares = coverage(6000, DRAWS, 0);
        assertThat(shares[0]).as("dry, seed 6000").isBetween(0.92, 0.98);
        assertThat(shares[1]).as("viscous, seed 6000").isBetween(0.92, 0.98);
    }

    /**
     * Three terms that follow the run to within its scatter need no spread of the models on top. The error over its stated deviation has an rms of
     * 0.92 here: stretches left out pull harder on three terms than on two.
     */
    @Test
    void intervals_of_three_terms_cover() {
        double[] shares = coverage(7000, MORE_DRAWS, 3e-8);
        assertThat(shares[0]).as("dry, seed 7000").isBetween(0.92, 0.98);
        assertThat(shares[1]).as("viscous, seed 7000").isBetween(0.92, 0.98);
    }
}
