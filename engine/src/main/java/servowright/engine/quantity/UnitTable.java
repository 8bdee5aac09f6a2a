package servowright.engine.quantity;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The units known by name: atoms with the prefixes they take, and the compounds whose spelling does not say their
 * dimension ({@code N m} is a torque and not a joule, {@code kg cm} is a torque and not a mass times a length, {@code
 * kg m2} is an inertia).
 *
 * <p>Factors: inch 0.0254 m, pound 0.45359237 kg, standard gravity 9.80665 m/s2 (exact by definition, BIPM and NIST
 * SP 811, appendix B); ounce = pound / 16.
 */
final class UnitTable {
    /** Standard gravity, m/s2 (exact by definition). */
    static final double GRAVITY = 9.80665;

    private static final double OUNCE = 0.45359237 / 16;
    private static final double INCH = 0.0254;
    private static final double TURN = 2 * Math.PI;

    private static final Map<String, Double> PREFIXES =
            Map.of("p", 1e-12, "n", 1e-9, "u", 1e-6, "m", 1e-3, "k", 1e3, "M", 1e6, "G", 1e9);

    /** Everything known, spelled as in {@link Units#spelling}. */
    static final Map<String, Unit> ALL = build();

    private UnitTable() {}

    private static Map<String, Unit> build() {
        Map<String, Unit> table = new LinkedHashMap<>();
        electrical(table);
        mechanical(table);
        rotation(table);
        rest(table);
        return Map.copyOf(table);
    }

    private static void electrical(Map<String, Unit> t) {
        prefixed(t, "V", Dimension.VOLTAGE, 1, "pnumkM");
        prefixed(t, "A", Dimension.CURRENT, 1, "pnumk");
        prefixed(t, "ohm", Dimension.RESISTANCE, 1, "numkM");
        prefixed(t, "H", Dimension.INDUCTANCE, 1, "pnum");
        prefixed(t, "F", Dimension.CAPACITANCE, 1, "pnum");
        prefixed(t, "Wb", Dimension.FLUX_LINKAGE, 1, "num");
        prefixed(t, "T", Dimension.FLUX_DENSITY, 1, "num");
        prefixed(t, "W", Dimension.POWER, 1, "numkM");
        prefixed(t, "J", Dimension.ENERGY, 1, "numkM");
        prefixed(t, "Wh", Dimension.ENERGY, 3600, "mk");
        prefixed(t, "Ah", Dimension.CHARGE, 3600, "m");
        prefixed(t, "C", Dimension.CHARGE, 1, "um");
        add(t, "G", Dimension.FLUX_DENSITY, 1e-4);
    }

    private static void mechanical(Map<String, Unit> t) {
        prefixed(t, "m", Dimension.LENGTH, 1, "numk");
        add(t, "cm", Dimension.LENGTH, 0.01);
        add(t, "in", Dimension.LENGTH, INCH);
        add(t, "inch", Dimension.LENGTH, INCH);
        prefixed(t, "g", Dimension.MASS, 1e-3, "umk");
        add(t, "lb", Dimension.MASS, 16 * OUNCE);
        add(t, "oz", Dimension.MASS, OUNCE);
        prefixed(t, "N", Dimension.FORCE, 1, "umk");
        add(t, "kgf", Dimension.FORCE, GRAVITY);
        add(t, "gf", Dimension.FORCE, GRAVITY / 1000);
        add(t, "ozf", Dimension.FORCE, OUNCE * GRAVITY);
        add(t, "lbf", Dimension.FORCE, 16 * OUNCE * GRAVITY);
        for (String prefix : new String[] {"", "m", "u", "k"}) {
            String n = prefix + "N";
            double newton = prefix(prefix);
            torque(t, n, "m", newton);
            torque(t, n, "cm", newton * 0.01);
            torque(t, n, "mm", newton * 0.001);
        }
        for (String kg : new String[] {"kg", "kgf", "kp"}) {
            torque(t, kg, "m", GRAVITY);
            torque(t, kg, "cm", GRAVITY * 0.01);
            torque(t, kg, "mm", GRAVITY * 0.001);
        }
        for (String g : new String[] {"g", "gf"}) {
            torque(t, g, "cm", GRAVITY * 1e-5);
        }
        for (String oz : new String[] {"oz", "ozf"}) {
            torque(t, oz, "in", OUNCE * GRAVITY * INCH);
        }
        for (String lb : new String[] {"lb", "lbf"}) {
            torque(t, lb, "in", 16 * OUNCE * GRAVITY * INCH);
            torque(t, lb, "ft", 16 * OUNCE * GRAVITY * 12 * INCH);
        }
        inertia(t);
        viscousFriction(t);
    }

