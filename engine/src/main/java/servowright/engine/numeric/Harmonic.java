package servowright.engine.numeric;

/**
 * One term amplitude sin(order omega t + phase) of a periodic signal.
 *
 * <p>The standard errors are of first order: where the amplitude is not several times its own standard error it reads
 * too high (it cannot be below 0) and the phase says nothing; its standard error then ends at that of any phase at all,
 * pi / sqrt(3).
 *
 * @param order multiple of the base frequency
 * @param amplitude peak value, not below 0
 * @param amplitudeStandardError of the same unit
 * @param phase radians at t = 0, above -pi and up to pi
 * @param phaseStandardError radians
 */
public record Harmonic(
        int order, double amplitude, double amplitudeStandardError, double phase, double phaseStandardError) {

    static Harmonic of(int order, double sine, double cosine, Covariance covariance, int sineIndex) {
        double amplitude = Math.hypot(sine, cosine);
        double[] radial = new double[covariance.size()];
        double[] tangential = new double[covariance.size()];
        radial[sineIndex] = amplitude > 0 ? sine / amplitude : 1;
        radial[sineIndex + 1] = amplitude > 0 ? cosine / amplitude : 0;
        tangential[sineIndex] = -radial[sineIndex + 1];
        tangential[sineIndex + 1] = radial[sineIndex];
        double any = Math.PI / Math.sqrt(3);
        double sideways = Math.sqrt(covariance.varianceOf(tangential));
        return new Harmonic(
                order,
                amplitude,
                Math.sqrt(covariance.varianceOf(radial)),
                Math.atan2(cosine, sine),
                amplitude > 0 ? Math.min(any, sideways / amplitude) : any);
    }
}
