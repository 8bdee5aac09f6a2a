package servowright.engine.worksheet.motor;

import java.util.List;
import servowright.engine.quantity.CurrentBasis;

/** Bases as parts of the names of results. */
final class Bases {
    /** The currents that make torque; the supply current is none of them. */
    static final List<CurrentBasis> MOTOR_CURRENTS =
            List.of(CurrentBasis.Q_AXIS, CurrentBasis.PHASE_RMS, CurrentBasis.SIX_STEP);

    private Bases() {}

    /** A result's name with the words of a basis at its end: {@code speed_constant_line_peak}. */
    static String name(String start, String words) {
        return start + words.replace(' ', '_').replace('-', '_');
    }
}
