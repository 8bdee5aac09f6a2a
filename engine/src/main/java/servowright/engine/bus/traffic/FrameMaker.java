package servowright.engine.bus.traffic;

import java.util.Arrays;
import java.util.random.RandomGenerator;
import servowright.engine.bus.FdBits;
import servowright.engine.bus.FdFrame;
import servowright.engine.bus.StuffedLength;

/** Makes the frames of one stream: what they carry, and how long that takes on the wire. */
final class FrameMaker {
    private static final byte OPERATIONAL = 5;

    private final Stream stream;
    private final long bitNs;
    private final long dataBitNs;
    private final long longestNs;
    private final byte[] payload;
    private final StuffedLength length;
    private long count;

    FrameMaker(Stream stream, long bitNs, long dataBitNs) {
        this.stream = stream;
        this.bitNs = bitNs;
        this.dataBitNs = dataBitNs;
        this.longestNs = stream.mostNs(bitNs, dataBitNs);
        int bytes = stream.fd() ? FdFrame.bytesOf(FdFrame.codeFor(stream.bytes())) : stream.bytes();
        this.payload = new byte[bytes];
        this.length = StuffedLength.of(stream.length(), stream.id(), stream.fd() ? 0 : bytes);
    }

    byte[] payload() {
        return payload;
    }

    /** Fills the payload anew and gives the time it takes on the wire, ns. */
    long next(RandomGenerator random) {
        switch (stream.fill()) {
            case LONGEST -> {
                return longestNs;
            }
            case RANDOM -> random.nextBytes(payload);
            case OPERATIONAL -> Arrays.fill(payload, OPERATIONAL);
            case COUNT -> {
                long c = count++;
                for (int i = 0; i < payload.length && i < Integer.BYTES; i++) {
                    payload[i] = (byte) (c >>> (8 * i));
                }
            }
        }
        return lengthNs();
    }

    private long lengthNs() {
        return stream.fd()
                ? FdBits.of(stream.length(), stream.id(), payload, true, false).nanoseconds(bitNs, dataBitNs)
                : length.bits(payload) * bitNs;
    }
}
