package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static servowright.engine.bench.Given.channel;
import static servowright.engine.bench.Given.recording;
import static servowright.engine.bench.OnAxis.counted;
import static servowright.engine.bench.OnAxis.degrees;
import static servowright.engine.bench.OnAxis.found;
import static servowright.engine.bench.OnAxis.need;
import static servowright.engine.bench.OnAxis.rows;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import servowright.engine.encoder.Angles;
import servowright.engine.encoder.Calibration;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Recording;

/** Bench tests of an angle sensor, from invented recordings and readings whose truth is known. */
class AngleBenchTest {
    private static final long SEED = 71;

    /** A rotor dragged once round and back, with friction and the cogging of twelve slots. */
    static Recording dragged(int[] directions, int sign, double friction) {
        int perTurn = 1680;
        int n = perTurn * directions.length;
        double[] command = new double[n];
        double[] shaft = new double[n];
        for (int i = 0; i < n; i++) {
            int run = i / perTurn;
            int step = directions[run] > 0 ? i % perTurn : perTurn - 1 - i % perTurn;
            double turned = 2 * Math.PI * step / perTurn;
            command[i] = OnAxis.POLE_PAIRS * turned;
            double share = directions[run] * friction + 0.02 * Math.sin(12 * turned + 0.4);
            shaft[i] = turned - Math.asin(share) / OnAxis.POLE_PAIRS;
        }
        double[] counts = counted(shaft, 1.234, new Random(SEED));
        double[] seen = sign > 0
                ? counts
                : Arrays.stream(counts)
                        .map(c -> Math.floorMod((long) -c, (long) OnAxis.COUNTS))
                        .toArray();
        return recording("drag.csv", 0.005, channel("cmd", "rad", command), channel("pos", "", seen));
    }

    private static OnAxis drag(Recording recording) {
        return new OnAxis().recorded(TestKind.SLOW_DRAG, recording, Map.of("cmd", "commanded angle", "pos", "angle"));
    }

    @Test
    void a_slow_drag_both_ways_cancels_friction_and_gives_the_harmonics() {
        IdentifiedMachine machine = drag(dragged(new int[] {1, -1}, 1, 0.1)).identified();
        IdentifiedAxis axis = machine.axis("wheel");
        double truth = Math.toDegrees(Angles.wrapped(7 * 1.234));
        assertThat(degrees(found(axis.best(AxisParameter.COMMUTATION_OFFSET)))).isCloseTo(truth, within(0.07));
        assertThat(degrees(found(axis.best(AxisParameter.FRICTION_LAG)))).isCloseTo(5.74, within(0.05));
        assertThat(degrees(found(axis.best(AxisParameter.ANGLE_ERROR)))).isCloseTo(0.72, within(0.05));
        assertThat(machine.tests().get(0).curves()).hasSize(3);
        Calibration.Fitted fit = axis.correction().orElseThrow().fitted();
        assertThat(Math.toDegrees(fit.error().ripples().get(0).amplitudeRad())).isCloseTo(0.5, within(0.01));
    }

    @Test
    void a_slow_drag_of_a_reversed_sensor_gives_the_same_offset() {
        IdentifiedMachine machine = drag(dragged(new int[] {1, -1}, -1, 0.1)).identified();
        double truth = Math.toDegrees(Angles.wrapped(7 * 1.234));
        assertThat(degrees(found(machine.axis("wheel").best(AxisParameter.COMMUTATION_OFFSET))))
                .isCloseTo(truth, within(0.1));
        assertThat(machine.axis("wheel").saw(AngleEvidence.Calibrated.class))
                .singleElement()
                .satisfies(c -> assertThat(c.reversed()).isTrue());
    }

