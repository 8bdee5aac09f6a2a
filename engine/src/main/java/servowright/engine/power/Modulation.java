package servowright.engine.power;

import servowright.engine.quantity.Require;

/**
 * How a three-phase bridge makes a voltage, and how much of the bus it can use.
 *
 * <p><b>Formula.</b> Largest phase peak: space vector (or min-max injection) V/√3, the circle inside the hexagon;
 * sinusoidal V/2; six-step, fundamental of the square wave, 2V/π. <b>Source.</b> Geometry of the voltage hexagon, derived;
 * Fourier series of the six-step wave. Dead time, minimum pulses and drops come off as reserve.
 */
public enum Modulation {
    /** Space vector, or sinusoidal with a common part added: the whole linear range. */
    SPACE_VECTOR("space vector", 1 / Math.sqrt(3)),
    /** Three sines about the middle of the bus. */
    SINUSOIDAL("sinusoidal", 0.5),
    /** Each phase switched once per half turn; only the fundamental counted. */
    SIX_STEP("six-step", 2 / Math.PI);

    private final String words;
    private final double phasePeakPerBus;

    Modulation(String words, double phasePeakPerBus) {
        this.words = words;
        this.phasePeakPerBus = phasePeakPerBus;
    }

    /** The name in running text. */
    public String words() {
        return words;
    }

    /** Largest phase peak per volt of bus. */
    public double phasePeakPerBus() {
        return phasePeakPerBus;
    }

    /**
     * Usable voltage, phase peak.
     *
     * @param busVolt bus voltage
     * @param reserve share kept free for control, drops and minimum pulses, from 0 to below 1
     */
    public double phasePeakVolt(double busVolt, double reserve) {
        Require.positive("bus voltage", busVolt, "V");
        Require.notNegative("reserve", reserve, "");
        return busVolt * phasePeakPerBus * Require.positive("share left by the reserve", 1 - reserve, "");
    }

    /** Bus voltage that a phase peak needs, reserve included. */
    public double busVolt(double phasePeakVolt, double reserve) {
        Require.positive("phase voltage (peak)", phasePeakVolt, "V");
        Require.notNegative("reserve", reserve, "");
        return phasePeakVolt / (phasePeakPerBus * Require.positive("share left by the reserve", 1 - reserve, ""));
    }
}
