package servowright.engine.encoder;

import java.util.List;
import java.util.stream.IntStream;

/**
 * Angle read less angle of the shaft, over one turn.
 *
 * @param meanRad constant part, taken up by setting the zero
 * @param ripples harmonics from the first up, of the mechanical angle
 * @param peakRad largest distance from the mean among the angles looked at
 */
public record AngleError(double meanRad, List<Ripple> ripples, double peakRad) {

    public AngleError {
        ripples = List.copyOf(ripples);
    }

    /** The harmonic of an order that was computed. */
    public Ripple ripple(int order) {
        return ripples.get(order - 1);
    }

    /** From errors at evenly spaced angles of one turn. */
    static AngleError ofSamples(double[] errorRad, int orders) {
        int angles = errorRad.length;
        double sum = 0;
        for (double error : errorRad) {
            sum += error;
        }
        double mean = sum / angles;
        double peak = 0;
        for (double error : errorRad) {
            peak = Math.max(peak, Math.abs(error - mean));
        }
        List<Ripple> ripples = IntStream.rangeClosed(1, orders)
                .mapToObj(order -> ripple(errorRad, mean, order))
                .toList();
        return new AngleError(mean, ripples, peak);
    }

    private static Ripple ripple(double[] errorRad, double mean, int order) {
        int angles = errorRad.length;
        double stepCosine = Math.cos(2 * Math.PI * order / angles);
        double stepSine = Math.sin(2 * Math.PI * order / angles);
        double cosine = 1;
        double sine = 0;
        double cosines = 0;
        double sines = 0;
        for (double error : errorRad) {
            cosines += (error - mean) * cosine;
            sines += (error - mean) * sine;
            double next = cosine * stepCosine - sine * stepSine;
            sine = sine * stepCosine + cosine * stepSine;
            cosine = next;
        }
        return new Ripple(order, 2 * cosines / angles, 2 * sines / angles);
    }
}
