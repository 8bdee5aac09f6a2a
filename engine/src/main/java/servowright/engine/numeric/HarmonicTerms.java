package servowright.engine.numeric;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What a harmonic fit consists of.
 *
 * @param orders multiples of the base frequency, rising, each at least 1; the first carries the frequency search
 * @param drift whether the offset may change linearly
 * @param startFrequency cycles per unit of the abscissa to start from, instead of the strongest line of the spectrum
 * @param frequencyKnown whether the start frequency is taken as exact
 * @param step what the samples were rounded to, 0 when they were not
 */
public record HarmonicTerms(
        List<Integer> orders, boolean drift, OptionalDouble startFrequency, boolean frequencyKnown, double step) {

    public HarmonicTerms {
        orders = List.copyOf(orders);
        Check.that(!orders.isEmpty() && orders.get(0) >= 1, "orders must start at 1 or above, were " + orders);
        for (int j = 1; j < orders.size(); j++) {
            Check.that(orders.get(j) > orders.get(j - 1), "orders must rise, were " + orders);
        }
        if (startFrequency.isPresent()) {
            Check.positive("a start frequency", startFrequency.getAsDouble());
        }
        Check.that(step >= 0 && step < Double.POSITIVE_INFINITY, "a step must not be below 0, was " + step);
    }

    /** Offset and these orders of a base frequency that is to be found. */
    public static HarmonicTerms ofOrders(int... orders) {
        return new HarmonicTerms(Arrays.stream(orders).boxed().toList(), false, OptionalDouble.empty(), false, 0);
    }

    public HarmonicTerms withDrift() {
        return new HarmonicTerms(orders, true, startFrequency, frequencyKnown, step);
    }

    /** Starts the search here, for signals whose strongest line is not the first of the orders. */
    public HarmonicTerms startingAt(double frequency) {
        return new HarmonicTerms(orders, drift, OptionalDouble.of(frequency), false, step);
    }

    /** Takes the base frequency as exact. */
    public HarmonicTerms atKnownFrequency(double frequency) {
        return new HarmonicTerms(orders, drift, OptionalDouble.of(frequency), true, step);
    }

    /** Says that the samples were rounded to multiples of a step, so that the uncertainties allow for it. */
    public HarmonicTerms roundedTo(double step) {
        return new HarmonicTerms(orders, drift, startFrequency, frequencyKnown, step);
    }

    int highestOrder() {
        return orders.get(orders.size() - 1);
    }
}
