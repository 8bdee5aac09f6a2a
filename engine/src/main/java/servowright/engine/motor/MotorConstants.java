package servowright.engine.motor;

import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Require;
import servowright.engine.quantity.VoltageBasis;

/**
 * All constants of one motor, which are one number seen from different sides: pole pairs times flux linkage, equal to the
 * back-EMF constant in volt second per mechanical radian, phase peak.
 *
 * <p><b>Formulas.</b> EMF constant = f_v p λ; speed constant = 1 / (f_v p λ); torque constant = f_i p λ, with the factors
 * of {@link ConstantBasis}. <b>Valid for</b> sinusoidal back-EMF, the magnet at one temperature, no saturation.
 *
 * @param emfPhasePeakVoltSecondPerRad back-EMF constant, phase peak volt per mechanical rad/s, equal to p λ
 */
public record MotorConstants(double emfPhasePeakVoltSecondPerRad) {

    /** Refuses anything but a finite constant above zero. */
    public MotorConstants {
        Require.positive("back-EMF constant (phase peak)", emfPhasePeakVoltSecondPerRad, "V s/rad");
    }

    /**
     * From a back-EMF constant.
     *
     * @param voltSecondPerRad volt on {@code basis} per mechanical rad/s
     */
    public static MotorConstants ofEmfConstant(double voltSecondPerRad, VoltageBasis basis) {
        Require.positive("back-EMF constant", voltSecondPerRad, "V s/rad");
        return new MotorConstants(voltSecondPerRad / ConstantBasis.of(basis).perFlux());
    }

    /**
     * From a speed constant.
     *
     * @param radPerSecondPerVolt mechanical rad/s per volt on {@code basis}; 1 rpm/V is 2π/60 of it
     */
    public static MotorConstants ofSpeedConstant(double radPerSecondPerVolt, VoltageBasis basis) {
        Require.positive("speed constant", radPerSecondPerVolt, "rad/s/V");
        return ofEmfConstant(1 / radPerSecondPerVolt, basis);
    }

    /**
     * From a torque constant at the motor shaft.
     *
     * @param newtonMetrePerAmp torque per ampere on {@code basis}, before friction and iron loss
     */
    public static MotorConstants ofTorqueConstant(double newtonMetrePerAmp, CurrentBasis basis) {
        Require.positive("torque constant", newtonMetrePerAmp, "N m/A");
        return new MotorConstants(newtonMetrePerAmp / ConstantBasis.of(basis).perFlux());
    }

    /**
     * From the flux linkage.
     *
     * @param weberPhasePeak magnet flux linked by one phase of the equivalent star, peak
     * @param polePairs      pole pairs, half the number of magnets of an ordinary rotor
     */
    public static MotorConstants ofFluxLinkage(double weberPhasePeak, int polePairs) {
        Require.positive("flux linkage (phase peak)", weberPhasePeak, "Wb");
        return new MotorConstants(weberPhasePeak * Require.atLeast("pole pairs", 1, polePairs));
    }

    /** Back-EMF constant, volt on {@code basis} per mechanical rad/s. */
    public double emfConstant(VoltageBasis basis) {
        return emfPhasePeakVoltSecondPerRad * ConstantBasis.of(basis).perFlux();
    }

    /** Speed constant, mechanical rad/s per volt on {@code basis}. */
    public double speedConstant(VoltageBasis basis) {
        return 1 / emfConstant(basis);
    }

    /** Torque constant, N m per ampere on {@code basis}. */
    public double torqueConstant(CurrentBasis basis) {
        return emfPhasePeakVoltSecondPerRad * ConstantBasis.of(basis).perFlux();
    }

    /** Flux linkage λ in weber, phase peak. */
    public double fluxLinkageWeberPeak(int polePairs) {
        return emfPhasePeakVoltSecondPerRad / Require.atLeast("pole pairs", 1, polePairs);
    }

    /**
     * Flux linkage in weber of the power-invariant transformation, √(3/2) λ. Its current is √(3/2) of the
     * amplitude-invariant one; resistance and inductance are the same in both.
     */
    public double fluxLinkagePowerInvariantWeber(int polePairs) {
        return Math.sqrt(1.5) * fluxLinkageWeberPeak(polePairs);
    }

    /** Torque constant, N m per power-invariant q-axis ampere: √(3/2) p λ, since T = p λ_pi i_pi. */
    public double torqueConstantPowerInvariant() {
        return Math.sqrt(1.5) * emfPhasePeakVoltSecondPerRad;
    }

    /**
     * Motor constant, N m per root watt of copper loss with sinusoidal current: √(3/2) p λ / √R. The same for any number
     * of turns and for star or delta. From T = (3/2) p λ i and P = (3/2) R i².
     *
     * @param phaseOhm resistance of one phase of the equivalent star
     */
    public double perRootWatt(double phaseOhm) {
        Require.positive("phase resistance", phaseOhm, "ohm");
        return Math.sqrt(1.5 / phaseOhm) * emfPhasePeakVoltSecondPerRad;
    }

    /**
     * Motor constant, N m per root watt, with six-step current: T = (3√3/π) p λ I and P = 2 R I². It is 3/π (95.5 %) of
     * the figure with sinusoidal current.
     *
     * @param phaseOhm resistance of one phase of the equivalent star
     */
    public double perRootWattSixStep(double phaseOhm) {
        Require.positive("phase resistance", phaseOhm, "ohm");
        return torqueConstant(CurrentBasis.SIX_STEP) / Math.sqrt(2 * phaseOhm);
    }

    /**
     * Torque constant times speed constant, without unit in SI: the same for every motor, so one follows from the other.
     * In N m/A and rpm/V it is 60/2π times this; the often quoted 8.27 belongs to line peak volt and q-axis ampere only.
     */
    public static double torqueTimesSpeedConstant(VoltageBasis volts, CurrentBasis amps) {
        return ConstantBasis.of(amps).perFlux() / ConstantBasis.of(volts).perFlux();
    }
}
