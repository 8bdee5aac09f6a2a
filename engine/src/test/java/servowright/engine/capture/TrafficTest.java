package servowright.engine.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static servowright.engine.capture.Frames.MS;
import static servowright.engine.capture.Frames.data;
import static servowright.engine.capture.Frames.error;
import static servowright.engine.capture.Frames.id;
import static servowright.engine.capture.Frames.seen;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** What runs of frames show, each run made to show one thing. */
class TrafficTest {
    private static final BitTimes MEGABIT = new BitTimes(1000, 1000);

    private final Traffic traffic = Traffic.at(MEGABIT);

    private static int bits(Frame frame) {
        WireLength wire = new WireLength();
        wire.measure(frame);
        return wire.nominalBits();
    }

    @Test
    void finds_the_busiest_window_of_each_length() {
        int[] bytes = {1, 2, 3, 4, 5, 6, 7, 8};
        int heldNs = bits(data(0, 0x181, bytes)) * 1000;
        for (long k = 0; k < 1000; k++) {
            traffic.frame(data(k * 2 * MS, 0x181, bytes));
        }
        for (long k = 0; k < 5; k++) {
            traffic.frame(data(2500 * MS + k * 150_000, 0x181, bytes));
        }
        BusTraffic bus = seen(traffic);
        assertThat(bus.loads().get(0).worst()).isCloseTo(5 * heldNs / 1e6, within(1e-9));
        assertThat(bus.loads().get(0).worstEndNs()).isEqualTo(2500 * MS + 600_000);
        assertThat(bus.loads().get(1).worst()).isCloseTo(5 * heldNs / 10e6, within(0.7e-2)); // 5 in a row or 5 to 10 ms
        assertThat(bus.loads().get(2).worst()).isCloseTo(50 * heldNs / 100e6, within(1e-3));
        assertThat(bus.meanLoad()).isCloseTo(1005.0 * heldNs / 2500.6e6, within(1e-6));
    }

    /** Three frames 150 us apart stand closer than any others, with more frames behind them than any window remembers. */
    @Test
    void keeps_the_frames_of_the_fullest_ten_milliseconds() {
        int heldNs = bits(data(0, 0x205, 1, 2, 3)) * 1000;
        for (long k = 0; k < 3; k++) {
            traffic.frame(data(20 * MS + k * 150_000, 0x200 + (int) k, 1, 2, 3));
        }
        for (long k = 0; k < 100_000; k++) {
            traffic.frame(data(40 * MS + k * 11 * MS, 0x705, 5));
        }
        Timeline fullest = seen(traffic).fullest();
        assertThat(fullest.lengthNs()).isEqualTo(10 * MS);
        assertThat(fullest.startNs()).isEqualTo(10 * MS + 300_000);
        assertThat(fullest.held()).extracting(Timeline.Held::label).containsExactly("0x200", "0x201", "0x202");
        assertThat(fullest.held().get(2).toNs()).isEqualTo(10 * MS);
        assertThat(fullest.held().get(0).toNs() - fullest.held().get(0).fromNs())
                .isCloseTo(heldNs, within(4000L));
        Traffic unknown = Traffic.atUnknownRate();
        unknown.frame(data(0, 0x200, 1));
        assertThat(seen(unknown).fullest()).isEqualTo(Timeline.NONE);
    }

    @Test
    void counts_of_a_frame_only_what_lies_in_the_window() {
        for (long k = 1; k <= 60; k++) {
            traffic.frame(data(k * (long) bits(data(0, 0x2aa, 0x55)) * 1000, 0x2aa, 0x55));
        }
        assertThat(seen(traffic).loads().get(0).worst()).isEqualTo(1.0); // frame on frame fills the bus, and no more
    }

    @Test
    void finds_period_jitter_and_gaps_of_an_identifier() {
        Random random = new Random(402);
        long lastNs = 0;
        for (long k = 0; k < 2000; k++) {
            if (k % 500 != 499) {
                lastNs = k * 10 * MS + random.nextInt(200_000);
                traffic.frame(data(lastNs, 0x181, 1));
            }
        }
        Period period = id(traffic, 0x181).period();
        assertThat((double) period.medianNs()).isCloseTo(10.0 * MS, within(0.44 * MS));
        assertThat(period.gaps()).isEqualTo(3); // the last one left out ends the run
        assertThat(period.missing()).isEqualTo(3);
        assertThat(period.mostNs()).isBetween(19 * MS, 21 * MS);
        assertThat(period.regular()).isTrue();
        assertThat(period.alternates()).isFalse();
    }

