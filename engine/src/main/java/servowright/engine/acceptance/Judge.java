package servowright.engine.acceptance;

import servowright.engine.known.Known;
import servowright.engine.numeric.Quantile;

/**
 * Holds an interval against a limit.
 *
 * <p><b>Formula.</b> Room d = limit − value for an upper limit, value − limit for a lower one, with the uncertainty of the
 * difference, common sources taken off. Expanded uncertainty U = t<sub>0.975</sub>(ν) u(d). Outside: d + U &lt; 0, fails.
 * Inside: d − U ≥ 0, holds if the same is true of the comfortable limit, else tight. Anything between is not shown. A
 * figure without uncertainty exactly at its limit lies inside. <b>Source.</b> JCGM 100:2008, 5.2.2 and G.3.2; the rule
 * follows the guarded acceptance of JCGM 106:2012, 8.3 (recalled).
 */
public final class Judge {
    private static final double COVERAGE = 0.95;

    private Judge() {}

    /**
     * A figure that may be at most {@code limit}, and should be at most {@code comfortable}.
     *
     * @param comfortable limit with the margin taken off
     */
    public static Judgement atMost(Known value, Known limit, Known comfortable) {
        return judge(limit.minus(value), comfortable.minus(value));
    }

    /** A figure that may be at most {@code limit}, and should stay a share of it below. */
    public static Judgement atMost(Known value, Known limit, double margin) {
        return atMost(value, limit, limit.times(1 - margin));
    }

    /**
     * A figure that must be at least {@code limit}, and should be at least {@code comfortable}.
     *
     * @param comfortable limit with the margin added
     */
    public static Judgement atLeast(Known value, Known limit, Known comfortable) {
        return judge(value.minus(limit), value.minus(comfortable));
    }

    /** A figure that must be at least {@code limit}, and should stay a share of it above. */
    public static Judgement atLeast(Known value, Known limit, double margin) {
        return atLeast(value, limit, limit.times(1 + margin));
    }

    private static Judgement judge(Known room, Known comfort) {
        double spread = expanded(room);
        double leastComfort = comfort.si() - expanded(comfort);
        return new Judgement(verdict(room.si(), spread, leastComfort), room, spread);
    }

    private static Verdict verdict(double room, double spread, double leastComfort) {
        if (room + spread < 0) {
            return Verdict.FAILS;
        }
        if (room - spread < 0) {
            return Verdict.NOT_SHOWN;
        }
        return leastComfort >= 0 ? Verdict.HOLDS : Verdict.TIGHT;
    }

    /** Half width of the 95 % interval, SI. */
    public static double expanded(Known known) {
        double u = known.standardUncertainty();
        return u == 0 ? 0 : u * Quantile.coverageFactor(COVERAGE, known.degreesOfFreedom());
    }
}
