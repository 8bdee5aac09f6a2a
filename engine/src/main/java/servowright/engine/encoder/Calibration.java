package servowright.engine.encoder;

import servowright.engine.numeric.Values;
import servowright.engine.numeric.Whiteness;

/** A fit of the angle error, or why there is none. */
public sealed interface Calibration {

    /**
     * The error was fitted.
     *
     * @param error constant and the orders that stand out of the noise
     * @param amplitudeErrorRad standard error of an amplitude, dependence of neighbours allowed for
     * @param lagRad half of the difference between turning back and forth, above 0 when the shaft trails; 0 if the run has
     *     no directions
     * @param residualRad what is left of each sample
     * @param residualSdRad standard deviation of what is left
     * @param whiteness of what is left; see {@link #ordersMissing}
     * @param conditionNumber of the fit
     * @param polynomialOrder order in time of the motion that was fitted along; 0 if the motion was known
     */
    record Fitted(
            HarmonicError error,
            double amplitudeErrorRad,
            double lagRad,
            Values residualRad,
            double residualSdRad,
            Whiteness whiteness,
            double conditionNumber,
            int polynomialOrder)
            implements Calibration {

        /** Durbin-Watson figure below which neighbours resemble each other: something smooth was left out. */
        private static final double WHITE = 1.5;

        /** Whether what is left is not noise: the motion or the error has parts of an order that was not fitted. */
        public boolean ordersMissing() {
            return whiteness.durbinWatson() < WHITE;
        }
    }

    /**
     * No fit would mean anything.
     *
     * @param figure that speaks against it
     */
    record Refused(Reason reason, double figure) implements Calibration {}

    /** Why a recording is refused. */
    enum Reason {
        /** Condition number above the limit: the part of the turn that was seen cannot tell the harmonics apart. */
        TRAVEL_TOO_SMALL,
        /** Fewer samples than the fit needs. */
        TOO_FEW_SAMPLES,
        /** Runs in one direction only: friction cannot be told from the offset. */
        ONE_DIRECTION,
        /** The reading does not follow the shaft turn for turn. The figure is turns read per turn made. */
        DOES_NOT_FOLLOW,
        /** The reading runs against the shaft. */
        REVERSED,
        /** The sensor holds values for several samples while the shaft moves: the largest step in turns. */
        JUMPS
    }
}
