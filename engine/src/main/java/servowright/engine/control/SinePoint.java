package servowright.engine.control;

import servowright.engine.quantity.Require;

/**
 * What a sine at one frequency shows.
 *
 * @param radPerS       its angular frequency
 * @param ratio         amplitude of the output over that of the input
 * @param ratioStandard relative standard uncertainty of the ratio
 * @param phaseRad      phase of the output against the input
 * @param phaseStandard standard uncertainty of the phase, rad
 */
public record SinePoint(double radPerS, double ratio, double ratioStandard, double phaseRad, double phaseStandard) {
    public SinePoint {
        Require.positive("frequency", radPerS, "rad/s");
        Require.positive("ratio", ratio, "");
        Require.positive("relative uncertainty of the ratio", ratioStandard, "");
        Require.finite("phase", phaseRad, "rad");
        Require.positive("uncertainty of the phase", phaseStandard, "rad");
    }
}
