package servowright.app.input.capture;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import servowright.engine.capture.Frame;
import servowright.engine.capture.FrameSink;

/**
 * The pcapng form: sections of blocks, each section in its own byte order. Interfaces state link type, resolution and offset of
 * their stamps; packets of interfaces that carry no CAN are counted as other things.
 */
final class PcapngBody implements CaptureBody {
    static final int SECTION = 0x0a0d0d0a;
    private static final int INTERFACE = 1;
    private static final int SIMPLE = 3;
    private static final int PACKET = 6;
    private static final int MAGIC = 0x1a2b3c4d;
    private static final int LONGEST = 1 << 20;
    private static final int MOST_INTERFACES = 1 << 12;
    private static final int OPTION_RESOLUTION = 9;
    private static final int OPTION_OFFSET = 14;
    private static final int OPTION_NAME = 2;

    private final BusNames names;
    private final List<Interface> interfaces = new ArrayList<>();
    private final byte[] buffer = new byte[LONGEST];
    private ByteBuffer block = ByteBuffer.wrap(buffer);

    PcapngBody(BusNames names) {
        this.names = names;
    }

    /** One interface: what its packets are and how its clock ticks. */
    private record Interface(int linkType, long ticksPerSecond, long offsetS, int bus) {
        /** Nanoseconds of a stamp; stamps beyond the years a capture can be of are no time. */
        long nanoseconds(long ticks) {
            long seconds = Long.divideUnsigned(ticks, ticksPerSecond);
            long rest = Long.remainderUnsigned(ticks, ticksPerSecond);
            long wholeS = seconds + offsetS;
            boolean possible = seconds >= 0 && seconds < 9_000_000_000L && wholeS >= 0 && wholeS < 9_000_000_000L;
            return possible ? wholeS * 1_000_000_000 + (long) (rest * (1e9 / ticksPerSecond)) : Frame.NO_TIME;
        }
    }

    @Override
    public String words() {
        return "pcapng";
    }

    @Override
    public void read(ByteSource source, FrameSink sink, Counts counts, long most) throws IOException {
        RecordSink records = new RecordSink(sink, counts);
        boolean whole = true;
        int got = source.fill(buffer, 8);
        while (got == 8 && whole && counts.frames() < most) {
            if (block.getInt(0) == SECTION) { // reads the same in both byte orders
                whole = section(source);
            }
            int type = block.getInt(0);
            long length = block.getInt(4) & 0xffff_ffffL;
            int have = type == SECTION ? 12 : 8;
            whole = whole && length >= 12 && length % 4 == 0 && length <= LONGEST && rest(source, have, (int) length);
            if (whole) {
                block(type, (int) length - 4, records, counts);
                got = source.fill(buffer, 8);
            }
        }
        records.end();
        if (!whole || (got > 0 && got < 8)) {
            counts.note("the file ends within a block, or a block is damaged; what stands behind it was not read");
        }
    }

    /** Reads the mark of the byte order; interfaces count anew in a new section. */
    private boolean section(ByteSource source) throws IOException {
        byte[] mark = new byte[4];
        if (source.fill(mark, 4) < 4) {
            return false;
        }
        System.arraycopy(mark, 0, buffer, 8, 4);
        interfaces.clear();
        boolean big = block.order(ByteOrder.BIG_ENDIAN).getInt(8) == MAGIC;
        block.order(big ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN);
        return block.getInt(8) == MAGIC;
    }

    private boolean rest(ByteSource source, int have, int length) throws IOException {
        byte[] more = new byte[length - have];
        boolean there = source.fill(more, more.length) == more.length;
        System.arraycopy(more, 0, buffer, have, more.length);
        return there;
    }

    private void block(int type, int end, RecordSink records, Counts counts) {
        if (type == INTERFACE && end >= 16 && interfaces.size() < MOST_INTERFACES) {
            interfaces.add(described(end));
        } else if (type == PACKET && end >= 28) {
            int captured = block.getInt(20);
            long ticks = (block.getInt(12) & 0xffff_ffffL) << 32 | (block.getInt(16) & 0xffff_ffffL);
            packet(block.getInt(8), ticks, 28, captured, end, records, counts);
        } else if (type == SIMPLE && end >= 12) {
            packet(0, -1, 12, Math.min(block.getInt(8), end - 12), end, records, counts);
        }
    }

    private void packet(int number, long ticks, int from, int captured, int end, RecordSink records, Counts counts) {
        if (number < 0 || number >= interfaces.size() || captured < 0 || captured > end - from) {
            counts.malformed("a block", "it names an unknown interface or an impossible length");
            return;
        }
        Interface about = interfaces.get(number);
        if (!SocketRecord.known(about.linkType())) {
            counts.other();
            return;
        }
        byte[] record = new byte[captured];
        System.arraycopy(buffer, from, record, 0, captured);
        long timeNs = ticks == -1 ? Frame.NO_TIME : about.nanoseconds(ticks);
        records.take(record, captured, about.linkType(), timeNs, about.bus());
    }

    private Interface described(int end) {
        long ticksPerSecond = 1_000_000;
        long offsetS = 0;
        String name = "interface " + interfaces.size();
        int at = 16;
        while (at + 4 <= end) {
            int code = block.getShort(at) & 0xffff;
            int length = block.getShort(at + 2) & 0xffff;
            if (code == 0 || at + 4 + length > end) {
                break;
            }
            if (code == OPTION_RESOLUTION && length >= 1) {
                ticksPerSecond = ticks(buffer[at + 4] & 0xff);
            } else if (code == OPTION_OFFSET && length >= 8) {
                offsetS = block.getLong(at + 4);
            } else if (code == OPTION_NAME && length <= 64) {
                name = new String(buffer, at + 4, length, StandardCharsets.UTF_8);
            }
            at += 4 + (length + 3) / 4 * 4;
        }
        return new Interface(block.getShort(8) & 0xffff, ticksPerSecond, offsetS, names.number(name));
    }

    /** A power of ten, or with the top bit of two; finer ones than fit are taken as the finest that does. */
    private static long ticks(int resolution) {
        int power = resolution & 0x7f;
        return resolution > 127 ? 1L << Math.min(power, 62) : (long) Math.pow(10, Math.min(power, 18));
    }
}
