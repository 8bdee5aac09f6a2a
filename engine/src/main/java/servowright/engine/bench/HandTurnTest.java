package servowright.engine.bench;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import servowright.engine.encoder.HandTurn;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.numeric.Statistics;
import servowright.engine.numeric.Values;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.Unit;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Recording;

/** One turn of the shaft by hand: whether the sensor follows turn for turn, over its whole range and in an even field. */
final class HandTurnTest {
    /** Counts to look at when the recording holds angles. */
    private static final int FINE = 1 << 16;

    /** A hand stops within this share of a turn. */
    private static final double HAND_HALF_WIDTH = 0.06;

    private static final int FEWEST = 16;

    private HandTurnTest() {}

    static Sensed of(BenchTest test, Recording recording, OptionalInt countsPerTurn) {
        ResultSheet sheet = new ResultSheet(test);
        Outcome<AngleRows> read = AngleRows.of(test, recording, countsPerTurn, AngleRole.ANGLE);
        if (read instanceof Missing<AngleRows> why) {
            sheet.missing(AxisParameter.TURNS_READ, why);
            return Sensed.without(sheet.end());
        }
        AngleRows rows = read.found().orElseThrow();
        sheet.remarks(rows.remarks());
        if (rows.count() < FEWEST) {
            return Sensed.without(sheet.refused(
                    AxisParameter.TURNS_READ,
                    "a turn in " + recording.name() + ": it has " + rows.count() + " rows",
                    "record at least 100 rows of one slow turn"));
        }
        HandTurn turn =
                HandTurn.of(counts(rows.column(AngleRole.ANGLE)), FINE, Values.of(rows.column(AngleRole.FIELD)));
        tell(sheet, turn, rows.has(AngleRole.FIELD));
        field(sheet, test, recording, rows);
        sheet.value(AxisParameter.TURNS_READ, candidate(test, turn));
        return Sensed.of(sheet.end(), new AngleEvidence.Turned(test.id(), turn));
    }

    private static int[] counts(double[] rad) {
        return Arrays.stream(rad)
                .mapToInt(a -> Math.floorMod(Math.round(a / (2 * Math.PI) * FINE), FINE))
                .toArray();
    }

    private static Candidate candidate(BenchTest test, HandTurn turn) {
        Working.Sheet working = Working.begin();
        Known turns = Known.of(
                new Quantity(turn.turns(), Dimension.NUMBER),
                HAND_HALF_WIDTH / Math.sqrt(3),
                Source.of(test.id() + " stop of the hand"),
                Origin.MEASURED,
                test.place().text());
        working.note("turns read for one turn made", "{n}", "", "sum of the signed steps of the reading", turns);
        return new Candidate(turns, test.id(), working.end());
    }

    /** Where the magnitude comes as a field and not in counts of the sensor's own. */
    private static void field(ResultSheet sheet, BenchTest test, Recording recording, AngleRows rows) {
        Optional<Unit> unit = AngleRole.FIELD
                .channel(test.channels())
                .flatMap(recording::channel)
                .flatMap(Channel::unit)
                .filter(u -> u.dimension().equals(Dimension.FLUX_DENSITY));
        if (unit.isEmpty()) {
            return;
        }
        double[] tesla = rows.column(AngleRole.FIELD);
        Known mean = Known.of(
                new Quantity(Statistics.mean(tesla), Dimension.FLUX_DENSITY),
                Statistics.standardDeviation(tesla),
                Source.of(test.id() + " swing of the field"),
                Origin.MEASURED,
                test.place().text());
        Working.Sheet working = Working.begin();
        working.note("mean over the turn", "{B}", "mT", "uncertainty: its swing over the turn", mean);
        sheet.value(
                AxisParameter.SENSOR_FIELD,
                new Candidate(
                        mean,
                        test.id(),
                        working.end(),
                        List.of(Phrase.of("scale of the magnitude that the sensor tells taken as exact"))));
    }

    private static void tell(ResultSheet sheet, HandTurn turn, boolean field) {
        sheet.detail(Phrase.of("{seen} of the code range was passed, the largest step is {step}")
                .with("seen", Quantity.number(turn.codesSeenShare()), "%")
                .with("step", new Quantity(2 * Math.PI * turn.largestStep(), Dimension.ANGLE), "deg"));
        if (field) {
            sheet.detail(Phrase.of("the field swings by {swing} over the turn")
                    .with("swing", Quantity.number(turn.signalSwing()), "%"));
        }
        turn.faults().stream().sorted().forEach(f -> sheet.remark(words(f)));
    }

    private static String words(HandTurn.Fault fault) {
        return switch (fault) {
            case STANDS_STILL -> "the reading hardly moves: a magnet magnetised along its axis, loose, or not there";
            case WRONG_RATIO -> "the reading makes whole turns, but not one: more than one pole pair, or wrong counts";
            case SLIPS -> "the reading makes no whole number of turns: the magnet slips, or the turn was not one";
            case REVERSED -> "the reading falls while the shaft turns the way that was called forwards";
            case MISSING_CODES -> "parts of the code range never came";
            case FIELD_SWINGS ->
                "the field swings more than a placed magnet makes it: off centre, chipped, or iron nearby";
        };
    }
}
