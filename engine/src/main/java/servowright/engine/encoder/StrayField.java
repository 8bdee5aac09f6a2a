package servowright.engine.encoder;

import servowright.engine.quantity.Require;

/** Fields that do not belong to the magnet, and the angle error they cause in a sensor that reads the field itself. */
public final class StrayField {

    /** μ0/(2π), T m/A, with the value μ0 had by definition until 2019; it is still right to 1e-9. */
    private static final double TESLA_METRE_PER_AMP = 2e-7;

    private StrayField() {}

    /**
     * First harmonic of the angle from an even stationary field, radians: Bs/B; harmonic k is (Bs/B)^k/k. Above Bs = B the
     * angle no longer follows the shaft: refused. A sensor that reads differences over a distance sees nothing of it.
     *
     * @param strayTesla part of the stray field across the shaft
     * @param magnetTesla field of the magnet at the sensor
     */
    public static double firstHarmonicRad(double strayTesla, double magnetTesla) {
        return share(strayTesla, magnetTesla);
    }

    /** Largest angle error from the same field, arcsin(Bs/B), radians. */
    public static double peakRad(double strayTesla, double magnetTesla) {
        return Math.asin(share(strayTesla, magnetTesla));
    }

    private static double share(double strayTesla, double magnetTesla) {
        Require.positive("field of the magnet", magnetTesla, "T");
        Require.within("stray field", 0, magnetTesla, strayTesla, "T");
        return strayTesla / magnetTesla;
    }

    /**
     * Field of a long straight conductor, T: μ0 I/(2π d).
     *
     * <p><b>Validity.</b> d small against the length of the conductor and the distance of its return. <b>Source.</b>
     * Ampère's law.
     */
    public static double ofConductorTesla(double amp, double distanceMetre) {
        Require.finite("current", amp, "A");
        return TESLA_METRE_PER_AMP * Math.abs(amp) / Require.positive("distance", distanceMetre, "m");
    }

    /**
     * Amplitude of each of the two harmonics p − 1 and p + 1 that one lead with a sinusoidal phase current causes, radians:
     * Bs/(2B), for the field of the lead at a peak of the current enters the phasor half with +p and half with −p.
     */
    public static double phaseLeadSideHarmonicRad(double strayPeakTesla, double magnetTesla) {
        return share(strayPeakTesla, magnetTesla) / 2;
    }
}
