package servowright.engine.encoder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import servowright.engine.numeric.Values;

/** Hand turn, alignment and offset: invented sensors with one thing wrong each. */
class BenchTurnTest {
    private static final int COUNTS = 16384;
    private static final long SEED = 5;
    private static final Values EVEN = Values.of(100, 101);

    private static int[] counts(double from, double to, int samples) {
        return IntStream.range(0, samples)
                .map(i -> Math.floorMod(Math.round(COUNTS * (from + (to - from) * i / (samples - 1))), COUNTS))
                .toArray();
    }

    @Test
    void one_whole_turn_is_one_turn() {
        HandTurn turn = HandTurn.of(counts(0.3, 1.3, 400), COUNTS, EVEN);
        assertThat(turn.turns()).isCloseTo(1, within(1e-9));
        assertThat(turn.codesSeenShare()).isEqualTo(1);
        assertThat(turn.faults()).isEmpty();
        assertThat(HandTurn.of(counts(0, 1, 400), COUNTS, Values.of()).signalSwing())
                .isNaN();
    }

    @Test
    void axial_magnet_stands_still_and_two_pole_pairs_go_round_twice() {
        int[] wobble = IntStream.range(0, 400)
                .map(i -> 3000 + (int) (300 * Math.sin(i * 0.0157)))
                .toArray();
        assertThat(HandTurn.of(wobble, COUNTS, EVEN).faults()).containsExactly(HandTurn.Fault.STANDS_STILL);
        assertThat(HandTurn.of(counts(0, 2, 800), COUNTS, EVEN).faults()).containsExactly(HandTurn.Fault.WRONG_RATIO);
    }

    @Test
    void slip_reversal_missing_codes_and_a_swinging_field_are_named() {
        assertThat(HandTurn.of(counts(0, 0.8, 400), COUNTS, EVEN).faults()).contains(HandTurn.Fault.SLIPS);
        assertThat(HandTurn.of(counts(1, 0, 400), COUNTS, EVEN).faults()).containsExactly(HandTurn.Fault.REVERSED);
        int[] gap = Arrays.stream(counts(0, 1, 800))
                .filter(c -> c < 6000 || c > 9000)
                .toArray();
        assertThat(HandTurn.of(gap, COUNTS, EVEN).faults()).containsExactly(HandTurn.Fault.MISSING_CODES);
        assertThat(HandTurn.of(counts(0, 1, 400), COUNTS, Values.of(90, 120)).faults())
                .containsExactly(HandTurn.Fault.FIELD_SWINGS);
    }

    private static List<Alignment.Stop> stops(int polePairs, int sign, double offset, double friction, int count) {
        List<Alignment.Stop> stops = new ArrayList<>();
        Random random = new Random(SEED);
        for (int side = 0; side < 2; side++) {
            for (int i = 0; i < count; i++) {
                int at = side == 0 ? i : count - 1 - i;
                double field = 2 * Math.PI * polePairs * at / count;
                double lag = side == 0 ? friction : -friction;
                double shaft = (field - lag) / polePairs;
                double read = sign * (shaft + offset / polePairs) + 1e-4 * random.nextGaussian();
                stops.add(new Alignment.Stop(field, Angles.wrapped(read), side == 0));
            }
        }
        return stops;
    }

    private static Alignment found(Alignment.Outcome outcome) {
        assertThat(outcome).isInstanceOf(Alignment.Outcome.Found.class);
        return ((Alignment.Outcome.Found) outcome).alignment();
    }

    @Test
    void alignment_from_both_sides_is_free_of_friction() {
        Alignment alignment = found(Alignment.of(stops(7, 1, 1.0, 0.1, 28)));
        assertThat(alignment.polePairs()).isEqualTo(7);
        assertThat(alignment.reversed()).isFalse();
        assertThat(alignment.offsetElectricalRad()).as("seed " + SEED).isCloseTo(1.0, within(1e-3));
        assertThat(alignment.frictionElectricalRad()).isCloseTo(0.1, within(1e-3));
        assertThat(alignment.spreadElectricalRad()).isLessThan(2e-3);
        assertThat(alignment.trapped()).isEmpty();
    }

    @Test
    void alignment_of_a_reversed_sensor_says_so() {
        Alignment alignment = found(Alignment.of(stops(7, -1, 0.4, 0.05, 28)));
        assertThat(alignment.reversed()).isTrue();
        assertThat(alignment.offsetElectricalRad()).isCloseTo(0.4, within(1e-3));
    }

    @Test
    void rotor_at_its_unstable_rest_is_named_and_not_counted() {
        List<Alignment.Stop> stops = stops(7, 1, 1.0, 0.1, 28);
        Alignment.Stop first = stops.get(0);
        stops.set(0, new Alignment.Stop(first.fieldElectricalRad(), first.readRad() - Math.PI / 7, first.forwards()));
        Alignment alignment = found(Alignment.of(stops));
        assertThat(alignment.trapped()).containsExactly(0);
        assertThat(alignment.offsetElectricalRad()).isCloseTo(1.0, within(2e-3));
    }

