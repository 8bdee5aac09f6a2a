package servowright.engine.motor;

import servowright.engine.quantity.Require;

/**
 * Electrical constants of one phase of the equivalent star, at one temperature.
 *
 * @param phaseOhm       resistance; 0 leaves it out of a calculation
 * @param dHenry         inductance on the magnet axis; 0 leaves it out
 * @param qHenry         inductance 90 electrical degrees ahead; 0 leaves it out
 * @param fluxWeberPeak  magnet flux linkage, phase peak
 * @param polePairs      pole pairs
 */
public record Winding(double phaseOhm, double dHenry, double qHenry, double fluxWeberPeak, int polePairs) {

    /** Refuses figures no winding can have. */
    public Winding {
        Require.notNegative("phase resistance", phaseOhm, "ohm");
        Require.notNegative("d inductance", dHenry, "H");
        Require.notNegative("q inductance", qHenry, "H");
        Require.positive("flux linkage (phase peak)", fluxWeberPeak, "Wb");
        Require.atLeast("pole pairs", 1, polePairs);
    }

    /** The same winding with another resistance, for example warmer; 0 for the ideal one. */
    public Winding withPhaseOhm(double ohm) {
        return new Winding(ohm, dHenry, qHenry, fluxWeberPeak, polePairs);
    }

    /** The same winding with other inductances; 0 and 0 leaves them out. */
    public Winding withInductance(double dHenry, double qHenry) {
        return new Winding(phaseOhm, dHenry, qHenry, fluxWeberPeak, polePairs);
    }

    /** The same winding with another magnet flux, for example of a warmer rotor. */
    public Winding withFluxWeberPeak(double weber) {
        return new Winding(phaseOhm, dHenry, qHenry, weber, polePairs);
    }

    /** Its motor constants. */
    public MotorConstants constants() {
        return MotorConstants.ofFluxLinkage(fluxWeberPeak, polePairs);
    }

    /**
     * Air-gap torque in N m: T = (3/2) p [λ i_q + (L_d − L_q) i_d i_q].
     *
     * <p><b>Source.</b> Krause, Wasynczuk, Sudhoff, Pekarek, Analysis of Electric Machinery and Drive Systems, 3rd ed. 2013,
     * ch. 4 (recalled); from the power balance of the dq equations. Friction and iron loss are not in it.
     *
     * @param dAmp d current, peak; negative weakens the field
     * @param qAmp q current, peak
     */
    public double torqueNewtonMetre(double dAmp, double qAmp) {
        return 1.5 * polePairs * (fluxWeberPeak + (dHenry - qHenry) * dAmp) * qAmp;
    }
}
