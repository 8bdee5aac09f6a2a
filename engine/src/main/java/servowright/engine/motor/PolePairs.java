package servowright.engine.motor;

import servowright.engine.quantity.Require;

/**
 * How many electrical turns one turn of the shaft holds, from counting or from motion. A reading is accepted only near an
 * integer, because a pole count that is nearly right runs the motor badly or away.
 */
public final class PolePairs {

    /** Largest relative distance from an integer (common practice, no source). */
    public static final double RELATIVE_TOLERANCE = 0.02;

    /**
     * Largest distance from an integer in pole pairs. Above ten pole pairs two percent alone would reach the next half,
     * and every reading would pass.
     */
    public static final double ABSOLUTE_TOLERANCE = 0.2;

    /** More pole pairs than small motors have; a reading above says that the rotor did not follow (own choice). */
    public static final int MOST = 120;

    private PolePairs() {}

    /** Why a reading gives no pole pairs. */
    public enum Reason {
        /** The rotor moved so little that the quotient says nothing: too little voltage, load, friction, dead sensor. */
        NOT_MOVED("the rotor did not follow"),
        /** The quotient is not near an integer: slip, missed counts, a turn that was not whole. */
        NOT_AN_INTEGER("not near a whole number"),
        /** Forward and backward give different numbers. */
        DIRECTIONS_DISAGREE("the two directions disagree"),
        /** Alternating magnets come in pairs; an odd count is a miscount. */
        ODD_MAGNETS("an odd number of magnets");

        private final String words;

        Reason(String words) {
            this.words = words;
        }

        /** The reason in running text. */
        public String words() {
            return words;
        }
    }

    /** A reading: accepted or refused. */
    public sealed interface Count {}

    /**
     * Pole pairs found.
     *
     * @param polePairs   the integer
     * @param raw         the quotient before rounding, without sign
     * @param relativeOff raw over integer, less 1
     * @param reversed    true if the shaft turned against the electrical field: sensor or phase order is reversed
     */
    public record Accepted(int polePairs, double raw, double relativeOff, boolean reversed) implements Count {}

    /**
     * No pole pairs, and why.
     *
     * @param reason        the reason
     * @param electricalTurns electrical turns or magnets behind the reading
     * @param forwardTurns  mechanical turns forward, or the only reading
     * @param backwardTurns mechanical turns backward, 0 if there was none
     */
    public record Refused(Reason reason, double electricalTurns, double forwardTurns, double backwardTurns)
            implements Count {}

    /**
     * Half of the magnets counted around an ordinary rotor, on which north and south alternate. A consequent-pole rotor
     * has as many magnets as pole pairs, with iron between them: count its electrical periods instead.
     */
    public static Count fromMagnets(int magnets) {
        Require.atLeast("magnets", 1, magnets);
        if (magnets % 2 != 0) {
            return new Refused(Reason.ODD_MAGNETS, magnets, 1, 0);
        }
        return new Accepted(magnets / 2, magnets / 2.0, 0, false);
    }

    /**
     * Electrical periods seen (scope, drilled-in spin) while the shaft turned.
     *
     * @param electricalPeriods periods counted, fractions allowed
     * @param mechanicalTurns   turns of the shaft in the same time, above 0
     */
    public static Count fromPeriods(double electricalPeriods, double mechanicalTurns) {
        Require.positive("electrical periods", electricalPeriods, "");
        Require.positive("mechanical turns", mechanicalTurns, "");
        return judge(electricalPeriods, mechanicalTurns, 0, electricalPeriods / mechanicalTurns, false);
    }

    /**
     * Pole pairs that two constants imply: p = (p λ) / λ.
     *
     * @param motor            constants from speed, EMF or torque
     * @param weberPhasePeak   flux linkage, phase peak
     */
    public static Count fromFluxLinkage(MotorConstants motor, double weberPhasePeak) {
        Require.positive("flux linkage (phase peak)", weberPhasePeak, "Wb");
        double emf = motor.emfPhasePeakVoltSecondPerRad();
        return judge(emf, weberPhasePeak, 0, emf / weberPhasePeak, false);
    }

    /**
     * The field is turned by a number of electrical turns, forward and then backward, and the shaft is measured.
     *
     * <p><b>Formula.</b> p = n / travel in turns, the mean of both directions. Accepted when both directions round to the
     * same integer, have the same sense, and lie within {@value #RELATIVE_TOLERANCE} of it and within
     * {@value #ABSOLUTE_TOLERANCE} pole pairs.
     *
     * @param electricalTurns turns commanded in each direction, above 0
     * @param forwardTurns    shaft travel in turns for the positive command, signed
     * @param backwardTurns   shaft travel in turns for the negative command, signed: normally opposite to the first
     */
    public static Count fromTravel(double electricalTurns, double forwardTurns, double backwardTurns) {
        Require.positive("electrical turns", electricalTurns, "");
        Require.finite("travel forward", forwardTurns, "turns");
        Require.finite("travel backward", backwardTurns, "turns");
        double least = electricalTurns / MOST;
        if (Math.abs(forwardTurns) < least || Math.abs(backwardTurns) < least) {
            return new Refused(Reason.NOT_MOVED, electricalTurns, forwardTurns, backwardTurns);
        }
        double forward = electricalTurns / forwardTurns;
        double backward = -electricalTurns / backwardTurns;
        double mean = (forward + backward) / 2;
        if (forward * backward < 0 || Math.abs(forward - backward) > tolerance(mean)) {
            return new Refused(Reason.DIRECTIONS_DISAGREE, electricalTurns, forwardTurns, backwardTurns);
        }
        return judge(electricalTurns, forwardTurns, backwardTurns, Math.abs(mean), forward < 0);
    }

    private static Count judge(double electrical, double forward, double backward, double raw, boolean reversed) {
        int nearest = Math.max(1, (int) Math.rint(raw));
        if (Math.abs(raw - nearest) > tolerance(nearest)) {
            return new Refused(Reason.NOT_AN_INTEGER, electrical, forward, backward);
        }
        return new Accepted(nearest, raw, raw / nearest - 1, reversed);
    }

    private static double tolerance(double polePairs) {
        return Math.min(RELATIVE_TOLERANCE * Math.abs(polePairs), ABSOLUTE_TOLERANCE);
    }
}
