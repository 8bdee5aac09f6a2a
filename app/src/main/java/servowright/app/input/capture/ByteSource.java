package servowright.app.input.capture;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;

/** The bytes of a capture from front to back, unpacked if they are packed. */
final class ByteSource implements AutoCloseable {
    /** Packed captures shrink to a tenth or a thirtieth; what shrinks further over this many bytes is no capture. */
    private static final long FREE_BYTES = 256L << 20;

    private static final int MOST_RATIO = 200;

    private final Counted packed;
    private final InputStream in;
    private final boolean gzip;
    private long left = Long.MAX_VALUE;
    private long given;

    private ByteSource(Counted packed, InputStream in, boolean gzip) {
        this.packed = packed;
        this.in = in;
        this.gzip = gzip;
    }

    /** Packed bytes that unpack to far more than any capture does. */
    static final class TooTightlyPacked extends IOException {
        private static final long serialVersionUID = 1;

        TooTightlyPacked() {
            super("unpacks to more than " + MOST_RATIO + " times its size");
        }
    }

    static ByteSource open(Path file) throws IOException {
        Counted counted = new Counted(Files.newInputStream(file));
        try {
            BufferedInputStream buffered = new BufferedInputStream(counted, 1 << 16);
            buffered.mark(2);
            boolean gzip = buffered.read() == 0x1f && buffered.read() == 0x8b;
            buffered.reset();
            InputStream plain = gzip ? new GZIPInputStream(buffered, 1 << 16) : buffered;
            return new ByteSource(counted, plain, gzip);
        } catch (IOException | RuntimeException e) {
            counted.close();
            throw e;
        }
    }

    /** Ends the source after so many bytes. */
    ByteSource first(long bytes) {
        left = bytes;
        return this;
    }

    boolean packed() {
        return gzip;
    }

    /** Puts at most {@code room} bytes into {@code target}; returns how many, -1 at the end. */
    int read(byte[] target, int at, int room) throws IOException {
        if (left == 0) {
            return -1;
        }
        int n = in.read(target, at, (int) Math.min(room, left));
        given += Math.max(0, n);
        left -= Math.max(0, n);
        if (gzip && given > FREE_BYTES && given / MOST_RATIO > packed.taken) {
            throw new TooTightlyPacked();
        }
        return n;
    }

    /** Fills the first {@code count} bytes; returns how many there were. */
    int fill(byte[] target, int count) throws IOException {
        int have = 0;
        int n = 0;
        while (have < count && n >= 0) {
            n = read(target, have, count - have);
            have += Math.max(0, n);
        }
        return have;
    }

    /** Whether an exception tells of packed bytes that are cut off or damaged. */
    static boolean damage(IOException e) {
        return e instanceof ZipException || e instanceof java.io.EOFException;
    }

    @Override
    public void close() throws IOException {
        in.close();
    }

    /** Counts the bytes of the file. */
    private static final class Counted extends InputStream {
        private final InputStream in;
        private long taken;

        Counted(InputStream in) {
            this.in = in;
        }

        @Override
        public int read() throws IOException {
            int b = in.read();
            taken += b >= 0 ? 1 : 0;
            return b;
        }

        @Override
        public int read(byte[] target, int at, int room) throws IOException {
            int n = in.read(target, at, room);
            taken += Math.max(0, n);
            return n;
        }

        @Override
        public void close() throws IOException {
            in.close();
        }
    }
}
