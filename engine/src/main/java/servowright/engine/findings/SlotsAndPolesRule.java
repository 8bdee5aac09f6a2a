package servowright.engine.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import servowright.engine.acceptance.Verdict;
import servowright.engine.findings.Finding.Area;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;
import servowright.engine.motor.StarOfSlots;
import servowright.engine.prediction.Predictions;
import servowright.engine.prediction.SlotsAndPoles;

/** Whether slots and magnets, as counted, can be a three-phase motor that anyone would build. */
final class SlotsAndPolesRule implements Rule {
    /** Nobody builds a motor with coils on every tooth below this; the common ones lie from 0.866 up. */
    private static final Known USUAL = Known.number(0.85, Origin.ASSUMED, "common practice");

    @Override
    public String id() {
        return "slots-and-poles";
    }

    @Override
    public Area area() {
        return Area.MOTOR;
    }

    @Override
    public String source() {
        return "star of slots: Ouamara et al., Acta Polytechnica 59(2) 2019, 153-161 (abstract seen); 0.85 is common practice";
    }

    @Override
    public List<Finding> examine(Predictions predictions) {
        List<Finding> found = new ArrayList<>();
        predictions
                .slots()
                .forEach((motor, outcome) -> outcome.<Optional<Finding>>fold(
                                a -> Optional.of(judge(motor, a)), m -> Optional.empty())
                        .ifPresent(found::add));
        return found;
    }

    private Finding judge(String motor, Answer<SlotsAndPoles> answer) {
        SlotsAndPoles s = answer.value();
        Draft draft = Draft.of(this, motor).from(answer);
        Phrase counted = Phrase.of("{slots} slots and {poles} magnets")
                .with("slots", s.slots())
                .with("poles", s.poles());
        if (s.winding() instanceof StarOfSlots.Impossible impossible) {
            return draft.verdict(Verdict.FAILS)
                    .says(continued(counted, " make no balanced winding"))
                    .because(Phrase.of(impossible.reason().words()))
                    .remedy(Phrase.of("count both once more: magnets with a scrap of steel, slots with a pencil"))
                    .done();
        }
        double factor = ((StarOfSlots.Balanced) s.winding()).windingFactor();
        Known found = Known.number(factor, Origin.DERIVED, "star of slots");
        Draft judged = draft.says(
                        continued(counted, " make a winding factor of {factor}").with("factor", found))
                .atLeast(found, USUAL, "");
        return factor >= USUAL.si()
                ? judged.done()
                : judged.verdict(Verdict.TIGHT)
                        .because(Phrase.of("hardly anyone winds every tooth at less than {usual}")
                                .with("usual", USUAL))
                        .remedy(Phrase.of("count both once more; a winding that spans several teeth is another matter"))
                        .done();
    }

    private static Phrase continued(Phrase start, String more) {
        return new Phrase(start.template() + more, start.figures());
    }
}