    @Test
    void finds_bursts_within_a_period() {
        for (long k = 0; k < 300; k++) {
            traffic.frame(data(k * 10 * MS, 0x181, 1));
            if (k % 30 == 0) {
                traffic.frame(data(k * 10 * MS + MS, 0x181, 1));
            }
        }
        assertThat(id(traffic, 0x181).period().bursts()).isEqualTo(10);
    }

    @Test
    void sees_two_senders_of_one_identifier_by_intervals_that_add_up() {
        for (long k = 0; k < 100; k++) {
            traffic.frame(data(k * 100 * MS, 0x70a, 5));
            traffic.frame(data(k * 100 * MS + 27 * MS, 0x70a, 5));
        }
        assertThat(id(traffic, 0x70a).period().alternates()).isTrue();
    }

    @Test
    void says_that_stamps_in_a_crowd_are_those_of_the_computer() {
        for (long k = 0; k < 106; k++) {
            traffic.frame(data(k * 28_000, 0x181, 1, 2, 3, 4, 5, 6, 7, 8));
        }
        Stamps stamps = seen(traffic).stamps();
        assertThat(stamps.ofTheHost(106)).isTrue();
        assertThat(stamps.crowd().frames()).isEqualTo(106);
        assertThat(stamps.crowd().shownNs()).isEqualTo(105 * 28_000);
        assertThat(stamps.crowd().neededNs()).isGreaterThan(105 * 111_000);
    }

    @Test
    void notices_a_clock_that_steps_back_and_forth_and_measures_on() {
        for (long k = 0; k < 300; k++) {
            long offsetNs = k >= 100 && k < 200 ? -1_197_906L * 1000 * MS : 0;
            traffic.frame(data(2_000_000L * 1000 * MS + k * 10 * MS + offsetNs, 0x181, 1));
        }
        Stamps stamps = seen(traffic).stamps();
        assertThat(stamps.backward()).isEqualTo(1);
        assertThat(stamps.jumps()).hasSize(2);
        assertThat(stamps.jumps().get(0).frame()).isEqualTo(101);
        assertThat(stamps.elapsedNs()).isEqualTo(297 * 10 * MS);
        assertThat(id(traffic, 0x181).period().mostNs()).isEqualTo(10 * MS);
    }

    @Test
    void follows_a_controller_from_warning_to_off_the_bus() {
        traffic.frame(error(0, 0x004, 0, 0x0c));
        traffic.frame(error(0, 0x004, 0, 0x30));
        traffic.frame(error(719_000, 0x040, 0, 0));
        traffic.frame(data(800_000, 0x181, 1));
        traffic.frame(error(900_000, 0x088, 0, 0, 4, 8));
        traffic.frame(error(MS, 0x224, 0, 0, 0, 0, 0, 0, 136, 17));
        Errors errors = seen(traffic).errors();
        assertThat(errors.changes().stream().map(Errors.Change::state))
                .containsExactly(Errors.State.WARNING, Errors.State.PASSIVE, Errors.State.OFF);
        assertThat(errors.ownAfterOff()).isEqualTo(1);
        assertThat(errors.count(ErrorClass.BUS_ERROR)).isEqualTo(1);
        assertThat(errors.places()).containsEntry("checksum", 1L);
        assertThat(errors.mostTransmit()).isEqualTo(136);
        assertThat(errors.mostReceive()).isEqualTo(17);
        assertThat(errors.reports()).isEqualTo(5);
    }

    @Test
    void counts_frames_without_stamps_and_gives_no_load() {
        traffic.frame(data(Frame.NO_TIME, 0x181, 1));
        traffic.lost(7);
        assertThat(seen(traffic).loads()).isEmpty();
        assertThat(seen(traffic).frames()).isEqualTo(1);
        assertThat(traffic.lost()).isEqualTo(7);
    }

    @Test
    void counts_bits_where_the_rate_is_unknown() {
        Traffic bare = Traffic.atUnknownRate();
        bare.frame(data(0, 0x181, 1));
        assertThat(seen(bare).heldNs()).isEqualTo(bits(data(0, 0x181, 1)));
        assertThat(seen(bare).loads()).isEmpty();
    }

    @Test
    void lists_identifiers_by_priority_and_keeps_both_kinds_apart() {
        traffic.frame(Frames.filled(new Frame().start(0, 0, 0x181, Frame.EXTENDED), 1));
        traffic.frame(data(MS, 0x181, 1));
        traffic.frame(data(2 * MS, 0x080));
        assertThat(seen(traffic).identifiers().stream().map(t -> t.identifier() + (t.extended() ? "x" : "")))
                .containsExactly("385x", "128", "385");
    }
}
