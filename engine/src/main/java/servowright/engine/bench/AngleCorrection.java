package servowright.engine.bench;

import java.util.Optional;
import servowright.engine.encoder.CorrectionTable;
import servowright.engine.encoder.HarmonicError;

/**
 * What is to be taken off the reading of a sensor.
 *
 * @param axis     whose sensor it is
 * @param test     that found it
 * @param reversed whether it belongs to the reading with its sign turned
 * @param error    of the reading, over the angle of the shaft
 */
public record AngleCorrection(String axis, String test, boolean reversed, HarmonicError error) {

    /** From the best fit of an axis; empty without one, or if the reading does not belong to one angle. */
    public static Optional<AngleCorrection> of(IdentifiedAxis axis) {
        return axis.correction()
                .map(fit -> new AngleCorrection(
                        axis.name(),
                        fit.from().test(),
                        fit.from().reversed(),
                        new HarmonicError(0, fit.fitted().error().ripples())))
                .filter(c -> c.error().canBeCorrected());
    }

    /** What to take off at evenly spaced readings of one turn, radians. */
    public double[] tableRad(int entries) {
        return CorrectionTable.of(error, entries).correctionRad().toArray();
    }

    /** Largest error left by a table that is read at its nearest entry. */
    public double residueAtNearestRad(int entries) {
        return CorrectionTable.of(error, entries).residueRad(error, CorrectionTable.Reading.NEAREST);
    }

    /** Largest error left by a table that is read along straight lines between its entries. */
    public double residueBetweenRad(int entries) {
        return CorrectionTable.of(error, entries).residueRad(error, CorrectionTable.Reading.LINEAR);
    }
}
