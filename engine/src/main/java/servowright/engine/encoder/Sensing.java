package servowright.engine.encoder;

import java.util.List;
import java.util.function.UnaryOperator;
import servowright.engine.quantity.Require;

/**
 * How a sensor turns a field into two channels. The phasor it returns points along the magnetisation of a magnet below
 * it.
 */
public sealed interface Sensing {

    /**
     * The two channels.
     *
     * @param field flux density in the axes of the sensor, x and y in its plane, at a place in the same axes
     */
    Planar phasor(UnaryOperator<Vector> field);

    /** Both field components across the shaft at one point. */
    record Point() implements Sensing {
        @Override
        public Planar phasor(UnaryOperator<Vector> field) {
            return field.apply(Vector.ZERO).across().times(-1);
        }
    }

    /**
     * Elements of finite distance: each channel is the mean of one field component over its own places. Places with
     * fourfold symmetry cancel the error that separation causes in a centred sensor.
     *
     * @param x places of the elements that read the x component, metres from the middle
     * @param y places of those that read the y component
     */
    record Elements(List<Planar> x, List<Planar> y) implements Sensing {
        public Elements {
            x = List.copyOf(x);
            y = List.copyOf(y);
            Require.atLeast("number of elements of each channel", 1, Math.min(x.size(), y.size()));
        }

        @Override
        public Planar phasor(UnaryOperator<Vector> field) {
            double alongX = 0;
            for (Planar place : x) {
                alongX += field.apply(new Vector(place.x(), place.y(), 0)).x() / x.size();
            }
            double alongY = 0;
            for (Planar place : y) {
                alongY += field.apply(new Vector(place.x(), place.y(), 0)).y() / y.size();
            }
            return new Planar(-alongX, -alongY);
        }
    }

    /**
     * Four plates on a circle that read the component normal to the sensor; each channel is the difference of two opposite
     * plates. An even stray field cancels.
     *
     * @param plateRadiusMetre radius of the circle
     */
    record Gradient(double plateRadiusMetre) implements Sensing {
        public Gradient {
            Require.positive("radius of the plates", plateRadiusMetre, "m");
        }

        @Override
        public Planar phasor(UnaryOperator<Vector> field) {
            double r = plateRadiusMetre;
            return new Planar(
                    field.apply(new Vector(r, 0, 0)).z()
                            - field.apply(new Vector(-r, 0, 0)).z(),
                    field.apply(new Vector(0, r, 0)).z()
                            - field.apply(new Vector(0, -r, 0)).z());
        }
    }
}
