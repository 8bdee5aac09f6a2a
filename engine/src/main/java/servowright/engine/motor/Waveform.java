package servowright.engine.motor;

/**
 * What a back-EMF that is no sine does to the constants. Shape: the ideal trapezoid with a flat top of 120 electrical
 * degrees, phase peak E, linear flanks of 60 degrees.
 *
 * <p>Its fundamental is (4/π) · sin(π/6)/(π/6) · E = 12/π² E = 1.21585 E. The line voltage is a trapezoid of 2 E with a
 * flat top of 60 degrees; its true RMS is E √(20/9) = 1.49071 E, its rectified mean 4/3 E; behind a rectifier of all three
 * terminals stand its flat tops, one after another, 2 E. With sinusoidal current only
 * the fundamental makes mean torque.
 *
 * <p><b>Source.</b> Fourier series of the trapezoid, derived here.
 */
public enum Waveform {
    /** Sinusoidal back-EMF. */
    SINE(1, Math.sqrt(3), Math.sqrt(1.5), 2 * Math.sqrt(3) / Math.PI, 3 * Math.sqrt(3) / Math.PI),
    /** Ideal trapezoid, flat for 120 electrical degrees. */
    TRAPEZOID_120(12 / (Math.PI * Math.PI), 2, Math.sqrt(20.0 / 9.0), 4.0 / 3.0, 2);

    private final double fundamental;
    private final double linePeak;
    private final double lineRms;
    private final double lineMean;
    private final double sixPulseMean;

    Waveform(double fundamental, double linePeak, double lineRms, double lineMean, double sixPulseMean) {
        this.fundamental = fundamental;
        this.linePeak = linePeak;
        this.lineRms = lineRms;
        this.lineMean = lineMean;
        this.sixPulseMean = sixPulseMean;
    }

    /** Peak of the fundamental of the phase voltage per peak of the phase voltage. */
    public double fundamentalPerPhasePeak() {
        return fundamental;
    }

    /** Peak of the line voltage per peak of the phase voltage. */
    public double linePeakPerPhasePeak() {
        return linePeak;
    }

    /** True RMS of the line voltage per peak of the phase voltage. */
    public double lineRmsPerPhasePeak() {
        return lineRms;
    }

    /**
     * What a meter that averages the rectified line voltage and is scaled for sines shows, per true RMS. 1 for a sine.
     */
    public double averagingMeterPerTrueRms() {
        return lineMean * Math.PI / (2 * Math.sqrt(2)) / lineRms;
    }

    /** Mean of the line voltages behind a rectifier of all three terminals per peak of the phase voltage. */
    public double sixPulseMeanPerPhasePeak() {
        return sixPulseMean;
    }

    /** Torque per q-axis ampere and electrical unit of speed, per peak of the phase voltage: 3/2 of the fundamental. */
    public double torquePerPhasePeak() {
        return 1.5 * fundamental;
    }

    /** Torque constant guessed from the line peak (√3/2 of it) over the true one with sinusoidal current. */
    public double torqueFromLinePeakOverTrue() {
        return Math.sqrt(3) / 2 * linePeak / torquePerPhasePeak();
    }

    /** Torque constant guessed from the true RMS of the line voltage (√3/2 · √2 of it) over the true one. */
    public double torqueFromLineRmsOverTrue() {
        return Math.sqrt(1.5) * lineRms / torquePerPhasePeak();
    }
}
