package servowright.engine.bus;

import servowright.engine.quantity.Require;

/**
 * The common two-byte register form of a bit timing: first byte sjw - 1 (2 bits) and prescaler - 1 (6 bits), second byte triple
 * sampling (1 bit), ps2 - 1 (3 bits), prop + ps1 - 1 (4 bits). The quantum is 2 · prescaler / oscillator.
 *
 * <p><b>Source.</b> register bytes of nine rates at 16 MHz in a public reprint of CiA DS-102 V2.0 (seen).
 */
public final class TimingRegisters {
    private TimingRegisters() {}

    /**
     * The timing that the two bytes stand for. Prop and ps1 are one field there; they are split so that ps1 is as long as ps2
     * where that is possible.
     */
    public static BitTiming decode(int first, int second, long oscillatorHz) {
        Require.within("first register byte", 0, 255, first, "");
        Require.within("second register byte", 0, 255, second, "");
        int ps2 = ((second >> 4) & 7) + 1;
        int both = (second & 15) + 1;
        int ps1 = Math.max(1, Math.min(ps2, both - 1));
        int sjw = Math.min((first >> 6) + 1, Math.min(ps1, ps2));
        return new BitTiming(oscillatorHz / 2, (first & 63) + 1, both - ps1, ps1, ps2, sjw);
    }

    /**
     * The two bytes as one number, the first byte high.
     *
     * @throws IllegalArgumentException if a field does not hold its value
     */
    public static int encode(BitTiming timing) {
        Require.within("synchronisation jump width", 1, 4, timing.sjw(), "quanta");
        Require.within("prescaler", 1, 64, timing.prescaler(), "");
        Require.within("phase segment 2", 1, 8, timing.ps2(), "quanta");
        Require.within("propagation and phase segment 1", 1, 16, timing.prop() + timing.ps1(), "quanta");
        int first = ((timing.sjw() - 1) << 6) | (timing.prescaler() - 1);
        int second = ((timing.ps2() - 1) << 4) | (timing.prop() + timing.ps1() - 1);
        return (first << 8) | second;
    }
}
