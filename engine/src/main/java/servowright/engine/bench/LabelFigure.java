package servowright.engine.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.known.Working;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.quantity.HookUp;

/**
 * A declared resistance, inductance or inertia as a candidate.
 *
 * @param hookUp    how it was read as contacted, for figures of a winding
 * @param limited   whether its limits are its own
 */
record LabelFigure(Candidate candidate, Optional<HookUp> hookUp, boolean limited) {
    /** Every declared resistance, per phase at 20 degC. */
    static List<LabelFigure> resistances(Motor motor) {
        return contacted(
                motor,
                MotorFigure.RESISTANCE,
                (declared, hookUp, limits, sheet, assumptions) -> atTwenty(
                        sheet,
                        declared,
                        EquivalentStar.resistance(
                                sheet, EquivalentStar.LABEL, stated(sheet, "resistance", "mohm", limits), hookUp),
                        assumptions));
    }

    /** Every declared inductance between terminals, per phase: somewhere between d and q. */
    static List<LabelFigure> inductances(Motor motor) {
        return contacted(
                motor,
                MotorFigure.INDUCTANCE,
                (declared, hookUp, limits, sheet, assumptions) ->
                        EquivalentStar.inductance(sheet, stated(sheet, "inductance", "uH", limits), hookUp));
    }

    /** From a figure between contacts to that of a phase. */
    private interface ToPhase {
        Known of(Declared declared, HookUp hookUp, Known limits, Working.Sheet sheet, List<Phrase> assumptions);
    }

    private static List<LabelFigure> contacted(Motor motor, MotorFigure figure, ToPhase toPhase) {
        List<LabelFigure> found = new ArrayList<>();
        for (Declared declared : motor.figures().all(figure)) {
            LabelTolerance limits = LabelTolerance.of(figure, declared);
            List<Phrase> assumptions = new ArrayList<>(limits.assumptions());
            HookUp hookUp = hookUp(motor, declared, assumptions);
            Working.Sheet sheet = Working.begin();
            Known phase = toPhase.of(declared, hookUp, limits.known(), sheet, assumptions);
            Known value = finished(phase, declared, hookUp);
            found.add(new LabelFigure(
                    candidate(value, declared, sheet, assumptions), Optional.of(hookUp), limits.stated()));
        }
        return found;
    }

    /** A declared figure that is already on the basis of its parameter. */
    static List<LabelFigure> plain(Motor motor, MotorFigure figure, String unit) {
        List<LabelFigure> found = new ArrayList<>();
        for (Declared declared : motor.figures().all(figure)) {
            LabelTolerance limits = LabelTolerance.of(figure, declared);
            Working.Sheet sheet = Working.begin();
            Known value = stated(sheet, figure.key().meaning(), unit, limits.known());
            found.add(new LabelFigure(
                    candidate(
                            value.as(declared.known().origin(), declared.place().text()),
                            declared,
                            sheet,
                            limits.assumptions()),
                    Optional.empty(),
                    limits.stated()));
        }
        return found;
    }

    /** Writes down what was stated. */
    static Known stated(Working.Sheet sheet, String label, String unit, Known value) {
        return sheet.note(label + " as stated", "{x}", unit, value.from(), value);
    }

    /** The words for where a declared figure comes from. */
    static String from(Declared declared) {
        return switch (declared.known().origin()) {
            case DATA_SHEET -> declared.stated().qualifiers().contains("label") ? "label" : "data sheet";
            case MEASURED -> "stated as measured";
            case ASSUMED -> "guess";
            default -> "stated";
        };
    }

    static Candidate candidate(Known value, Declared declared, Working.Sheet sheet, List<Phrase> assumptions) {
        return new Candidate(value, from(declared) + ", " + declared.place().text(), sheet.end(), assumptions);
    }

    /**
     * How it was contacted: as stated, else between two terminals, which is what a meter on two leads shows. The
     * assumption carries the distance to the phase itself as its uncertainty.
     */
    private static HookUp hookUp(Motor motor, Declared declared, List<Phrase> assumptions) {
        return declared.stated().hookUp().orElseGet(() -> {
            assumptions.add(
                    Phrase.of(
                            "hook-up of the figure in " + declared.place().text() + " of " + motor.name()
                                    + " not stated; two terminals assumed (common practice, no source); per phase it would be twice as much"));
            return HookUp.TWO_TERMINALS;
        });
    }

    private static Known finished(Known value, Declared declared, HookUp hookUp) {
        if (declared.stated().hookUp().isPresent()) {
            return value.as(declared.known().origin(), declared.place().text());
        }
        double toPhase = hookUp.perPhase() / HookUp.PHASE.perPhase() - 1;
        Source source =
                Source.of(declared.place().text() + " " + declared.place().path() + " hook-up");
        return value.withPart(source, toPhase * value.si() / Math.sqrt(3))
                .as(Origin.ASSUMED, declared.place().text());
    }

    private static Known atTwenty(Working.Sheet sheet, Declared declared, Known phase, List<Phrase> assumptions) {
        if (declared.stated().temperature().isEmpty()) {
            return phase;
        }
        double kelvin = declared.stated().temperature().get().si();
        double least = ColdWinding.TWENTY_CELSIUS_KELVIN - 100;
        if (!(kelvin > least)) {
            assumptions.add(Phrase.of("temperature stated for the resistance is out of range; not used"));
            return phase;
        }
        Known stated = Known.exact(
                declared.stated().temperature().get(),
                Origin.DECLARED,
                declared.place().text());
        return ColdWinding.resistance(sheet, "winding at 20 degC", "annealed copper of 100 % IACS", phase, stated);
    }
}
