package servowright.engine.motion;

import servowright.engine.quantity.Require;

/** Kinetic energy of a turning axis: E = J ω² / 2. <b>Source.</b> Mechanics of rotation. */
public final class MovingEnergy {

    private MovingEnergy() {}

    /**
     * Kinetic energy, J.
     *
     * @param kgM2    inertia, on the same side of the gear as the speed
     * @param radPerS speed
     */
    public static double joule(double kgM2, double radPerS) {
        Require.notNegative("moment of inertia", kgM2, "kg m²");
        return 0.5 * kgM2 * Require.finite("speed", radPerS, "rad/s") * radPerS;
    }
}
