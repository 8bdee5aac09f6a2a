package servowright.engine.motor;

import servowright.engine.quantity.Meter;
import servowright.engine.quantity.Require;
import servowright.engine.quantity.VoltageBasis;

/** Flux linkage from the voltage of a motor that is driven with its terminals open. */
public final class BackEmf {
    private static final double TWENTY_CELSIUS_KELVIN = 293.15;

    private BackEmf() {}

    /**
     * Flux linkage in weber, phase peak, from the fundamental of the open-circuit voltage: λ = E / (2π f), E the phase peak.
     * Pole pairs are not in it: the voltage is the rate of change of the flux that a phase links.
     *
     * <p><b>Valid for</b> the fundamental alone, no current in the winding, settled speed. <b>Source.</b> Faraday's law,
     * e = dψ/dt with ψ = λ cos 2πft.
     *
     * @param volt            fundamental on {@code basis}
     * @param electricalHertz its frequency
     */
    public static double fluxLinkageWeberPeak(double volt, VoltageBasis basis, double electricalHertz) {
        Require.positive("back-EMF", volt, "V");
        Require.positive("electrical frequency", electricalHertz, "Hz");
        return volt / ConstantBasis.of(basis).perFlux() / (2 * Math.PI * electricalHertz);
    }

    /**
     * Flux linkage with the magnets at 20 °C: λ20 = λ / [1 + α (T − 20 °C)].
     *
     * <p><b>Valid for</b> reversible change. <b>Source.</b> Definition of the temperature coefficient of remanence, as in
     * {@link MagnetMaterial}.
     *
     * @param weber        flux linkage at the magnet temperature
     * @param perKelvin    α, negative
     * @param magnetKelvin magnet temperature
     */
    public static double atTwentyCelsius(double weber, double perKelvin, double magnetKelvin) {
        Require.positive("magnet temperature", magnetKelvin, "K");
        double share = 1 + perKelvin * (magnetKelvin - TWENTY_CELSIUS_KELVIN);
        return weber / Require.positive("remaining share of the magnet flux", share, "");
    }

    /**
     * Fundamental that a reading suggests over the true one, less 1: what the shape of the back-EMF does to it. 0 for a sine; for the
     * ideal trapezoid of 120 degrees 0.11 % of a true-RMS meter, -0.55 % of one that averages and of a rectifier's mean, -5.0 % of a
     * peak. <b>Source.</b> Fourier series of the trapezoid, {@link Waveform}.
     */
    public static double excess(Meter meter, Waveform waveform) {
        double linePeakOfFundamental = Math.sqrt(3) * waveform.fundamentalPerPhasePeak();
        double suggested = switch (meter) {
            case TRUE_RMS -> Math.sqrt(2) * waveform.lineRmsPerPhasePeak();
            case AVERAGING -> Math.sqrt(2) * waveform.lineRmsPerPhasePeak() * waveform.averagingMeterPerTrueRms();
            case PEAK, RECTIFIED_HELD -> waveform.linePeakPerPhasePeak();
            case RECTIFIED -> Math.PI / 3 * waveform.sixPulseMeanPerPhasePeak();
        };
        return suggested / linePeakOfFundamental - 1;
    }
}
