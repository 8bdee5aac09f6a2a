package servowright.engine.numeric;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * What rounding to a step, as a converter or a printed digit does it, adds to the uncertainty of a fitted sine.
 *
 * <p>Averaging does not remove it: the rounding error is a function of the signal and repeats with every period. For
 * x = c + A sin(theta) with normal noise of standard deviation sigma the Fourier series of the rounding error gives the
 * coefficient of order k an error
 *
 * <pre>  sum over m of (-1)^m (2 q / (pi m)) J_k(2 pi m A / q) exp(-2 pi^2 m^2 sigma^2 / q^2) trig(2 pi m c / q)</pre>
 *
 * in phase with the signal, with trig the cosine for odd k and the sine for even k. As A is not known to a fraction of q
 * the Bessel function is replaced by its root mean square, J^2 = 1/(pi z) for z well above k. Half a step of noise makes
 * the effect vanish. Derived here from B. Widrow, I. Kollar, "Quantization Noise", 2008 (Fourier series of the quantiser
 * and its damping by dither; from memory).
 *
 * <p>Holds for amplitudes of several steps and samples that do not repeat the same few phases; below one step the
 * uncertainty given is that of the amplitude of one step.
 *
 * @param step distance q of neighbouring values
 * @param noise standard deviation sigma before rounding
 */
public record Rounding(double step, double noise) {
    private static final int TERMS = 12;

    public Rounding {
        Check.that(step >= 0 && step < Double.POSITIVE_INFINITY, "a step must not be below 0, was ", step);
        Check.that(noise >= 0 && noise < Double.POSITIVE_INFINITY, "a noise must not be below 0, was ", noise);
    }

    /** From the scatter of the residuals, which holds the noise and the rounding error, step / sqrt(12), together. */
    public static Rounding withResiduals(double step, double residualSd) {
        return new Rounding(step, Math.sqrt(Math.max(0, residualSd * residualSd - step * step / 12)));
    }

    /**
     * The step of samples that take few different values: the least distance between two of them, if all distances are
     * about whole multiples of it and on average every value is taken at least twice. Empty otherwise.
     */
    public static OptionalDouble stepOf(double[] samples) {
        Check.finite("samples", samples);
        double[] distinct =
                Arrays.stream(samples).map(v -> v + 0.0).sorted().distinct().toArray();
        if (distinct.length < 2 || 2 * distinct.length > samples.length) {
            return OptionalDouble.empty();
        }
        double least = Double.POSITIVE_INFINITY;
        for (int i = 1; i < distinct.length; i++) {
            least = Math.min(least, distinct[i] - distinct[i - 1]);
        }
        double sum = 0;
        long steps = 0;
        for (int i = 1; i < distinct.length; i++) {
            double multiple = (distinct[i] - distinct[i - 1]) / least;
            long whole = Math.round(multiple);
            if (Math.abs(multiple - whole) > 0.1 * whole) {
                return OptionalDouble.empty();
            }
            sum += distinct[i] - distinct[i - 1];
            steps += whole;
        }
        return OptionalDouble.of(sum / steps);
    }

    /** Standard uncertainty that rounding adds to the amplitude of an order, for a signal of this amplitude and centre. */
    public double amplitudeUncertainty(int order, double amplitude, double centre) {
        return Math.sqrt(variance(
                amplitude,
                m -> order % 2 == 0
                        ? Math.pow(Math.sin(2 * Math.PI * m * centre / step), 2)
                        : Math.pow(Math.cos(2 * Math.PI * m * centre / step), 2)));
    }

    /** The same on average over all centres, for a signal whose centre drifts or is not known to a fraction of a step. */
    public double amplitudeUncertainty(double amplitude) {
        return Math.sqrt(variance(amplitude, m -> 0.5));
    }

    private interface Share {
        double of(int multiple);
    }

    private double variance(double amplitude, Share share) {
        if (step == 0) {
            return 0;
        }
        double ratio = 2 * Math.PI * noise / step;
        double sum = 0;
        for (int m = 1; m <= TERMS; m++) {
            sum += share.of(m) * Math.exp(-ratio * ratio * m * m) / ((double) m * m * m);
        }
        double inSteps = Math.max(1, Math.abs(amplitude) / step);
        return 2 * step * step / (Math.pow(Math.PI, 4) * inSteps) * sum;
    }
}
