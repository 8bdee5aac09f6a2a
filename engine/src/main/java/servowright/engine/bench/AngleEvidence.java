package servowright.engine.bench;

import java.util.List;
import servowright.engine.encoder.Alignment;
import servowright.engine.encoder.Calibration;
import servowright.engine.encoder.HandTurn;

/** What a bench test saw of an angle sensor, beyond single figures: what findings look at and corrections are made of. */
public sealed interface AngleEvidence {
    /** Name of the test. */
    String test();

    /** A turn by hand. */
    record Turned(String test, HandTurn turn) implements AngleEvidence {}

    /** Stops at standing fields. */
    record Aligned(String test, Alignment.Outcome outcome) implements AngleEvidence {}

    /**
     * A fit of the angle error, or why there is none.
     *
     * @param reversed whether the sensor counts against the field; the fit is of the reading with its sign turned
     * @param radPerSecond mean speed, 0 if not known
     */
    record Calibrated(String test, Calibration calibration, boolean reversed, double radPerSecond)
            implements AngleEvidence {}

    /** Electrical offsets found after each seating, radians. */
    record Reseated(String test, List<Double> offsetElectricalRad) implements AngleEvidence {
        public Reseated {
            offsetElectricalRad = List.copyOf(offsetElectricalRad);
        }
    }
}
