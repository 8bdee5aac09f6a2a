package servowright.engine.bus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class StuffedLengthTest {
    @Test
    void agrees_with_the_bits_one_by_one() {
        long seed = 815;
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 20_000; i++) {
            IdLength id = i % 2 == 0 ? IdLength.STANDARD : IdLength.EXTENDED;
            int identifier = random.nextInt(4) == 0 ? 0 : random.nextInt(1 << id.bits());
            byte[] payload = new byte[random.nextInt(9)];
            for (int k = 0; k < payload.length; k++) {
                payload[k] = (byte) (random.nextInt(3) == 0 ? random.nextInt(256) : random.nextBoolean() ? 0 : 255);
            }
            assertThat(StuffedLength.of(id, identifier, payload.length).bits(payload))
                    .as("seed %d, frame %d", seed, i)
                    .isEqualTo(FrameBits.ofData(id, identifier, payload));
        }
        assertThatThrownBy(() -> StuffedLength.of(IdLength.STANDARD, 1, 9)).hasMessageContaining("bytes");
    }
}
