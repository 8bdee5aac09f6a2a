package servowright.engine.motion;

import java.util.OptionalDouble;
import servowright.engine.quantity.Require;

/**
 * A shaft that runs out by its own drag.
 *
 * <p><b>Formula.</b> J dω/dt = −(T_c + b ω + k ω²). With q = √(b² − 4 T_c k)/2 and x = q t/J: ω(t) = [ω₀ (q cosh x − (b/2)
 * sinh x) − T_c sinh x] / [q cosh x + (b/2 + k ω₀) sinh x], cos and sin where the root is imaginary, the limit where it is
 * zero. It stops at t = (J/q) artanh[ω₀ q / (ω₀ b/2 + T_c)]. <b>Valid for</b> one sense of rotation; near standstill real
 * friction is larger. Friction and iron loss cannot be told apart with the magnets in place: the sum is drag.
 * <b>Source.</b> Riccati equation with constant coefficients, solved in closed form.
 *
 * @param kgM2             inertia of all that turns
 * @param coulombNewtonMetre T_c, drag that does not depend on speed (dry friction, hysteresis)
 * @param viscousNewtonMetreSecond b, drag per rad/s (grease, eddy currents)
 * @param quadraticNewtonMetreSecond2 k, drag per (rad/s)² (air)
 */
public record CoastDown(
        double kgM2, double coulombNewtonMetre, double viscousNewtonMetreSecond, double quadraticNewtonMetreSecond2) {

    /** Refuses drag that drives. */
    public CoastDown {
        Require.positive("inertia", kgM2, "kg m²");
        Require.notNegative("speed-independent drag", coulombNewtonMetre, "N m");
        Require.notNegative("drag per speed", viscousNewtonMetreSecond, "N m s");
        Require.notNegative("drag per speed squared", quadraticNewtonMetreSecond2, "N m s²");
    }

    /** Drag torque at a speed, N m. */
    public double dragNewtonMetre(double radPerS) {
        double speed = Require.notNegative("speed", radPerS, "rad/s");
        return coulombNewtonMetre + (viscousNewtonMetreSecond + quadraticNewtonMetreSecond2 * speed) * speed;
    }

    /** Power lost at a speed, W. */
    public double lossWatt(double radPerS) {
        return dragNewtonMetre(radPerS) * radPerS;
    }

    /** Speed after a time, rad/s; 0 after standstill. */
    public double radPerS(double startRadPerS, double second) {
        Require.notNegative("speed at the start", startRadPerS, "rad/s");
        Require.notNegative("time", second, "s");
        double stop = stopSecond(startRadPerS).orElse(Double.POSITIVE_INFINITY);
        if (second >= stop) {
            return 0;
        }
        double half = viscousNewtonMetreSecond / 2;
        double tangent = tangentOverRoot(second / kgM2);
        return (startRadPerS * (1 - half * tangent) - coulombNewtonMetre * tangent)
                / (1 + (half + quadraticNewtonMetreSecond2 * startRadPerS) * tangent);
    }

    /** Time to standstill, s; empty if nothing but speed-dependent drag brakes, which never ends. */
    public OptionalDouble stopSecond(double startRadPerS) {
        Require.notNegative("speed at the start", startRadPerS, "rad/s");
        if (startRadPerS == 0) {
            return OptionalDouble.of(0);
        }
        if (coulombNewtonMetre == 0) {
            return OptionalDouble.empty();
        }
        double share = startRadPerS / (startRadPerS * viscousNewtonMetreSecond / 2 + coulombNewtonMetre);
        double square = rootSquared();
        double root = Math.sqrt(Math.abs(square));
        if (root * share < 1e-8) {
            return OptionalDouble.of(kgM2 * share);
        }
        // artanh(y) = ½ ln((1 + y)/(1 − y))
        double y = root * share;
        double inverse = square > 0 ? 0.5 * (Math.log1p(y) - Math.log1p(-y)) : Math.atan(y);
        return OptionalDouble.of(kgM2 * inverse / root);
    }

    /**
     * Inertia from two run-outs over the same speeds, J = J_add t₁/(t₂ − t₁).
     *
     * @param addedKgM2  known inertia added for the second
     * @param ownSecond  time without it
     * @param withSecond time with it
     */
    public static double inertiaKgM2(double addedKgM2, double ownSecond, double withSecond) {
        Require.positive("added inertia", addedKgM2, "kg m²");
        Require.positive("time without added inertia", ownSecond, "s");
        return addedKgM2 * ownSecond / Require.positive("longer by the added inertia", withSecond - ownSecond, "s");
    }

    private double rootSquared() {
        return viscousNewtonMetreSecond * viscousNewtonMetreSecond / 4
                - coulombNewtonMetre * quadraticNewtonMetreSecond2;
    }

    /** tanh(q τ)/q, tan for an imaginary root, τ for none. */
    private double tangentOverRoot(double tau) {
        double square = rootSquared();
        double root = Math.sqrt(Math.abs(square));
        if (root * tau < 1e-8) {
            return tau;
        }
        return (square > 0 ? Math.tanh(root * tau) : Math.tan(root * tau)) / root;
    }
}
