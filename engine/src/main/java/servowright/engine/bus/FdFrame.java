package servowright.engine.bus;

import servowright.engine.quantity.Require;

/**
 * Length of a CAN FD frame in bits of its two rates, intermission included.
 *
 * <p>At the nominal rate: start of frame to the rate switch bit, 17 bits (36 with a 29-bit identifier), then acknowledge slot
 * and delimiter, 7 bits end of frame and 3 of intermission, 12 bits. At the data rate: error state indicator, 4 bits length
 * code, the data, 4 bits stuff count, 17 or 21 bits checksum (21 above 16 bytes) with 6 or 7 fixed stuff bits, checksum
 * delimiter. Stuffing by runs reaches from start of frame to the last data bit; its worst case is counted exactly with the
 * fixed bits held ({@link StuffBound}). The two bits in which the rate switches are counted at the nominal rate.
 *
 * <p><b>Source.</b> ISO 11898-1:2015 (text not opened); field list seen in a public kernel header that cites it. The closed
 * form of Bordoloi and Samii 2014 (recalled) is for frames before the stuff count and 5 data bits shorter.
 *
 * @param nominalBits bits sent at the nominal rate
 * @param dataBits    bits sent at the data rate; 0 when the rate is not switched
 */
public record FdFrame(int nominalBits, int dataBits) {
    private static final int[] LENGTHS = {0, 1, 2, 3, 4, 5, 6, 7, 8, 12, 16, 20, 24, 32, 48, 64};
    private static final int NOMINAL_TAIL = 12;
    private static final int STANDARD_HEAD = 17;
    private static final int EXTENDED_HEAD = 36;

    /** Bytes that the length code stands for, code 0 to 15. */
    public static int bytesOf(int lengthCode) {
        Require.within("length code", 0, 15, lengthCode, "");
        return LENGTHS[lengthCode];
    }

    /** The smallest length code that carries so many bytes, 0 to 64. */
    public static int codeFor(int bytes) {
        Require.within("bytes of an FD frame", 0, 64, bytes, "");
        int code = 0;
        while (LENGTHS[code] < bytes) {
            code++;
        }
        return code;
    }

    /** The frame without any stuff bit by runs; the fixed stuff bits are always there. */
    public static FdFrame least(IdLength id, int lengthCode, boolean rateSwitch) {
        return plain(id, lengthCode).sentAt(rateSwitch);
    }

    /** The frame with the most stuff bits it can get. */
    public static FdFrame most(IdLength id, int lengthCode, boolean rateSwitch) {
        FdFrame plain = plain(id, lengthCode);
        String head = head(id, rateSwitch);
        String template = head + "x" + fourBits(lengthCode) + "x".repeat(8 * bytesOf(lengthCode));
        StuffBound.Split stuff = StuffBound.most(template, head.length(), false);
        if (!rateSwitch) {
            StuffBound.Split all = StuffBound.most(template, template.length() + 1, false);
            return new FdFrame(plain.nominalBits() + plain.dataBits() + all.total(), 0);
        }
        return new FdFrame(plain.nominalBits() + stuff.before(), plain.dataBits() + stuff.after());
    }

    /** How long the frame holds the bus, ns, for bit times of both rates in ns. */
    public long nanoseconds(long nominalBitNs, long dataBitNs) {
        return nominalBits * nominalBitNs + dataBits * dataBitNs;
    }

    private FdFrame sentAt(boolean rateSwitch) {
        return rateSwitch ? this : new FdFrame(nominalBits + dataBits, 0);
    }

    private static FdFrame plain(IdLength id, int lengthCode) {
        int bytes = bytesOf(lengthCode);
        int checksum = bytes <= 16 ? 17 : 21;
        int fixed = bytes <= 16 ? 6 : 7;
        int head = id == IdLength.STANDARD ? STANDARD_HEAD : EXTENDED_HEAD;
        return new FdFrame(head + NOMINAL_TAIL, 1 + 4 + 8 * bytes + 4 + checksum + fixed + 1);
    }

    /** Start of frame, identifier, RRS, IDE, (18 identifier bits, RRS), FDF, reserved, rate switch. */
    private static String head(IdLength id, boolean rateSwitch) {
        String identifier =
                id == IdLength.STANDARD ? "x".repeat(11) + "00" : "x".repeat(11) + "11" + "x".repeat(18) + "0";
        return "0" + identifier + "10" + (rateSwitch ? "1" : "0");
    }

    private static String fourBits(int code) {
        String bits = Integer.toBinaryString(code);
        return "0".repeat(4 - bits.length()) + bits;
    }
}
