package servowright.app.input.capture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Captures broken at random: whatever stands in the file, reading ends with a result and never with an exception. */
class BrokenCapturesTest {
    private static final List<byte[]> WHOLE = List.of(
            text("(1.000000) can0 123#1122\n(1.000100) can0 12345678##5AABB\n(1.0002) can0 123#R8_9\n"),
            text(" (1.0)  can0  TX B -  123  [12]  00 01 02 03 04 05 06 07 08 09 0A 0B  'x'\n  can0  1  [1] 11\n"),
            text("base hex  timestamps relative\n 0.1 1 123x Rx d 2 11 22\n 0.2 CANFD 1 Rx 4EE 0 1 9 12 01 02\n"),
            text(";$FILEVERSION=2.1\n;$COLUMNS=N,O,T,B,I,d,R,L,D\n 1 2501.0 DT 2 00C8 Tx - 2 09 08\n"),
            hex("D4C3B2A102000400000000000000000000000400E3000000DD458763B0440A000A0000000A00000000000123020000001122"),
            hex("0A0D0D0A1C0000004D3C2B1A01000000FFFFFFFFFFFFFFFF1C000000"
                    + "0100000014000000E3000000000000001400000006000000300000000000000000000000050000000C0000000C000000"
                    + "0000012302000000112233440000000030000000"),
            hex("1F8B08000000000000FF63606460626650666161650100"));

    /** Files per form; more of them by {@code -Dservowright.broken=100000}, as CONTRIBUTING says. */
    private static final int RUNS = Integer.getInteger("servowright.broken", 400);

    @TempDir
    Path folder;

    private static byte[] text(String text) {
        return text.getBytes(StandardCharsets.ISO_8859_1);
    }

    private static byte[] hex(String digits) {
        return HexFormat.of().parseHex(digits);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6})
    void ends_with_a_result_whatever_is_broken(int form) throws IOException {
        long seed = 20_260L + form;
        Random random = new Random(seed);
        for (int run = 0; run < RUNS; run++) {
            byte[] bytes = broken(WHOLE.get(form), random);
            Path file = Files.write(folder.resolve("broken"), bytes);
            CaptureResult result = CaptureReader.read(
                    file, "broken", frame -> assertThat(frame.length()).isBetween(0, 64));
            assertThat(result).as("seed %d run %d", seed, run).isNotNull();
        }
    }

    private static byte[] broken(byte[] whole, Random random) {
        byte[] bytes = whole.clone();
        int changes = 1 + random.nextInt(6);
        for (int k = 0; k < changes; k++) {
            int at = random.nextInt(bytes.length);
            switch (random.nextInt(4)) {
                case 0 -> bytes[at] = (byte) random.nextInt(256);
                case 1 -> bytes[at] = bytes[random.nextInt(bytes.length)];
                case 2 -> bytes[at] ^= (byte) (1 << random.nextInt(8));
                default -> bytes = Arrays.copyOf(bytes, Math.max(1, at));
            }
        }
        return bytes;
    }
}
