package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import servowright.engine.acceptance.Verdict;
import servowright.engine.bench.AngleEvidence;
import servowright.engine.bench.IdentifiedAxis;
import servowright.engine.encoder.HandTurn;
import servowright.engine.known.Phrase;
import servowright.engine.quantity.Quantity;

/** What the last turn by hand showed: a sensor that does not follow turn for turn cannot be calibrated. */
final class HandTurnRule implements SensorBenchRule {
    @Override
    public String id() {
        return "hand-turn";
    }

    @Override
    public String source() {
        return "a magnet with one north and one south pole gives one turn per turn; a hand stops within 6 %, a placed"
                + " magnet swings by less than 5 %: common practice";
    }

    @Override
    public Optional<Finding> judge(IdentifiedAxis axis) {
        return axis.saw(AngleEvidence.Turned.class)
                .reduce((first, second) -> second)
                .map(seen -> answered(axis, seen));
    }

    private Finding answered(IdentifiedAxis axis, AngleEvidence.Turned seen) {
        HandTurn turn = seen.turn();
        List<HandTurn.Fault> faults = turn.faults().stream()
                .filter(f -> f != HandTurn.Fault.REVERSED)
                .sorted()
                .toList();
        String words = faults.isEmpty()
                ? "magnet and counts are as they should be"
                : faults.stream().map(HandTurnRule::words).collect(Collectors.joining("; "));
        return Draft.of(this, axis.name())
                .verdict(faults.isEmpty() ? Verdict.HOLDS : Verdict.FAILS)
                .says(Phrase.of("{test} read {turns} turns and {seen} of the code range for one turn")
                        .with("test", seen.test())
                        .with("turns", Math.rint(1000 * turn.turns()) / 1000)
                        .with("seen", Quantity.number(turn.codesSeenShare()), "%"))
                .because(Phrase.of(words))
                .remedy(Phrase.of("do not calibrate or commutate on it; put that right and turn again"))
                .done();
    }

    private static String words(HandTurn.Fault fault) {
        return switch (fault) {
            case STANDS_STILL -> "the magnet is magnetised along its axis, loose, or not there";
            case WRONG_RATIO -> "more than one pole pair, or wrong counts per turn";
            case SLIPS -> "the magnet slips, or the turn was not one";
            case REVERSED -> "the count runs the other way";
            case MISSING_CODES -> "parts of the code range never came";
            case FIELD_SWINGS -> "the field swings: magnet off centre or chipped, or iron nearby";
        };
    }
}
