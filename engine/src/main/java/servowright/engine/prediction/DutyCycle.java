package servowright.engine.prediction;

import java.util.ArrayList;
import java.util.List;
import servowright.engine.machine.Profile;
import servowright.engine.motion.GearedAxis;
import servowright.engine.motion.MotorDuty;
import servowright.engine.motion.Stretch;
import servowright.engine.motion.TrapezoidMove;

/**
 * A duty as figures in SI, at the output of the axis; a figure that is not there is zero. Moves go there and back. Figures
 * a little outside what is possible, as a tolerance brings them, are taken at the border.
 *
 * @param turns        motor turns per output turn
 * @param efficiency   of the gear
 * @param motorInertia rotor and gear at motor speed
 * @param loadInertia  at the output
 * @param friction     that does not depend on speed
 * @param viscous      friction per speed; counted at the top speed throughout
 * @param weight       steady torque that pulls back
 * @param further      further torque of the duty: against every move, or added to the weight when the duty is steady
 */
record DutyCycle(
        Profile profile,
        double turns,
        double efficiency,
        double motorInertia,
        double loadInertia,
        double friction,
        double viscous,
        double weight,
        double further,
        double speed,
        double acceleration,
        double travel,
        double time,
        double rest) {

    /** The same duty with its figures in the order of {@link DemandStudy}. */
    static DutyCycle of(Profile profile, double... x) {
        return new DutyCycle(profile, x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7], x[8], x[9], x[10], x[11], x[12]);
    }

    /** Gear and load. */
    GearedAxis axis() {
        boolean moves = profile != Profile.STEADY;
        boolean resists = moves && further > 0;
        double top = stretches().stream()
                .mapToDouble(s -> Math.max(Math.abs(s.startRadPerS()), Math.abs(s.endRadPerS())))
                .max()
                .orElse(0);
        return new GearedAxis(
                turns,
                Math.min(1, efficiency),
                Math.max(0, motorInertia),
                Math.max(0, loadInertia),
                Math.max(0, friction + viscous * top) + (resists ? further : 0),
                weight + (resists ? 0 : further));
    }

    MotorDuty motorDuty() {
        return MotorDuty.of(axis(), stretches());
    }

    /** The cycle at the output. */
    List<Stretch> stretches() {
        return switch (profile) {
            case TRAPEZOID ->
                thereAndBack(
                        travel > 0
                                ? TrapezoidMove.within(travel, speed, acceleration, rest)
                                : new TrapezoidMove(
                                        speed * (speed / acceleration + time), speed / acceleration, time, rest));
            case TRIANGLE -> thereAndBack(triangle());
            case STEADY -> steady();
        };
    }

    private TrapezoidMove triangle() {
        double way = travel > 0 ? travel : speed * speed / acceleration;
        double peak = Math.sqrt(way * acceleration);
        return TrapezoidMove.within(way, speed > 0 ? Math.min(speed, peak) : peak, acceleration, rest);
    }

    private static List<Stretch> thereAndBack(TrapezoidMove move) {
        List<Stretch> all = new ArrayList<>(move.stretches());
        all.addAll(move.back().stretches());
        return all;
    }

    private List<Stretch> steady() {
        List<Stretch> all = new ArrayList<>();
        if (speed > 0 && acceleration > 0) {
            all.add(new Stretch(speed / acceleration, 0, speed));
        }
        all.add(new Stretch(time > 0 ? time : 1, speed, speed));
        if (rest > 0) {
            all.add(new Stretch(rest, 0, 0));
        }
        return all;
    }
}
