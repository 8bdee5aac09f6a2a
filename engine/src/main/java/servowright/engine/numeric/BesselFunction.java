package servowright.engine.numeric;

import org.hipparchus.special.BesselJ;

/** Bessel functions of the first kind. */
public final class BesselFunction {
    private BesselFunction() {}

    /** J of a whole order, not below 0, at an argument not below 0. */
    public static double firstKind(int order, double x) {
        Check.that(order >= 0, "an order must not be below 0, was ", order);
        Check.that(x >= 0 && x < 1e4, "an argument must be from 0 to 1e4, was ", x);
        return BesselJ.value(order, x);
    }
}
