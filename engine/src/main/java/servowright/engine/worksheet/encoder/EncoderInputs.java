package servowright.engine.worksheet.encoder;

import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.worksheet.Input;

/** Inputs that several of these worksheets take. */
final class EncoderInputs {
    private EncoderInputs() {}

    static Input diameter() {
        return length("diameter", "diameter of the magnet", "6 mm", 0.1, 200);
    }

    static Input thickness() {
        return length("length", "length of the magnet along the shaft", "2.5 mm", 0.1, 200);
    }

    static Input gap() {
        return length("gap", "face of the magnet to the sensing element, not to its package", "1 mm", 1e-3, 200);
    }

    static Input remanence(String name, String meaning, String example) {
        return Input.quantity(name, Dimension.FLUX_DENSITY, meaning, example)
                .within(Quantity.of(0.05, "T"), Quantity.of(2, "T"));
    }

    static Input field(String name, String meaning, String example) {
        return Input.quantity(name, Dimension.FLUX_DENSITY, meaning, example)
                .within(Quantity.of(1e-6, "T"), Quantity.of(2, "T"));
    }

    static Input length(String name, String meaning, String example, double leastMm, double mostMm) {
        return Input.quantity(name, Dimension.LENGTH, meaning, example)
                .within(Quantity.of(leastMm, "mm"), Quantity.of(mostMm, "mm"));
    }

    static Input angle(String name, String meaning, String example, double mostDegree) {
        return Input.quantity(name, Dimension.ANGLE, meaning, example)
                .within(Quantity.of(0, "deg"), Quantity.of(mostDegree, "deg"));
    }

    static Input time(String name, String meaning, String example) {
        return Input.quantity(name, Dimension.TIME, meaning, example)
                .within(Quantity.of(1e-9, "s"), Quantity.of(10, "s"));
    }

    static Input frequency(String name, String meaning, String example) {
        return Input.quantity(name, Dimension.FREQUENCY, meaning, example)
                .within(Quantity.of(1e-3, "Hz"), Quantity.of(1e9, "Hz"));
    }

    static Input polePairs() {
        return Input.count("pole_pairs", "pole pairs of the motor", 1, 200, "7");
    }

    static Input share(String name, String meaning, String example, double most) {
        return Input.quantity(name, Dimension.NUMBER, meaning, example)
                .within(Quantity.number(0), Quantity.number(most));
    }

    /** A counted figure as it comes to a formula. */
    static int whole(double value) {
        return (int) Math.rint(value);
    }
}
