package servowright.engine.numeric;

import org.hipparchus.special.elliptic.carlson.CarlsonEllipticIntegral;

/**
 * Elliptic integrals in Carlson's symmetric form, from which the complete ones of the first, second and third kind follow
 * without a sign convention of modulus or parameter: K(m) = R_F(0, 1-m, 1), K - E = (m/3) R_D(0, 1-m, 1),
 * Pi(n, m) = K + (n/3) R_J(0, 1-m, 1, 1-n). They hold for m below 0 as well.
 *
 * <p>B. C. Carlson, "Numerical computation of real or complex elliptic integrals", Numerical Algorithms 10 (1995); NIST
 * Digital Library of Mathematical Functions, chapter 19.16 (recalled).
 */
public final class CarlsonIntegral {
    private CarlsonIntegral() {}

    /** R_F(x, y, z) = (1/2) integral over t from 0 to infinity of 1 / sqrt((t+x)(t+y)(t+z)). At most one may be 0. */
    public static double first(double x, double y, double z) {
        arguments(x, y, z);
        return CarlsonEllipticIntegral.rF(x, y, z);
    }

    /** R_D(x, y, z) = R_J(x, y, z, z). At most one of x and y may be 0; z is above 0. */
    public static double second(double x, double y, double z) {
        arguments(x, y, z);
        Check.positive("the third argument", z);
        return CarlsonEllipticIntegral.rD(x, y, z);
    }

    /**
     * R_J(x, y, z, p) = (3/2) integral over t from 0 to infinity of 1 / ((t+p) sqrt((t+x)(t+y)(t+z))). At most one of x, y
     * and z may be 0; p is above 0.
     */
    public static double third(double x, double y, double z, double p) {
        arguments(x, y, z);
        Check.positive("the fourth argument", p);
        return CarlsonEllipticIntegral.rJ(x, y, z, p);
    }

    private static void arguments(double x, double y, double z) {
        boolean inRange = Math.min(x, Math.min(y, z)) >= 0 && Math.min(x + y, Math.min(y + z, z + x)) > 0;
        if (!inRange) {
            throw new IllegalArgumentException(
                    "arguments must not be below 0 and at most one 0, were " + x + ", " + y + ", " + z);
        }
        Check.finite("the sum of the arguments", x + y + z);
    }
}
