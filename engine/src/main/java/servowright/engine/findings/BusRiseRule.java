package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import servowright.engine.acceptance.Judge;
import servowright.engine.acceptance.Judgement;
import servowright.engine.findings.Finding.Area;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Outcome.Need;
import servowright.engine.known.Phrase;
import servowright.engine.machine.SupplyFigure;
import servowright.engine.machine.SupplyKind;
import servowright.engine.prediction.AxisPrediction;
import servowright.engine.prediction.DutyPrediction;
import servowright.engine.prediction.Release;
import servowright.engine.prediction.Returned;

/** The voltage that the moving energy lifts the capacitors to, where the supply takes nothing back: mains supplies. */
final class BusRiseRule implements DutyRule {
    private static final double MARGIN = 0.10;

    @Override
    public String id() {
        return "bus-rise";
    }

    @Override
    public Area area() {
        return Area.SUPPLY;
    }

    @Override
    public String source() {
        return "energy of a capacitor, C V²/2; that a mains supply takes nothing back is common knowledge";
    }

    @Override
    public Optional<Finding> judge(AxisPrediction axis, DutyPrediction duty) {
        boolean takesNothing = axis.parts()
                .supply()
                .filter(s -> s.kind() == SupplyKind.MAINS)
                .filter(s -> s.figures().get(SupplyFigure.TAKES_BACK).isEmpty())
                .isPresent();
        if (!takesNothing || !duty.moves()) {
            return Optional.empty();
        }
        return Optional.of(duty.release()
                .fold(
                        release -> duty.returned()
                                .fold(
                                        returned -> judge(axis, duty, release.value(), returned),
                                        m -> Draft.notShown(this, axis.name(), m)),
                        m -> Draft.notShown(this, axis.name(), m)));
    }

    private Finding judge(AxisPrediction axis, DutyPrediction duty, Release release, Answer<Returned> returned) {
        return returned.value()
                .risesTo()
                .map(to -> answered(axis, duty, release, returned, to))
                .orElseGet(() -> Draft.notShown(
                        this,
                        axis.name(),
                        new Missing<>(List.of(new Need(
                                "the capacitance at the supply", "add up what is printed on the capacitors")))));
    }

    private Finding answered(
            AxisPrediction axis, DutyPrediction duty, Release release, Answer<Returned> returned, Known to) {
        Known most = release.most();
        Judgement judgement = Judge.atMost(to, most, MARGIN);
        return Draft.of(this, axis.name())
                .verdict(judgement.verdict())
                .says(saying(axis, duty, "stopping lifts the supply lines to {to} at worst, the drive stands {most}")
                        .with("to", to, "V")
                        .with("most", most, "V"))
                .because(Phrase.of("{energy} of motion, and a mains supply takes nothing back")
                        .with("energy", returned.value().energy(), "J"))
                .remedy(Phrase.of("a brake resistor, more capacitance, or slower stops that the winding eats up"))
                .wouldSettle("the voltage while stopping", "a scope at the supply lines during a gentle stop")
                .atMost(to, most, "V")
                .from(returned)
                .done();
    }
}
