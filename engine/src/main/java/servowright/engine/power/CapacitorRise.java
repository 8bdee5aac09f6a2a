package servowright.engine.power;

import servowright.engine.quantity.Require;

/**
 * Voltage that returned energy lifts a capacitor to, when nothing else takes it.
 *
 * <p><b>Formula.</b> V₂ = √(V₁² + 2 E / C). <b>Valid for</b> energy after losses; a battery, a brake resistor or a diode
 * that takes current keeps it lower. <b>Source.</b> Energy of a capacitor, C V²/2.
 */
public final class CapacitorRise {

    private CapacitorRise() {}

    /**
     * Voltage after the energy has come in.
     *
     * @param startVolt voltage before, V₁
     * @param joule     energy E that comes in, not negative
     * @param farad     capacitance C
     */
    public static double volt(double startVolt, double joule, double farad) {
        Require.notNegative("voltage before", startVolt, "V");
        Require.notNegative("returned energy", joule, "J");
        return Math.sqrt(startVolt * startVolt + 2 * joule / Require.positive("capacitance", farad, "F"));
    }

    /** Capacitance that keeps the voltage at or below {@code mostVolt}, F: 2 E / (V₂² − V₁²). */
    public static double farad(double startVolt, double joule, double mostVolt) {
        Require.notNegative("voltage before", startVolt, "V");
        Require.notNegative("returned energy", joule, "J");
        double room = mostVolt * mostVolt - startVolt * startVolt;
        return 2 * joule / Require.positive("square of the highest voltage less that before", room, "V²");
    }
}
