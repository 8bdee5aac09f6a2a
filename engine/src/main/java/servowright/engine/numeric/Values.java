package servowright.engine.numeric;

import java.util.Arrays;
import java.util.stream.DoubleStream;

/** An immutable row of doubles. */
public final class Values {
    private final double[] values;

    private Values(double[] values) {
        this.values = values;
    }

    /** Copies the given numbers. */
    public static Values of(double... values) {
        return new Values(values.clone());
    }

    /** Takes over an array that nobody else writes to. */
    static Values owned(double[] values) {
        return new Values(values);
    }

    /** A row of {@code size} times NaN: the figures of a fit that has no answer. */
    static Values unknown(int size) {
        double[] values = new double[size];
        Arrays.fill(values, Double.NaN);
        return new Values(values);
    }

    public int size() {
        return values.length;
    }

    public double at(int index) {
        return values[index];
    }

    /** A copy that the caller may change. */
    public double[] toArray() {
        return values.clone();
    }

    public DoubleStream stream() {
        return Arrays.stream(values);
    }

    /** The array itself, for reading inside this package without a copy. */
    double[] inside() {
        return values;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Values that && Arrays.equals(values, that.values);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(values);
    }

    @Override
    public String toString() {
        return values.length <= 20 ? Arrays.toString(values) : "[" + values.length + " values]";
    }
}
