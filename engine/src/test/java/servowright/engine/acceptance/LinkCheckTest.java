package servowright.engine.acceptance;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import servowright.engine.bus.BitTiming;
import servowright.engine.capture.LinkRemarks;
import servowright.engine.capture.LinkReport;
import servowright.engine.capture.LinkReport.Phase;
import servowright.engine.known.Phrase;
import servowright.engine.machine.Bus;
import servowright.engine.machine.BusFigure;
import servowright.engine.prediction.Invented;

/** An interface beside a bus of 1 Mbit/s whose controllers cut a bit into 1 + 5 + 1 + 1 quanta: sampled at 87.5 %. */
class LinkCheckTest {
    private static final BitTiming SAME = new BitTiming(80_000_000, 10, 5, 1, 1, 1);
    private static final BitTiming EARLY = new BitTiming(80_000_000, 10, 3, 2, 2, 1);
    private static final BitTiming HALF = new BitTiming(80_000_000, 20, 5, 1, 1, 1);

    private static LinkReport link(
            String state, Optional<Phase> nominal, Optional<Phase> data, Map<String, Long> counted) {
        return new LinkReport("can0", state, "", Map.of("tx", 0L, "rx", 0L), Optional.of(100L), nominal, data, counted);
    }

    private static LinkReport timed(BitTiming timing) {
        return link(
                LinkReport.ACTIVE, Optional.of(new Phase(1e6, 0.875, Optional.of(timing))), Optional.empty(), Map.of());
    }

    private static List<Verdict> verdicts(LinkReport link, Bus bus) {
        return LinkCheck.of(link, bus).stream().map(LinkCheck::verdict).toList();
    }

    @Test
    void the_same_timing_holds_another_sample_point_is_tight_another_rate_fails() {
        Bus bus = Invented.sound().machine().bus();
        assertThat(verdicts(timed(SAME), bus)).hasSize(3).containsOnly(Verdict.HOLDS);
        assertThat(verdicts(timed(EARLY), bus)).containsExactly(Verdict.TIGHT, Verdict.TIGHT, Verdict.HOLDS);
        assertThat(verdicts(timed(HALF), bus)).containsExactly(Verdict.FAILS, Verdict.FAILS, Verdict.FAILS);
        assertThat(verdicts(timed(SAME), Bus.none())).isEmpty();
    }

    /** A stated rate without segments: only the rate can be compared. */
    @Test
    void a_bus_with_fd_frames_wants_an_interface_that_is_set_for_them() {
        Bus bus =
                Invented.sound().bus(BusFigure.DATA_RATE, "5 Mbit/s").machine().bus();
        Optional<Phase> nominal = Optional.of(new Phase(1e6, 0, Optional.empty()));
        List<LinkCheck> checks = LinkCheck.of(link(LinkReport.ACTIVE, nominal, Optional.empty(), Map.of()), bus);
        assertThat(checks.get(0).verdict()).isEqualTo(Verdict.FAILS);
        assertThat(checks.get(0).words().template()).contains("not set for them");
        Optional<Phase> data = Optional.of(new Phase(2e6, 0, Optional.empty()));
        checks = LinkCheck.of(link(LinkReport.ACTIVE, nominal, data, Map.of()), bus);
        assertThat(checks).extracting(LinkCheck::verdict).containsExactly(Verdict.FAILS, Verdict.HOLDS);
        assertThat(checks.get(0).words().template()).startsWith("rate of data");
    }

    @Test
    void says_what_is_odd_about_an_interface() {
        assertThat(words(timed(SAME)))
                .containsExactly(
                        "its timing bears clocks that are off by {bears}: a jump of {sjw} in" + " {quanta} quanta");
        LinkReport lone = new LinkReport(
                "can0",
                "ERROR-WARNING",
                "LISTEN-ONLY",
                Map.of("tx", 104L, "rx", 0L),
                Optional.of(0L),
                Optional.empty(),
                Optional.empty(),
                Map.of("bus-errors", 3L, "re-started", 0L, "RX overrun", 2L));
        assertThat(words(lone))
                .anyMatch(w -> w.contains("what it sends is not acknowledged"))
                .anyMatch(w -> w.contains("restart-ms is 0"))
                .anyMatch(w -> w.contains("not an ordinary node"))
                .anyMatch(w -> w.contains("errors on the bus"))
                .anyMatch(w -> w.contains("faster than they were fetched"))
                .noneMatch(w -> w.contains("started again"));
        assertThat(words(link(LinkReport.OFF, Optional.empty(), Optional.empty(), Map.of())))
                .anyMatch(w -> w.contains("left the bus"));
        assertThat(words(link(LinkReport.STOPPED, Optional.empty(), Optional.empty(), Map.of())))
                .containsExactly("the interface is not up");
        assertThat(words(link("ERROR-PASSIVE", Optional.empty(), Optional.empty(), Map.of())))
                .containsExactly("the controller is in state {state}");
    }

    private static List<String> words(LinkReport link) {
        return LinkRemarks.of(link).stream().map(Phrase::template).toList();
    }
}
