package servowright.engine.encoder;

import servowright.engine.quantity.Require;

/**
 * What the age of an angle costs: between the moment it was right and the middle of the voltage that used it the rotor
 * has gone on.
 *
 * @param second τ, conversion, filter, transfer, wait and half a modulation period together
 */
public record Latency(double second) {

    public Latency {
        Require.notNegative("latency", second, "s");
    }

    /** Delay of a low-pass of one pole, 1/ω_c. */
    public static Latency ofFilter(double cornerRadPerSecond) {
        return new Latency(1 / Require.positive("corner", cornerRadPerSecond, "rad/s"));
    }

    /** Delay of a mean of n readings, (n − 1) T/2. */
    public static Latency ofMean(int readings, double second) {
        Require.atLeast("number of readings", 1, readings);
        return new Latency((readings - 1) * Require.notNegative("time between the readings", second, "s") / 2);
    }

    public Latency plus(Latency other) {
        return new Latency(second + other.second);
    }

    /** Electrical angle lost, p ω τ. */
    public double electricalRad(int polePairs, double radPerSecond) {
        Require.atLeast("pole pairs", 1, polePairs);
        return polePairs * Require.finite("speed", radPerSecond, "rad/s") * second;
    }

    /** Electrical angle that remains when θ + ω τ is used instead: p α τ²/2. */
    public double compensatedElectricalRad(int polePairs, double radPerSecondSquared) {
        Require.atLeast("pole pairs", 1, polePairs);
        return polePairs * Require.finite("acceleration", radPerSecondSquared, "rad/s2") * second * second / 2;
    }

    /** Latency that loses a given electrical angle, the budget of a chain. */
    public static Latency budget(double electricalRad, int polePairs, double radPerSecond) {
        Require.atLeast("pole pairs", 1, polePairs);
        return new Latency(Require.notNegative("electrical angle", electricalRad, "rad")
                / (polePairs * Require.positive("speed", radPerSecond, "rad/s")));
    }
}
