package servowright.engine.capture;

import java.util.ArrayList;
import java.util.List;
import servowright.engine.bus.BitTiming;
import servowright.engine.known.Phrase;
import servowright.engine.quantity.Quantity;

/**
 * What is odd about a CAN interface by its own account. <b>Source.</b> meaning of states and counters: public kernel documentation of CAN
 * interfaces (seen).
 */
public final class LinkRemarks {
    /** Rates this near are the same: what a controller rounds is less, and ten bits without an edge bear it. */
    private static final double NEAR_RATES = 0.005;

    private final LinkReport link;
    private final List<Phrase> remarks = new ArrayList<>();

    private LinkRemarks(LinkReport link) {
        this.link = link;
    }

    /** What is odd, most pressing first. */
    public static List<Phrase> of(LinkReport link) {
        LinkRemarks all = new LinkRemarks(link);
        all.state();
        all.timing("", link.nominal().stream().toList());
        all.timing("data ", link.data().stream().toList());
        all.counts();
        return List.copyOf(all.remarks);
    }

    private void state() {
        if (link.state().equals(LinkReport.OFF)) {
            remarks.add(
                    Phrase.of("the controller has left the bus: its frames met errors until its counter passed 255"));
        } else if (link.state().equals(LinkReport.STOPPED)) {
            remarks.add(Phrase.of("the interface is not up"));
        } else if (!link.state().equals(LinkReport.ACTIVE)) {
            long transmit = link.counters().getOrDefault("tx", 0L);
            long receive = link.counters().getOrDefault("rx", 0L);
            String side = transmit > receive
                    ? "what it sends is not acknowledged or destroyed"
                    : receive > transmit ? "what it hears is broken: rate, sample point, terminators or noise" : "";
            remarks.add(Phrase.of("the controller is in state {state}" + (side.isEmpty() ? "" : "; " + side))
                    .with("state", link.state()));
        }
        if (link.restartMs().filter(ms -> ms == 0).isPresent() && !link.state().equals(LinkReport.STOPPED)) {
            remarks.add(Phrase.of("once off the bus it stays off until somebody restarts it: restart-ms is 0"));
        }
        if (link.modes().contains("LOOPBACK") || link.modes().contains("LISTEN-ONLY")) {
            remarks.add(Phrase.of("it is not an ordinary node now: {modes}").with("modes", link.modes()));
        }
    }

    private void timing(String which, List<LinkReport.Phase> phases) {
        for (LinkReport.Phase phase : phases) {
            phase.timing().ifPresent(t -> {
                if (Math.abs(t.bitsPerSecond() / phase.bitsPerSecond() - 1) > NEAR_RATES) {
                    remarks.add(Phrase.of("its " + which + "segments give {really}, not the {stated} it states")
                            .with("really", rate(t.bitsPerSecond()), "kbit/s")
                            .with("stated", rate(phase.bitsPerSecond()), "kbit/s"));
                }
                remarks.add(bears(which, t));
            });
        }
    }

    private static Phrase bears(String which, BitTiming t) {
        return Phrase.of("its " + which
                        + "timing bears clocks that are off by {bears}: a jump of {sjw} in {quanta} quanta")
                .with("bears", Quantity.number(t.clockTolerance()), "%")
                .with("sjw", t.sjw())
                .with("quanta", t.quanta());
    }

    private void counts() {
        count("bus-errors", "{count} errors on the bus were seen");
        count("error-pass", "it went error passive {count} times");
        count("bus-off", "it had to leave the bus {count} times");
        count("re-started", "it was started again {count} times after it had left the bus");
        count("RX dropped", "{count} frames that came were dropped by the computer");
        count("RX overrun", "{count} frames came faster than they were fetched");
        count("TX dropped", "{count} frames to send found the queue full");
    }

    private void count(String what, String words) {
        long n = link.count(what);
        if (n > 0) {
            remarks.add(Phrase.of(words).with("count", (double) n));
        }
    }

    private static Quantity rate(double bitsPerSecond) {
        return Quantity.of(bitsPerSecond, "bit/s");
    }
}
