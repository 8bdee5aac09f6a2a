package servowright.engine.quantity;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Dimension of a quantity as exponents of kilogram, metre, second, ampere, kelvin, radian and bit, each counted in
 * halves so that a motor constant (newton metre per root watt) has one too.
 *
 * <p>The radian is carried like a base unit. It keeps apart what people mix up: torque (J/rad) and energy (J), rotor
 * speed (rad/s) and frequency (1/s), flux linkage (V s) and back-EMF constant (V s/rad).
 */
public record Dimension(int mass, int length, int time, int current, int temperature, int angle, int information) {
    /** A pure number. */
    public static final Dimension NUMBER = of(0, 0, 0, 0, 0, 0, 0);

    public static final Dimension MASS = of(1, 0, 0, 0, 0, 0, 0);
    public static final Dimension LENGTH = of(0, 1, 0, 0, 0, 0, 0);
    public static final Dimension TIME = of(0, 0, 1, 0, 0, 0, 0);
    public static final Dimension CURRENT = of(0, 0, 0, 1, 0, 0, 0);
    public static final Dimension TEMPERATURE = of(0, 0, 0, 0, 1, 0, 0);
    public static final Dimension ANGLE = of(0, 0, 0, 0, 0, 1, 0);
    public static final Dimension INFORMATION = of(0, 0, 0, 0, 0, 0, 1);

    public static final Dimension AREA = LENGTH.power(2);
    public static final Dimension FREQUENCY = NUMBER.over(TIME);
    public static final Dimension SPEED = ANGLE.over(TIME);
    public static final Dimension ACCELERATION = SPEED.over(TIME);
    public static final Dimension JERK = ACCELERATION.over(TIME);
    public static final Dimension VELOCITY = LENGTH.over(TIME);
    public static final Dimension FORCE = MASS.times(VELOCITY).over(TIME);
    public static final Dimension ENERGY = FORCE.times(LENGTH);
    public static final Dimension POWER = ENERGY.over(TIME);
    /** Torque: energy per radian. */
    public static final Dimension TORQUE = ENERGY.over(ANGLE);
    /** Moment of inertia: torque per angular acceleration. */
    public static final Dimension INERTIA = TORQUE.over(ACCELERATION);
    /** Viscous friction: torque per speed. */
    public static final Dimension VISCOUS_FRICTION = TORQUE.over(SPEED);

    public static final Dimension CHARGE = CURRENT.times(TIME);
    public static final Dimension VOLTAGE = POWER.over(CURRENT);
    public static final Dimension RESISTANCE = VOLTAGE.over(CURRENT);
    public static final Dimension INDUCTANCE = RESISTANCE.times(TIME);
    public static final Dimension CAPACITANCE = CHARGE.over(VOLTAGE);
    public static final Dimension FLUX_LINKAGE = VOLTAGE.times(TIME);
    public static final Dimension FLUX_DENSITY = FLUX_LINKAGE.over(AREA);
    /** Voltage per rotor speed; the same as torque per ampere. */
    public static final Dimension EMF_CONSTANT = VOLTAGE.over(SPEED);

    public static final Dimension TORQUE_CONSTANT = TORQUE.over(CURRENT);
    /** Rotor speed per volt. */
    public static final Dimension SPEED_CONSTANT = SPEED.over(VOLTAGE);
    /** Torque per root of copper loss. */
    public static final Dimension MOTOR_CONSTANT = TORQUE.over(POWER.root());

    public static final Dimension THERMAL_RESISTANCE = TEMPERATURE.over(POWER);
    public static final Dimension HEAT_CAPACITY = ENERGY.over(TEMPERATURE);
    public static final Dimension TEMPERATURE_COEFFICIENT = NUMBER.over(TEMPERATURE);
    public static final Dimension DATA_RATE = INFORMATION.over(TIME);

    private static Dimension of(int kg, int m, int s, int a, int k, int rad, int bit) {
        return new Dimension(2 * kg, 2 * m, 2 * s, 2 * a, 2 * k, 2 * rad, 2 * bit);
    }

    /** Dimension of the product. */
    public Dimension times(Dimension other) {
        return new Dimension(
                mass + other.mass,
                length + other.length,
                time + other.time,
                current + other.current,
                temperature + other.temperature,
                angle + other.angle,
                information + other.information);
    }

    /** Dimension of the quotient. */
    public Dimension over(Dimension other) {
        return times(other.power(-1));
    }

    /** Dimension of the integer power. */
    public Dimension power(int n) {
        return new Dimension(mass * n, length * n, time * n, current * n, temperature * n, angle * n, information * n);
    }

    /**
     * Dimension of the square root.
     *
     * @throws IllegalArgumentException if an exponent would need quarters
     */
    public Dimension root() {
        if (((mass | length | time | current | temperature | angle | information) & 1) != 0) {
            throw new IllegalArgumentException("the root of " + symbol() + " has no dimension here");
        }
        return new Dimension(mass / 2, length / 2, time / 2, current / 2, temperature / 2, angle / 2, information / 2);
    }

    /** The same dimension with the radian left out: what a pocket calculator would compare. */
    public Dimension withoutAngle() {
        return new Dimension(mass, length, time, current, temperature, 0, information);
    }

    /** Written out: dimensions are compared everywhere, from the first moments of the program on. */
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Dimension that
                && mass == that.mass
                && length == that.length
                && time == that.time
                && current == that.current
                && temperature == that.temperature
                && angle == that.angle
                && information == that.information;
    }

    @Override
    public int hashCode() {
        int[] exponents = {mass, length, time, current, temperature, angle, information};
        return Arrays.hashCode(exponents);
    }

    /** Base units with exponents, for example {@code kg m2 s-2 rad-1}. A pure number gives {@code 1}. */
    public String symbol() {
        StringBuilder text = new StringBuilder();
        append(text, "kg", mass);
        append(text, "m", length);
        append(text, "s", time);
        append(text, "A", current);
        append(text, "K", temperature);
        append(text, "rad", angle);
        append(text, "bit", information);
        return text.isEmpty() ? "1" : text.toString();
    }

    private static void append(StringBuilder text, String unit, int halves) {
        if (halves == 0) {
            return;
        }
        if (!text.isEmpty()) {
            text.append(' ');
        }
        text.append(unit);
        if (halves % 2 != 0) {
            text.append(halves / 2.0);
        } else if (halves != 2) {
            text.append(halves / 2);
        }
    }
}
