package servowright.engine.bench;

import java.util.Map;
import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.motor.WindingResistance;
import servowright.engine.quantity.HookUp;
import servowright.engine.quantity.Quantity;

/** What several pairs of one winding say about each other. */
final class ResistanceDetails {
    private static final double UNEQUAL = 0.05;
    private static final double MIXED_UP = 0.15;

    private ResistanceDetails() {}

    static void of(Map<Contacts, Known> loops, ResultSheet sheet) {
        Optional<Double> ab = pair(loops, 0);
        Optional<Double> bc = pair(loops, 1);
        Optional<Double> ca = pair(loops, 2);
        if (ab.isPresent() && bc.isPresent() && ca.isPresent()) {
            threePairs(ab.get(), bc.get(), ca.get(), sheet);
        }
        Optional<Double> two = mean(loops, HookUp.TWO_TERMINALS);
        Optional<Double> one = mean(loops, HookUp.ONE_AGAINST_TWO);
        if (two.isPresent() && one.isPresent()) {
            bothHookUps(two.get(), one.get(), sheet);
        }
    }

    private static void threePairs(double ab, double bc, double ca, ResultSheet sheet) {
        boolean possible = ab + bc > ca && bc + ca > ab && ca + ab > bc;
        if (!possible) {
            sheet.remark(
                    "one pair reads more than the two others together, which no winding can show: a contact is bad");
            return;
        }
        WindingResistance.ThreePhases phases = WindingResistance.fromThreePairs(ab, bc, ca);
        sheet.detail(Phrase.of("phases of the equivalent star A {a}, B {b}, C {c}; they differ by {spread}")
                .with("a", Quantity.of(phases.aOhm(), "ohm"), "mohm")
                .with("b", Quantity.of(phases.bOhm(), "ohm"), "mohm")
                .with("c", Quantity.of(phases.cOhm(), "ohm"), "mohm")
                .with("spread", Quantity.number(phases.phaseSpread()), "%"));
        if (phases.phaseSpread() > UNEQUAL) {
            sheet.remark(Phrase.of("the phases differ by {spread}: a bad contact, a shorted turn or a broken strand")
                    .with("spread", Quantity.number(phases.phaseSpread()), "%"));
        }
    }

    private static void bothHookUps(double two, double one, ResultSheet sheet) {
        WindingResistance.BothHookUps both = WindingResistance.compare(two, one);
        sheet.detail(Phrase.of("one against two joined gives {d} against two terminals")
                .with("d", Quantity.number(both.relativeDifference()), "%"));
        if (Math.abs(both.relativeDifference()) > MIXED_UP) {
            sheet.remark(
                    Phrase.of("the two hook-ups differ by {d}; a third more means that one reading was made with the "
                                    + "other hook-up")
                            .with("d", Quantity.number(both.relativeDifference()), "%"));
        }
    }

    private static Optional<Double> pair(Map<Contacts, Known> loops, int index) {
        return loops.entrySet().stream()
                .filter(e -> e.getKey().hookUp() == HookUp.TWO_TERMINALS
                        && e.getKey().index() == index)
                .map(e -> e.getValue().si())
                .findFirst();
    }

    private static Optional<Double> mean(Map<Contacts, Known> loops, HookUp hookUp) {
        double[] ohms = loops.entrySet().stream()
                .filter(e -> e.getKey().hookUp() == hookUp)
                .mapToDouble(e -> e.getValue().si())
                .toArray();
        return ohms.length == 0
                ? Optional.empty()
                : Optional.of(java.util.Arrays.stream(ohms).average().orElseThrow());
    }
}
