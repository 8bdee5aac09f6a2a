package servowright.engine.worksheet;

import java.util.List;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/**
 * Inputs that several worksheets take, each with a range that every small machine keeps by far: what lies outside is a
 * slip of the unit.
 */
public final class UsualInputs {
    private UsualInputs() {}

    /** A voltage of the supply or bus. */
    public static Input supply() {
        return Input.quantity("supply", Dimension.VOLTAGE, "supply voltage at the drive", "24 V")
                .within(Quantity.of(1, "V"), Quantity.of(1000, "V"));
    }

    /** A resistance of the winding, with its hook-up. */
    public static Input resistance(String name, String meaning) {
        return ohm(name, meaning, "0.1 ohm [two terminals]").statedAs(Basis.HOOK_UP);
    }

    /** A resistance that is no part of the winding. */
    public static Input ohm(String name, String meaning, String example) {
        return Input.quantity(name, Dimension.RESISTANCE, meaning, example)
                .within(Quantity.of(1e-6, "ohm"), Quantity.of(1e5, "ohm"));
    }

    /** An inductance of the winding, with its hook-up. */
    public static Input inductance(String name, String meaning) {
        return Input.quantity(name, Dimension.INDUCTANCE, meaning, "120 uH [two terminals]")
                .within(Quantity.of(1e-9, "H"), Quantity.of(100, "H"))
                .statedAs(Basis.HOOK_UP);
    }

    /** A motor current, with its basis. */
    public static Input current(String name, String meaning) {
        return Input.quantity(name, Dimension.CURRENT, meaning, "15 A [q axis]")
                .within(Quantity.of(0, "A"), Quantity.of(1e5, "A"))
                .statedAs(List.of(CurrentBasis.Q_AXIS.words(), CurrentBasis.PHASE_RMS.words()));
    }

    /** A shaft speed. */
    public static Input speed(String name, String meaning) {
        return Input.quantity(name, Dimension.SPEED, meaning, "3000 rpm")
                .within(Quantity.of(0, "rpm"), Quantity.of(1e6, "rpm"));
    }

    /** A frequency, not zero. */
    public static Input frequency(String name, String meaning, String example) {
        return Input.quantity(name, Dimension.FREQUENCY, meaning, example)
                .within(Quantity.of(1e-3, "Hz"), Quantity.of(1e9, "Hz"));
    }

    /** A span of time, not zero. */
    public static Input time(String name, String meaning, String example) {
        return Input.quantity(name, Dimension.TIME, meaning, example)
                .within(Quantity.of(1e-12, "s"), Quantity.of(1e9, "s"));
    }

    /** A temperature. */
    public static Input temperature(String name, String meaning, String example) {
        return Input.quantity(name, Dimension.TEMPERATURE, meaning, example)
                .within(Quantity.of(-100, "degC"), Quantity.of(400, "degC"));
    }

    /** A share from nothing to all. */
    public static Input share(String name, String meaning, String example) {
        return Input.quantity(name, Dimension.NUMBER, meaning, example)
                .within(Quantity.number(0), Quantity.number(0.999));
    }

    /** A moment of inertia. */
    public static Input inertia(String name, String meaning, String example) {
        return Input.quantity(name, Dimension.INERTIA, meaning, example)
                .within(Quantity.of(1e-12, "kg m2"), Quantity.of(1e6, "kg m2"));
    }

    /** Motor turns per output turn. */
    public static Input gear() {
        return Input.quantity("gear", Dimension.NUMBER, "motor turns per output turn", "9")
                .within(Quantity.number(1e-3), Quantity.number(1e5));
    }

    /** Pole pairs as stated. */
    public static Input polePairs() {
        return Input.count("pole_pairs", "pole pairs", 1, 120, "7");
    }

    /** Magnets as counted. */
    public static Input magnets() {
        return Input.count("magnets", "magnets counted around the rotor", 2, 240, "14");
    }
}
