package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import servowright.engine.acceptance.Verdict;
import servowright.engine.findings.Finding.Area;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.prediction.Predictions;

/** An odd number of magnets is a miscount; silent otherwise. */
final class MagnetCountRule implements Rule {
    @Override
    public String id() {
        return "odd-magnets";
    }

    @Override
    public Area area() {
        return Area.MOTOR;
    }

    @Override
    public String source() {
        return "north and south alternate around an ordinary rotor";
    }

    @Override
    public List<Finding> examine(Predictions predictions) {
        return predictions.machine().motors().values().stream()
                .map(this::judge)
                .flatMap(Optional::stream)
                .toList();
    }

    private Optional<Finding> judge(Motor motor) {
        return motor.figures()
                .known(MotorFigure.MAGNETS)
                .filter(magnets -> Math.round(magnets.si()) % 2 != 0)
                .map(magnets -> finding(motor, magnets));
    }

    private Finding finding(Motor motor, Known magnets) {
        return Draft.of(this, motor.name())
                .verdict(Verdict.FAILS)
                .says(Phrase.of("{magnets} magnets counted, which is odd").with("magnets", magnets))
                .because(Phrase.of("north and south alternate, so there is an even number of them"))
                .remedy(Phrase.of(
                        "mark one magnet and count again; a rotor with iron between its magnets has as many pole"
                                + " pairs as magnets: state pole_pairs then"))
                .done();
    }
}
