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
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import servowright.engine.encoder.Alignment;
import servowright.engine.encoder.Angles;
import servowright.engine.encoder.HandTurn;
import servowright.engine.encoder.RoundMagnet;
import servowright.engine.known.Known;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.quantity.Quantity;
import servowright.engine.recording.Recording;

/** A turn by hand, alignments and other readings of an angle sensor, from invented ones whose truth is known. */
class SensorReadingsTest {
    private static final long SEED = 71;

    static Recording turned(double turns, double swing) {
        double[] shaft = rows(500, i -> turns * 2 * Math.PI * i / 499);
        return recording(
                "turn.csv",
                0.01,
                channel("pos", "", counted(shaft, 1.2, new Random(SEED))),
                channel("mag", "", rows(500, i -> 1000 * (1 + swing * Math.cos(shaft[i])))));
    }

    private static OnAxis handTurn(Recording recording) {
        return new OnAxis().recorded(TestKind.HAND_TURN, recording, Map.of("pos", "angle", "mag", "field"));
    }

    @Test
    void a_turn_by_hand_is_one_turn() {
        IdentifiedAxis axis = handTurn(turned(1, 0.001)).axis();
        Known turns = found(axis.best(AxisParameter.TURNS_READ));
        assertThat(turns.si()).isCloseTo(1, within(0.002));
        assertThat(turns.standardUncertainty()).isCloseTo(0.06 / Math.sqrt(3), within(1e-9));
        assertThat(axis.saw(AngleEvidence.Turned.class))
                .singleElement()
                .satisfies(t -> assertThat(t.turn().faults()).isEmpty());
    }

    @Test
    void a_turn_by_hand_tells_the_field_where_the_sensor_tells_it_in_millitesla() {
        Recording counts = turned(1, 0.01);
        assertThat(handTurn(counts).axis().best(AxisParameter.SENSOR_FIELD).found())
                .isEmpty();
        double[] angle = counts.channels().get(0).samples();
        double[] tesla = rows(500, i -> 0.07 * (1 + 0.01 * Math.cos(2 * Math.PI * i / 499)));
        Known field =
                found(handTurn(recording("turn.csv", 0.01, channel("pos", "", angle), channel("mag", "mT", tesla)))
                        .axis()
                        .best(AxisParameter.SENSOR_FIELD));
        assertThat(field.si()).isCloseTo(0.07, within(1e-5));
        assertThat(field.standardUncertainty()).isCloseTo(0.07 * 0.01 / Math.sqrt(2), within(1e-5));
    }

    @Test
    void a_turn_by_hand_finds_an_axial_magnet_two_pole_pairs_slip_and_a_field_that_swings() {
        assertThat(faults(turned(0.02, 0))).contains(HandTurn.Fault.STANDS_STILL);
        assertThat(faults(turned(2, 0))).containsExactly(HandTurn.Fault.WRONG_RATIO);
        assertThat(faults(turned(0.7, 0))).contains(HandTurn.Fault.SLIPS);
        assertThat(faults(turned(1, 0.2))).containsExactly(HandTurn.Fault.FIELD_SWINGS);
        assertThat(faults(turned(-1, 0))).containsExactly(HandTurn.Fault.REVERSED);
    }

    private static List<HandTurn.Fault> faults(Recording recording) {
        IdentifiedMachine machine = handTurn(recording).identified();
        List<HandTurn.Fault> faults = machine.axis("wheel")
                .saw(AngleEvidence.Turned.class)
                .flatMap(t -> t.turn().faults().stream())
                .toList();
        assertThat(machine.tests().get(0).remarks()).hasSameSizeAs(faults);
        return faults;
    }

    @Test
    void a_turn_with_counts_that_the_sensor_does_not_have_is_refused() {
        Recording more = recording("turn.csv", 0.01, channel("pos", "", rows(200, i -> 1000.0 * i)));
        assertThat(need(handTurn(more).identified().tests().get(0).outcome(AxisParameter.TURNS_READ)))
                .contains("run from 0 to 199000")
                .contains("16384");
        Recording few = recording("turn.csv", 0.01, channel("pos", "deg", new double[] {0, 1, 2}));
        assertThat(need(handTurn(few).identified().tests().get(0).outcome(AxisParameter.TURNS_READ)))
                .contains("3 rows");
        OnAxis unsaid = new OnAxis().recorded(TestKind.HAND_TURN, turned(1, 0), Map.of("pos", "current"));
        assertThat(need(unsaid.identified().tests().get(0).outcome(AxisParameter.TURNS_READ)))
                .contains("shows the angle");
    }

