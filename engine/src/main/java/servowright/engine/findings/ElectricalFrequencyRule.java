package servowright.engine.findings;

import java.util.Optional;
import servowright.engine.acceptance.Judge;
import servowright.engine.acceptance.Judgement;
import servowright.engine.findings.Finding.Area;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;
import servowright.engine.machine.Declared;
import servowright.engine.machine.DriveFigure;
import servowright.engine.prediction.AxisPrediction;
import servowright.engine.prediction.DutyPrediction;

/** The electrical frequency at top speed against the highest one the drive commutates. */
final class ElectricalFrequencyRule implements DutyRule {
    /** Room for overshoot of the speed. */
    private static final double MARGIN = 0.10;

    @Override
    public String id() {
        return "electrical-frequency";
    }

    @Override
    public Area area() {
        return Area.FIT;
    }

    @Override
    public String source() {
        return "the drive's own limit; f = p n / 60; 10 % margin is common practice";
    }

    @Override
    public Optional<Finding> judge(AxisPrediction axis, DutyPrediction duty) {
        if (!duty.moves()) {
            return Optional.empty();
        }
        Outcome<Declared> limit = axis.parts().drive(DriveFigure.ELECTRICAL_FREQUENCY);
        return Optional.of(limit.fold(
                l -> duty.frequency()
                        .fold(
                                f -> answered(axis, duty, f, l.value().known()),
                                m -> Draft.notShown(this, axis.name(), m)),
                m -> Draft.notShown(this, axis.name(), m)));
    }

    private Finding answered(AxisPrediction axis, DutyPrediction duty, Answer<Known> frequency, Known limit) {
        Known asked = frequency.value();
        Judgement judgement = Judge.atMost(asked, limit, MARGIN);
        return Draft.of(this, axis.name())
                .verdict(judgement.verdict())
                .says(saying(axis, duty, "asks {asked} electrical, the drive makes {limit}")
                        .with("asked", asked, "Hz")
                        .with("limit", limit, "Hz"))
                .because(Phrase.of("every pole pair is one electrical turn per turn of the shaft"))
                .remedy(Phrase.of("a motor with fewer pole pairs, less gear, or a drive for {comfortable}")
                        .with("comfortable", asked.times(1 / (1 - MARGIN)).value(), "Hz"))
                .wouldSettle("the electrical frequency", "the exact top speed of the duty")
                .atMost(asked, limit, "Hz")
                .from(frequency)
                .done();
    }
}
