package servowright.app.input.csv;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * The first lines of a file, on which its layout is judged.
 *
 * @param lines without line ends
 * @param offsets where each line starts, in bytes behind the byte order mark, as {@link ByteFeed} counts them
 * @param encoding of the file
 * @param controlBytes how many bytes do not occur in text
 * @param bytes how many bytes were looked at
 * @param clean whether all bytes were valid UTF-8
 */
record Head(List<String> lines, List<Integer> offsets, Encoding encoding, int controlBytes, int bytes, boolean clean) {
    private static final int LOOK = 1 << 18;

    /** Lines that are enough to judge by. */
    private static final int ENOUGH = 1000;

    /** Reads the head of a file. */
    static Head of(Path file) throws IOException {
        byte[] buffer = new byte[LOOK];
        int n = 0;
        boolean whole = false;
        try (ByteFeed feed = ByteFeed.open(file, false)) {
            while (n < LOOK - 4 && !whole) {
                int got = feed.read(buffer, n, LOOK - n);
                whole = got < 0;
                n += Math.max(0, got);
            }
            whole = whole || feed.read(new byte[16], 0, 16) < 0;
            return split(buffer, n, whole, feed.encoding());
        }
    }

    private static Head split(byte[] buffer, int n, boolean whole, Encoding encoding) {
        List<String> lines = new ArrayList<>();
        List<Integer> offsets = new ArrayList<>();
        int control = 0;
        boolean clean = true;
        int start = 0;
        int i = 0;
        for (; i <= n && lines.size() < ENOUGH; i++) {
            boolean end = i == n ? whole && start < n : buffer[i] == '\n' || buffer[i] == '\r';
            if (end) {
                boolean pair = i > 0 && i < n && buffer[i] == '\n' && buffer[i - 1] == '\r' && start == i;
                if (!pair) {
                    boolean valid = valid(buffer, start, i);
                    clean &= valid;
                    lines.add(new String(
                            buffer, start, i - start, valid ? StandardCharsets.UTF_8 : StandardCharsets.ISO_8859_1));
                    offsets.add(start);
                }
                start = i + 1;
            }
            if (i < n) {
                control += buffer[i] >= 0 && buffer[i] < 32 && !(buffer[i] >= 9 && buffer[i] <= 13) ? 1 : 0;
            }
        }
        return new Head(List.copyOf(lines), List.copyOf(offsets), encoding, control, Math.min(i, n), clean);
    }

    private static boolean valid(byte[] buffer, int from, int to) {
        int ascii = from;
        while (ascii < to && buffer[ascii] >= 0) {
            ascii++;
        }
        if (ascii == to) {
            return true;
        }
        try {
            StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(buffer, from, to - from));
            return true;
        } catch (CharacterCodingException e) {
            return false;
        }
    }

    /** Whether this is no text at all. */
    boolean binary() {
        return controlBytes > 0.02 * Math.max(1, bytes);
    }
}