    /** Stops every 90 electrical degrees over a mechanical turn and back; friction holds the rotor back by a lag. */
    private static Object[][] stops(int sign, double offsetDegree, double lagDegree, int trapped) {
        int perSide = 28;
        Object[][] readings = new Object[2 * perSide][];
        Random random = new Random(SEED);
        for (int i = 0; i < readings.length; i++) {
            int step = i < perSide ? i : 2 * perSide - 2 - i;
            double field = 90 * step;
            double side = i < perSide ? 1 : -1;
            double behind = i == trapped ? 180 : 0;
            double shaft = (field - side * lagDegree + behind) / OnAxis.POLE_PAIRS;
            double read = sign * (shaft + offsetDegree / OnAxis.POLE_PAIRS) + 0.02 * random.nextGaussian();
            double shown = Math.toDegrees(Angles.wrapped(Math.toRadians(read)));
            readings[i] = new Object[] {
                ReadingFigure.FIELD_ANGLE,
                field + " deg",
                ReadingFigure.ANGLE,
                String.format(java.util.Locale.ROOT, "%.4f deg", shown)
            };
        }
        return readings;
    }

    @Test
    void an_alignment_from_both_sides_gives_offset_friction_and_pole_pairs() {
        IdentifiedMachine machine = new OnAxis()
                .magnets("")
                .read(TestKind.ALIGNMENT, stops(1, 40, 5.7, -1))
                .identified();
        IdentifiedAxis axis = machine.axis("wheel");
        Known offset = found(axis.best(AxisParameter.COMMUTATION_OFFSET));
        assertThat(degrees(offset)).as("seed " + SEED).isCloseTo(40, within(0.1));
        assertThat(Math.toDegrees(offset.standardUncertainty())).isBetween(0.3, 0.4);
        assertThat(degrees(found(axis.best(AxisParameter.FRICTION_LAG)))).isCloseTo(5.7, within(0.1));
        assertThat(found(machine.motor("hub").orElseThrow().best(MotorParameter.POLE_PAIRS))
                        .si())
                .as("the alignment counts the pole pairs of the motor")
                .isEqualTo(7);
    }

    @Test
    void an_alignment_names_a_reversed_count_and_a_rotor_at_its_unstable_rest() {
        IdentifiedMachine reversed =
                new OnAxis().read(TestKind.ALIGNMENT, stops(-1, 40, 5.7, -1)).identified();
        assertThat(degrees(found(reversed.axis("wheel").best(AxisParameter.COMMUTATION_OFFSET))))
                .isCloseTo(40, within(0.1));
        assertThat(reversed.tests().get(0).remarks()).anyMatch(r -> r.template().contains("against the field"));
        IdentifiedMachine trapped =
                new OnAxis().read(TestKind.ALIGNMENT, stops(1, 40, 5.7, 5)).identified();
        assertThat(degrees(found(trapped.axis("wheel").best(AxisParameter.COMMUTATION_OFFSET))))
                .isCloseTo(40, within(0.2));
        assertThat(trapped.tests().get(0).remarks())
                .anyMatch(r -> r.template().contains("half an electrical turn off"));
    }

    @Test
    void an_alignment_from_one_side_or_of_a_rotor_that_did_not_move_gives_no_offset() {
        Object[][] both = stops(1, 40, 5.7, -1);
        OnAxis one = new OnAxis().read(TestKind.ALIGNMENT, Arrays.copyOf(both, 28));
        assertThat(need(one.axis().best(AxisParameter.COMMUTATION_OFFSET))).contains("commutation offset");
        assertThat(need(one.identified().tests().get(0).outcome(AxisParameter.COMMUTATION_OFFSET)))
                .contains("both sides");
        Object[][] stuck = stops(1, 40, 5.7, -1);
        for (Object[] reading : stuck) {
            reading[3] = "10 deg";
        }
        IdentifiedMachine machine = new OnAxis().read(TestKind.ALIGNMENT, stuck).identified();
        assertThat(need(machine.tests().get(0).outcome(AxisParameter.COMMUTATION_OFFSET)))
                .contains("without bound");
        assertThat(machine.axis("wheel").saw(AngleEvidence.Aligned.class))
                .singleElement()
                .satisfies(a -> assertThat(a.outcome()).isInstanceOf(Alignment.Outcome.NotFollowed.class));
        OnAxis few = new OnAxis().read(TestKind.ALIGNMENT, Arrays.copyOf(both, 3));
        assertThat(need(few.identified().tests().get(0).outcome(AxisParameter.COMMUTATION_OFFSET)))
                .contains("2 after the first");
    }

