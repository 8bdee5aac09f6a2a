package servowright.engine.findings;

import java.util.Optional;
import servowright.engine.acceptance.Judge;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;
import servowright.engine.prediction.AxisPrediction;
import servowright.engine.prediction.DutyPrediction;
import servowright.engine.prediction.LineStudy;

/** Edges of an incremental sensor at top speed against what the input of the drive counts. */
final class EdgeRateRule implements DutyRule {
    /** Edges do not come evenly: a phase error of 20 degrees brings two together by a fifth. */
    private static final double MARGIN = 0.2;

    @Override
    public String id() {
        return "edge-rate";
    }

    @Override
    public Finding.Area area() {
        return Finding.Area.MOUNT;
    }

    @Override
    public String source() {
        return "the input's own limit; 20 % margin for edges that do not come evenly is common practice";
    }

    @Override
    public Optional<Finding> judge(AxisPrediction axis, DutyPrediction duty) {
        return LineStudy.edges(axis.parts(), duty.duty())
                .flatMap(edges -> edges.fold(a -> Optional.of(answered(axis, duty, a)), m -> Optional.empty()));
    }

    private Finding answered(AxisPrediction axis, DutyPrediction duty, Answer<Known> answer) {
        Known edges = answer.value();
        Known limit = LineStudy.edgeLimit(axis.parts()).orElseThrow();
        return Draft.of(this, axis.name())
                .verdict(Judge.atMost(edges, limit, MARGIN).verdict())
                .says(saying(axis, duty, "{edges} edges a second at top speed, the input counts {limit}")
                        .with("edges", edges, "kHz")
                        .with("limit", limit, "kHz"))
                .because(Phrase.of(
                        "edges that come too fast are lost without a sign, and the angle is off from then on"))
                .remedy(Phrase.of("fewer lines a turn, a faster input or a shorter filter, or less speed"))
                .wouldSettle("the edge rate", "counts between two index marks at top speed: always the same")
                .atMost(edges, limit, "kHz")
                .from(answer)
                .done();
    }
}
