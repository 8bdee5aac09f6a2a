package servowright.engine.worksheet.motor;

import java.util.List;
import servowright.engine.motor.ConstantBasis;
import servowright.engine.quantity.CurrentBasis;

/** Bases as parts of the names of results. */
final class Bases {
    /** The currents that make torque; the supply current is none of them. */
    static final List<CurrentBasis> MOTOR_CURRENTS =
            List.of(CurrentBasis.Q_AXIS, CurrentBasis.PHASE_RMS, CurrentBasis.SIX_STEP);

    private Bases() {}

    /** The factor of a basis as it stands in a formula. */
    static String perFlux(ConstantBasis basis) {
        return basis instanceof ConstantBasis.Voltage voltage
                ? switch (voltage.basis()) {
                    case LINE_PEAK -> "√3";
                    case LINE_RMS -> "√(3/2)";
                    case PHASE_PEAK -> "1";
                    case PHASE_RMS -> "1/√2";
                    case SIX_STEP -> "3√3/π";
                }
                : torquePerFlux(((ConstantBasis.Current) basis).basis());
    }

    private static String torquePerFlux(CurrentBasis basis) {
        return switch (basis) {
            case Q_AXIS -> "3/2";
            case PHASE_RMS -> "3/√2";
            case SIX_STEP -> "3√3/π";
            case SUPPLY -> throw new IllegalArgumentException("there is no torque per supply ampere");
        };
    }

    /** A result's name with the words of a basis at its end: {@code speed_constant_line_peak}. */
    static String name(String start, String words) {
        return start + words.replace(' ', '_').replace('-', '_');
    }
}
