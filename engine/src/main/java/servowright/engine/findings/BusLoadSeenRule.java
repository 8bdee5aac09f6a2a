package servowright.engine.findings;

import java.util.stream.Stream;
import servowright.engine.acceptance.Judge;
import servowright.engine.acceptance.PlanSeen;
import servowright.engine.capture.BusTraffic;
import servowright.engine.capture.Load;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;

/** The load that a capture shows, in its busiest tenth of a second. */
final class BusLoadSeenRule implements SeenRule {
    private static final double MARGIN = 0.30;
    private static final long WINDOW_NS = 100_000_000;

    @Override
    public String id() {
        return "bus-load-seen";
    }

    @Override
    public String source() {
        return "common practice, no source: at most 70 % of the bus over 100 ms; frames measured bit by bit";
    }

    @Override
    public Stream<Draft> look(PlanSeen seen, String subject) {
        BusTraffic traffic = seen.capture().traffic();
        return traffic.loads().stream()
                .filter(l -> l.windowNs() == WINDOW_NS)
                .filter(l -> traffic.stamps().elapsedNs() >= WINDOW_NS)
                .map(l -> draft(l, traffic, subject));
    }

    private Draft draft(Load load, BusTraffic traffic, String subject) {
        Known worst = BusRule.share(load.worst());
        Known all = BusRule.share(1);
        return Draft.of(this, subject)
                .verdict(Judge.atMost(worst, all, MARGIN).verdict())
                .says(Phrase.of("the busiest 100 ms are full to {worst}, the mean is {mean}")
                        .with("worst", worst, "%")
                        .with("mean", BusRule.share(traffic.meanLoad()), "%"))
                .because(Phrase.of("every frame with its real stuff bits"))
                .remedy(Phrase.of("see what is sent then; longer periods, fewer bytes, or FD frames"))
                .atMost(worst, all, "%");
    }
}
