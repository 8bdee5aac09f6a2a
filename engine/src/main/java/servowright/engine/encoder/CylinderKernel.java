package servowright.engine.encoder;

import java.util.stream.IntStream;
import servowright.engine.numeric.CompleteElliptic;

/**
 * Geometry of the field of a uniformly magnetised cylinder at one place: four numbers that turn its polarisation J into
 * μ0 H. At distance ρ from the axis and heights ζ± = z ± b from the end faces (b half the length, R the radius), with
 * [f] = f(ζ+) − f(ζ−), s² = ρ² + R² − 2ρR cos ψ, Δ = √(s² + ζ²) and integrals over ψ from 0 to 2π:
 *
 * <ul>
 *   <li>radial = (R/4π) [ζ ∫ cos ψ (ρ − R cos ψ)/(s²Δ)], from J along ρ to H along ρ
 *   <li>around = (R²/4π) [ζ ∫ sin²ψ/(s²Δ)], from J around the axis to −H around the axis
 *   <li>crossed = −(R/4π) [∫ cos ψ/Δ], from J along ρ to H along z and from J along z to H along ρ
 *   <li>axial = (R/4π) [ζ ∫ (R − ρ cos ψ)/(s²Δ)], from J along z to B (not μ0 H) along z
 * </ul>
 *
 * <p><b>Two ways.</b> The integrands are periodic and analytic, so the trapezoid rule with N points errs by about
 * exp(−N |ln(ρ/R)|): N = 40/|ln(ρ/R)| + 8 is full double precision, needs no ρ above 0, and is taken up to N = 48. In the
 * band about ρ = R the integrals are complete elliptic ones, which in turn lose digits as (R/ρ)⁴ towards the axis.
 *
 * <p><b>Source.</b> Surface charge J cos φ on the mantle and, for the axial part, surface current on the mantle, derived;
 * equal in content to A. Caciagli, R. J. Baars, A. P. Philipse, B. W. M. Kuipers, J. Magn. Magn. Mater. 456 (2018) 423
 * (equations there not seen) and N. Derby, S. Olbert, Am. J. Phys. 78 (2010) 229 (recalled, recomputed).
 */
record CylinderKernel(double radial, double around, double crossed, double axial) {

    private static final int STEP = 8;

    /** From here on the elliptic integrals are faster, and as exact. */
    private static final int MOST_POINTS = 48;

    /** Finest rule there is, to hold both ways against each other close to the mantle. */
    private static final int FINEST = 400;

    /** Cosines over the half turn, for every number of points that is a multiple of {@link #STEP}. */
    private static final double[][] COSINES = IntStream.rangeClosed(1, FINEST / STEP)
            .mapToObj(i -> halfTurn(STEP * i))
            .toArray(double[][]::new);

    static CylinderKernel at(double radius, double half, double rho, double z) {
        double points = rho > 0 ? 40 / Math.abs(Math.log(rho / radius)) + STEP : STEP;
        return points <= MOST_POINTS
                ? byTrapezoid(radius, half, rho, z, (int) Math.ceil(points / STEP))
                : byElliptic(radius, half, rho, z);
    }

    /** Trapezoid rule with {@code eighths} times eight points; the two halves of the turn are alike. */
    static CylinderKernel byTrapezoid(double radius, double half, double rho, double z, int eighths) {
        double[] cosines = COSINES[eighths - 1];
        int last = cosines.length - 1;
        double up = z + half;
        double down = z - half;
        double radial = 0;
        double around = 0;
        double crossed = 0;
        double axial = 0;
        for (int i = 0; i <= last; i++) {
            double weight = i == 0 || i == last ? 0.5 : 1;
            double c = cosines[i];
            double square = rho * rho + radius * radius - 2 * rho * radius * c;
            double perUp = 1 / Math.sqrt(square + up * up);
            double perDown = 1 / Math.sqrt(square + down * down);
            double pair = weight * (up * perUp - down * perDown) / square;
            radial += pair * c * (rho - radius * c);
            around += pair * (1 - c) * (1 + c);
            axial += pair * (radius - rho * c);
            crossed += weight * c * (perDown - perUp);
        }
        double scale = radius / (2 * last);
        return new CylinderKernel(scale * radial, scale * radius * around, scale * crossed, scale * axial);
    }

    /** Complete elliptic integrals. On ρ = R, outside the mantle, their limits. */
    static CylinderKernel byElliptic(double radius, double half, double rho, double z) {
        Face up = Face.of(radius, rho, z + half);
        Face down = Face.of(radius, rho, z - half);
        double scale = radius / (4 * Math.PI);
        return new CylinderKernel(
                scale * (up.radial - down.radial),
                scale * radius * (up.around - down.around),
                scale * (down.crossed - up.crossed),
                scale * (up.axial - down.axial));
    }

    /** The integrals for one end face at height ζ, the first, second and fourth times ζ. */
    private record Face(double radial, double around, double crossed, double axial) {

        static Face of(double radius, double rho, double zeta) {
            double sum = rho + radius;
            double difference = rho - radius;
            double square = sum * sum + zeta * zeta;
            double a = Math.sqrt(square);
            double kc2 = (difference * difference + zeta * zeta) / square;
            double nc = (difference / sum) * (difference / sum);
            double n = 4 * rho * radius / (sum * sum);
            CompleteElliptic all = CompleteElliptic.of(Math.sqrt(kc2), nc > 0 ? nc : 1);
            double k = all.first();
            double d = all.second();
            double pi = nc > 0 ? all.third() : 0;
            double crossed = 4 / a * (2 * d - k);
            double t = (nc > 0 ? nc * (k - pi) + n * d : d) / (n * n);
            double beyond = difference * sum / (2 * rho * radius);
            double radial =
                    (crossed + beyond * (4 / a) * ((rho * rho + radius * radius) / (sum * sum) * pi - k)) / (2 * rho);
            double axial = 2 / a * (k - difference / sum * pi) / radius;
            return new Face(zeta * radial, zeta * 16 * t / (sum * sum * a), crossed, zeta * axial);
        }
    }

    private static double[] halfTurn(int points) {
        return IntStream.rangeClosed(0, points / 2)
                .mapToDouble(i -> Math.cos(2 * Math.PI * i / points))
                .toArray();
    }
}