    private static void inertia(Map<String, Unit> t) {
        String[] mass = {"kg", "g", "mg"};
        double[] kilogram = {1, 1e-3, 1e-6};
        String[] length = {"m", "cm", "mm"};
        double[] metre = {1, 1e-2, 1e-3};
        for (int i = 0; i < mass.length; i++) {
            for (int k = 0; k < length.length; k++) {
                add(t, mass[i] + " " + length[k] + "2", Dimension.INERTIA, kilogram[i] * metre[k] * metre[k]);
            }
        }
        add(t, "oz in2", Dimension.INERTIA, OUNCE * INCH * INCH);
        add(t, "lb in2", Dimension.INERTIA, 16 * OUNCE * INCH * INCH);
    }

    private static void rotation(Map<String, Unit> t) {
        prefixed(t, "rad", Dimension.ANGLE, 1, "um");
        for (String turn : new String[] {"turn", "turns", "rev"}) {
            add(t, turn, Dimension.ANGLE, TURN);
        }
        add(t, "deg", Dimension.ANGLE, TURN / 360);
        add(t, "mdeg", Dimension.ANGLE, TURN / 360e3);
        add(t, "arcmin", Dimension.ANGLE, TURN / 21600);
        add(t, "rpm", Dimension.SPEED, TURN / 60);
        add(t, "krpm", Dimension.SPEED, 1000 * TURN / 60);
        add(t, "1/min", Dimension.SPEED, TURN / 60);
        add(t, "rps", Dimension.SPEED, TURN);
    }

    private static void rest(Map<String, Unit> t) {
        prefixed(t, "s", Dimension.TIME, 1, "pnum");
        add(t, "min", Dimension.TIME, 60);
        add(t, "h", Dimension.TIME, 3600);
        prefixed(t, "Hz", Dimension.FREQUENCY, 1, "mkM");
        prefixed(t, "K", Dimension.TEMPERATURE, 1, "m");
        put(t, new Unit("degC", Dimension.TEMPERATURE, 1, 273.15));
        put(t, new Unit("degF", Dimension.TEMPERATURE, 5.0 / 9, 459.67 * 5 / 9));
        prefixed(t, "bit", Dimension.INFORMATION, 1, "kM");
        add(t, "B", Dimension.INFORMATION, 8);
        add(t, "byte", Dimension.INFORMATION, 8);
        add(t, "%", Dimension.NUMBER, 0.01);
        add(t, "ppm", Dimension.NUMBER, 1e-6);
        add(t, "1", Dimension.NUMBER, 1);
        add(t, "N m/sqrt(W)", Dimension.MOTOR_CONSTANT, 1);
        add(t, "mN m/sqrt(W)", Dimension.MOTOR_CONSTANT, 1e-3);
    }

    /** The radian is left out by everyone who writes a viscous friction. */
    private static void viscousFriction(Map<String, Unit> t) {
        for (String prefix : new String[] {"", "m", "u"}) {
            for (String torque : new String[] {"N m", "Nm"}) {
                add(t, prefix + torque + " s", Dimension.VISCOUS_FRICTION, prefix(prefix));
                add(t, prefix + torque + " s/rad", Dimension.VISCOUS_FRICTION, prefix(prefix));
            }
        }
    }

    private static void torque(Map<String, Unit> t, String force, String arm, double newtonMetre) {
        add(t, force + " " + arm, Dimension.TORQUE, newtonMetre);
        add(t, force + arm, Dimension.TORQUE, newtonMetre);
    }

    private static void prefixed(
            Map<String, Unit> t, String symbol, Dimension dimension, double factor, String prefixes) {
        add(t, symbol, dimension, factor);
        for (String prefix : prefixes.split("")) {
            add(t, prefix + symbol, dimension, prefix(prefix) * factor);
        }
    }

    private static double prefix(String prefix) {
        return PREFIXES.getOrDefault(prefix, 1.0);
    }

    private static void add(Map<String, Unit> t, String symbol, Dimension dimension, double factor) {
        put(t, Unit.of(symbol, dimension, factor));
    }

    private static void put(Map<String, Unit> t, Unit unit) {
        t.putIfAbsent(unit.symbol(), unit);
    }
}
