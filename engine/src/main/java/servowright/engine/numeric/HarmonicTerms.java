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
 * @param line frequency of one more sine that is fitted along, such as hum of the mains, taken as exact
 * @param step what the samples were rounded to, 0 when they were not
 */
public record HarmonicTerms(
        List<Integer> orders,
        boolean drift,
        OptionalDouble startFrequency,
        boolean frequencyKnown,
        OptionalDouble line,
        double step) {

    public HarmonicTerms {
        orders = List.copyOf(orders);
        Check.that(!orders.isEmpty() && orders.get(0) >= 1, "orders must start at 1 or above, were ", orders);
        for (int j = 1; j < orders.size(); j++) {
            Check.that(orders.get(j) > orders.get(j - 1), "orders must rise, were ", orders);
        }
        if (startFrequency.isPresent()) {
            Check.positive("a start frequency", startFrequency.getAsDouble());
        }
        if (line.isPresent()) {
            Check.positive("the frequency of a line", line.getAsDouble());
        }
        Check.that(step >= 0 && step < Double.POSITIVE_INFINITY, "a step must not be below 0, was ", step);
    }

    /** Offset and these orders of a base frequency that is to be found. */
    public static HarmonicTerms ofOrders(int... orders) {
        OptionalDouble none = OptionalDouble.empty();
        return new HarmonicTerms(Arrays.stream(orders).boxed().toList(), false, none, false, none, 0);
    }

    public HarmonicTerms withDrift() {
        return new HarmonicTerms(orders, true, startFrequency, frequencyKnown, line, step);
    }

    /** Starts the search here, for signals whose strongest line is not the first of the orders. */
    public HarmonicTerms startingAt(double frequency) {
        return new HarmonicTerms(orders, drift, OptionalDouble.of(frequency), false, line, step);
    }

    /** Takes the base frequency as exact. */
    public HarmonicTerms atKnownFrequency(double frequency) {
        return new HarmonicTerms(orders, drift, OptionalDouble.of(frequency), true, line, step);
    }

    /** Says that the samples were rounded to multiples of a step, so that the uncertainties allow for it. */
    public HarmonicTerms roundedTo(double step) {
        return new HarmonicTerms(orders, drift, startFrequency, frequencyKnown, line, step);
    }

    /** Fits one more sine along, of a frequency that is exact. */
    public HarmonicTerms withLine(double frequency) {
        return new HarmonicTerms(orders, drift, startFrequency, frequencyKnown, OptionalDouble.of(frequency), step);
    }

    /** Offset and the first of the orders at a frequency that is to be found, with the drift if there is one. */
    HarmonicTerms firstOrder() {
        OptionalDouble none = OptionalDouble.empty();
        return new HarmonicTerms(orders.subList(0, 1), drift, none, false, none, 0);
    }

    /** The same without a drift. */
    public HarmonicTerms withoutDrift() {
        return new HarmonicTerms(orders, false, startFrequency, frequencyKnown, line, step);
    }

    int highestOrder() {
        return orders.get(orders.size() - 1);
    }
}
