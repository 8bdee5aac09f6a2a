package servowright.app.input.capture;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Optional;
import servowright.engine.capture.FrameSink;

/** The pcap form: a head of 24 bytes, then records with a stamp in microseconds or nanoseconds. */
final class PcapBody implements CaptureBody {
    private static final int HEAD = 24;
    private static final int RECORD_HEAD = 16;
    private static final int LONGEST = 1 << 18;
    private static final int MICROSECONDS = 0xa1b2c3d4;
    private static final int NANOSECONDS = 0xa1b23c4d;

    private final BusNames names;

    PcapBody(BusNames names) {
        this.names = names;
    }

    @Override
    public String words() {
        return "pcap";
    }

    /** The byte order of a file that starts like this, if it is of this form. */
    static Optional<ByteOrder> order(byte[] head, int n) {
        for (ByteOrder order : new ByteOrder[] {ByteOrder.LITTLE_ENDIAN, ByteOrder.BIG_ENDIAN}) {
            int magic = n < HEAD ? 0 : ByteBuffer.wrap(head).order(order).getInt(0);
            if (magic == MICROSECONDS || magic == NANOSECONDS) {
                return Optional.of(order);
            }
        }
        return Optional.empty();
    }

    /** The link type, of which only those of CAN can be read. */
    static int linkType(byte[] head, ByteOrder order) {
        return ByteBuffer.wrap(head).order(order).getInt(20) & 0xffff;
    }

    @Override
    public void read(ByteSource source, FrameSink sink, Counts counts, long most) throws IOException {
        byte[] head = new byte[HEAD];
        int n = source.fill(head, HEAD);
        ByteOrder order = order(head, n).orElseThrow(IOException::new);
        long perTick = ByteBuffer.wrap(head).order(order).getInt(0) == NANOSECONDS ? 1 : 1000;
        int linkType = linkType(head, order);
        int bus = names.number("can0");
        RecordSink records = new RecordSink(sink, counts);
        byte[] buffer = new byte[LONGEST];
        ByteBuffer fields = ByteBuffer.wrap(new byte[RECORD_HEAD]).order(order);
        int got = source.fill(fields.array(), RECORD_HEAD);
        while (got == RECORD_HEAD && counts.frames() < most) {
            long timeNs =
                    (fields.getInt(0) & 0xffff_ffffL) * 1_000_000_000 + (fields.getInt(4) & 0xffff_ffffL) * perTick;
            int length = fields.getInt(8);
            if (length < 0 || length > LONGEST) {
                counts.malformed("a record", "it states an impossible length; the rest of the file was not read");
                got = 0;
            } else if (source.fill(buffer, length) < length) {
                got = 1;
            } else {
                records.take(buffer, length, linkType, timeNs, bus);
                got = source.fill(fields.array(), RECORD_HEAD);
            }
        }
        records.end();
        if (got > 0 && got < RECORD_HEAD) {
            counts.note("the file ends within a record");
        }
    }
}
