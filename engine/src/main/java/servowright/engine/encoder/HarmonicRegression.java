package servowright.engine.encoder;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import servowright.engine.numeric.Design;
import servowright.engine.numeric.LinearFit;
import servowright.engine.numeric.Values;

/**
 * Least squares of an angle error with free regressors (a constant, a direction, powers of time) and harmonics of the
 * shaft angle.
 *
 * <p>A harmonic is kept if its amplitude is above three standard errors, which lowers Akaike's criterion as well: chi-square
 * 9 against twice two coefficients. The standard error of an amplitude over a full turn is σ √(2/N) with N samples, N (1−r)/(1+r) when
 * neighbours have the correlation r.
 */
final class HarmonicRegression {
    private static final double OUT_OF_NOISE = 3;

    private final double[][] free;
    private final double[] observed;
    private final double[] sigma;

    HarmonicRegression(double[][] free, double[] observed, double[] sigma) {
        this.free = free;
        this.observed = observed;
        this.sigma = sigma;
    }

    /** The figures of one fit. */
    record Found(LinearFit fit, List<Integer> orders, int freeCount) {

        Ripple ripple(int i) {
            int at = freeCount + 2 * i;
            return new Ripple(orders.get(i), fit.parameter(at), fit.parameter(at + 1));
        }

        List<Ripple> ripples() {
            List<Ripple> ripples = new ArrayList<>();
            for (int i = 0; i < orders.size(); i++) {
                ripples.add(ripple(i));
            }
            return ripples;
        }

        /** Standard error of an amplitude, the largest of all. */
        double amplitudeError() {
            double factor = Math.sqrt(fit.whiteness().varianceFactor());
            double largest = 0;
            for (int i = freeCount; i < freeCount + 2 * orders.size(); i++) {
                largest = Math.max(largest, fit.standardError(i) * factor);
            }
            return largest;
        }

        Values free() {
            double[] values = new double[freeCount];
            Arrays.setAll(values, fit::parameter);
            return Values.of(values);
        }
    }

    /** With all of the orders given. */
    Found with(List<Integer> orders, double[] shaftRad) {
        double[][] columns = Arrays.copyOf(free, free.length + 2 * orders.size());
        for (int i = 0; i < orders.size(); i++) {
            int order = orders.get(i);
            columns[free.length + 2 * i] =
                    Arrays.stream(shaftRad).map(a -> Math.cos(order * a)).toArray();
            columns[free.length + 2 * i + 1] =
                    Arrays.stream(shaftRad).map(a -> Math.sin(order * a)).toArray();
        }
        return new Found(LinearFit.weighted(Design.ofColumns(columns), observed, sigma), orders, free.length);
    }

    /** The same without the orders that do not stand out. */
    Found pruned(Found all, double[] shaftRad) {
        Found kept = all;
        Optional<Integer> faint = faintest(kept);
        while (faint.isPresent()) {
            List<Integer> fewer = new ArrayList<>(kept.orders());
            fewer.remove(faint.get());
            Found next = with(fewer, shaftRad);
            kept = next;
            faint = faintest(next);
        }
        return kept;
    }

    private Optional<Integer> faintest(Found found) {
        double noise = found.amplitudeError();
        Optional<Integer> faintest = Optional.empty();
        double least = OUT_OF_NOISE * noise;
        for (Ripple ripple : found.ripples()) {
            if (ripple.amplitudeRad() < least) {
                least = ripple.amplitudeRad();
                faintest = Optional.of(ripple.order());
            }
        }
        return faintest;
    }

    /** Condition number of a constant and the harmonics up to an order at these angles. */
    static double condition(int orders, double[] shaftRad) {
        double[] ones = new double[shaftRad.length];
        Arrays.fill(ones, 1);
        return new HarmonicRegression(new double[][] {ones}, ones, ones)
                .with(IntStream.rangeClosed(1, orders).boxed().toList(), shaftRad)
                .fit()
                .conditionNumber();
    }

    /** A line, for its parameters only: two points are enough. */
    static LinearFit line(double[] places, double[] values) {
        return LinearFit.withKnownSigma(Design.line(places), values, ReferencedFit.ones(values.length));
    }

    /** Value at 0 of the line through values at places. */
    static double intercept(double[] places, IntToDoubleFunction value) {
        double[] values = IntStream.range(0, places.length).mapToDouble(value).toArray();
        return line(places, values).parameter(0);
    }
}
