package servowright.engine.motion;

import servowright.engine.quantity.Require;

/**
 * A load behind a gear.
 *
 * <p><b>Formula.</b> Torque at the load T_L = J_L α + T_friction sign(ω) + T_gravity. At the motor, with n motor turns per
 * load turn and efficiency η: T_L/(n η) when power flows to the load, T_L η / n when it flows back, T_L/n at rest; plus
 * J_m n α. <b>Valid for</b> a rigid gear and constant η; at rest friction may hold or need help, the mean is taken.
 * <b>Source.</b> Power balance of the gear; sign rule as commonly practised.
 *
 * @param motorTurnsPerLoadTurn n
 * @param efficiency            η of the gear, above 0 to 1
 * @param motorKgM2             inertia of rotor and everything at motor speed
 * @param loadKgM2              inertia of the load
 * @param frictionNewtonMetre   friction at the load, not negative
 * @param gravityNewtonMetre    torque needed at the load to hold it, positive if it has to be pushed in the positive sense
 */
public record GearedAxis(
        double motorTurnsPerLoadTurn,
        double efficiency,
        double motorKgM2,
        double loadKgM2,
        double frictionNewtonMetre,
        double gravityNewtonMetre) {

    /** Refuses figures no axis can have. */
    public GearedAxis {
        Require.positive("gear ratio (motor turns per load turn)", motorTurnsPerLoadTurn, "");
        Require.positive("gear efficiency", efficiency, "");
        Require.within("gear efficiency", 0, 1, efficiency, "");
        Require.notNegative("motor inertia", motorKgM2, "kg m²");
        Require.notNegative("load inertia", loadKgM2, "kg m²");
        Require.notNegative("friction at the load", frictionNewtonMetre, "N m");
        Require.finite("gravity torque at the load", gravityNewtonMetre, "N m");
    }

    /** Torque at the load, N m. */
    public double loadNewtonMetre(Stretch stretch) {
        return loadKgM2 * stretch.radPerS2() + frictionNewtonMetre * stretch.sense() + gravityNewtonMetre;
    }

    /** Torque at the motor, N m, positive in the positive sense of the load. */
    public double motorNewtonMetre(Stretch stretch) {
        double load = loadNewtonMetre(stretch);
        double flow = load * stretch.sense();
        double share = flow > 0 ? 1 / efficiency : flow < 0 ? efficiency : 1;
        return load * share / motorTurnsPerLoadTurn + motorKgM2 * motorTurnsPerLoadTurn * stretch.radPerS2();
    }

    /** Load inertia seen by the motor over its own: J_L / (n² J_m). */
    public double inertiaRatio() {
        return loadKgM2
                / (motorTurnsPerLoadTurn
                        * motorTurnsPerLoadTurn
                        * Require.positive("motor inertia", motorKgM2, "kg m²"));
    }

    /** Gear that gives a pure inertia most acceleration per motor torque, √(J_L/J_m). */
    public double inertiaMatchedRatio() {
        return Math.sqrt(loadKgM2 / Require.positive("motor inertia", motorKgM2, "kg m²"));
    }
}
