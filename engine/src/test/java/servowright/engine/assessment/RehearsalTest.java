package servowright.engine.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import servowright.engine.assessment.Rehearsal.Form;
import servowright.engine.assessment.Rehearsal.Played;
import servowright.engine.assessment.Rehearsal.Wish;
import servowright.engine.known.Outcome;
import servowright.engine.machine.BusFigure;
import servowright.engine.machine.Machine;
import servowright.engine.prediction.Invented;

class RehearsalTest {
    private static final long S = 1_000_000_000L;
    private static final Machine MACHINE = Invented.sound().machine();

    private static Wish wish(double bitErrors, Optional<String> without) {
        return new Wish(S, 7, bitErrors, without);
    }

    private static Rehearsal play(Wish wish) {
        return Rehearsal.play(MACHINE, wish, Form.LINES, OutputStream.nullOutputStream())
                .found()
                .orElseThrow();
    }

    /** Commands every 2 ms: 500 of them in a second, none later than guaranteed; heartbeats every 100 ms. */
    @Test
    void plays_every_message_at_its_period_within_its_bound() {
        Rehearsal played = play(wish(0, Optional.empty()));
        assertThat(played.messages()).isNotEmpty().allSatisfy(m -> {
            assertThat(m.worstNs()).as(m.name()).isPositive().isLessThanOrEqualTo(m.boundNs());
            assertThat(m.lost()).isZero();
        });
        assertThat(played.messages())
                .filteredOn(m -> m.name().equals("arm command"))
                .extracting(Played::sent)
                .containsExactly(500L);
        assertThat(played.frames())
                .isEqualTo(played.messages().stream().mapToLong(Played::sent).sum());
        assertThat(played.broken()).isZero();
        assertThat(played.left()).isEmpty();
        assertThat(played.load()).isBetween(0.05, 0.9);
    }

    @Test
    void a_node_without_power_sends_half_and_noise_breaks_frames() {
        Rehearsal played = play(wish(1e-5, Optional.of("arm")));
        assertThat(played.broken()).isPositive();
        assertThat(played.messages())
                .filteredOn(m -> m.name().equals("arm feedback"))
                .allSatisfy(m -> assertThat(m.sent()).isBetween(240L, 251L));
        assertThat(Rehearsal.nodes(MACHINE)).contains("host", "arm");
    }

    /** The same frames in both forms: a line for each record; a packet file begins with its magic number and link type 227. */
    @Test
    void writes_lines_and_packets() {
        ByteArrayOutputStream lines = new ByteArrayOutputStream();
        ByteArrayOutputStream packets = new ByteArrayOutputStream();
        Rehearsal.play(MACHINE, wish(1e-5, Optional.empty()), Form.LINES, lines);
        Rehearsal.play(MACHINE, wish(1e-5, Optional.empty()), Form.PACKETS, packets);
        String text = lines.toString(StandardCharsets.US_ASCII);
        assertThat(text).startsWith("(0000000000.000").contains(" can0 ", "#");
        byte[] bytes = packets.toByteArray();
        assertThat(bytes).startsWith(0xd4, 0xc3, 0xb2, 0xa1);
        assertThat(bytes[20] & 0xff).isEqualTo(227);
        long data = text.lines()
                .mapToLong(l -> 24 + (l.length() - l.indexOf('#') - 1) / 2)
                .sum();
        assertThat(bytes.length).isEqualTo((int) (24 + data));
    }

    @Test
    void says_what_is_missing_and_what_goes_wrong() {
        Machine bare = Invented.sound().bus(BusFigure.RATE).machine();
        assertThat(Rehearsal.play(bare, wish(0, Optional.empty()), Form.LINES, OutputStream.nullOutputStream()))
                .isInstanceOf(Outcome.Missing.class);
        assertThat(Rehearsal.nodes(bare)).isEmpty();
        OutputStream full = new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                throw new IOException("full");
            }
        };
        assertThatThrownBy(() -> Rehearsal.play(MACHINE, wish(0, Optional.empty()), Form.LINES, full))
                .isInstanceOf(UncheckedIOException.class);
        assertThatThrownBy(() -> Rehearsal.play(MACHINE, wish(0, Optional.empty()), Form.PACKETS, full))
                .isInstanceOf(UncheckedIOException.class);
        assertThatThrownBy(() -> wish(2, Optional.empty())).hasMessageContaining("bit errors");
    }
}
