package servowright.engine.encoder;

import servowright.engine.quantity.Require;

/**
 * Field across the axis of a magnet that is magnetised across its axis, and its change with the gap. Near the axis the
 * whole field, and with it the effect of every small misplacement, follows from this one function of the gap.
 *
 * <p><b>Formula.</b> B = (Br/4) [u] with u(s) = s/√(R² + s²) and [f] = f(g + L) − f(g), g the gap from the face. With
 * G = (R² + s²)^(−3/2) and F = s (R² + s²)^(−5/2): B' = (Br/4) R² [G], B'' = −(3/4) Br R² [F],
 * B''' = −(3/4) Br R² [(R² − 4s²)(R² + s²)^(−7/2)]. <b>Validity.</b> Outside the magnet, g at least 0; recoil permeability
 * 1; exact on the axis. <b>Source.</b> Derived from the surface charge; checked against a 40-digit quadrature.
 *
 * @param centreMetre distance of the place from the centre of the magnet, z_c = g + L/2
 * @param strengthTesla B, an amount: outside the magnet the field points against the magnetisation
 * @param slopeTeslaPerMetre B', below 0 for a disc
 * @param curvatureTeslaPerSquareMetre B''
 * @param thirdTeslaPerCubicMetre B'''
 */
public record AxisField(
        double centreMetre,
        double strengthTesla,
        double slopeTeslaPerMetre,
        double curvatureTeslaPerSquareMetre,
        double thirdTeslaPerCubicMetre) {

    static AxisField ofCylinder(double radius, double length, double remanenceTesla, double gapMetre) {
        Require.notNegative("remanence", remanenceTesla, "T");
        Require.notNegative("gap", gapMetre, "m");
        double near = gapMetre;
        double far = gapMetre + length;
        double rr = radius * radius;
        double nearest = 1 / Math.sqrt(rr + near * near);
        double farthest = 1 / Math.sqrt(rr + far * far);
        double slope = Math.pow(farthest, 3) - Math.pow(nearest, 3);
        double curve = far * Math.pow(farthest, 5) - near * Math.pow(nearest, 5);
        double third = (rr - 4 * far * far) * Math.pow(farthest, 7) - (rr - 4 * near * near) * Math.pow(nearest, 7);
        return new AxisField(
                gapMetre + length / 2,
                remanenceTesla / 4 * (far * farthest - near * nearest),
                remanenceTesla / 4 * rr * slope,
                -0.75 * remanenceTesla * rr * curve,
                -0.75 * remanenceTesla * rr * third);
    }

    AxisField without(AxisField other) {
        return new AxisField(
                centreMetre,
                strengthTesla - other.strengthTesla,
                slopeTeslaPerMetre - other.slopeTeslaPerMetre,
                curvatureTeslaPerSquareMetre - other.curvatureTeslaPerSquareMetre,
                thirdTeslaPerCubicMetre - other.thirdTeslaPerCubicMetre);
    }

    /**
     * Sensitivity to eccentricity, κ = −B''/(8B), 1/m²: near the axis, in the frame of the magnet with its magnetisation
     * along the real axis, the field is B (1 + 2κ|w|² + κ w²) at the complex place w.
     */
    public double kappaPerSquareMetre() {
        return -curvatureTeslaPerSquareMetre / (8 * strengthTesla);
    }

    /** Sensitivity to tilt, β = B'/B, 1/m. */
    public double relativeSlopePerMetre() {
        return slopeTeslaPerMetre / strengthTesla;
    }

    /**
     * Field along the axis of the same magnet magnetised along its axis, T: (Br/2) [u], the same sign as the
     * magnetisation.
     */
    public double alongAxisTesla() {
        return 2 * strengthTesla;
    }
}
