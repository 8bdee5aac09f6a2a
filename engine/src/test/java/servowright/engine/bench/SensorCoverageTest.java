package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static servowright.engine.bench.Given.channel;
import static servowright.engine.bench.Given.recording;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import servowright.engine.encoder.Angles;
import servowright.engine.encoder.HarmonicError;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Recording;

/** Do 95 % intervals of current sensors at rest and of angle sensors hold the truth? Seeded, with noise, steps of the converter, hum and drift. */
class SensorCoverageTest {
    private static boolean zero(Random random) {
        double[] truth = {Given.within(random, 0.3), Given.within(random, 0.3), Given.within(random, 0.3)};
        double step = 0.01 + 0.03 * random.nextDouble();
        double[][] amp = new double[3][];
        for (int k = 0; k < 3; k++) {
            double off = truth[k];
            double hum = 0.02 * random.nextDouble();
            double[] noisy = Given.noisy(
                    Given.sampled(2000, 1e-3, t -> off + hum * Math.sin(2 * Math.PI * 50.03 * t + 1)), 0.03, random);
            amp[k] = Arrays.stream(noisy).map(i -> step * Math.rint(i / step)).toArray();
        }
        TestResult result = Given.reduced(
                Given.motor(),
                CurrentSensingTestTest.test(TestKind.CURRENT_ZERO).done(),
                CurrentSensingTestTest.recording(amp));
        return Given.holds(
                result.outcome(SensingParameter.OFFSET_A).found().orElseThrow().value(), truth[0]);
    }

    @Test
    void zeros_of_current_sensors_cover() {
        assertThat(Given.share("current zero", 5400, SensorCoverageTest::zero)).isBetween(0.92, 0.98);
    }

    private static HarmonicError error(Random random) {
        return new HarmonicError(
                0,
                List.of(
                        OnAxis.ripple(1, 0.3 + 0.4 * random.nextDouble(), 6.28 * random.nextDouble()),
                        OnAxis.ripple(2, 0.1 + 0.2 * random.nextDouble(), 6.28 * random.nextDouble())));
    }

    /** Counts of 14 bits with noise of a few hundredths of a degree. */
    private static double[] counts(double[] shaft, HarmonicError error, double offset, Random random) {
        double noise = Math.toRadians(0.02 + 0.03 * random.nextDouble());
        return Arrays.stream(shaft)
                .map(a -> a + offset + error.atRad(a) + noise * random.nextGaussian())
                .map(a -> Math.floorMod(Math.round(a / (2 * Math.PI) * OnAxis.COUNTS), OnAxis.COUNTS))
                .toArray();
    }

    /** Out and back beside a reference, the sensor late. */
    private static boolean late(Random random) {
        double delay = 0.002 + 0.006 * random.nextDouble();
        double speed = 1.5 + 2 * random.nextDouble();
        int n = 3000;
        double way = n / 2.0;
        double span = 1.3 * 2 * Math.PI;
        double[] reference = OnAxis.rows(n, i -> i < way ? span * i / way : span * (n - i) / way);
        double[] shaft = OnAxis.rows(n, i -> reference[i] - (i < way ? 1 : -1) * delay * speed);
        double[] read = counts(shaft, error(random), 0.2, random);
        Recording run = recording(
                "beside.csv",
                span / speed / way,
                channel("ref", "rad", Given.noisy(reference, 1e-4, random)),
                channel("pos", "", read));
        TestResult result = new OnAxis()
                .recorded(TestKind.REFERENCE_RUN, run, AngleBenchTest.pair())
                .identified()
                .tests()
                .get(0);
        return Given.holds(
                result.outcome(AxisParameter.ANGLE_DELAY).found().orElseThrow().value(), delay);
    }

    @Test
    void delays_beside_a_reference_cover() {
        assertThat(Given.share("angle delay", 5500, SensorCoverageTest::late)).isBetween(0.92, 0.98);
    }

    /** Dragged once round and back; friction of the two directions differs by up to what the test states. */
    private static boolean dragged(Random random) {
        int n = 1680;
        double offset = 6 * random.nextDouble();
        double friction = 0.05 + 0.1 * random.nextDouble();
        double uneven = 0.1 * (2 * random.nextDouble() - 1);
        double[] command = new double[2 * n];
        double[] shaft = new double[2 * n];
        for (int i = 0; i < 2 * n; i++) {
            double turned = 2 * Math.PI * (i < n ? i : 2 * n - 1 - i) / n;
            command[i] = OnAxis.POLE_PAIRS * turned;
            double share = (i < n ? 1 + uneven : -1 + uneven) * friction + 0.02 * Math.sin(12 * turned + 0.4);
            shaft[i] = turned - Math.asin(share) / OnAxis.POLE_PAIRS;
        }
        Recording run = recording(
                "drag.csv",
                0.005,
                channel("cmd", "rad", command),
                channel("pos", "", counts(shaft, error(random), offset, random)));
        TestResult result = new OnAxis()
                .recorded(TestKind.SLOW_DRAG, run, Map.of("cmd", "commanded angle", "pos", "angle"))
                .identified()
                .tests()
                .get(0);
        double truth = Angles.wrapped(OnAxis.POLE_PAIRS * offset);
        double found = result.outcome(AxisParameter.COMMUTATION_OFFSET)
                .found()
                .orElseThrow()
                .value()
                .si();
        return Given.holds(
                result.outcome(AxisParameter.COMMUTATION_OFFSET)
                        .found()
                        .orElseThrow()
                        .value(),
                found + Angles.wrapped(truth - found));
    }

    /**
     * Friction of the two directions may differ by stated limits, which outweigh all noise here. An interval of 1.96 standard uncertainties then is
     * wider than the limits themselves, 1.96/√3 = 1.13 of them, and holds always (JCGM 100:2008, 4.3.7 and G.1.3).
     */
    @Test
    void commutation_offsets_by_a_slow_drag_hold_as_limits_that_outweigh_do() {
        assertThat(Given.share("commutation offset", 5600, SensorCoverageTest::dragged))
                .isGreaterThanOrEqualTo(0.95);
    }

    private static boolean free(Random random) {
        double speed = 50 + 30 * random.nextDouble();
        HarmonicError error = error(random);
        double[] shaft = OnAxis.rows(2400, i -> speed * i * 1e-3 - 15 * i * i * 1e-6 / 2);
        Recording run = recording("free.csv", 1e-3, channel("pos", "", counts(shaft, error, 0.4, random)));
        TestResult result = new OnAxis()
                .recorded(TestKind.FREE_RUN, run, Map.of("pos", "angle"))
                .identified()
                .tests()
                .get(0);
        double largest = IntStream.range(0, 1440)
                .mapToDouble(i -> Math.abs(error.atRad(2 * Math.PI * i / 1440)))
                .max()
                .orElseThrow();
        return Given.holds(
                result.outcome(AxisParameter.ANGLE_ERROR).found().orElseThrow().value(), largest);
    }

    @Test
    void largest_errors_of_a_free_run_cover() {
        assertThat(Given.share("largest angle error", 5700, SensorCoverageTest::free))
                .isBetween(0.92, 0.98);
    }
}
