package servowright.engine.worksheet.motor;

import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.known.Term;
import servowright.engine.motor.RatioName;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Inputs;

/**
 * Pole pairs from what was given: counted magnets go before a stated number of pole pairs.
 *
 * @param found pole pairs, if anything tells
 */
record GivenPoles(Optional<Term> found) {
    /** True if the magnets counted cannot be right. */
    static boolean odd(Inputs inputs) {
        return inputs.known("magnets").filter(m -> Math.rint(m.si()) % 2 != 0).isPresent();
    }

    static GivenPoles of(Calculation c) {
        if (!c.inputs().has("magnets")) {
            return new GivenPoles(c.term("p", "pole_pairs"));
        }
        Term half = c.step(
                "pole pairs",
                "{p} = {magnets} / 2",
                "",
                "north and south alternate around an ordinary rotor",
                x -> x[0] / 2,
                c.given("magnets", "magnets"));
        c.inputs()
                .known("pole_pairs")
                .filter(p -> p.si() != half.value().si())
                .ifPresent(p -> disagree(c, p, half.value()));
        return new GivenPoles(Optional.of(half));
    }

    private static void disagree(Calculation c, Known stated, Known counted) {
        Known ratio = stated.over(counted);
        String name = RatioName.nearest(ratio.si(), 1e-9, java.util.List.of())
                .map(match -> ": ratio " + match.words() + ", " + match.name().meaning())
                .orElse("");
        c.remark(Phrase.of("{stated} pole pairs stated, {counted} counted from the magnets" + name)
                .with("stated", stated)
                .with("counted", counted));
    }

    /** The pole pairs as an integer, if they are known. */
    Optional<Integer> number() {
        return found.map(p -> (int) Math.rint(p.value().si()));
    }
}
