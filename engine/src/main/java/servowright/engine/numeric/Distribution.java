package servowright.engine.numeric;

import java.util.random.RandomGenerator;

/**
 * What is known about one or several figures, as something that can be drawn from. The shapes and when to assign them:
 * JCGM 101:2008, section 6.4 and table 1.
 */
public interface Distribution {
    /** Number of figures drawn at once. */
    int size();

    /** Writes one draw of all figures from {@code start} on. */
    void draw(RandomGenerator random, double[] into, int start);

    /** One figure drawn by a function of the generator. */
    static Distribution single(Draw draw) {
        return new Distribution() {
            @Override
            public int size() {
                return 1;
            }

            @Override
            public void draw(RandomGenerator random, double[] into, int start) {
                into[start] = draw.from(random);
            }
        };
    }

    /** One draw of one figure. */
    @FunctionalInterface
    interface Draw {
        double from(RandomGenerator random);
    }

    static Distribution normal(double mean, double standardDeviation) {
        Check.finite("a mean", mean);
        Check.that(standardDeviation >= 0, "a standard deviation must not be below 0, was ", standardDeviation);
        return single(random -> mean + standardDeviation * random.nextGaussian());
    }

    /** Equally likely anywhere between two limits. */
    static Distribution rectangular(double low, double high) {
        limits(low, high);
        return single(random -> low + (high - low) * random.nextDouble());
    }

    /** Symmetric triangle between two limits. */
    static Distribution triangular(double low, double high) {
        limits(low, high);
        return single(random -> low + 0.5 * (high - low) * (random.nextDouble() + random.nextDouble()));
    }

    /** Rectangle whose limits are themselves only known to within {@code inexactness} either way: JCGM 101, 6.4.3. */
    static Distribution curvilinearTrapezoid(double low, double high, double inexactness) {
        limits(low, high);
        Check.that(
                inexactness >= 0 && 2 * inexactness < high - low,
                "the inexactness of the limits must be 0 to half their distance, was ",
                inexactness);
        return single(random -> {
            double left = low - inexactness + 2 * inexactness * random.nextDouble();
            double right = low + high - left;
            return left + (right - left) * random.nextDouble();
        });
    }

    /** The distribution of a sine whose phase is anything, between two limits: JCGM 101, 6.4.6. */
    static Distribution arcsine(double low, double high) {
        limits(low, high);
        return single(random -> 0.5 * (low + high) + 0.5 * (high - low) * Math.sin(2 * Math.PI * random.nextDouble()));
    }

    /**
     * Student's t, shifted and scaled: a mean of few readings, with the standard deviation of the mean as scale.
     *
     * <p>Drawn by R. W. Bailey, "Polar generation of random variates with the t-distribution", Mathematics of
     * Computation 62 (1994) (from memory).
     */
    static Distribution studentT(double centre, double scale, double degreesOfFreedom) {
        Check.finite("a centre", centre);
        Check.positive("degrees of freedom", degreesOfFreedom);
        Check.that(scale >= 0, "a scale must not be below 0, was ", scale);
        return single(random -> {
            double radius = 1 - random.nextDouble();
            double spread = Math.sqrt(degreesOfFreedom * Math.expm1(-2 / degreesOfFreedom * Math.log(radius)));
            return centre + scale * spread * Math.cos(2 * Math.PI * random.nextDouble());
        });
    }

    /** Several figures with a covariance, drawn through its Cholesky factor: JCGM 101, 6.4.8 and C.5. */
    static Distribution multivariateNormal(double[] means, Covariance covariance) {
        Check.finite("means", means);
        Check.sameLength("means", covariance.size(), means.length);
        return new MultivariateNormal(Values.of(means), covariance.lowerTriangle());
    }

    private static void limits(double low, double high) {
        Check.finite("a lower limit", low);
        Check.finite("an upper limit", high);
        Check.that(low <= high, "limits need low <= high, were ", low, high);
    }
}
