package servowright.engine.findings;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import servowright.engine.acceptance.Judge;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;
import servowright.engine.machine.BusFigure;
import servowright.engine.prediction.BusPlan;
import servowright.engine.prediction.PlannedMessage;
import servowright.engine.prediction.Predictions;

/** The watchdog of an axis against the longest time that may pass between two commands while all is well. */
final class BusWatchdogRule implements BusRule {
    /** One command lost and sent again must not stop the machine. */
    private static final double MARGIN = 0.50;

    private static final String COMMAND = " command";

    @Override
    public String id() {
        return "bus-watchdog";
    }

    @Override
    public String source() {
        return "common practice, no source: a watchdog of 1.5 times the longest gap between two commands or more";
    }

    @Override
    public List<Finding> examine(Predictions predictions) {
        Optional<BusPlan> plan = predictions.bus().found();
        Optional<PlannedMessage> worst = plan.flatMap(p -> p.messages().stream()
                .filter(m -> m.name().endsWith(COMMAND) && m.response().worstNs() != Long.MAX_VALUE)
                .max(Comparator.comparingLong(BusWatchdogRule::gapNs)));
        Optional<Known> watchdog = predictions.machine().bus().figures().known(BusFigure.WATCHDOG);
        if (worst.isEmpty()) {
            return List.of();
        }
        if (watchdog.isEmpty()) {
            return List.of(unsaid());
        }
        return predictions.bus().fold(a -> List.of(judged(a, watchdog.get(), worst.get())), m -> List.of());
    }

    /** Longest time from one command to the next: the first as early, the second as late as can be. */
    private static long gapNs(PlannedMessage m) {
        return m.response().message().periodNs() + m.arrivalJitterNs();
    }

    private Finding unsaid() {
        return Draft.notShown(
                this,
                SUBJECT,
                new Outcome.Missing<>(List.of(new Outcome.Need(
                        "the watchdog of the axes: without one a motor runs on when the host dies or the cable is off",
                        "set one in each drive and state it in machine.yaml, bus, for example watchdog: 25 ms"))));
    }

    private Finding judged(Answer<BusPlan> answer, Known watchdog, PlannedMessage worst) {
        Known gap = BusRule.time(gapNs(worst));
        return Draft.of(this, SUBJECT)
                .verdict(Judge.atLeast(watchdog, gap, MARGIN).verdict())
                .says(Phrase.of("an axis stops {watchdog} after its last command; two commands lie up to {gap} apart")
                        .with("watchdog", watchdog, "ms")
                        .with("gap", gap, "ms"))
                .because(Phrase.of("{message}, period and worst variation of its arrival; a dead host or a pulled cable"
                                + " lets the motors run on for the watchdog's time")
                        .with("message", worst.name()))
                .remedy(Phrase.of("a watchdog of {needed} or more, or commands more often")
                        .with("needed", gap.times(1 + MARGIN), "ms"))
                .wouldSettle("the watchdog", "stop the host with the axis turning slowly and time the stop")
                .atLeast(watchdog, gap, "ms")
                .from(answer)
                .done();
    }
}
