package servowright.engine.motor;

import servowright.engine.quantity.Require;

/**
 * One of three equal coils, and what star and delta make of it. From the terminals the two cannot be told apart, and need
 * not be: everything else in this package speaks of the equivalent star.
 *
 * <p><b>Formulas.</b> A delta of coils R, L, λ looks like a star of R/3, L/3, λ/√3; the line current is √3 times the coil
 * current. <b>Valid for</b> equal coils and sinusoidal EMF; a third harmonic in the EMF drives a current around the delta,
 * which costs heat and shows nowhere outside. <b>Source.</b> Star-delta transformation of a symmetrical three-pole.
 *
 * @param ohm        resistance of the coil
 * @param henry      inductance of the coil
 * @param weberPeak  flux linkage of the coil, peak
 */
public record Coil(double ohm, double henry, double weberPeak) {

    /** Refuses figures no coil can have. */
    public Coil {
        Require.positive("coil resistance", ohm, "ohm");
        Require.positive("coil inductance", henry, "H");
        Require.positive("coil flux linkage (peak)", weberPeak, "Wb");
    }

    /** Phase of the equivalent star, this being a coil of a delta. */
    public Coil starEquivalent() {
        return new Coil(ohm / 3, henry / 3, weberPeak / Math.sqrt(3));
    }

    /** Coil of the delta that looks like this phase of a star. */
    public Coil deltaEquivalent() {
        return new Coil(3 * ohm, 3 * henry, Math.sqrt(3) * weberPeak);
    }

    /** Resistance between two terminals if three of these form a star: 2 R. */
    public double twoTerminalsOhmInStar() {
        return 2 * ohm;
    }

    /** Resistance between two terminals if three of these form a delta: 2/3 R. */
    public double twoTerminalsOhmInDelta() {
        return 2 * ohm / 3;
    }

    /**
     * What changes when the same coils are connected anew, as factors.
     *
     * @param speedConstant  speed per volt
     * @param torqueConstant torque per ampere at the terminals
     * @param resistance     between terminals, and inductance alike
     * @param current        terminal current for the same copper loss
     * @param motorConstant  torque per root watt: 1, the copper stays the same
     */
    public record Reconnection(
            double speedConstant, double torqueConstant, double resistance, double current, double motorConstant) {}

    /** Star made into delta. A shop rule says 1.8 instead of √3; it is not exact. */
    public static Reconnection starToDelta() {
        return reconnection(Math.sqrt(3));
    }

    /** Delta made into star. */
    public static Reconnection deltaToStar() {
        return reconnection(1 / Math.sqrt(3));
    }

    private static Reconnection reconnection(double speed) {
        double torque = 1 / speed;
        double resistance = torque * torque;
        return new Reconnection(speed, torque, resistance, speed, torque / Math.sqrt(resistance));
    }
}
