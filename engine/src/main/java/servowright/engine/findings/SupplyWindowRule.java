package servowright.engine.findings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import servowright.engine.acceptance.Judge;
import servowright.engine.acceptance.Judgement;
import servowright.engine.findings.Finding.Area;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;
import servowright.engine.prediction.Predictions;
import servowright.engine.prediction.SupplyWindow;

/** The supply, from empty to full, against the voltage a drive takes and the voltage at which it trips. */
final class SupplyWindowRule implements Rule {
    /** Share of each limit to stay away from: supplies rise a little when axes brake and sag when they pull. */
    private static final double MARGIN = 0.05;

    @Override
    public String id() {
        return "supply-window";
    }

    @Override
    public Area area() {
        return Area.SUPPLY;
    }

    @Override
    public String source() {
        return "the drive's own limits; 5 % margin is common practice";
    }

    @Override
    public List<Finding> examine(Predictions predictions) {
        List<Finding> found = new ArrayList<>();
        predictions.windows().forEach((drive, window) -> found.add(judge(drive, window)));
        return found;
    }

    private Finding judge(String drive, Outcome<SupplyWindow> window) {
        return window.fold(a -> answered(drive, a), m -> Draft.notShown(this, drive, m));
    }

    private Finding answered(String drive, Answer<SupplyWindow> answer) {
        SupplyWindow w = answer.value();
        List<Finding> sides = new ArrayList<>();
        sides.add(above(drive, answer, w.most(), "takes at most {limit}"));
        w.trip().ifPresent(trip -> sides.add(above(drive, answer, trip, "trips at {limit}")));
        sides.add(below(drive, answer));
        return sides.stream()
                .min(Comparator.comparing(Finding::verdict).thenComparingDouble(Finding::relativeRoom))
                .orElseThrow();
    }

    private Finding above(String drive, Answer<SupplyWindow> answer, Known limit, String words) {
        Known full = answer.value().full();
        Judgement judgement = Judge.atMost(full, limit, MARGIN);
        return Draft.of(this, drive)
                .verdict(judgement.verdict())
                .says(Phrase.of("supply rises to {full}, " + words)
                        .with("full", full, "V")
                        .with("limit", limit, "V"))
                .because(Phrase.of("a full supply stands higher still while axes brake"))
                .remedy(Phrase.of("a supply that stays below {comfortable}, or a drive for more voltage")
                        .with("comfortable", limit.times(1 - MARGIN).value(), "V"))
                .wouldSettle("the highest voltage of the supply", "a voltmeter on the full supply")
                .atMost(full, limit, "V")
                .from(answer)
                .done();
    }

    private Finding below(String drive, Answer<SupplyWindow> answer) {
        Known empty = answer.value().empty();
        Known least = answer.value().least();
        Judgement judgement = Judge.atLeast(empty, least, MARGIN);
        return Draft.of(this, drive)
                .verdict(judgement.verdict())
                .says(Phrase.of("supply falls to {empty}, needs at least {limit}")
                        .with("empty", empty, "V")
                        .with("limit", least, "V"))
                .because(Phrase.of("an empty supply sags further under load"))
                .remedy(Phrase.of("switch off earlier, above {comfortable}, or a drive for less voltage")
                        .with("comfortable", least.times(1 + MARGIN).value(), "V"))
                .wouldSettle("the lowest voltage of the supply", "a voltmeter on the empty supply under load")
                .atLeast(empty, least, "V")
                .from(answer)
                .done();
    }
}
