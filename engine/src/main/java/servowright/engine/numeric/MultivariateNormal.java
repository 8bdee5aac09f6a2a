package servowright.engine.numeric;

import java.util.random.RandomGenerator;

/** Correlated normal figures: means plus a lower triangle times independent standard normal deviates. */
final class MultivariateNormal implements Distribution {
    private final Values means;
    private final double[][] lower;

    MultivariateNormal(Values means, double[][] lower) {
        this.means = means;
        this.lower = lower;
    }

    @Override
    public int size() {
        return lower.length;
    }

    @Override
    public void draw(RandomGenerator random, double[] into, int start) {
        double[] deviates = new double[lower.length];
        for (int i = 0; i < lower.length; i++) {
            deviates[i] = random.nextGaussian();
            double sum = means.at(i);
            for (int k = 0; k <= i; k++) {
                sum += lower[i][k] * deviates[k];
            }
            into[start + i] = sum;
        }
    }
}
