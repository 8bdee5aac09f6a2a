package servowright.engine.motion;

import java.util.ArrayList;
import java.util.List;
import servowright.engine.quantity.Require;

/**
 * A move from rest to rest with constant acceleration, constant speed and the same deceleration.
 *
 * <p><b>Formula.</b> Time to speed v at a: v/a each way; cruise h/v − v/a. If the travel h is below v²/a there is no cruise
 * and the peak speed is √(h a). <b>Source.</b> Kinematics; as in Biagiotti, Melchiorri, Trajectory Planning for Automatic
 * Machines and Robots, 2008, sec. 3.2 (recalled).
 *
 * @param travelRad        travel at the load, signed
 * @param accelerateSecond time of acceleration, and of deceleration
 * @param cruiseSecond     time at constant speed, 0 for a triangle
 * @param restSecond       rest after the move
 */
public record TrapezoidMove(double travelRad, double accelerateSecond, double cruiseSecond, double restSecond) {

    /** Refuses moves without travel or time. */
    public TrapezoidMove {
        Require.positive("length of travel", Math.abs(travelRad), "rad");
        Require.positive("time of acceleration", accelerateSecond, "s");
        Require.notNegative("time of cruise", cruiseSecond, "s");
        Require.notNegative("time of rest", restSecond, "s");
    }

    /**
     * The fastest move within limits.
     *
     * @param travelRad   travel, signed
     * @param mostRadPerS speed limit
     * @param radPerS2    acceleration and deceleration
     * @param restSecond  rest after it
     */
    public static TrapezoidMove within(double travelRad, double mostRadPerS, double radPerS2, double restSecond) {
        Require.positive("speed limit", mostRadPerS, "rad/s");
        Require.positive("acceleration", radPerS2, "rad/s²");
        double length = Math.abs(travelRad);
        double peak = Math.min(mostRadPerS, Math.sqrt(length * radPerS2));
        double cruise = Math.max(0, length / peak - peak / radPerS2);
        return new TrapezoidMove(travelRad, peak / radPerS2, cruise, restSecond);
    }

    /**
     * A move in a given time, a third each for acceleration, cruise and deceleration: 6 % above the least copper loss any
     * move of that travel and time can have.
     */
    public static TrapezoidMove inThirds(double travelRad, double moveSecond, double restSecond) {
        double third = Require.positive("time of the move", moveSecond, "s") / 3;
        return new TrapezoidMove(travelRad, third, third, restSecond);
    }

    /** Peak speed, signed as the travel, rad/s. */
    public double peakRadPerS() {
        return travelRad / (accelerateSecond + cruiseSecond);
    }

    /** Acceleration at the start, signed as the travel, rad/s². */
    public double radPerS2() {
        return peakRadPerS() / accelerateSecond;
    }

    /** Time from start to standstill, without the rest. */
    public double moveSecond() {
        return 2 * accelerateSecond + cruiseSecond;
    }

    /** RMS of the acceleration over the move, without the rest. */
    public double rmsRadPerS2() {
        return Math.abs(radPerS2()) * Math.sqrt(2 * accelerateSecond / moveSecond());
    }

    /** The way back, in the same times. */
    public TrapezoidMove back() {
        return new TrapezoidMove(-travelRad, accelerateSecond, cruiseSecond, restSecond);
    }

    /** The stretches of the move and its rest. */
    public List<Stretch> stretches() {
        List<Stretch> list = new ArrayList<>();
        double peak = peakRadPerS();
        list.add(new Stretch(accelerateSecond, 0, peak));
        if (cruiseSecond > 0) {
            list.add(new Stretch(cruiseSecond, peak, peak));
        }
        list.add(new Stretch(accelerateSecond, peak, 0));
        if (restSecond > 0) {
            list.add(new Stretch(restSecond, 0, 0));
        }
        return List.copyOf(list);
    }
}
