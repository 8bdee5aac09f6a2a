package servowright.app.input.capture;

import java.util.Arrays;
import servowright.engine.capture.Frame;
import servowright.engine.capture.FrameSink;

/**
 * Turns records into frames. The first records are held back to see in which byte order the identifiers are written: network
 * order is the rule, but where many identifiers are impossible in it and hardly any in the other, the other is taken and said.
 */
final class RecordSink {
    private static final int HELD = 512;

    private final FrameSink sink;
    private final Counts counts;
    private final Frame frame = new Frame();
    private final SocketRecord record = new SocketRecord();
    private final byte[][] held = new byte[HELD][];
    private final long[][] about = new long[HELD][];
    private int waiting;
    private boolean decided;
    private long number;

    RecordSink(FrameSink sink, Counts counts) {
        this.sink = sink;
        this.counts = counts;
    }

    /** Takes the record that is the first {@code length} bytes of {@code b}. */
    void take(byte[] b, int length, int linkType, long timeNs, int bus) {
        if (decided) {
            pass(b, length, linkType, timeNs, bus);
            return;
        }
        held[waiting] = Arrays.copyOf(b, length);
        about[waiting++] = new long[] {linkType, timeNs, bus};
        if (waiting == HELD) {
            end();
        }
    }

    /** No more records come before a decision. */
    void end() {
        if (decided) {
            return;
        }
        decide();
        for (int k = 0; k < waiting; k++) {
            pass(held[k], held[k].length, (int) about[k][0], about[k][1], (int) about[k][2]);
            held[k] = new byte[0];
        }
        waiting = 0;
    }

    private void decide() {
        decided = true;
        int seen = 0;
        int wrong = 0;
        int wrongSwapped = 0;
        for (int k = 0; k < waiting; k++) {
            int linkType = (int) about[k][0];
            int least = linkType == SocketRecord.BARE ? 8 : linkType == SocketRecord.COOKED ? 24 : 28;
            if (held[k].length >= least) {
                seen++;
                wrong += SocketRecord.impossible(held[k], 0, linkType, false) ? 1 : 0;
                wrongSwapped += SocketRecord.impossible(held[k], 0, linkType, true) ? 1 : 0;
            }
        }
        if (wrong > seen / 5 && wrongSwapped <= seen / 100) {
            record.swap();
            counts.note("identifiers stand in reverse byte order, against the rule of the format: " + wrong
                    + " of the first " + seen + " would be impossible otherwise, " + wrongSwapped + " as read");
        }
    }

    private void pass(byte[] b, int length, int linkType, long timeNs, int bus) {
        number++;
        switch (record.read(b, 0, length, linkType, timeNs, bus, frame)) {
            case FRAME -> {
                counts.frame();
                sink.frame(frame);
            }
            case XL -> counts.xl();
            case OTHER, NOTHING, LOST -> counts.other();
            case MALFORMED -> counts.malformed("record " + number, record.reason());
        }
    }
}
