package servowright.app.view;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Unit;
import servowright.engine.quantity.Units;

/** The unit in which the trade reads a figure: per dimension a ladder, climbed as far as the figure reaches. */
final class UsualUnit {
    /**
     * A rung.
     *
     * @param unit  as it is written
     * @param least the smallest number of it that is still said in it
     */
    private record Rung(String unit, double least) {}

    private static final Map<Dimension, List<Rung>> LADDERS = ladders();

    /** Numbers outside these are not read easily; a unit asked for gives way to the usual one. */
    private static final double LEAST_READABLE = 1e-3;

    private static final double MOST_READABLE = 1e6;

    private UsualUnit() {}

    /** The unit for a figure: the one asked for as long as its number stays readable, otherwise from the ladder. */
    static Unit of(double si, Dimension dimension, String asked) {
        if (asked.isEmpty()) {
            return usual(si, dimension);
        }
        Unit wish = Units.named(asked);
        if (!wish.dimension().equals(dimension)) {
            return usual(si, dimension);
        }
        double number = Math.abs(wish.fromSi(si));
        boolean readable = number == 0 || (number >= LEAST_READABLE && number < MOST_READABLE);
        return readable || wish.offset() != 0 || !LADDERS.containsKey(dimension) || dimension.equals(Dimension.NUMBER)
                ? wish
                : usual(si, dimension);
    }

    private static Unit usual(double si, Dimension dimension) {
        List<Rung> ladder = LADDERS.get(dimension);
        if (ladder == null) {
            return Unit.of(dimension.symbol(), dimension, 1);
        }
        for (int i = ladder.size() - 1; i > 0; i--) {
            Unit unit = Units.named(ladder.get(i).unit());
            if (Math.abs(unit.fromSi(si)) >= ladder.get(i).least() * (1 - 1e-12)) {
                return unit;
            }
        }
        return si == 0 ? plainest(ladder) : Units.named(ladder.get(0).unit());
    }

    /** Nothing at all is said in the unit without a prefix: 0 V, not 0 uV. */
    private static Unit plainest(List<Rung> ladder) {
        return ladder.stream()
                .map(r -> Units.named(r.unit()))
                .min(Comparator.comparingDouble(u -> Math.abs(Math.log(u.factor()))))
                .orElseThrow();
    }

    private static Map<Dimension, List<Rung>> ladders() {
        Map<Dimension, List<Rung>> all = new HashMap<>();
        put(all, Dimension.NUMBER, "", 0);
        electrical(all);
        rotation(all);
        mechanical(all);
        put(all, Dimension.TIME, "ns", 0, "us", 1, "ms", 1, "s", 1, "min", 10, "h", 5);
        put(all, Dimension.FREQUENCY, "mHz", 0, "Hz", 1, "kHz", 10, "MHz", 1);
        put(all, Dimension.TEMPERATURE, "degC", 0);
        put(all, Dimension.THERMAL_RESISTANCE, "K/W", 0);
        put(all, Dimension.HEAT_CAPACITY, "J/K", 0);
        put(all, Dimension.TEMPERATURE_COEFFICIENT, "%/K", 0);
        put(all, Dimension.DATA_RATE, "bit/s", 0, "kbit/s", 1, "Mbit/s", 1);
        put(all, Dimension.INFORMATION, "bit", 0);
        return Map.copyOf(all);
    }

    private static void electrical(Map<Dimension, List<Rung>> all) {
        put(all, Dimension.VOLTAGE, "uV", 0, "mV", 1, "V", 0.5, "kV", 10);
        put(all, Dimension.CURRENT, "uA", 0, "mA", 1, "A", 0.1, "kA", 10);
        put(all, Dimension.RESISTANCE, "uohm", 0, "mohm", 1, "ohm", 0.1, "kohm", 1, "Mohm", 1);
        put(all, Dimension.INDUCTANCE, "nH", 0, "uH", 1, "mH", 1, "H", 1);
        put(all, Dimension.CAPACITANCE, "pF", 0, "nF", 1, "uF", 1, "mF", 1, "F", 1);
        put(all, Dimension.CHARGE, "mAh", 0, "A h", 0.5);
        put(all, Dimension.FLUX_LINKAGE, "uWb", 0, "mWb", 0.1, "Wb", 1);
        put(all, Dimension.FLUX_DENSITY, "mT", 0, "T", 0.5);
        put(all, Dimension.POWER, "uW", 0, "mW", 1, "W", 0.5, "kW", 10);
        put(all, Dimension.ENERGY, "uJ", 0, "mJ", 1, "J", 0.5, "kJ", 10);
        put(all, Dimension.EMF_CONSTANT, "mV s/rad", 0, "V s/rad", 1);
        put(all, Dimension.SPEED_CONSTANT, "rpm/V", 0);
        put(all, Dimension.MOTOR_CONSTANT, "mN m/sqrt(W)", 0, "N m/sqrt(W)", 1);
    }

    private static void rotation(Map<Dimension, List<Rung>> all) {
        put(all, Dimension.ANGLE, "mdeg", 0, "deg", 0.1, "turns", 2);
        put(all, Dimension.SPEED, "rpm", 0);
        put(all, Dimension.ACCELERATION, "rad/s2", 0);
        put(all, Dimension.JERK, "rad/s3", 0);
        put(all, Dimension.TORQUE, "uN m", 0, "mN m", 1, "N m", 0.1, "kN m", 10);
        put(all, Dimension.INERTIA, "g cm2", 0, "kg cm2", 0.1, "kg m2", 0.01);
        put(all, Dimension.VISCOUS_FRICTION, "uN m s/rad", 0, "mN m s/rad", 1, "N m s/rad", 0.1);
    }

    private static void mechanical(Map<Dimension, List<Rung>> all) {
        put(all, Dimension.MASS, "mg", 0, "g", 1, "kg", 1);
        put(all, Dimension.LENGTH, "um", 0, "mm", 0.1, "m", 1, "km", 10);
        put(all, Dimension.AREA, "mm2", 0, "m2", 0.1);
        put(all, Dimension.VELOCITY, "mm/s", 0, "m/s", 0.1);
        put(all, Dimension.FORCE, "mN", 0, "N", 0.1, "kN", 10);
    }

    private static void put(Map<Dimension, List<Rung>> all, Dimension dimension, Object... unitsAndLeast) {
        Rung[] rungs = new Rung[unitsAndLeast.length / 2];
        for (int i = 0; i < rungs.length; i++) {
            rungs[i] = new Rung((String) unitsAndLeast[2 * i], ((Number) unitsAndLeast[2 * i + 1]).doubleValue());
        }
        all.put(dimension, List.of(rungs));
    }
}
