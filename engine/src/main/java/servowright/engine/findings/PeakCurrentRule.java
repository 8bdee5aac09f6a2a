package servowright.engine.findings;

import java.util.Optional;
import servowright.engine.acceptance.Judge;
import servowright.engine.acceptance.Judgement;
import servowright.engine.findings.Finding.Area;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;
import servowright.engine.prediction.AxisPrediction;
import servowright.engine.prediction.Current;
import servowright.engine.prediction.CurrentLimit;
import servowright.engine.prediction.DutyPrediction;
import servowright.engine.quantity.Quantity;

/** The current for the peak torque of a duty against what drive and motor stand briefly. */
final class PeakCurrentRule implements DutyRule {
    /** Room for the control to correct with. */
    private static final double MARGIN = 0.15;

    @Override
    public String id() {
        return "peak-current";
    }

    @Override
    public Area area() {
        return Area.FIT;
    }

    @Override
    public String source() {
        return "T = 3/2 p λ iq, Krause, Wasynczuk, Sudhoff, Pekarek 2013, ch. 4 (recalled); 15 % margin is common practice";
    }

    @Override
    public Optional<Finding> judge(AxisPrediction axis, DutyPrediction duty) {
        return Optional.of(axis.peakLimit()
                .fold(
                        limit -> duty.current()
                                .fold(
                                        asked -> answered(axis, duty, asked, limit),
                                        m -> Draft.notShown(this, axis.name(), m)),
                        m -> Draft.notShown(this, axis.name(), m)));
    }

    private Finding answered(
            AxisPrediction axis, DutyPrediction duty, Answer<Current> asked, Answer<CurrentLimit> limit) {
        Known peak = asked.value().peak();
        Known most = limit.value().current();
        Judgement judgement = Judge.atMost(peak, most, MARGIN);
        double over = peak.si() / (most.si() * (1 - MARGIN));
        return Draft.of(this, axis.name())
                .verdict(judgement.verdict())
                .says(saying(axis, duty, "asks {asked} on the q axis, {by} gives {limit}")
                        .with("asked", peak, "A")
                        .with("by", limit.value().setBy())
                        .with("limit", most, "A"))
                .because(Phrase.of("torque per ampere is {kt} with warm magnets")
                        .with("kt", asked.value().torqueConstant(), "N m/A"))
                .remedy(Phrase.of("{less} less acceleration or load, {more} more gear, or a drive for {needed}")
                        .with("less", Quantity.number(Math.max(0, 1 - 1 / over)), "%")
                        .with("more", Quantity.number(Math.max(0, over - 1)), "%")
                        .with("needed", peak.times(1 / (1 - MARGIN)).value(), "A"))
                .wouldSettle("a narrower torque per ampere", "a spin of the motor with the terminals open")
                .atMost(peak, most, "A")
                .worked(asked.working().then(limit.working()), Draft.both(asked.assumptions(), limit.assumptions()))
                .done();
    }
}
