package servowright.app.input.capture;

import java.io.IOException;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import servowright.engine.capture.Frame;
import servowright.engine.capture.FrameSink;

/** Frames written as lines of text. */
final class TextBody implements CaptureBody {
    /** A longer line holds no frame. */
    private static final int BUFFER = 1 << 18;

    private static final VarHandle EIGHT = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
    private static final long ONES = 0x0101_0101_0101_0101L;
    private static final long HIGH_BITS = 0x8080_8080_8080_8080L;
    private static final long LINE_FEEDS = 0x0a0a_0a0a_0a0a_0a0aL;

    private final LineForm form;
    private final Frame frame = new Frame();
    private final byte[] buffer = new byte[BUFFER];
    private long line;
    private long left;

    TextBody(LineForm form) {
        this.form = form;
    }

    @Override
    public String words() {
        return form.words();
    }

    @Override
    public void read(ByteSource source, FrameSink sink, Counts counts, long most) throws IOException {
        int have = 0;
        int got = 0;
        boolean skipping = false;
        left = most;
        while (got >= 0 && left > 0) {
            got = source.read(buffer, have, BUFFER - have);
            have += Math.max(0, got);
            int end = got < 0 ? have : lastLineEnd(have);
            int from = skipping && end > 0 ? firstLineEnd(end) : 0;
            if (end > 0) {
                skipping = false;
                lines(from, end, sink, counts);
            }
            System.arraycopy(buffer, end, buffer, 0, have - end);
            have -= end;
            if (have == BUFFER) {
                if (!skipping) {
                    counts.malformed("line " + (line + 1), "it is longer than 256 kB");
                }
                skipping = true;
                have = 0;
            }
        }
    }

    private int lastLineEnd(int have) {
        int end = have;
        while (end > 0 && buffer[end - 1] != '\n') {
            end--;
        }
        return end;
    }

    private int firstLineEnd(int end) {
        int i = 0;
        while (i < end && buffer[i] != '\n') {
            i++;
        }
        line++;
        return Math.min(i + 1, end);
    }

    private void lines(int from, int end, FrameSink sink, Counts counts) {
        byte[] b = buffer;
        int at = from;
        while (at < end && left > 0) {
            int stop = lineEnd(b, at, end);
            line++;
            int to = stop > at && b[stop - 1] == '\r' ? stop - 1 : stop;
            take(form.read(b, at, to, frame), sink, counts);
            at = stop + 1;
        }
    }

    /** Index of the next line feed, or {@code end}; looks at eight bytes at a time. */
    private static int lineEnd(byte[] b, int from, int end) {
        int i = from;
        for (; i + Long.BYTES <= end; i += Long.BYTES) {
            long off = (long) EIGHT.get(b, i) ^ LINE_FEEDS;
            long zeros = (off - ONES) & ~off & HIGH_BITS;
            if (zeros != 0) {
                return i + (Long.numberOfTrailingZeros(zeros) >>> 3);
            }
        }
        while (i < end && b[i] != '\n') {
            i++;
        }
        return i;
    }

    private void take(Outcome outcome, FrameSink sink, Counts counts) {
        switch (outcome) {
            case FRAME -> {
                counts.frame();
                left--;
                sink.frame(frame);
            }
            case NOTHING -> {}
            case LOST -> {
                long n = Long.parseLong(form.reason());
                counts.lost(n);
                sink.lost(n);
            }
            case XL -> counts.xl();
            case OTHER -> counts.other();
            case MALFORMED -> counts.malformed("line " + line, form.reason());
        }
    }
}
