package servowright.engine.motor;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import servowright.engine.quantity.Require;

/**
 * Cogging of a motor with slots: how often per turn the magnets find the teeth alike.
 *
 * <p><b>Formula.</b> Periods per turn N = lcm(Q, 2p); angle between detents 2π/N. The more periods, the weaker the cogging
 * tends to be. If gcd(Q, 2p) = 1 nothing in the motor repeats around the turn, and a net radial pull is possible.
 * <b>Source.</b> Symmetry of slots against poles; as in Skaar, Krøvel, Nilssen, ICEM 2006 (recalled).
 *
 * @param slots          teeth Q
 * @param poles          magnets 2p
 * @param periodsPerTurn lcm(Q, 2p)
 * @param symmetry       gcd(Q, 2p)
 */
public record Cogging(int slots, int poles, int periodsPerTurn, int symmetry) {

    /** Cogging of a combination. */
    public static Cogging of(int slots, int poles) {
        Require.atLeast("slots", 3, slots);
        Require.atLeast("poles", 2, poles);
        int symmetry = greatestCommonDivisor(slots, poles);
        return new Cogging(slots, poles, Math.multiplyExact(slots / symmetry, poles), symmetry);
    }

    /** Angle from one detent to the next, mechanical rad. */
    public double periodMechRad() {
        return 2 * Math.PI / periodsPerTurn;
    }

    /** True if the pull of the magnets on the stator need not cancel around the turn. */
    public boolean radialPullPossible() {
        return symmetry == 1;
    }

    /**
     * A combination that would show the detents counted.
     *
     * @param cogging slots, poles and periods
     * @param winding its winding
     */
    public record Candidate(Cogging cogging, StarOfSlots.Balanced winding) {}

    /**
     * Combinations of slots and poles with a given number of detents per turn, the best winding factor first. The answer
     * is rarely unique (12/8 and 6/8 both have 24): count magnets or slots as well.
     *
     * @param detents            counted by hand or found in a recording
     * @param mostSlots          largest number of slots to try
     * @param mostPoles          largest number of poles to try
     * @param leastWindingFactor smallest winding factor anyone would build, for example 0.85
     */
    public static List<Candidate> forDetents(int detents, int mostSlots, int mostPoles, double leastWindingFactor) {
        Require.atLeast("detents", 1, detents);
        Require.within("least winding factor", 0, 1, leastWindingFactor, "");
        List<Candidate> found = new ArrayList<>();
        for (int slots = 3; slots <= mostSlots; slots += 3) {
            for (int poles = 2; poles <= mostPoles; poles += 2) {
                Cogging cogging = of(slots, poles);
                if (cogging.periodsPerTurn() == detents
                        && StarOfSlots.of(slots, poles) instanceof StarOfSlots.Balanced winding
                        && winding.windingFactor() >= leastWindingFactor) {
                    found.add(new Candidate(cogging, winding));
                }
            }
        }
        found.sort(Comparator.comparingDouble((Candidate c) -> -c.winding().windingFactor())
                .thenComparing(c -> c.cogging().slots()));
        return List.copyOf(found);
    }

    /** Greatest common divisor of two numbers above zero. */
    static int greatestCommonDivisor(int a, int b) {
        return b == 0 ? a : greatestCommonDivisor(b, a % b);
    }
}
