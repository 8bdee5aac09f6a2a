package servowright.engine.acceptance;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import servowright.engine.bus.BitTiming;
import servowright.engine.bus.TimingPair;
import servowright.engine.capture.LinkReport;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.machine.Bus;
import servowright.engine.machine.BusFigure;
import servowright.engine.prediction.ControllerTiming;
import servowright.engine.quantity.Quantity;

/** An interface of a computer held against the bus it is to join: its rates, and its timing beside that of each declared controller. */
public record LinkCheck(Verdict verdict, Phrase words) {
    /** All that can be said; worst first. */
    public static List<LinkCheck> of(LinkReport link, Bus bus) {
        List<LinkCheck> all = new ArrayList<>();
        link.nominal().ifPresent(p -> rate("bit rate", p, bus.figures().known(BusFigure.RATE), all));
        Optional<Known> data = bus.figures().known(BusFigure.DATA_RATE);
        link.data().ifPresent(p -> rate("rate of data", p, data, all));
        if (data.isPresent() && link.nominal().isPresent() && link.data().isEmpty()) {
            all.add(new LinkCheck(
                    Verdict.FAILS, Phrase.of("the bus has FD frames, and the interface is not set for them")));
        }
        link.nominal()
                .flatMap(LinkReport.Phase::timing)
                .ifPresent(timing -> bus.controllers()
                        .forEach((name, c) ->
                                ControllerTiming.of(c).ifPresent(other -> all.add(pair(timing, name, other)))));
        all.sort((a, b) -> a.verdict().compareTo(b.verdict()));
        return List.copyOf(all);
    }

    private static void rate(String what, LinkReport.Phase phase, Optional<Known> planned, List<LinkCheck> all) {
        planned.ifPresent(p -> {
            double off = Math.abs(phase.rate() / p.si() - 1);
            double bears = 2 * phase.timing().map(BitTiming::clockTolerance).orElse(0.0);
            boolean same =
                    off + 2 * ControllerTiming.USUAL_DEVIATION <= Math.max(bears, 4 * ControllerTiming.USUAL_DEVIATION);
            all.add(new LinkCheck(
                    same ? Verdict.HOLDS : Verdict.FAILS,
                    Phrase.of(what + " {really}, planned {planned}")
                            .with("really", Quantity.of(phase.rate(), "bit/s"), "kbit/s")
                            .with("planned", p, "kbit/s")));
        });
    }

    private static LinkCheck pair(BitTiming own, String name, ControllerTiming other) {
        TimingPair pair = TimingPair.of(own, ControllerTiming.USUAL_DEVIATION, other.timing(), other.deviation());
        Verdict verdict = !pair.clocksHold() ? Verdict.FAILS : pair.samplesAgree() ? Verdict.HOLDS : Verdict.TIGHT;
        return new LinkCheck(
                verdict,
                Phrase.of(
                                "samples at {own} of a bit, {name} at {other}; bit clocks differ by up to {differs}, both timings bear"
                                        + " {bears}")
                        .with("own", Quantity.number(own.samplePoint()), "%")
                        .with("name", name)
                        .with("other", Quantity.number(other.timing().samplePoint()), "%")
                        .with("differs", Quantity.number(pair.differs()), "%")
                        .with("bears", Quantity.number(pair.bears()), "%"));
    }
}