    @Test
    void a_drag_one_way_with_wrong_pole_pairs_or_without_them_is_refused() {
        IdentifiedMachine one = drag(dragged(new int[] {1}, 1, 0.1)).identified();
        assertThat(need(one.tests().get(0).outcome(AxisParameter.COMMUTATION_OFFSET)))
                .contains("both directions");
        IdentifiedMachine wrong =
                drag(dragged(new int[] {1, -1}, 1, 0.1)).magnets("16").identified();
        assertThat(need(wrong.tests().get(0).outcome(AxisParameter.COMMUTATION_OFFSET)))
                .contains("1.14 turns read per turn made");
        IdentifiedMachine none =
                drag(dragged(new int[] {1, -1}, 1, 0.1)).magnets("").identified();
        assertThat(need(none.tests().get(0).outcome(AxisParameter.COMMUTATION_OFFSET)))
                .contains("pole pairs of hub");
    }

    static Recording coasting(double speed, double loss, double unbalance) {
        int n = 2400;
        double[] shaft = rows(n, i -> speed * i * 1e-3 - loss * i * i * 1e-6 / 2);
        double[] uneven = Arrays.stream(shaft)
                .map(a -> a + unbalance / (speed * speed) * Math.sin(a))
                .toArray();
        return recording("run-" + speed + ".csv", 1e-3, channel("pos", "", counted(uneven, 0.4, new Random(SEED))));
    }

    @Test
    void a_free_run_gives_the_harmonics_and_leaves_noise() {
        OnAxis bench = new OnAxis().recorded(TestKind.FREE_RUN, coasting(60, 15, 0), Map.of("pos", "angle"));
        IdentifiedAxis axis = bench.axis();
        assertThat(degrees(found(axis.best(AxisParameter.ANGLE_ERROR)))).isCloseTo(0.72, within(0.05));
        Calibration.Fitted fit = axis.correction().orElseThrow().fitted();
        assertThat(fit.ordersMissing()).isFalse();
        assertThat(fit.error().ripples()).extracting(r -> r.order()).contains(1, 2, 4);
    }

    @Test
    void free_runs_at_several_speeds_tell_unbalance_from_the_sensor() {
        // 10 s^-2 at 50 rad/s moves the shaft by 0.23 degrees once per turn, as much as a real error (recomputed).
        OnAxis bench = new OnAxis();
        for (double speed : new double[] {40, 80, 160}) {
            bench.recorded(TestKind.FREE_RUN, coasting(speed, 0, 10), Map.of("pos", "angle"));
        }
        IdentifiedAxis axis = bench.axis();
        assertThat(Math.toDegrees(figure(axis, "A"))).isCloseTo(0.5, within(0.02));
        double slow = first(axis, 0);
        assertThat(Math.abs(slow - 0.5)).as("one run alone is misled").isGreaterThan(0.1);
    }

    private static double first(IdentifiedAxis axis, int run) {
        return Math.toDegrees(
                axis.fits().toList().get(run).fitted().error().ripples().get(0).amplitudeRad());
    }

    @Test
    void a_free_run_over_less_than_a_turn_or_without_times_is_refused() {
        double[] little = rows(600, i -> 3.0 * i / 600);
        Recording part = recording("part.csv", 1e-3, channel("pos", "", counted(little, 0, new Random(SEED))));
        IdentifiedMachine machine = new OnAxis()
                .recorded(TestKind.FREE_RUN, part, Map.of("pos", "angle"))
                .identified();
        assertThat(need(machine.tests().get(0).outcome(AxisParameter.ANGLE_ERROR)))
                .contains("enough of a turn");
        Recording timeless = new Recording(
                "order.csv",
                "0",
                servowright.engine.recording.Clock.order(600),
                List.of(channel("pos", "", counted(little, 0, new Random(SEED)))),
                List.of());
        IdentifiedMachine none = new OnAxis()
                .recorded(TestKind.FREE_RUN, timeless, Map.of("pos", "angle"))
                .identified();
        assertThat(need(none.tests().get(0).outcome(AxisParameter.ANGLE_ERROR))).contains("rising times");
    }

