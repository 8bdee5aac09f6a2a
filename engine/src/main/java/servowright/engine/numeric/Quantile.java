package servowright.engine.numeric;

import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/** Quantiles of the distributions that intervals are made from. */
public final class Quantile {
    private static final NormalDistribution NORMAL = new NormalDistribution(0, 1);

    /** Beyond this many degrees of freedom Student's t is taken as normal; they differ by less than 1e-8. */
    private static final double AS_GOOD_AS_NORMAL = 1e9;

    private Quantile() {}

    /** The standard normal deviate below which the given probability lies. */
    public static double normal(double probability) {
        return NORMAL.inverseCumulativeProbability(Check.openUnit("a probability", probability));
    }

    /** Student's t below which the given probability lies; infinite degrees of freedom are the normal distribution. */
    public static double studentT(double probability, double degreesOfFreedom) {
        Check.openUnit("a probability", probability);
        Check.that(degreesOfFreedom > 0, "degrees of freedom must be above 0, were " + degreesOfFreedom);
        if (degreesOfFreedom > AS_GOOD_AS_NORMAL) {
            return normal(probability);
        }
        if (probability < 0.5) {
            return -studentT(1 - probability, degreesOfFreedom);
        }
        return new TDistribution(degreesOfFreedom).inverseCumulativeProbability(probability);
    }

    /** Chi-squared below which the given probability lies. */
    public static double chiSquared(double probability, double degreesOfFreedom) {
        Check.openUnit("a probability", probability);
        Check.positive("degrees of freedom", degreesOfFreedom);
        return new ChiSquaredDistribution(degreesOfFreedom).inverseCumulativeProbability(probability);
    }

    /**
     * Number of standard uncertainties to either side that hold the given probability: the factor k of JCGM 100:2008,
     * G.3.2, from Student's t.
     */
    public static double coverageFactor(double probability, double degreesOfFreedom) {
        return studentT(0.5 * (1 + Check.openUnit("a probability", probability)), degreesOfFreedom);
    }
}
