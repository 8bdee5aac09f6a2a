package servowright.engine.motor;

import servowright.engine.quantity.Require;

/**
 * What warm copper and warm magnets together do to a motor.
 *
 * <p><b>Formula.</b> Torque falls with the flux, loss rises with the resistance: for the same torque the current must rise
 * by 1/f_λ and the copper loss by f_R / f_λ². <b>Valid for</b> copper loss alone; iron loss falls a little when warm.
 *
 * @param resistanceFactor warm over cold resistance, {@link Conductor#resistanceFactor}
 * @param fluxFactor       warm over cold flux linkage, {@link MagnetMaterial#fluxFactor}; the torque constant alike
 */
public record HotEffect(double resistanceFactor, double fluxFactor) {

    /** Refuses factors that are no factors. */
    public HotEffect {
        Require.positive("resistance factor", resistanceFactor, "");
        Require.positive("flux factor", fluxFactor, "");
    }

    /** Winding and magnets each from one temperature to another. */
    public static HotEffect of(
            Conductor conductor,
            double windingFromKelvin,
            double windingToKelvin,
            MagnetMaterial magnets,
            double magnetFromKelvin,
            double magnetToKelvin) {
        return new HotEffect(
                conductor.resistanceFactor(windingFromKelvin, windingToKelvin),
                magnets.fluxFactor(magnetFromKelvin, magnetToKelvin));
    }

    /** Copper loss for the same torque, warm over cold. */
    public double lossForSameTorque() {
        return resistanceFactor / (fluxFactor * fluxFactor);
    }

    /** Torque for the same copper loss, warm over cold; the motor constant alike. */
    public double torqueForSameLoss() {
        return fluxFactor / Math.sqrt(resistanceFactor);
    }

    /** The warm winding. */
    public Winding applyTo(Winding cold) {
        return cold.withPhaseOhm(cold.phaseOhm() * resistanceFactor)
                .withFluxWeberPeak(cold.fluxWeberPeak() * fluxFactor);
    }
}