    @Test
    void rotor_that_did_not_move_gives_no_pole_pairs() {
        List<Alignment.Stop> stuck = stops(7, 1, 1.0, 0.1, 28).stream()
                .map(s -> new Alignment.Stop(s.fieldElectricalRad(), 1e-3 * s.readRad(), s.forwards()))
                .toList();
        assertThat(Alignment.of(stuck)).isInstanceOf(Alignment.Outcome.NotFollowed.class);
        List<Alignment.Stop> oneWay = stops(7, 1, 1.0, 0.1, 28).stream()
                .filter(Alignment.Stop::forwards)
                .toList();
        assertThat(Alignment.of(oneWay)).isInstanceOf(Alignment.Outcome.OneSide.class);
    }

    @Test
    void ratio_must_be_whole() {
        assertThat(PolePairs.of(7 * 6.28, 6.30)).hasValue(7);
        assertThat(PolePairs.of(-7 * 6.28, 6.30)).hasValue(7);
        assertThat(PolePairs.of(7.4 * 6.28, 6.28)).isEmpty();
        assertThat(PolePairs.of(7 * 1.0, 1.0)).as("too little travel").isEmpty();
        // Twenty turns asked for and 9.7 to 11.5 read at rest: a report of a count of -5676 (seen).
        assertThat(PolePairs.of(20 * 2 * Math.PI, 0.022)).isEmpty();
    }

    @Test
    void friction_bound_of_an_alignment() {
        // 2, 10 and 50 percent: 1.15, 5.7 and 30 electrical degrees (recomputed).
        assertThat(Math.toDegrees(Alignment.frictionBoundElectricalRad(0.02))).isCloseTo(1.15, within(0.005));
        assertThat(Math.toDegrees(Alignment.frictionBoundElectricalRad(0.10))).isCloseTo(5.7, within(0.05));
        assertThat(Math.toDegrees(Alignment.frictionBoundElectricalRad(0.50))).isCloseTo(30, within(0.05));
    }

    @Test
    void best_offset_of_each_direction_gives_the_true_one_and_the_delay() {
        // No-load current least at 0.63 rad one way and 1.82 rad the other (a field report, seen).
        OffsetAtSpeeds found = OffsetAtSpeeds.of(new double[] {-100, 100}, new double[] {0.63, 1.82}, 7)
                .orElseThrow();
        assertThat(found.offsetElectricalRad()).isCloseTo(1.225, within(1e-9));
        assertThat(7 * 100 * found.delaySecond()).isCloseTo(0.595, within(1e-9));
        assertThat(found.residualElectricalRad()).isLessThan(1e-9);
        assertThat(OffsetAtSpeeds.of(new double[] {5, 5}, new double[] {1, 1}, 7))
                .isEmpty();
    }

    @Test
    void one_speed_does_not_tell_delay_from_play_and_two_do() {
        OffsetAtSpeeds.Direction slow = OffsetAtSpeeds.Direction.of(-0.010, 0.006);
        assertThat(slow.staticRad()).isCloseTo(-0.002, within(1e-12));
        assertThat(slow.asDelaySecond(2)).isCloseTo(0.004, within(1e-12));
        OffsetAtSpeeds.Direction fast = OffsetAtSpeeds.Direction.of(-0.014, 0.010);
        assertThat(OffsetAtSpeeds.delayAndPlay(new double[] {2, 2}, slow, fast)).isEmpty();
        OffsetAtSpeeds.DelayAndPlay both =
                OffsetAtSpeeds.delayAndPlay(new double[] {2, 4}, slow, fast).orElseThrow();
        assertThat(both.delaySecond()).isCloseTo(0.002, within(1e-12));
        assertThat(both.playRad()).isCloseTo(0.004, within(1e-12));
    }

    @Test
    void reseating_spreads_about_the_circular_mean() {
        assertThat(OffsetAtSpeeds.reseatingSpreadRad(3.10, -3.12, 3.14)).isBetween(0.03, 0.05);
    }

    @Test
    void ellipse_is_taken_back_to_a_circle() {
        double skew = Math.toRadians(7);
        double[] x = new double[90];
        double[] y = new double[90];
        for (int i = 0; i < x.length; i++) {
            double a = 2 * Math.PI * i / x.length;
            x[i] = -109.7 + 100 * Math.cos(a);
            y[i] = 64.5 + 94 * Math.sin(a + skew);
        }
        EllipseFit fit = EllipseFit.of(x, y).orElseThrow();
        assertThat(fit.centreX()).isCloseTo(-109.7, within(1e-9));
        assertThat(fit.centreY()).isCloseTo(64.5, within(1e-9));
        assertThat(fit.amplitudeX()).isCloseTo(100, within(1e-9));
        assertThat(fit.amplitudeY()).isCloseTo(94, within(1e-9));
        assertThat(fit.quadratureRad()).isCloseTo(skew, within(1e-12));
        assertThat(fit.angleRad(x[10], y[10])).isCloseTo(2 * Math.PI * 10 / 90, within(1e-12));
        EllipseFit centred = new EllipseFit(9.4, 0, 100, 94, skew, 101, 93, 0);
        assertThat(centred.channelErrors().gain()).isCloseTo(100 / 94.0 - 1, within(1e-12));
        assertThat(centred.channelErrors().offsetX()).isCloseTo(0.1, within(1e-12));
        assertThat(fit.semiMajor() * fit.semiMinor()).isCloseTo(100 * 94 * Math.cos(skew), within(1e-6));
        double[] line = IntStream.range(0, 10).mapToDouble(i -> i).toArray();
        assertThat(EllipseFit.of(line, line)).isEmpty();
    }
}
