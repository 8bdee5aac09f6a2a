package servowright.engine.prediction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Outcome.Need;
import servowright.engine.machine.Bus;
import servowright.engine.machine.BusFigure;
import servowright.engine.machine.IdScheme;
import servowright.engine.machine.Machine;

class BusStudyTest {
    private static BusPlan plan(Machine machine) {
        return BusStudy.of(machine).found().orElseThrow();
    }

    private static List<Need> needs(Machine machine) {
        return BusStudy.of(machine).fold(a -> List.of(), Missing::needs);
    }

    private static Machine with(Machine m, IdScheme scheme) {
        Bus b = m.bus();
        Bus other = new Bus(b.figures(), Optional.of(scheme), b.stoppedQueue(), b.messages(), b.controllers());
        return new Machine(
                m.name(),
                m.about(),
                m.surroundings(),
                m.supply(),
                m.motors(),
                m.drives(),
                m.sensors(),
                m.axes(),
                other);
    }

    /** CiA 301 predefined connection set, table in a public fieldbus manual (seen): 080, 180 + n, 200 + n, 700 + n. */
    @Test
    void axes_get_the_identifiers_of_the_predefined_connection_set() {
        BusPlan plan = plan(Invented.sound().machine());
        assertThat(plan.messages())
                .extracting(PlannedMessage::name, PlannedMessage::id)
                .containsExactly(
                        tuple("sync", 0x080),
                        tuple("arm feedback", 0x181),
                        tuple("roller feedback", 0x182),
                        tuple("arm command", 0x201),
                        tuple("roller command", 0x202),
                        tuple("arm heartbeat", 0x701),
                        tuple("roller heartbeat", 0x702));
    }

    /**
     * By hand at 1 Mbit/s: SYNC 55 us after a blocking of 135; its arrival varies by 190 - 47 = 143 us, which is the jitter of the
     * feedback: 143 + 135 + 55 + 135 = 468 us for the first.
     */
    @Test
    void feedback_on_sync_inherits_its_unsteadiness() {
        BusPlan plan = plan(Invented.sound().machine());
        assertThat(plan.named("sync").orElseThrow().response().worstNs()).isEqualTo(190_000);
        assertThat(plan.named("arm feedback").orElseThrow().response().worstNs())
                .isEqualTo(468_000);
        assertThat(plan.load()).isEqualTo((55 + 4 * 135) / 2000.0 + 2 * 65 / 100_000.0);
        assertThat(plan.leastLoad()).isEqualTo((47 + 4 * 111) / 2000.0 + 2 * 55 / 100_000.0);
    }

    @Test
    void given_identifiers_stay_whatever_the_order() {
        Invented given = Invented.sound().message("battery", 0x0c0, "100 ms");
        for (IdScheme scheme : IdScheme.values()) {
            BusPlan plan = plan(with(given.machine(), scheme));
            assertThat(plan.named("battery").orElseThrow().id())
                    .as(scheme.words())
                    .isEqualTo(0x0c0);
            assertThat(plan.messages())
                    .extracting(PlannedMessage::id)
                    .doesNotHaveDuplicates()
                    .isSorted();
        }
        BusPlan byRate = plan(with(Invented.sound().machine(), IdScheme.BY_RATE));
        assertThat(byRate.messages().get(6).name()).endsWith("heartbeat");
    }

    @Test
    void fd_frames_carry_more_and_are_faster() {
        Invented wide = Invented.sound().bus(BusFigure.COMMAND_BYTES, "16").bus(BusFigure.FEEDBACK_BYTES, "16");
        assertThat(needs(wide.machine()).toString()).contains("16 bytes");
        wide.bus(BusFigure.DATA_RATE, "5 Mbit/s");
        PlannedMessage first = plan(wide.machine()).messages().get(1);
        assertThat(first.response().message().sendNs()).isEqualTo(70_400);
    }

    @Test
    void a_bus_without_rate_or_messages_names_what_is_missing() {
        Machine m = Invented.sound().machine();
        Machine bare = new Machine(
                m.name(), "", m.surroundings(), m.supply(), m.motors(), m.drives(), m.sensors(), m.axes(), Bus.none());
        assertThat(needs(bare)).hasSize(2);
    }
}
