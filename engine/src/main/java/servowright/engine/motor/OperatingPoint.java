package servowright.engine.motor;

import servowright.engine.quantity.Require;

/**
 * A settled operating point in dq.
 *
 * <p><b>Formula.</b> v_d = R i_d − ω_e L_q i_q, v_q = R i_q + ω_e (L_d i_d + λ), ω_e = p ω, length V = √(v_d² + v_q²) in
 * phase peak volt. <b>Valid for</b> settled current, sinusoidal back-EMF, constant inductances; saturation, iron loss and
 * dead time are not in it. <b>Source.</b> Krause, Wasynczuk, Sudhoff, Pekarek, Analysis of Electric Machinery and Drive
 * Systems, 3rd ed. 2013, ch. 4, rotor-frame voltage equations with time derivatives zero (recalled).
 *
 * @param dAmp                  d current, peak
 * @param qAmp                  q current, peak
 * @param mechRadPerS           shaft speed
 * @param dVolt                 d voltage, peak
 * @param qVolt                 q voltage, peak
 * @param torqueNewtonMetre     air-gap torque
 * @param copperWatt            loss in the three phases, (3/2) R (i_d² + i_q²)
 * @param electricWatt          power into the terminals, (3/2)(v_d i_d + v_q i_q) = torque x speed + copper loss
 */
public record OperatingPoint(
        double dAmp,
        double qAmp,
        double mechRadPerS,
        double dVolt,
        double qVolt,
        double torqueNewtonMetre,
        double copperWatt,
        double electricWatt) {

    /** The operating point of a winding. */
    public static OperatingPoint of(Winding winding, double dAmp, double qAmp, double mechRadPerS) {
        Require.finite("d current", dAmp, "A");
        Require.finite("q current", qAmp, "A");
        Require.finite("shaft speed", mechRadPerS, "rad/s");
        double electric = winding.polePairs() * mechRadPerS;
        double r = winding.phaseOhm();
        double vd = r * dAmp - electric * winding.qHenry() * qAmp;
        double vq = r * qAmp + electric * (winding.dHenry() * dAmp + winding.fluxWeberPeak());
        return new OperatingPoint(
                dAmp,
                qAmp,
                mechRadPerS,
                vd,
                vq,
                winding.torqueNewtonMetre(dAmp, qAmp),
                1.5 * r * (dAmp * dAmp + qAmp * qAmp),
                1.5 * (vd * dAmp + vq * qAmp));
    }

    /** Voltage the bridge must make, phase peak. */
    public double phasePeakVolt() {
        return Math.hypot(dVolt, qVolt);
    }

    /** Current the bridge must carry, phase peak. */
    public double phasePeakAmp() {
        return Math.hypot(dAmp, qAmp);
    }

    /** Mechanical power at the air gap; negative when braking. */
    public double mechanicalWatt() {
        return torqueNewtonMetre * mechRadPerS;
    }
}
