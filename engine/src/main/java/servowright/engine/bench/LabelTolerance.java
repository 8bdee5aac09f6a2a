package servowright.engine.bench;

import java.util.List;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.machine.Declared;
import servowright.engine.machine.MotorFigure;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.Stated;

/**
 * A declared figure with limits: its own, or those that figures of its kind usually keep.
 *
 * @param known       the figure with its limits
 * @param stated      whether the limits are its own
 * @param assumptions what was taken without being known
 */
record LabelTolerance(Known known, boolean stated, List<Phrase> assumptions) {
    LabelTolerance {
        assumptions = List.copyOf(assumptions);
    }

    /** Limits of a figure; without its own, those of its kind (common practice, no source). */
    static LabelTolerance of(MotorFigure figure, Declared declared) {
        if (declared.stated().spread() != Stated.Spread.VALUE) {
            return new LabelTolerance(declared.known(), true, List.of());
        }
        boolean measured = declared.known().origin() == Origin.MEASURED;
        double half = measured ? ofReading(figure) : ofLabel(figure);
        Source source =
                Source.of(declared.place().text() + " " + declared.place().path() + " tolerance");
        Known wide = declared.known().withPart(source, half * Math.abs(declared.si()) / Math.sqrt(3));
        Phrase said = Phrase.of("tolerance of the " + figure.key().path().replace('_', ' ')
                        + " not stated; ± {t} assumed (common practice, no source)")
                .with("t", Quantity.number(half), "%");
        return new LabelTolerance(wide, false, List.of(said));
    }

    private static double ofLabel(MotorFigure figure) {
        return switch (figure) {
            case INDUCTANCE, D_INDUCTANCE, Q_INDUCTANCE -> 0.3;
            default -> 0.1;
        };
    }

    private static double ofReading(MotorFigure figure) {
        return switch (figure) {
            case INDUCTANCE, D_INDUCTANCE, Q_INDUCTANCE, ROTOR_INERTIA -> 0.1;
            default -> 0.03;
        };
    }
}
