package servowright.engine.motor;

import servowright.engine.quantity.Require;

/** Electrical frequency of a turning motor, and what a sampled control makes of it. */
public final class ElectricalSpeed {

    private ElectricalSpeed() {}

    /** Electrical frequency in Hz: p ω / 2π. */
    public static double hertz(double mechRadPerS, int polePairs) {
        Require.finite("shaft speed", mechRadPerS, "rad/s");
        return Math.abs(mechRadPerS) * Require.atLeast("pole pairs", 1, polePairs) / (2 * Math.PI);
    }

    /** Mechanical speed in rad/s at an electrical frequency: 2π f / p. */
    public static double mechRadPerS(double electricalHertz, int polePairs) {
        Require.notNegative("electrical frequency", electricalHertz, "Hz");
        return 2 * Math.PI * electricalHertz / Require.atLeast("pole pairs", 1, polePairs);
    }

    /**
     * Control steps in one electrical turn: loop frequency over electrical frequency. Below about 20 the current waveform
     * becomes coarse, below about 10 control is lost (common practice, no source).
     *
     * @param mechRadPerS shaft speed, not 0
     */
    public static double controlStepsPerTurn(double loopHertz, double mechRadPerS, int polePairs) {
        Require.positive("control frequency", loopHertz, "Hz");
        return loopHertz / Require.positive("electrical frequency", hertz(mechRadPerS, polePairs), "Hz");
    }

    /**
     * Electrical angle the rotor moves during a delay, in rad: p ω t. Uncompensated, torque falls with its cosine and a d
     * current grows with its sine.
     *
     * @param delaySecond from the middle of the angle measurement to the middle of the voltage pulse
     */
    public static double angleLostElectricalRad(double delaySecond, double mechRadPerS, int polePairs) {
        Require.notNegative("delay", delaySecond, "s");
        return 2 * Math.PI * hertz(mechRadPerS, polePairs) * delaySecond;
    }
}
