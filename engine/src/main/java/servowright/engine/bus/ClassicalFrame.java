package servowright.engine.bus;

import servowright.engine.quantity.Require;

/**
 * Length of a classical CAN frame in bits, intermission included.
 *
 * <p>The stuffable region from start of frame to the end of the checksum has g + 8 s bits, g = 34 (11-bit identifier) or
 * 54 (29-bit); 13 more bits are never stuffed: checksum delimiter, acknowledge slot and delimiter, 7 bits end of frame, 3
 * bits intermission. After five equal bits a complementary one is put in; the worst pattern does so after the first five
 * and then after every four: floor((g + 8 s - 1) / 4).
 *
 * <p><b>Source.</b> Davis, Burns, Bril, Lukkien, Real-Time Systems 35 (2007) 239-272, equation (1) (recalled); fields and
 * the forms 55 + 10 s and 80 + 10 s seen in public kernel and can-utils sources.
 */
public final class ClassicalFrame {
    /** Bits after the checksum that are never stuffed, with the three bits of intermission. */
    public static final int TAIL_BITS = 13;

    /** Bits of intermission at the end of each frame. */
    public static final int INTERMISSION_BITS = 3;

    private ClassicalFrame() {}

    /**
     * Bits of a data frame without any stuff bit: the least it can take.
     *
     * @param bytes 0 to 8
     */
    public static int leastBits(IdLength id, int bytes) {
        return stuffable(id, bytes) + TAIL_BITS;
    }

    /**
     * Bits of a data frame with the most stuff bits that the published bound allows. The fixed bits of real frames leave
     * it up to two bits high; a guarantee uses it.
     *
     * @param bytes 0 to 8
     */
    public static int mostBits(IdLength id, int bytes) {
        int g = stuffable(id, bytes);
        return g + TAIL_BITS + (g - 1) / 4;
    }

    /** Bits of a remote frame with the most stuff bits: it carries no data whatever its length code says. */
    public static int mostRemoteBits(IdLength id) {
        return mostBits(id, 0);
    }

    /** Bits from start of frame to the end of the checksum. */
    static int stuffable(IdLength id, int bytes) {
        Require.within("bytes of a classical frame", 0, 8, bytes, "");
        return (id == IdLength.STANDARD ? 34 : 54) + 8 * bytes;
    }
}
