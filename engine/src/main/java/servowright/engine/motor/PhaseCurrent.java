package servowright.engine.motor;

import servowright.engine.quantity.CurrentBasis;

/**
 * Peak of the phase current for a motor current on some basis.
 *
 * <p><b>Formula.</b> q axis 1 (with id = 0 the phase peak is the q current), phase RMS √2, six-step 1 (the direct current
 * flows through two phases as it is). <b>Valid for</b> sinusoidal phase current on the first two; it says what a switch or
 * a lead has to carry, not what makes the same torque (that is {@link ConstantBasis}). <b>Source.</b> Definitions, as in
 * Krause, Wasynczuk, Sudhoff, Pekarek, Analysis of Electric Machinery and Drive Systems, 3rd ed. 2013, ch. 3 (recalled).
 */
public final class PhaseCurrent {

    private PhaseCurrent() {}

    /**
     * Phase peak per ampere on {@code basis}.
     *
     * @throws IllegalArgumentException for the supply current, which is no motor current
     */
    public static double peakPer(CurrentBasis basis) {
        return switch (basis) {
            case Q_AXIS, SIX_STEP -> 1;
            case PHASE_RMS -> Math.sqrt(2);
            case SUPPLY ->
                throw new IllegalArgumentException(
                        "a supply current says nothing about the phase current: their ratio changes with speed");
        };
    }
}
