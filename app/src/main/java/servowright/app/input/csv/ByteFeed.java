package servowright.app.input.csv;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** The bytes of a file from front to back, two-byte characters turned into UTF-8, the byte order mark left out. */
final class ByteFeed implements AutoCloseable {
    private final FileChannel channel;
    private final Encoding encoding;
    private final MessageDigest digest;
    private final boolean hashing;
    private final byte[] wide;
    private int pending;

    private ByteFeed(FileChannel channel, Encoding encoding, boolean hashing) {
        this.channel = channel;
        this.encoding = encoding;
        this.hashing = hashing;
        this.digest = sha256();
        this.wide = new byte[encoding.wide() ? 1 << 16 : 0];
    }

    /** Opens a file at its start; {@code hashing} feeds a digest with everything read. */
    static ByteFeed open(Path file, boolean hashing) throws IOException {
        FileChannel channel = FileChannel.open(file, StandardOpenOption.READ);
        try {
            byte[] head = new byte[4096];
            int n = readFully(channel, head);
            Encoding encoding = Encoding.detect(head, n);
            ByteFeed feed = new ByteFeed(channel, encoding, hashing);
            if (hashing) {
                feed.digest.update(head, 0, encoding.mark());
            }
            channel.position(encoding.mark());
            return feed;
        } catch (IOException | RuntimeException e) {
            channel.close();
            throw e;
        }
    }

    private static int readFully(FileChannel channel, byte[] target) throws IOException {
        ByteBuffer buffer = ByteBuffer.wrap(target);
        int got = 0;
        while (buffer.hasRemaining() && got >= 0) {
            got = channel.read(buffer);
        }
        return buffer.position();
    }

    Encoding encoding() {
        return encoding;
    }

    /** Puts at most {@code room} bytes into {@code target} from {@code at} on; returns how many, -1 at the end. */
    int read(byte[] target, int at, int room) throws IOException {
        if (encoding.wide()) {
            return readWide(target, at, room);
        }
        int n = channel.read(ByteBuffer.wrap(target, at, room));
        if (hashing && n > 0) {
            digest.update(target, at, n);
        }
        return n;
    }

    /** A character of two bytes takes at most three in UTF-8, so half the room is asked for, less a margin. */
    private int readWide(byte[] target, int at, int room) throws IOException {
        int ask = Math.min(wide.length, room / 2 * 2) - pending;
        int n = channel.read(ByteBuffer.wrap(wide, pending, ask));
        if (n < 0) {
            return -1;
        }
        if (hashing) {
            digest.update(wide, pending, n);
        }
        int have = pending + n;
        int out = at;
        int high = encoding.bigEndian() ? 0 : 1;
        for (int i = 0; i + 1 < have; i += 2) {
            out = put(target, out, ((wide[i + high] & 0xff) << 8) | (wide[i + 1 - high] & 0xff));
        }
        pending = have & 1;
        if (pending == 1) {
            wide[0] = wide[have - 1];
        }
        return out - at;
    }

    /** Characters that do not occur in numbers need only stay text: they become two bytes at most. */
    private static int put(byte[] target, int at, int code) {
        if (code < 0x80) {
            target[at] = (byte) code;
            return at + 1;
        }
        if (code < 0x800) {
            target[at] = (byte) (0xc0 | (code >> 6));
            target[at + 1] = (byte) (0x80 | (code & 0x3f));
            return at + 2;
        }
        target[at] = (byte) (code == 0x2212 ? '-' : '?');
        return at + 1;
    }

    /** Reads to the end so that the hash covers the whole file, and returns it. */
    String hash() throws IOException {
        byte[] rest = new byte[1 << 16];
        int got = 0;
        while (got >= 0) {
            got = read(rest, 0, rest.length);
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
