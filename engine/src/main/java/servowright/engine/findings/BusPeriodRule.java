package servowright.engine.findings;

import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;
import servowright.engine.acceptance.Judge;
import servowright.engine.acceptance.MessageSeen;
import servowright.engine.acceptance.PlanSeen;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;

/** Every message comes at the period of the plan. */
final class BusPeriodRule implements SeenRule {
    private static final double MOST_OFF = 0.05;
    private static final double COMFORT = 0.8;

    @Override
    public String id() {
        return "bus-message-period";
    }

    @Override
    public String source() {
        return "common practice, no source: 5 % off the promised period fails, 1 % is tight";
    }

    @Override
    public Stream<Draft> look(PlanSeen seen, String subject) {
        Optional<MessageSeen> worst = seen.messages().stream()
                .filter(m -> m.planned().steady() && m.periodNs() > 0)
                .max(Comparator.comparingDouble(m -> Math.abs(m.off())));
        return worst.stream().map(m -> draft(m, subject));
    }

    private Draft draft(MessageSeen worst, String subject) {
        Known off = BusRule.share(Math.abs(worst.off()));
        Known most = BusRule.share(MOST_OFF);
        return Draft.of(this, subject)
                .verdict(Judge.atMost(off, most, COMFORT).verdict())
                .says(Phrase.of("{message} comes every {seen}, planned {planned}: {off} off")
                        .with("message", worst.planned().name())
                        .with("seen", BusRule.time(Math.round(worst.periodNs())), "ms")
                        .with("planned", BusRule.time(worst.plannedNs()), "ms")
                        .with("off", off, "%"))
                .because(Phrase.of("the message whose period is off most; mean over {count} intervals")
                        .with("count", (double)
                                worst.seen().orElseThrow().period().count()))
                .remedy(Phrase.of(
                        worst.off() > 0
                                ? "find what keeps the sender: a loop that takes longer than its period, or waits for answers"
                                : "correct the plan or the sender; at twice the rate look for a second sender"))
                .atMost(off, most, "%");
    }
}
