package servowright.engine.bus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class FdBitsTest {
    /**
     * By hand: identifier 0x555 alternates and ends in 1; RRS 0, IDE 0, FDF 1, res 0, BRS 1, ESI 0, code 0001, data 0x55. Start of frame
     * 0 and 1010.. give no run of five, so that nothing is stuffed: 29 and 41 bits. Without the rate switch res, BRS, ESI and the first
     * two bits of the code are five zeros: one stuff bit.
     */
    @Test
    void an_alternating_frame_is_not_stuffed() {
        FdFrame f = FdBits.of(IdLength.STANDARD, 0x555, new byte[] {0x55}, true, false);
        assertThat(f).isEqualTo(new FdFrame(29, 41));
        assertThat(FdBits.of(IdLength.STANDARD, 0x555, new byte[] {0x55}, false, false))
                .isEqualTo(new FdFrame(71, 0));
    }

    /**
     * By hand: start of frame, identifier 0, RRS and IDE are fourteen zeros: a one after the fifth and the tenth. Two bytes of zero follow
     * the last bit of the code 0010: seventeen zeros, a one after the fifth, tenth and fifteenth.
     */
    @Test
    void zeros_are_stuffed_after_every_five() {
        FdFrame f = FdBits.of(IdLength.STANDARD, 0, new byte[2], true, false);
        assertThat(f).isEqualTo(new FdFrame(29 + 2, 49 + 3));
    }

    @Test
    void no_real_frame_leaves_the_bounds() {
        long seed = 20261;
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 4_000; i++) {
            IdLength id = i % 2 == 0 ? IdLength.STANDARD : IdLength.EXTENDED;
            int code = random.nextInt(16);
            byte[] payload = new byte[FdFrame.bytesOf(code)];
            for (int k = 0; k < payload.length; k++) {
                payload[k] = (byte) (random.nextInt(3) == 0 ? random.nextInt(256) : random.nextBoolean() ? 0 : 0xf0);
            }
            boolean fast = random.nextBoolean();
            FdFrame real = FdBits.of(id, random.nextInt(1 << id.bits()), payload, fast, random.nextBoolean());
            FdFrame least = FdFrame.least(id, code, fast);
            FdFrame most = FdFrame.most(id, code, fast);
            assertThat(real.nominalBits())
                    .as("seed %d, frame %d", seed, i)
                    .isBetween(least.nominalBits(), most.nominalBits());
            assertThat(real.dataBits()).as("seed %d, frame %d", seed, i).isBetween(least.dataBits(), most.dataBits());
        }
    }

    @Test
    void refuses_a_length_that_no_code_stands_for() {
        assertThatThrownBy(() -> FdBits.of(IdLength.STANDARD, 1, new byte[9], true, false))
                .hasMessageContaining("length code");
        assertThatThrownBy(() -> FdBits.of(IdLength.STANDARD, 0x800, new byte[8], true, false))
                .hasMessageContaining("identifier");
    }
}
