package servowright.engine.encoder;

import java.util.OptionalDouble;
import servowright.engine.numeric.Roots;
import servowright.engine.quantity.Require;

/**
 * A disc, rod or ring magnet, magnetised evenly in one direction; its centre is the origin and its axis is z. Corners are
 * sharp and the recoil permeability is 1; {@link Remanence#recoilLoss} bounds what the real one takes away.
 *
 * @param radiusMetre outer radius
 * @param boreRadiusMetre radius of the hole, 0 for a solid magnet
 * @param lengthMetre from face to face
 */
public record RoundMagnet(double radiusMetre, double boreRadiusMetre, double lengthMetre) {

    /** Share of the radius that counts as being on the mantle. */
    private static final double ON_MANTLE = 1e-9;

    /** Steps in which a gap is sought from outside; a hump of the field narrower than one is not seen. */
    private static final int INWARDS = 200;

    public RoundMagnet {
        Require.positive("radius of the magnet", radiusMetre, "m");
        Require.notNegative("bore radius of the magnet", boreRadiusMetre, "m");
        Require.positive("length of the magnet", lengthMetre, "m");
        if (boreRadiusMetre >= radiusMetre) {
            throw new IllegalArgumentException("bore radius must be below the outer radius");
        }
    }

    public static RoundMagnet disc(double diameterMetre, double lengthMetre) {
        return new RoundMagnet(diameterMetre / 2, 0, lengthMetre);
    }

    public static RoundMagnet ring(double diameterMetre, double boreDiameterMetre, double lengthMetre) {
        return new RoundMagnet(diameterMetre / 2, boreDiameterMetre / 2, lengthMetre);
    }

    /**
     * Flux density B at any place, inside and outside.
     *
     * <p><b>Formula.</b> {@link CylinderKernel} of the outer cylinder less that of the bore; inside the material the part
     * of J across the axis is added. <b>Validity.</b> Everywhere but on the mantle and the edges, where the field jumps
     * or is unbounded: refused, see {@link #onMantle}. On an end face the value just outside.
     *
     * @param polarisationTesla J = μ0 M, its length the remanence and its direction that of the magnetisation
     * @param fromCentreMetre the place
     */
    public Vector fieldTesla(Vector polarisationTesla, Vector fromCentreMetre) {
        if (onMantle(fromCentreMetre)) {
            throw new IllegalArgumentException("the field is not defined on the mantle or an edge of the magnet");
        }
        Vector outer = ofCylinder(radiusMetre, polarisationTesla, fromCentreMetre);
        return boreRadiusMetre > 0
                ? outer.minus(ofCylinder(boreRadiusMetre, polarisationTesla, fromCentreMetre))
                : outer;
    }

    /** Whether a place lies on an outer or inner mantle, edges included, to 1e-9 of the radius. */
    public boolean onMantle(Vector place) {
        double slack = ON_MANTLE * radiusMetre;
        double rho = Math.hypot(place.x(), place.y());
        boolean onOuter = Math.abs(rho - radiusMetre) <= slack;
        boolean onBore = boreRadiusMetre > 0 && Math.abs(rho - boreRadiusMetre) <= slack;
        return (onOuter || onBore) && Math.abs(place.z()) <= lengthMetre / 2 + slack;
    }

    private Vector ofCylinder(double radius, Vector polarisation, Vector place) {
        double half = lengthMetre / 2;
        double rho = Math.sqrt(place.x() * place.x() + place.y() * place.y());
        CylinderKernel kernel = CylinderKernel.at(radius, half, rho, place.z());
        double cosine = rho > 0 ? place.x() / rho : 1;
        double sine = rho > 0 ? place.y() / rho : 0;
        Vector seen = polarisation.turned(cosine, -sine);
        double inside = rho < radius && Math.abs(place.z()) < half ? 1 : 0;
        return new Vector(
                        (kernel.radial() + inside) * seen.x() + kernel.crossed() * seen.z(),
                        (inside - kernel.around()) * seen.y(),
                        kernel.crossed() * seen.x() + kernel.axial() * seen.z())
                .turned(cosine, sine);
    }

    /** What the magnet does on its own axis at a distance from its face, see {@link AxisField}. */
    public AxisField onAxis(double remanenceTesla, double gapMetre) {
        AxisField outer = AxisField.ofCylinder(radiusMetre, lengthMetre, remanenceTesla, gapMetre);
        return boreRadiusMetre > 0
                ? outer.without(AxisField.ofCylinder(boreRadiusMetre, lengthMetre, remanenceTesla, gapMetre))
                : outer;
    }

    /**
     * Widest gap at which the field across the axis still has the given strength; empty if it has so nowhere. Beyond it
     * the field stays below. A ring may fall below it again closer to the face.
     */
    public OptionalDouble widestGapMetre(double remanenceTesla, double fieldTesla) {
        Require.positive("field", fieldTesla, "T");
        // A bound from outside: B is at most (Br/4) L R²/g³.
        double bound = Require.positive("remanence", remanenceTesla, "T") * lengthMetre * radiusMetre * radiusMetre;
        double farthest = Math.cbrt(bound / (4 * fieldTesla));
        for (int step = INWARDS; step > 0; step--) {
            double far = farthest * step / INWARDS;
            double near = farthest * (step - 1) / INWARDS;
            if (onAxis(remanenceTesla, near).strengthTesla() >= fieldTesla) {
                return Roots.between(gap -> onAxis(remanenceTesla, gap).strengthTesla() - fieldTesla, near, far, 1e-12);
            }
        }
        return OptionalDouble.empty();
    }

    /**
     * Gap at which an offset causes no error to second order: where kappa is 0, the inflection of field against gap.
     * Between 0 and half the radius for a disc; empty if a ring has none there.
     */
    public OptionalDouble gapWithoutEccentricityErrorMetre() {
        return Roots.between(g -> onAxis(1, g).curvatureTeslaPerSquareMetre(), 0, radiusMetre / 2, 1e-12);
    }

    /** Volume of the material, m³. */
    public double volumeCubicMetre() {
        return Math.PI * (radiusMetre - boreRadiusMetre) * (radiusMetre + boreRadiusMetre) * lengthMetre;
    }
}
