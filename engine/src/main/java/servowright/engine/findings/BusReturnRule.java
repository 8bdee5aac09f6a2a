package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import servowright.engine.acceptance.Judge;
import servowright.engine.bus.ErrorState;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.machine.BusFigure;
import servowright.engine.machine.Figures;
import servowright.engine.prediction.Predictions;

/** A node that had to leave the bus should come back only after its watchdog has stopped it. */
final class BusReturnRule implements BusRule {
    private static final double MARGIN = 0.20;

    @Override
    public String id() {
        return "bus-off-return";
    }

    @Override
    public String source() {
        return "ISO 11898-1, 128 times 11 recessive bits (text not opened, recalled); that a drive should stop before it"
                + " comes back is common practice";
    }

    @Override
    public List<Finding> examine(Predictions predictions) {
        Figures<BusFigure> bus = predictions.machine().bus().figures();
        Optional<Known> restart = bus.known(BusFigure.RESTART);
        Optional<Known> watchdog = bus.known(BusFigure.WATCHDOG);
        Optional<Known> rate = bus.known(BusFigure.RATE);
        if (restart.isEmpty() || watchdog.isEmpty() || rate.isEmpty()) {
            return List.of();
        }
        Known recovery =
                BusRule.time(ErrorState.recoveryNs(Math.round(1e9 / rate.get().si())));
        Known away = restart.get().plus(recovery);
        return List.of(Draft.of(this, SUBJECT)
                .verdict(Judge.atLeast(away, watchdog.get(), MARGIN).verdict())
                .says(Phrase.of(
                                "a node that left the bus comes back after {away} at the earliest, its watchdog acts after"
                                        + " {watchdog}")
                        .with("away", away, "ms")
                        .with("watchdog", watchdog.get(), "ms"))
                .because(Phrase.of(
                                "wait of {restart} and {recovery} of quiet bus; back earlier, it moves on with what is"
                                        + " queued as if nothing had been")
                        .with("restart", restart.get(), "ms")
                        .with("recovery", recovery, "ms"))
                .remedy(Phrase.of("a longer restart wait, or a shorter watchdog"))
                .wouldSettle("the wait before a restart", "pull the cable of one node and time its return")
                .atLeast(away, watchdog.get(), "ms")
                .done());
    }
}
