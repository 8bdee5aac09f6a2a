package servowright.engine.bus;

import servowright.engine.quantity.Require;

/**
 * The very bits of a CAN FD frame: what a given identifier and payload take on the wire.
 *
 * <p>Stuffing by runs reaches from start of frame to the last data bit; stuff count and checksum carry stuff bits at fixed places,
 * so the value of the checksum does not change the length and is not computed. A run of five that ends on the last data bit is broken
 * by the first fixed stuff bit. <b>Source.</b> ISO 11898-1:2015 (text not opened); field list seen in a public kernel header that
 * cites it; the rule for the last data bit is recalled.
 */
public final class FdBits {
    private FdBits() {}

    /**
     * Bits of a data frame at both rates, intermission included.
     *
     * @param identifier   0 to 2^11 - 1 or 2^29 - 1
     * @param payload      0 to 8, 12, 16, 20, 24, 32, 48 or 64 bytes
     * @param rateSwitch   whether the data are sent at the data rate
     * @param errorPassive what the sender says of its own error state
     */
    public static FdFrame of(IdLength id, int identifier, byte[] payload, boolean rateSwitch, boolean errorPassive) {
        int code = FdFrame.codeFor(payload.length);
        Require.within("bytes of this length code", payload.length, payload.length, FdFrame.bytesOf(code), "");
        Require.within("identifier", 0, (1 << id.bits()) - 1, identifier, "");
        Bits bits = new Bits(64 + 8 * payload.length);
        head(bits, id, identifier, rateSwitch);
        int headBits = bits.count();
        bits.put(errorPassive ? 1 : 0, 1);
        bits.put(code, 4);
        for (byte b : payload) {
            bits.put(b & 0xff, 8);
        }
        FdFrame plain = FdFrame.least(id, code, true);
        int inHead = bits.stuffedBefore(headBits - 1);
        int behind = bits.stuffedBefore(bits.count() - 1) - inHead;
        FdFrame real = new FdFrame(plain.nominalBits() + inHead, plain.dataBits() + behind);
        return rateSwitch ? real : new FdFrame(real.nominalBits() + real.dataBits(), 0);
    }

    private static void head(Bits bits, IdLength id, int identifier, boolean rateSwitch) {
        bits.put(0, 1);
        if (id == IdLength.STANDARD) {
            bits.put(identifier, 11);
            bits.put(0, 2);
        } else {
            bits.put(identifier >>> 18, 11);
            bits.put(3, 2);
            bits.put(identifier & 0x3ffff, 18);
            bits.put(0, 1);
        }
        bits.put(2, 2);
        bits.put(rateSwitch ? 1 : 0, 1);
    }
}
