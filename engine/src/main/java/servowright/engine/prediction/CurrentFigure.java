package servowright.engine.prediction;

import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.known.Term;
import servowright.engine.machine.Declared;
import servowright.engine.motor.PhaseCurrent;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Dimension;

/** Brings a current that someone stated onto the q axis, which is the peak of the phase current. */
final class CurrentFigure {
    private CurrentFigure() {}

    /** The figure as phase peak; a basis that is not stated counts as q axis, which is the cautious reading of a limit. */
    static Known phasePeak(Inquiry in, Declared declared, String label) {
        CurrentBasis basis = declared.stated().currentBasis().orElse(null);
        if (basis == null) {
            in.assume(Phrase.of("{what} of {current} taken as phase peak, as its basis is not stated")
                    .with("what", label)
                    .with("current", declared.known(), "A"));
            return declared.known();
        }
        double factor = PhaseCurrent.peakPer(basis);
        if (factor == 1) {
            return declared.known();
        }
        return in.sheet()
                .line(
                        label + ", phase peak",
                        "{i} = {f} · {I}",
                        "A",
                        Dimension.CURRENT,
                        "peak of the phase current for " + basis.words(),
                        x -> x[0] * x[1],
                        Term.of("f", Known.number(factor, Origin.DERIVED, basis.words())),
                        Term.of("I", declared.known(), "A"));
    }
}
