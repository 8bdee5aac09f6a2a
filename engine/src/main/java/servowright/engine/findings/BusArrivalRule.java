package servowright.engine.findings;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import servowright.engine.acceptance.MessageSeen;
import servowright.engine.acceptance.PlanSeen;
import servowright.engine.acceptance.Verdict;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome.Need;
import servowright.engine.known.Phrase;

/** No arrival varies by more than the guaranteed response time allows. */
final class BusArrivalRule implements SeenRule {
    @Override
    public String id() {
        return "bus-arrival";
    }

    @Override
    public String source() {
        return "Davis, Burns, Bril, Lukkien, Real-Time Systems 35 (2007) 239-272 (abstract seen, equations recalled)";
    }

    @Override
    public Stream<Draft> look(PlanSeen seen, String subject) {
        List<MessageSeen> bounded = seen.messages().stream()
                .filter(m -> m.seen().isPresent() && m.allowedNs() != Long.MAX_VALUE)
                .toList();
        if (bounded.isEmpty()) {
            return Stream.of();
        }
        return Stream.of(seen.timed() ? judged(bounded, subject) : notTimed(subject));
    }

    private Draft notTimed(String subject) {
        return Draft.of(this, subject)
                .verdict(Verdict.NOT_SHOWN)
                .says(Phrase.of("whether messages arrive in time cannot be read from these stamps"))
                .remedy(Phrase.of("capture with stamps of the controller, not of the computer"))
                .needs(List.of(new Need(
                        "times of the frames on the bus",
                        "capture with stamps of the controller, not of the computer")));
    }

    private Draft judged(List<MessageSeen> bounded, String subject) {
        MessageSeen worst = bounded.stream()
                .max(Comparator.comparingDouble(BusArrivalRule::use))
                .orElseThrow();
        long late = bounded.stream().filter(m -> use(m) > 1).count();
        Known varied = BusRule.time(worst.variedNs());
        Known allowed = BusRule.time(worst.allowedNs());
        return Draft.of(this, subject)
                .verdict(late > 0 ? Verdict.FAILS : Verdict.HOLDS)
                .says(Phrase.of("the arrival of {message} varies by at least {varied}, the plan allows {allowed}")
                        .with("message", worst.planned().name())
                        .with("varied", varied, "ms")
                        .with("allowed", allowed, "ms"))
                .because(Phrase.of(
                                "shortest and longest time between two frames; {late} of {count} messages vary by more"
                                        + " than they may")
                        .with("late", (double) late)
                        .with("count", bounded.size()))
                .remedy(Phrase.of(
                        "if one node is to blame, its program; if many are, traffic that is not in the plan, or"
                                + " errors on the bus"))
                .atMost(varied, allowed, "ms");
    }

    private static double use(MessageSeen m) {
        return (double) m.variedNs() / m.allowedNs();
    }
}
