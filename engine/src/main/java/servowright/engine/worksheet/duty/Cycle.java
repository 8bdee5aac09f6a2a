package servowright.engine.worksheet.duty;

import java.util.ArrayList;
import java.util.List;
import servowright.engine.motion.GearedAxis;
import servowright.engine.motion.MotorDuty;
import servowright.engine.motion.Stretch;
import servowright.engine.motion.TrapezoidMove;

/**
 * A cycle of moves as the worksheet's terms describe it: gear, efficiency, motor inertia, load inertia, friction, gravity,
 * travel, rest, and then the time of the move or its speed and acceleration.
 *
 * @param limits whether speed and acceleration are given instead of the time
 * @param back   whether the way back belongs to it
 */
record Cycle(boolean limits, boolean back) {
    private static final int TRAVEL = 6;
    private static final int REST = 7;
    private static final int TIME = 8;

    static GearedAxis axis(double[] x) {
        return new GearedAxis(x[0], x[1], x[2], x[3], x[4], x[5]);
    }

    TrapezoidMove move(double[] x) {
        return limits
                ? TrapezoidMove.within(x[TRAVEL], x[TIME], x[TIME + 1], x[REST])
                : TrapezoidMove.inThirds(x[TRAVEL], x[TIME], x[REST]);
    }

    MotorDuty duty(double[] x) {
        List<Stretch> stretches = new ArrayList<>(move(x).stretches());
        if (back) {
            stretches.addAll(move(x).back().stretches());
        }
        return MotorDuty.of(axis(x), stretches);
    }

    /** Motor torque of a stretch; 0 where a change of the inputs has taken the stretch away. */
    double torque(double[] x, int stretch) {
        List<Double> torques = duty(x).torquesNewtonMetre();
        return stretch < torques.size() ? torques.get(stretch) : 0;
    }

    /** Name of the result for each stretch; empty for a second rest, which is the first again. */
    List<String> names(double[] x) {
        TrapezoidMove move = move(x);
        List<String> names = new ArrayList<>();
        for (String way : back ? List.of("", "back_") : List.of("")) {
            names.add(way + "accelerate_torque");
            if (move.cruiseSecond() > 0) {
                names.add(way + "cruise_torque");
            }
            names.add(way + "decelerate_torque");
            if (move.restSecond() > 0) {
                names.add(way.isEmpty() ? "hold_torque" : "");
            }
        }
        return names;
    }
}
