package servowright.engine.numeric;

import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.random.RandomGenerator;

/**
 * Propagation of distributions: the figures of a model's output when its inputs are drawn from what is known about them.
 *
 * <p>JCGM 101:2008, section 7. With M trials the mean has a standard error u/sqrt(M) and u itself one of about
 * u/sqrt(2M) for a normal output; 1e6 trials usually fix the ends of a 95 % interval to two significant digits of u.
 *
 * @param trials number of draws M
 * @param mean of the outputs
 * @param standardUncertainty standard deviation of the outputs
 * @param probability that the two intervals hold
 * @param symmetric the interval that leaves equal shares out on both sides
 * @param shortest the narrowest interval
 */
public record MonteCarlo(
        int trials,
        double mean,
        double standardUncertainty,
        double probability,
        Interval symmetric,
        Interval shortest) {

    /**
     * Draws the inputs, in order, and gathers the outputs.
     *
     * @param model the output for one draw of all inputs; a value that is not finite is refused, for a model that fails
     *     somewhere within its inputs has no uncertainty
     */
    public static MonteCarlo propagate(
            ToDoubleFunction<double[]> model,
            List<Distribution> inputs,
            int trials,
            double probability,
            RandomGenerator random) {
        return of(outputs(model, inputs, trials, random), probability);
    }

    /** The same figures of outputs that were drawn elsewhere. */
    public static MonteCarlo of(double[] outputs, double probability) {
        return new MonteCarlo(
                outputs.length,
                Statistics.mean(outputs),
                Statistics.standardDeviation(outputs),
                probability,
                Interval.symmetric(outputs, probability),
                Interval.shortest(outputs, probability));
    }

    /** The outputs themselves, for figures that this record does not carry. */
    public static double[] outputs(
            ToDoubleFunction<double[]> model, List<Distribution> inputs, int trials, RandomGenerator random) {
        Check.that(trials >= 2, "a propagation needs at least 2 trials, was ", trials);
        int size = inputs.stream().mapToInt(Distribution::size).sum();
        double[] drawn = new double[size];
        double[] outputs = new double[trials];
        for (int trial = 0; trial < trials; trial++) {
            GivenUp.check();
            int start = 0;
            for (Distribution input : inputs) {
                input.draw(random, drawn, start);
                start += input.size();
            }
            outputs[trial] = model.applyAsDouble(drawn);
        }
        return outputs;
    }
}
