package servowright.engine.power;

import servowright.engine.quantity.Require;

/**
 * Heat in the copper of three phases.
 *
 * <p><b>Formula.</b> P = (3/2) R i² with i phase peak, = 3 R I² with I phase RMS, = 2 R I² with six-step current.
 * <b>Valid for</b> direct-current resistance; fast current in thick wire costs more. <b>Source.</b> Joule's law.
 */
public final class CopperLoss {

    private CopperLoss() {}

    /** Loss in watt of a sinusoidal current, given as phase peak. */
    public static double watt(double phasePeakAmp, double phaseOhm) {
        Require.finite("phase current (peak)", phasePeakAmp, "A");
        return 1.5 * Require.notNegative("phase resistance", phaseOhm, "ohm") * phasePeakAmp * phasePeakAmp;
    }

    /** Loss in watt of a six-step current. */
    public static double sixStepWatt(double sixStepAmp, double phaseOhm) {
        Require.finite("six-step current", sixStepAmp, "A");
        return 2 * Require.notNegative("phase resistance", phaseOhm, "ohm") * sixStepAmp * sixStepAmp;
    }

    /** Sinusoidal current, phase peak, that makes a given loss. */
    public static double phasePeakAmp(double watt, double phaseOhm) {
        Require.notNegative("copper loss", watt, "W");
        return Math.sqrt(watt / (1.5 * Require.positive("phase resistance", phaseOhm, "ohm")));
    }
}
