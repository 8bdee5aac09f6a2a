package servowright.engine.worksheet.motor;

import servowright.engine.known.Phrase;
import servowright.engine.known.Term;
import servowright.engine.motor.WindingResistance;
import servowright.engine.quantity.HookUp;
import servowright.engine.worksheet.Calculation;

/** From a resistance as it was contacted to one phase of the equivalent star. */
final class PhaseValue {
    private PhaseValue() {}

    /** The phase resistance as a result line; a reading without hook-up is taken as one between two terminals. */
    static Term resistance(Calculation c, String input, String result) {
        HookUp hookUp = hookUp(c, input);
        return c.result(
                result,
                "{R} = {R read} / " + number(hookUp),
                "two phases in series, or one in series with two in parallel; the same for star and delta",
                x -> WindingResistance.phaseOhm(x[0], hookUp, 0),
                c.given("R read", input));
    }

    /** How an input was contacted, and an assumption of the answer if it does not say. */
    static HookUp hookUp(Calculation c, String input) {
        return c.stated(input).hookUp().orElseGet(() -> {
            c.assume(Phrase.of(
                    "hook-up of the " + input + " not stated: read as two terminals; if it was the phase itself,"
                            + " one phase has twice of what is used here"));
            return HookUp.TWO_TERMINALS;
        });
    }

    /** The divisor as it stands in a formula. */
    static String number(HookUp hookUp) {
        return switch (hookUp) {
            case TWO_TERMINALS -> "2";
            case ONE_AGAINST_TWO -> "(3/2)";
            case PHASE -> "1";
        };
    }
}