    private static Object[] reading(Object... pairs) {
        return pairs;
    }

    @Test
    void offsets_at_two_speeds_give_the_true_one_and_the_delay() {
        // p 7, 100 us at 3000 rpm: 12.6 electrical degrees (recomputed).
        IdentifiedAxis axis = new OnAxis()
                .read(
                        TestKind.OFFSET_AT_SPEEDS,
                        reading(ReadingFigure.SPEED, "-3000 rpm", ReadingFigure.OFFSET, "17.4 deg ± 0.5 deg"),
                        reading(ReadingFigure.SPEED, "3000 rpm", ReadingFigure.OFFSET, "42.6 deg ± 0.5 deg"))
                .axis();
        assertThat(degrees(found(axis.best(AxisParameter.COMMUTATION_OFFSET)))).isCloseTo(30, within(1e-6));
        Known delay = found(axis.best(AxisParameter.COMMUTATION_DELAY));
        assertThat(delay.si()).isCloseTo(100e-6, within(1e-9));
        double halfSpan = Math.toRadians(0.5) / Math.sqrt(3) / Math.sqrt(2) / (7 * 100 * Math.PI);
        assertThat(delay.standardUncertainty()).isCloseTo(halfSpan, within(1e-3 * halfSpan));
        IdentifiedMachine one = new OnAxis()
                .read(
                        TestKind.OFFSET_AT_SPEEDS,
                        reading(ReadingFigure.SPEED, "300 rpm", ReadingFigure.OFFSET, "17 deg"))
                .identified();
        assertThat(need(one.tests().get(0).outcome(AxisParameter.COMMUTATION_DELAY)))
                .contains("two speeds");
    }

    @Test
    void magnitudes_at_shims_give_slope_and_bend_of_the_field() {
        RoundMagnet disc = RoundMagnet.disc(6e-3, 2.5e-3);
        double[] shims = {0, 0.25, 0.5, 0.75, 1.0};
        Object[][] readings = Arrays.stream(shims)
                .mapToObj(s -> reading(
                        ReadingFigure.SHIM,
                        s + " mm",
                        ReadingFigure.FIELD,
                        Quantity.of(disc.onAxis(1.2, 1.5e-3 + s * 1e-3).strengthTesla(), "T")
                                                .si()
                                        * 1e3 + " mT"))
                .toArray(Object[][]::new);
        IdentifiedAxis axis = new OnAxis().read(TestKind.SHIM_SERIES, readings).axis();
        // Table of the disc at 2.0 mm: slope -40.5 mT/mm of 83.2 mT, kappa -0.0281 per square millimetre (recomputed).
        Known slope = found(axis.best(AxisParameter.FIELD_SLOPE));
        assertThat(slope.si() * 1e-3).isCloseTo(-40.5 / 83.2, within(0.005));
        Known bend = found(axis.best(AxisParameter.FIELD_BEND));
        assertThat(bend.si() * 1e-6).isCloseTo(-0.0281, within(0.0012));
        assertThat(bend.standardUncertainty()).isGreaterThan(0);
        IdentifiedMachine two = new OnAxis()
                .read(TestKind.SHIM_SERIES, Arrays.copyOf(readings, 2))
                .identified();
        assertThat(need(two.tests().get(0).outcome(AxisParameter.FIELD_BEND))).contains("it has 2");
    }

    @Test
    void seatings_give_the_spread_of_the_offset() {
        OnAxis bench = new OnAxis()
                .read(
                        TestKind.RESEATING,
                        reading(ReadingFigure.OFFSET, "178 deg"),
                        reading(ReadingFigure.OFFSET, "-179 deg"),
                        reading(ReadingFigure.OFFSET, "179 deg"));
        Known spread = found(bench.axis().best(AxisParameter.RESEATING_SPREAD));
        assertThat(degrees(spread)).isCloseTo(1.67, within(0.02));
        assertThat(spread.relativeUncertainty()).isCloseTo(0.5, within(1e-9));
        assertThat(bench.axis().saw(AngleEvidence.Reseated.class)).hasSize(1);
        IdentifiedMachine one = new OnAxis()
                .read(TestKind.RESEATING, reading(ReadingFigure.OFFSET, "178 deg"))
                .identified();
        assertThat(need(one.tests().get(0).outcome(AxisParameter.RESEATING_SPREAD)))
                .contains("two seatings");
    }
}
