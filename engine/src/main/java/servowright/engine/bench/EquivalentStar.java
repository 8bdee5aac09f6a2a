package servowright.engine.bench;

import servowright.engine.known.Known;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.motor.WindingInductance;
import servowright.engine.motor.WindingResistance;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.HookUp;

/** What was read between contacts, as one phase of the star that behaves like the winding. */
final class EquivalentStar {
    static final String LABEL = "phase of the equivalent star";

    private EquivalentStar() {}

    static Known resistance(Working.Sheet working, String label, Known between, HookUp hookUp) {
        return working.line(
                label,
                "{R} = {Rl} / " + hookUp.perPhase(),
                "mohm",
                Dimension.RESISTANCE,
                why(hookUp),
                v -> WindingResistance.phaseOhm(v[0], hookUp, 0),
                Term.of("Rl", between, "mohm"));
    }

    static Known inductance(Working.Sheet working, Known between, HookUp hookUp) {
        return working.line(
                LABEL,
                "{L} = {Ll} / " + hookUp.perPhase(),
                "uH",
                Dimension.INDUCTANCE,
                why(hookUp),
                v -> WindingInductance.phaseHenry(v[0], hookUp),
                Term.of("Ll", between, "uH"));
    }

    private static String why(HookUp hookUp) {
        return hookUp.words() + ": phases in series and parallel";
    }
}
