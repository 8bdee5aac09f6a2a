package servowright.engine.capture;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import servowright.engine.bus.FdBits;
import servowright.engine.bus.FdFrame;
import servowright.engine.bus.FrameBits;
import servowright.engine.bus.IdLength;

/** Lengths counted by bytes, against the same frames written out bit by bit. */
class WireLengthTest {
    private static final long SEED = 11_898;

    private final WireLength wire = new WireLength();
    private final Random random = new Random(SEED);

    private byte[] payload(int bytes) {
        byte[] payload = new byte[bytes];
        if (random.nextInt(3) > 0) {
            random.nextBytes(payload);
        } else {
            Arrays.fill(payload, (byte) (random.nextBoolean() ? 0 : 0xff));
        }
        return payload;
    }

    private int identifier(boolean extended) {
        int most = extended ? 0x1fff_ffff : 0x7ff;
        return switch (random.nextInt(4)) {
            case 0 -> 0;
            case 1 -> most;
            default -> random.nextInt(most + 1);
        };
    }

    private Frame frame(int id, int flags, byte[] payload) {
        Frame frame = new Frame().start(0, 0, id, flags);
        System.arraycopy(payload, 0, frame.data(), 0, payload.length);
        return frame.sized(payload.length);
    }

    @Test
    void counts_classical_frames_as_written_out_bit_by_bit() {
        for (int run = 0; run < 20_000; run++) {
            boolean extended = random.nextBoolean();
            int id = identifier(extended);
            byte[] payload = payload(random.nextInt(9));
            wire.measure(frame(id, extended ? Frame.EXTENDED : 0, payload));
            int bits = FrameBits.ofData(extended ? IdLength.EXTENDED : IdLength.STANDARD, id, payload);
            assertThat(wire.nominalBits()).as("seed %d run %d", SEED, run).isEqualTo(bits);
            assertThat(wire.dataBits()).isZero();
        }
    }

    @Test
    void counts_remote_frames_without_data_bits() {
        for (int run = 0; run < 2000; run++) {
            boolean extended = random.nextBoolean();
            int id = identifier(extended);
            int code = random.nextInt(9);
            Frame frame = new Frame()
                    .start(0, 0, id, Frame.REMOTE | (extended ? Frame.EXTENDED : 0))
                    .sized(code);
            wire.measure(frame);
            int bits = FrameBits.ofRemote(extended ? IdLength.EXTENDED : IdLength.STANDARD, id, code);
            assertThat(wire.nominalBits()).as("seed %d run %d", SEED, run).isEqualTo(bits);
        }
    }

    @Test
    void counts_fd_frames_at_both_rates_as_written_out_bit_by_bit() {
        for (int run = 0; run < 20_000; run++) {
            boolean extended = random.nextBoolean();
            boolean switched = random.nextBoolean();
            boolean passive = random.nextBoolean();
            int id = identifier(extended);
            byte[] payload = payload(FdFrame.bytesOf(random.nextInt(16)));
            int flags = Frame.FD
                    | (extended ? Frame.EXTENDED : 0)
                    | (switched ? Frame.RATE_SWITCH : 0)
                    | (passive ? Frame.SENDER_PASSIVE : 0);
            wire.measure(frame(id, flags, payload));
            FdFrame bits = FdBits.of(extended ? IdLength.EXTENDED : IdLength.STANDARD, id, payload, switched, passive);
            assertThat(wire.nominalBits()).as("seed %d run %d", SEED, run).isEqualTo(bits.nominalBits());
            assertThat(wire.dataBits()).as("seed %d run %d", SEED, run).isEqualTo(bits.dataBits());
        }
    }

    @Test
    void gives_error_reports_no_length() {
        wire.measure(Frames.error(0, 4, 0, 12));
        assertThat(wire.nanoseconds(new BitTimes(1000, 1000))).isZero();
    }
}
