package servowright.engine.prediction;

import java.util.Optional;
import java.util.function.Supplier;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.machine.Declared;
import servowright.engine.machine.DriveFigure;
import servowright.engine.machine.MotorFigure;

/** What current may flow in an axis, for good and briefly? */
public final class CurrentLimitStudy {
    private CurrentLimitStudy() {}

    /** Current for good. */
    public static Outcome<CurrentLimit> continuous(AxisParts parts) {
        return lower(parts, DriveFigure.CONTINUOUS_CURRENT, MotorFigure.RATED_CURRENT);
    }

    /** Current for the time of an acceleration. */
    public static Outcome<CurrentLimit> peak(AxisParts parts) {
        return lower(parts, DriveFigure.PEAK_CURRENT, MotorFigure.PEAK_CURRENT);
    }

    private static Outcome<CurrentLimit> lower(AxisParts parts, DriveFigure ofDrive, MotorFigure ofMotor) {
        Inquiry in = new Inquiry();
        Supplier<Declared> declared = in.take(parts.drive(ofDrive));
        Optional<Declared> rated = parts.motor().flatMap(m -> m.figures().get(ofMotor));
        return in.answer(() -> {
            String driveName = "drive " + parts.axis().drive().orElse("");
            Known drive = CurrentFigure.phasePeak(in, declared.get(), Wanted.words(ofDrive) + " of the drive");
            CurrentLimit first = new CurrentLimit(drive, driveName);
            return rated.map(d -> CurrentFigure.phasePeak(in, d, Wanted.words(ofMotor) + " of the motor"))
                    .filter(motor -> motor.si() < drive.si())
                    .map(motor -> new CurrentLimit(
                            motor, "motor " + parts.axis().motor().orElse("")))
                    .orElse(first);
        });
    }
}
