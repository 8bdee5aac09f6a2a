package servowright.engine.encoder;

import java.util.OptionalInt;
import servowright.engine.quantity.Require;

/**
 * Pole pairs from a field that was turned and a shaft that followed: electrical travel over mechanical travel. The same
 * ratio shows an axial magnet, a slipping rotor and wrong counts per turn, for none of them gives a whole number.
 */
public final class PolePairs {
    /** Departure of a ratio from a whole number, relative, up to which the rotor has followed; common practice. */
    static final double TOLERANCE = 0.02;

    private PolePairs() {}

    /**
     * Electrical over mechanical travel, below 0 if the sensor counts against the field.
     *
     * @param sensorRad travel of the sensor; a rotor that did not move leaves a ratio that means nothing
     */
    public static double ratio(double electricalRad, double sensorRad) {
        Require.finite("electrical travel", electricalRad, "rad");
        return electricalRad / Require.finite("travel of the sensor", sensorRad, "rad");
    }

    /**
     * The whole number meant, if the ratio is within 2 % of one that is 1 or more, and half a mechanical turn was made.
     *
     * @param sensorRad travel of the sensor
     */
    public static OptionalInt of(double electricalRad, double sensorRad) {
        double ratio = Math.abs(ratio(electricalRad, sensorRad));
        double whole = Math.rint(ratio);
        boolean followed = Math.abs(sensorRad) >= Math.PI
                && whole >= 1
                && whole <= 1000
                && Math.abs(ratio - whole) <= Math.min(0.1, TOLERANCE * whole);
        return followed ? OptionalInt.of((int) whole) : OptionalInt.empty();
    }
}
