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

/** The current for the RMS torque of a duty against what drive and motor stand for good. */
final class ContinuousCurrentRule implements DutyRule {
    /** Room for heat that is not counted: iron loss, a warm drive, a dirty fin. */
    private static final double MARGIN = 0.15;

    @Override
    public String id() {
        return "continuous-current";
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
        return Optional.of(axis.continuousLimit()
                .fold(
                        limit -> duty.current()
                                .fold(
                                        asked -> answered(axis, duty, asked, limit),
                                        m -> Draft.notShown(this, axis.name(), m)),
                        m -> Draft.notShown(this, axis.name(), m)));
    }

    private Finding answered(
            AxisPrediction axis, DutyPrediction duty, Answer<Current> asked, Answer<CurrentLimit> limit) {
        Known rms = asked.value().rms();
        Known most = limit.value().current();
        Judgement judgement = Judge.atMost(rms, most, MARGIN);
        double over = rms.si() / (most.si() * (1 - MARGIN));
        return Draft.of(this, axis.name())
                .verdict(judgement.verdict())
                .says(saying(axis, duty, "asks {asked} RMS over the cycle (phase peak), {by} gives {limit} for good")
                        .with("asked", rms, "A")
                        .with("by", limit.value().setBy())
                        .with("limit", most, "A"))
                .because(Phrase.of("torque per ampere is {kt} with warm magnets")
                        .with("kt", asked.value().torqueConstant(), "N m/A"))
                .remedy(Phrase.of("{less} less load or longer rests, {more} more gear, or {needed} for good")
                        .with("less", Quantity.number(Math.max(0, 1 - 1 / over)), "%")
                        .with("more", Quantity.number(Math.max(0, over - 1)), "%")
                        .with("needed", rms.times(1 / (1 - MARGIN)).value(), "A"))
                .wouldSettle("a narrower torque per ampere", "a spin of the motor with the terminals open")
                .atMost(rms, most, "A")
                .worked(asked.working().then(limit.working()), Draft.both(asked.assumptions(), limit.assumptions()))
                .done();
    }
}