    /** Beside a reference, with a delay and some play, out and back. */
    static Recording beside(double radPerSecond, double delay, double play, boolean back) {
        int n = 4000;
        double span = 1.2 * 2 * Math.PI;
        int way = back ? n / 2 : n;
        double interval = span / radPerSecond / way;
        double[] reference = rows(n, i -> i < way ? span * i / way : span * (n - i) / (double) way);
        double[] read = rows(n, i -> reference[i] - (i < way ? 1 : -1) * (delay * radPerSecond + play / 2));
        return recording(
                "beside-" + radPerSecond + ".csv",
                interval,
                channel("ref", "rad", reference),
                channel("pos", "", counted(read, 0.2, new Random(SEED))));
    }

    static Map<String, String> pair() {
        Map<String, String> channels = new LinkedHashMap<>();
        channels.put("ref", "reference angle");
        channels.put("pos", "angle");
        return channels;
    }

    @Test
    void a_run_beside_a_reference_gives_the_delay_if_its_speed_is_known() {
        IdentifiedAxis axis = new OnAxis()
                .recorded(TestKind.REFERENCE_RUN, beside(2, 0.005, 0, true), pair())
                .axis();
        Known delay = found(axis.best(AxisParameter.ANGLE_DELAY));
        assertThat(delay.si()).isCloseTo(0.005, within(1e-4));
        Recording timed = beside(2, 0.005, 0, true);
        Recording timeless = new Recording(
                timed.name(),
                "0",
                servowright.engine.recording.Clock.order(timed.count()),
                timed.channels(),
                List.of());
        IdentifiedMachine unknown =
                new OnAxis().recorded(TestKind.REFERENCE_RUN, timeless, pair()).identified();
        assertThat(need(unknown.tests().get(0).outcome(AxisParameter.ANGLE_DELAY)))
                .contains("delay and play cannot be told apart");
        IdentifiedAxis stated = new OnAxis()
                .recorded(TestKind.REFERENCE_RUN, timeless, pair(), TestFigure.SPEED, "19.1 rpm")
                .axis();
        assertThat(found(stated.best(AxisParameter.ANGLE_DELAY)).si()).isCloseTo(0.005, within(1e-4));
    }

    @Test
    void two_speeds_beside_a_reference_tell_delay_from_play() {
        IdentifiedAxis axis = new OnAxis()
                .recorded(TestKind.REFERENCE_RUN, beside(2, 0.005, 0.02, true), pair())
                .recorded(TestKind.REFERENCE_RUN, beside(6, 0.005, 0.02, true), pair())
                .axis();
        assertThat(axis.remarks()).hasSize(1);
        assertThat(figure(axis, "delay")).isCloseTo(0.005, within(2e-4));
        assertThat(figure(axis, "play")).isCloseTo(0.02, within(1e-3));
    }

    /** The first figure of that name in what was noticed across tests. */
    private static double figure(IdentifiedAxis axis, String name) {
        return axis.remarks().stream()
                .map(r -> r.figures().get(name))
                .filter(Phrase.Figure.class::isInstance)
                .map(part -> ((Phrase.Figure) part).value().si())
                .findFirst()
                .orElseThrow();
    }

    @Test
    void one_direction_beside_a_reference_says_that_delay_hides_in_the_mean() {
        IdentifiedMachine machine = new OnAxis()
                .recorded(TestKind.REFERENCE_RUN, beside(2, 0.005, 0, false), pair())
                .identified();
        assertThat(machine.tests().get(0).remarks()).anyMatch(r -> r.template().contains("one direction only"));
        assertThat(degrees(found(machine.axis("wheel").best(AxisParameter.ANGLE_ERROR))))
                .isCloseTo(0.72, within(0.05));
    }

    @Test
    void a_test_without_its_recording_asks_for_it() {
        IdentifiedMachine machine =
                new OnAxis().read(TestKind.FREE_RUN, new Object[0][]).identified();
        assertThat(need(machine.tests().get(0).outcome(AxisParameter.ANGLE_ERROR)))
                .contains("a recording of free run");
        assertThat(machine.axis("other").evidence()).isEmpty();
    }
}
