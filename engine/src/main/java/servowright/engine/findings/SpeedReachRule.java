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
import servowright.engine.prediction.Reach;
import servowright.engine.quantity.Quantity;

/** The speed a duty asks against the speed the axis reaches with its supply empty. */
final class SpeedReachRule implements DutyRule {
    /** Speed to have beyond the asked one, on top of the voltage reserve: the parts of one batch differ by as much. */
    private static final double MARGIN = 0.05;

    @Override
    public String id() {
        return "speed-reach";
    }

    @Override
    public Area area() {
        return Area.FIT;
    }

    @Override
    public String source() {
        return "steady-state dq voltage equations, Krause, Wasynczuk, Sudhoff, Pekarek, Analysis of Electric Machinery and"
                + " Drive Systems, 3rd ed. 2013, ch. 4 (recalled); 5 % margin is common practice";
    }

    @Override
    public boolean asksForDuty() {
        return true;
    }

    @Override
    public Optional<Finding> judge(AxisPrediction axis, DutyPrediction duty) {
        if (!duty.moves()) {
            return Optional.empty();
        }
        return Optional.of(duty.reach().fold(a -> answered(axis, duty, a), m -> Draft.notShown(this, axis.name(), m)));
    }

    private Finding answered(AxisPrediction axis, DutyPrediction duty, Answer<Reach> answer) {
        Reach r = answer.value();
        Judgement judgement = Judge.atLeast(r.reaches(), r.asked(), MARGIN);
        return Draft.of(this, axis.name())
                .verdict(judgement.verdict())
                .says(saying(
                                axis,
                                duty,
                                "asks {asked}, gets {gets} at {supply} (supply empty), {reserve} kept for control")
                        .with("asked", r.asked(), "rpm")
                        .with("gets", r.reaches(), "rpm")
                        .with("supply", r.supply(), "V")
                        .with("reserve", r.reserve(), "%"))
                .because(Phrase.of(
                                "the turning magnets and the warm winding use the voltage up; without load it would be"
                                        + " {noLoad}")
                        .with("noLoad", r.noLoad(), "rpm"))
                .remedy(remedy(r))
                .wouldSettle("a narrower speed constant", "a spin of the motor with the terminals open")
                .atLeast(r.reaches(), r.asked(), "rpm")
                .from(answer)
                .done();
    }

    private static Phrase remedy(Reach r) {
        Known reaches = r.reaches();
        if (reaches.si() <= 0) {
            return Phrase.of("the resistance alone takes the voltage: less torque, or a supply above {needed}")
                    .with("needed", r.needed().value(), "V");
        }
        double share = reaches.si() / (r.asked().si() * (1 + MARGIN));
        if (share >= 1) {
            return Phrase.of("less torque while at speed, or a supply above {needed}")
                    .with("needed", r.needed().value(), "V");
        }
        return Phrase.of("a gear with {fewer} fewer motor turns, a winding with {more} more rpm per volt, or less speed"
                        + " below {needed}")
                .with("fewer", wholePercentAtLeast(1 - share), "%")
                .with("more", wholePercentAtLeast(1 / share - 1), "%")
                .with("needed", r.needed().value(), "V");
    }

    /** Rounded to the safe side. */
    private static Quantity wholePercentAtLeast(double share) {
        return Quantity.number(Math.ceil(100 * share) / 100);
    }
}
