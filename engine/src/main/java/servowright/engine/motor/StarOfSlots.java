package servowright.engine.motor;

import servowright.engine.quantity.Require;

/**
 * Winding factor of a three-phase motor with a coil around every tooth, from its slots and poles.
 *
 * <p><b>Formula.</b> Pitch factor k_p = |sin(π p / Q)|. The coils stand at electrical angles k p 360°/Q; each goes to the
 * phase belt of 60° in which its angle falls (opposite belts in series, reversed). Distribution factor k_d = |sum of the
 * phasors of one phase| / their number. Winding factor k_w = k_p k_d, for the fundamental.
 *
 * <p><b>Valid for</b> two layers, one coil per tooth, three phases. Possible only with an even number of poles, balanced
 * only if Q / gcd(Q, p) divides by 3. <b>Source.</b> Star of slots, as in Ouamara et al., Acta Polytechnica 59(2) 2019,
 * 153-161 (abstract seen), and Bianchi, Dai Pre, IEE Proceedings Electric Power Applications 2006 (recalled).
 */
public final class StarOfSlots {

    private StarOfSlots() {}

    /** Why slots and poles make no winding. */
    public enum Reason {
        ODD_POLES("an odd number of poles cannot alternate around a rotor"),
        UNBALANCED(
                "the three phases cannot be equal: slots over their common divisor with the pole pairs must divide by 3"),
        NO_VOLTAGE("every tooth spans whole pole pairs, so that the coils see no voltage");

        private final String words;

        Reason(String words) {
            this.words = words;
        }

        /** The reason in running text. */
        public String words() {
            return words;
        }
    }

    /** What slots and poles give. */
    public sealed interface Result {}

    /**
     * A balanced winding.
     *
     * @param pitchFactor        k_p
     * @param distributionFactor k_d
     * @param windingFactor      k_p k_d
     * @param slotsPerPolePerPhase Q / (3 · 2p); tooth coils work well from 1/4 to 1/2
     */
    public record Balanced(
            double pitchFactor, double distributionFactor, double windingFactor, double slotsPerPolePerPhase)
            implements Result {}

    /** No winding, and why. */
    public record Impossible(Reason reason) implements Result {}

    /**
     * The winding of a number of slots and poles.
     *
     * @param slots teeth of the stator, at least 3
     * @param poles magnets of the rotor, at least 2
     */
    public static Result of(int slots, int poles) {
        Require.atLeast("slots", 3, slots);
        Require.atLeast("poles", 2, poles);
        if (poles % 2 != 0) {
            return new Impossible(Reason.ODD_POLES);
        }
        int polePairs = poles / 2;
        if (polePairs % slots == 0) {
            return new Impossible(Reason.NO_VOLTAGE);
        }
        if (slots / Cogging.greatestCommonDivisor(slots, polePairs) % 3 != 0) {
            return new Impossible(Reason.UNBALANCED);
        }
        double pitch = Math.abs(Math.sin(Math.PI * polePairs / slots));
        double distribution = distributionFactor(slots, polePairs);
        return new Balanced(pitch, distribution, pitch * distribution, slots / (3.0 * poles));
    }

    /** Sum of the phasors in the belts 0° to 60° and, reversed, 180° to 240°, over their number. */
    private static double distributionFactor(int slots, int polePairs) {
        double real = 0;
        double imaginary = 0;
        int coils = 0;
        for (int coil = 0; coil < slots; coil++) {
            int position = Math.floorMod(coil * polePairs, slots); // in units of 360°/Q
            int belt = 6 * position / slots; // exact: belts are half open
            if (belt == 0 || belt == 3) {
                double angle = 2 * Math.PI * position / slots;
                double sign = belt == 0 ? 1 : -1;
                real += sign * Math.cos(angle);
                imaginary += sign * Math.sin(angle);
                coils++;
            }
        }
        return Math.hypot(real, imaginary) / coils;
    }
}
