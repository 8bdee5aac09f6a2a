package servowright.engine.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static servowright.engine.prediction.Invented.ARM;
import static servowright.engine.prediction.Invented.sound;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import servowright.engine.acceptance.Verdict;
import servowright.engine.known.Phrase;
import servowright.engine.prediction.InventedCapture;
import servowright.engine.prediction.Predictions;

/** Captures that the simulation of a plan writes, held against that plan: what is done to the bus is what is found. */
class BusSeenTest {
    private static Map<String, Finding> findings(UnaryOperator<InventedCapture> change) {
        Predictions predictions = sound().capture(change).predictions();
        return Rules.all().stream()
                .filter(SeenRule.class::isInstance)
                .flatMap(r -> r.examine(predictions).stream())
                .collect(Collectors.toMap(Finding::id, f -> f));
    }

    private static List<String> notHolding(Map<String, Finding> findings) {
        return findings.values().stream()
                .filter(f -> f.verdict() != Verdict.HOLDS)
                .map(Finding::id)
                .sorted()
                .toList();
    }

    private static Finding of(Map<String, Finding> findings, String id) {
        return Objects.requireNonNull(findings.get(id), id);
    }

    private static String words(Finding finding) {
        Phrase phrase = finding.statement();
        String text = phrase.template();
        for (Map.Entry<String, Phrase.Part> e : phrase.figures().entrySet()) {
            if (e.getValue() instanceof Phrase.Word word) {
                text = text.replace("{" + e.getKey() + "}", word.text());
            }
        }
        return text;
    }

    @Test
    void a_bus_that_does_what_was_planned_meets_the_plan() {
        Map<String, Finding> all = findings(c -> c.scaled(1.001));
        assertThat(all).hasSize(11);
        assertThat(notHolding(all)).isEmpty();
    }

    @Test
    void without_a_capture_nothing_is_said() {
        assertThat(new BusMissingRule().examine(sound().predictions())).isEmpty();
    }

    @Test
    void a_dead_node_is_named_by_what_no_longer_comes() {
        Map<String, Finding> all = findings(c -> c.off(ARM, 800, 10_000));
        assertThat(words(of(all, "bus-message-missing")))
                .contains("arm feedback (stops)", "arm heartbeat (stops)")
                .doesNotContain("arm command (");
        assertThat(notHolding(all)).containsExactly("bus-message-missing");
    }

    @Test
    void a_second_sender_of_an_identifier_is_named() {
        Map<String, Finding> all = findings(c -> c.twin("arm heartbeat", 31_000_000));
        assertThat(words(of(all, "bus-two-senders"))).contains("0x701");
        assertThat(notHolding(all)).doesNotContain("bus-message-missing", "bus-errors-seen", "bus-queue-let-go");
    }

    @Test
    void a_host_that_cannot_keep_up_is_named_by_its_period() {
        Map<String, Finding> all = findings(c -> c.stretched("arm command", 1.3));
        assertThat(words(of(all, "bus-message-period"))).contains("arm command");
        assertThat(of(all, "bus-message-period").verdict()).isEqualTo(Verdict.FAILS);
        assertThat(notHolding(all)).doesNotContain("bus-two-senders", "bus-errors-seen", "bus-queue-let-go");
    }

    @Test
    void commands_let_go_after_a_stop_are_named() {
        Map<String, Finding> all = findings(c -> c.stopped(800, 1000));
        assertThat(words(of(all, "bus-queue-let-go"))).contains("0x201", "a queue was let go");
        assertThat(of(all, "bus-queue-let-go").verdict()).isEqualTo(Verdict.FAILS);
        assertThat(words(of(all, "bus-errors-seen"))).contains("error reports");
    }

    @Test
    void a_speed_in_turns_per_minute_that_is_taken_for_radians_is_recognised() {
        Finding finding = of(findings(c -> c.scaled(60 / (2 * Math.PI))), "bus-signal-scale");
        assertThat(finding.verdict()).isEqualTo(Verdict.FAILS);
        assertThat(finding.reason().template()).contains("60 / 2 pi");
    }

    @Test
    void stamps_of_a_computer_leave_arrival_open() {
        Map<String, Finding> all = findings(c -> c.batched(4_000_000));
        assertThat(of(all, "bus-arrival").verdict()).isEqualTo(Verdict.NOT_SHOWN);
        assertThat(of(all, "bus-stamps").verdict()).isEqualTo(Verdict.NOT_SHOWN);
    }

    @Test
    void two_captures_are_told_apart_by_their_files() {
        Predictions predictions = sound().capture(c -> c).capture(c -> c).predictions();
        assertThat(new BusMissingRule().examine(predictions))
                .extracting(Finding::subject)
                .containsOnly("recordings/bus.log")
                .hasSize(2);
    }
}
