package servowright.engine.worksheet.motor;

import servowright.engine.known.Phrase;
import servowright.engine.known.Term;
import servowright.engine.motor.ConstantBasis;
import servowright.engine.motor.WindingInductance;
import servowright.engine.motor.WindingResistance;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.HookUp;
import servowright.engine.worksheet.Calculation;

/** From a figure as it was contacted or stated to that of one phase of the equivalent star. */
public final class PhaseValue {
    private static final String SERIES =
            "two phases in series, or one in series with two in parallel; the same for star and delta";

    private PhaseValue() {}

    /** A phase resistance as a line on the way; a reading without hook-up is taken as one between two terminals. */
    public static Term resistance(Calculation c, String input) {
        HookUp hookUp = hookUp(c, input, HookUp.TWO_TERMINALS);
        return c.step(
                "resistance of one phase of the equivalent star",
                "{R} = {R read} / " + number(hookUp),
                "ohm",
                SERIES,
                x -> WindingResistance.phaseOhm(x[0], hookUp, 0),
                c.given("R read", input));
    }

    /** The same as a result. */
    static Term resistance(Calculation c, String input, String result) {
        HookUp hookUp = hookUp(c, input, HookUp.TWO_TERMINALS);
        return c.result(
                result,
                "{R} = {R read} / " + number(hookUp),
                SERIES,
                x -> WindingResistance.phaseOhm(x[0], hookUp, 0),
                c.given("R read", input));
    }

    /** A phase inductance as a line on the way. */
    public static Term inductance(Calculation c, String input, String symbol, HookUp otherwise) {
        HookUp hookUp = hookUp(c, input, otherwise);
        return c.step(
                "inductance of one phase of the equivalent star, " + symbol,
                "{" + symbol + "} = {L read} / " + number(hookUp),
                "uH",
                SERIES,
                x -> WindingInductance.phaseHenry(x[0], hookUp),
                c.given("L read", input));
    }

    /** A motor current as q-axis current, peak; without basis it is taken as that. */
    public static Term current(Calculation c, String input) {
        CurrentBasis basis = c.stated(input).currentBasis().orElseGet(() -> {
            c.assume(Phrase.of("basis of the " + words(input) + " not stated: read as q axis, phase peak"));
            return CurrentBasis.Q_AXIS;
        });
        if (basis == CurrentBasis.Q_AXIS) {
            return c.given("i", input);
        }
        double factor = ConstantBasis.of(basis).perFlux()
                / ConstantBasis.of(CurrentBasis.Q_AXIS).perFlux();
        return c.step(
                words(input) + " as phase peak",
                "{i} = √2 · {I}",
                "A",
                "peak of a sine",
                x -> x[0] * factor,
                c.given("I", input));
    }

    /** How an input was contacted, and an assumption of the answer if it does not say. */
    static HookUp hookUp(Calculation c, String input, HookUp otherwise) {
        return c.stated(input).hookUp().orElseGet(() -> {
            c.assume(Phrase.of("hook-up of the " + words(input) + " not stated: read as " + otherwise.words()
                    + "; two terminals show twice a phase"));
            return otherwise;
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

    private static String words(String input) {
        return input.replace('_', ' ');
    }
}
