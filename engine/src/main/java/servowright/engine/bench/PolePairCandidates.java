package servowright.engine.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.motor.Cogging;
import servowright.engine.motor.PolePairs;

/** Pole pairs as counted, as stated, and as the cogging detents allow. */
final class PolePairCandidates {
    private PolePairCandidates() {}

    /** From magnets counted and pole pairs stated, the better evidence first; what cannot be used is remarked. */
    static List<Candidate> of(Motor motor, List<Phrase> remarks) {
        List<Candidate> found = new ArrayList<>();
        motor.figures()
                .get(MotorFigure.MAGNETS)
                .ifPresent(d -> magnets(d, remarks).ifPresent(found::add));
        for (Declared declared : motor.figures().all(MotorFigure.POLE_PAIRS)) {
            Known value = Known.number(
                    Math.rint(declared.si()),
                    declared.known().origin(),
                    declared.place().text());
            Working.Sheet sheet = Working.begin();
            LabelFigure.stated(sheet, "pole pairs", "", value);
            found.add(LabelFigure.candidate(value, declared, sheet, List.of()));
        }
        return found;
    }

    private static Optional<Candidate> magnets(Declared declared, List<Phrase> remarks) {
        int magnets = (int) Math.rint(declared.si());
        PolePairs.Count count = PolePairs.fromMagnets(Math.max(1, magnets));
        if (!(count instanceof PolePairs.Accepted accepted)) {
            remarks.add(
                    Phrase.of("{n} magnets are an odd number; around an ordinary rotor they come in pairs: count again")
                            .with("n", magnets));
            return Optional.empty();
        }
        Origin origin = declared.known().origin();
        Known counted = Known.number(magnets, origin, declared.place().text());
        Known pairs =
                Known.number(accepted.polePairs(), origin, declared.place().text());
        Working.Sheet sheet = Working.begin();
        sheet.note(
                "half of the magnets",
                "{p} = {N} / 2",
                "",
                "north and south alternate around an ordinary rotor",
                pairs,
                Term.of("N", counted));
        return Optional.of(
                new Candidate(pairs, "magnets counted, " + declared.place().text(), sheet.end()));
    }

    /**
     * What detents and slots say against pole pairs taken as best: the nearest number of pole pairs with as many detents,
     * if the best has another number of them.
     */
    static Optional<Candidate> against(Motor motor, int best, List<Phrase> remarks) {
        Optional<Declared> detents = motor.figures().get(MotorFigure.DETENTS);
        Optional<Declared> slots = motor.figures().get(MotorFigure.SLOTS);
        if (detents.isEmpty() || slots.isEmpty() || slots.get().si() < 3) {
            return Optional.empty();
        }
        int counted = (int) Math.round(detents.get().si());
        int teeth = (int) Math.round(slots.get().si());
        int expected = Cogging.of(teeth, 2 * best).periodsPerTurn();
        if (expected == counted) {
            remarks.add(Phrase.of("{n} detents a turn agree with {q} slots and {p} pole pairs")
                    .with("n", counted)
                    .with("q", teeth)
                    .with("p", best));
            return Optional.empty();
        }
        Optional<Integer> other = nearest(teeth, counted, best);
        if (other.isEmpty()) {
            remarks.add(Phrase.of("{n} detents a turn fit no number of pole pairs with {q} slots: count again")
                    .with("n", counted)
                    .with("q", teeth));
        }
        return other.map(p -> detentCandidate(p, counted, teeth, detents.get()));
    }

    private static Optional<Integer> nearest(int teeth, int detents, int best) {
        Optional<Integer> nearest = Optional.empty();
        double distance = Double.POSITIVE_INFINITY;
        for (int p = 1; p <= PolePairs.MOST; p++) {
            double off = Math.abs(Math.log((double) p / best));
            if (Cogging.of(teeth, 2 * p).periodsPerTurn() == detents && off < distance) {
                nearest = Optional.of(p);
                distance = off;
            }
        }
        return nearest;
    }

    private static Candidate detentCandidate(int polePairs, int detents, int teeth, Declared declared) {
        Known value = Known.number(
                polePairs, declared.known().origin(), declared.place().text());
        Working.Sheet sheet = Working.begin();
        sheet.note(
                "pole pairs nearest to the others that give as many detents",
                "{p}: least common multiple of {Q} and 2 · {p} is {N}",
                "",
                "symmetry of slots against poles",
                value,
                Term.of("Q", Known.number(teeth, Origin.DECLARED, "slots")),
                Term.of("N", Known.number(detents, Origin.DECLARED, "detents")));
        return new Candidate(value, "detents and slots, " + declared.place().text(), sheet.end());
    }
}
