package servowright.engine.findings;

import java.util.Optional;
import servowright.engine.acceptance.Judge;
import servowright.engine.acceptance.Judgement;
import servowright.engine.findings.Finding.Area;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;
import servowright.engine.prediction.AxisPrediction;
import servowright.engine.prediction.DutyPrediction;
import servowright.engine.prediction.Release;

/** The back-EMF at top speed against what the drive stands when its bridge lets go. */
final class OverspeedRule implements DutyRule {
    /** Where the supply's full voltage is not known, this much below what the drive stands is comfortable. */
    private static final double MARGIN = 0.10;

    @Override
    public String id() {
        return "overspeed-into-bus";
    }

    @Override
    public Area area() {
        return Area.SUPPLY;
    }

    @Override
    public String source() {
        return "line voltage of the turning magnets √3 p λ ω, rectified by the diodes of the bridge";
    }

    @Override
    public Optional<Finding> judge(AxisPrediction axis, DutyPrediction duty) {
        return duty.moves()
                ? Optional.of(
                        duty.release().fold(a -> answered(axis, duty, a), m -> Draft.notShown(this, axis.name(), m)))
                : Optional.empty();
    }

    private Finding answered(AxisPrediction axis, DutyPrediction duty, Answer<Release> answer) {
        Release r = answer.value();
        Known comfortable = r.full().orElseGet(() -> r.most().times(1 - MARGIN));
        Judgement judgement = Judge.atMost(r.openPeak(), r.most(), comfortable);
        return Draft.of(this, axis.name())
                .verdict(judgement.verdict())
                .says(saying(axis, duty, "let go at top speed the magnets make {open}, the drive stands {most}")
                        .with("open", r.openPeak(), "V")
                        .with("most", r.most(), "V"))
                .because(reason(r))
                .remedy(Phrase.of(
                                "less speed, a brake resistor or clamp below {most}, or short the phases instead of letting go")
                        .with("most", r.most(), "V"))
                .wouldSettle("a narrower speed constant", "a spin of the motor with the terminals open")
                .atMost(r.openPeak(), r.most(), "V")
                .from(answer)
                .done();
    }

    private static Phrase reason(Release r) {
        String driven = r.driven() ? "; the load can turn it by itself, and nothing then bounds the speed" : "";
        return Phrase.of("above {feeding} the diodes lift the supply lines past what the drive stands" + driven)
                .with("feeding", r.feeding(), "rpm");
    }
}
