package servowright.engine.encoder;

import java.util.Arrays;
import java.util.OptionalDouble;
import servowright.engine.quantity.Require;

/** Clearance holes for metric screws: nominal diameters of ISO 273 (seen in trade tables). */
public enum ClearanceHole {
    M2(2, 2.2, 2.4, 2.6),
    M2_5(2.5, 2.7, 2.9, 3.1),
    M3(3, 3.2, 3.4, 3.6),
    M4(4, 4.3, 4.5, 4.8);

    /** Series of ISO 273. */
    public enum Fit {
        FINE,
        MEDIUM,
        COARSE
    }

    private static final double ROUNDING_METRE = 1e-9;

    private final double screwMillimetre;
    private final double fineMillimetre;
    private final double mediumMillimetre;
    private final double coarseMillimetre;

    ClearanceHole(double screwMillimetre, double fineMillimetre, double mediumMillimetre, double coarseMillimetre) {
        this.screwMillimetre = screwMillimetre;
        this.fineMillimetre = fineMillimetre;
        this.mediumMillimetre = mediumMillimetre;
        this.coarseMillimetre = coarseMillimetre;
    }

    public double holeMetre(Fit fit) {
        return 1e-3
                * switch (fit) {
                    case FINE -> fineMillimetre;
                    case MEDIUM -> mediumMillimetre;
                    case COARSE -> coarseMillimetre;
                };
    }

    /** The thickest screw of these that goes through a hole, m; empty for a hole that is too small or larger than coarse. */
    public static OptionalDouble screwMetre(double holeMetre) {
        Require.positive("diameter of the hole", holeMetre, "m");
        return Arrays.stream(values())
                .filter(size -> size.holeMetre(Fit.FINE) <= holeMetre + ROUNDING_METRE
                        && holeMetre <= size.holeMetre(Fit.COARSE) + ROUNDING_METRE)
                .mapToDouble(size -> 1e-3 * size.screwMillimetre)
                .max();
    }

    /** How far a part can move from its centre on nominal sizes: half the difference of the diameters. */
    public double floatMetre(Fit fit) {
        return floatMetre(holeMetre(fit), 1e-3 * screwMillimetre);
    }

    /** The same from any diameters, for example the largest hole and the thinnest screw. */
    public static double floatMetre(double holeMetre, double screwMetre) {
        Require.positive("diameter of the screw", screwMetre, "m");
        return Require.notNegative("clearance", holeMetre - screwMetre, "m") / 2;
    }

    /**
     * Angle by which a board can be turned about the shaft within the float, radians: float over bolt circle radius. Every
     * re-seating can move the commutation offset by p times this.
     */
    public static double turnRad(double floatMetre, double boltCircleRadiusMetre) {
        Require.notNegative("float", floatMetre, "m");
        return Math.atan(floatMetre / Require.positive("radius of the bolt circle", boltCircleRadiusMetre, "m"));
    }
}
