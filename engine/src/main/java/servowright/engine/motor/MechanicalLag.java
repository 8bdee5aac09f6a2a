package servowright.engine.motor;

import servowright.engine.quantity.Require;

/**
 * How the speed of a motor follows a voltage put on its q axis: a first-order lag.
 *
 * <p><b>Formula.</b> From v = R i + p λ ω and J dω/dt = (3/2) p λ i: τ = R J / ((3/2) (p λ)²), and ω/v = 1 / (p λ) when both stand
 * still. With what block commutation sees, 2 R and (3√3/π) p λ twice, the time constant is π²/9 = 1.097 times as long. <b>Valid
 * for</b> sinusoidal current held on the q axis, a current below its limit all the time, L/R several times shorter than τ, and drag
 * per speed well below (3/2) (p λ)²/R; dry friction only shifts the speed. <b>Source.</b> Derived from the rotor-frame equations in
 * P. C. Krause, O. Wasynczuk, S. D. Sudhoff, S. Pekarek, "Analysis of Electric Machinery and Drive Systems", 3rd ed. 2013 (recalled).
 *
 * @param tauSecond           τ
 * @param radPerSecondPerVolt mechanical rad/s per volt, phase peak
 */
public record MechanicalLag(double tauSecond, double radPerSecondPerVolt) {
    public MechanicalLag {
        Require.positive("time constant", tauSecond, "s");
        Require.positive("speed per volt", radPerSecondPerVolt, "rad/s/V");
    }

    /**
     * Of a shaft.
     *
     * @param phaseOhm resistance of one phase of the equivalent star
     * @param inertia  of all that turns, at the motor, kg m²
     */
    public static MechanicalLag of(MotorConstants constants, double phaseOhm, double inertia) {
        double emf = constants.emfPhasePeakVoltSecondPerRad();
        return new MechanicalLag(
                Require.positive("phase resistance", phaseOhm, "ohm")
                        * Require.positive("inertia", inertia, "kg m²")
                        / (1.5 * emf * emf),
                1 / emf);
    }
}
