package servowright.engine.findings;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import servowright.engine.acceptance.PlanSeen;
import servowright.engine.acceptance.Verdict;
import servowright.engine.capture.IdTraffic;
import servowright.engine.known.Phrase;

/** Nothing is sent that the plan does not know. */
final class BusUnplannedRule implements SeenRule {
    private static final int NAMED = 6;

    @Override
    public String id() {
        return "bus-not-planned";
    }

    @Override
    public String source() {
        return "common practice, no source: guarantees hold for the traffic that was planned";
    }

    @Override
    public Stream<Draft> look(PlanSeen seen, String subject) {
        if (seen.messages().isEmpty()) {
            return Stream.of();
        }
        List<IdTraffic> strange = seen.unplanned();
        long heldNs = strange.stream().mapToLong(IdTraffic::heldNs).sum();
        long allNs = Math.max(1, seen.capture().traffic().heldNs());
        if (strange.isEmpty()) {
            return Stream.of(Draft.of(this, subject).says(Phrase.of("every frame belongs to a message of the plan")));
        }
        String names = strange.stream().limit(NAMED).map(IdTraffic::label).collect(Collectors.joining(", "));
        return Stream.of(Draft.of(this, subject)
                .verdict(Verdict.TIGHT)
                .says(Phrase.of("{count} identifiers are not in the plan and take {share} of the traffic: {names}")
                        .with("count", strange.size())
                        .with("share", BusRule.share((double) heldNs / allNs), "%")
                        .with("names", strange.size() > NAMED ? names + " and more" : names))
                .because(Phrase.of("what is not in the plan delays what is"))
                .remedy(Phrase.of("add them to bus / messages, or switch them off")));
    }
}
