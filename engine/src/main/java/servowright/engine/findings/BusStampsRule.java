package servowright.engine.findings;

import java.util.List;
import java.util.stream.Stream;
import servowright.engine.acceptance.PlanSeen;
import servowright.engine.acceptance.Verdict;
import servowright.engine.capture.Remark;
import servowright.engine.capture.Remark.Kind;
import servowright.engine.capture.Remarks;
import servowright.engine.known.Outcome.Need;
import servowright.engine.known.Phrase;

/** Whether the stamps of a capture can be times on the bus. */
final class BusStampsRule implements SeenRule {
    private static final String REMEDY = "capture with stamps of the controller";

    @Override
    public String id() {
        return "bus-stamps";
    }

    @Override
    public String source() {
        return "frames cannot be closer than they are long: ISO 11898-1, frame format (text not opened)";
    }

    @Override
    public Stream<Draft> look(PlanSeen seen, String subject) {
        List<Remark> some = Remarks.of(seen.capture().traffic()).stream()
                .filter(r -> r.kind() == Kind.STAMPS)
                .toList();
        Draft draft = Draft.of(this, subject);
        if (some.isEmpty()) {
            return Stream.of(draft.says(Phrase.of("the stamps can be times on the bus")));
        }
        return Stream.of(draft.verdict(seen.timed() ? Verdict.TIGHT : Verdict.NOT_SHOWN)
                .says(some.get(0).words())
                .because(Phrase.of("times between frames are only as good as the stamps"))
                .remedy(Phrase.of(REMEDY))
                .needs(seen.timed() ? List.of() : List.of(new Need("times of the frames on the bus", REMEDY))));
    }
}
