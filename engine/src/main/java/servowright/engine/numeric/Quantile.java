package servowright.engine.numeric;

import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/** Quantiles of the distributions that intervals are made from. */
public final class Quantile {
    private static final NormalDistribution NORMAL = new NormalDistribution(0, 1);

    /** Beyond this many degrees of freedom Student's t is taken as normal; they differ by less than 1e-8. */
    private static final double AS_GOOD_AS_NORMAL = 1e9;

    /** From here on the expansion is a good start for Newton's steps: near enough for every probability in use. */
    private static final double EXPANDED_FROM = 5;

    /** From here on the expansion is exact to 1e-15, which the distribution function itself is not. */
    private static final double EXPANDED_ALONE_FROM = 1e4;

    private static final int MOST_STEPS = 20;

    /** Newton's error is the square of its last step: a last step of this leaves 1e-14. */
    private static final double CLOSE = 1e-7;

    private Quantile() {}

    /** The standard normal deviate below which the given probability lies. */
    public static double normal(double probability) {
        return NORMAL.inverseCumulativeProbability(Check.openUnit("a probability", probability));
    }

    /** Student's t below which the given probability lies; infinite degrees of freedom are the normal distribution. */
    public static double studentT(double probability, double degreesOfFreedom) {
        Check.openUnit("a probability", probability);
        Check.that(degreesOfFreedom > 0, "degrees of freedom must be above 0, were ", degreesOfFreedom);
        if (degreesOfFreedom > AS_GOOD_AS_NORMAL) {
            return normal(probability);
        }
        if (probability < 0.5) {
            return -studentT(1 - probability, degreesOfFreedom);
        }
        TDistribution student = new TDistribution(degreesOfFreedom);
        if (degreesOfFreedom < EXPANDED_FROM) {
            return student.inverseCumulativeProbability(probability);
        }
        double start = expanded(normal(probability), degreesOfFreedom);
        return degreesOfFreedom > EXPANDED_ALONE_FROM ? start : polished(student, probability, start);
    }

    /**
     * Student's t at the normal deviate z, {@code t = z + g1/v + g2/v^2 + g3/v^3 + g4/v^4}. <b>Source.</b> Abramowitz and
     * Stegun, Handbook of Mathematical Functions, 26.7.5 (from memory; checked against the distribution itself).
     */
    private static double expanded(double z, double v) {
        double z2 = z * z;
        double g1 = (z2 + 1) / 4;
        double g2 = ((5 * z2 + 16) * z2 + 3) / 96;
        double g3 = (((3 * z2 + 19) * z2 + 17) * z2 - 15) / 384;
        double g4 = ((((79 * z2 + 776) * z2 + 1482) * z2 - 1920) * z2 - 945) / 92160;
        return z * (1 + (g1 + (g2 + (g3 + g4 / v) / v) / v) / v);
    }

    /** Newton's steps from a start that is already close. */
    private static double polished(TDistribution student, double probability, double start) {
        double t = start;
        for (int step = 0; step < MOST_STEPS; step++) {
            double change = (student.cumulativeProbability(t) - probability) / student.density(t);
            t -= change;
            if (Math.abs(change) <= CLOSE * (1 + Math.abs(t))) {
                return t;
            }
        }
        return student.inverseCumulativeProbability(probability);
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
