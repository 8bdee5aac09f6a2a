package servowright.engine.prediction;

import java.util.Optional;
import servowright.engine.bench.IdentifiedAxis;
import servowright.engine.bench.IdentifiedMachine;
import servowright.engine.bench.IdentifiedMotor;
import servowright.engine.bench.MotorParameter;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.machine.Axis;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Drive;
import servowright.engine.machine.DriveFigure;
import servowright.engine.machine.Figures;
import servowright.engine.machine.Machine;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.Sensor;
import servowright.engine.machine.Supply;
import servowright.engine.machine.SupplyFigure;
import servowright.engine.machine.SurroundingsFigure;

/**
 * An axis with the parts it names, as far as they are there.
 *
 * @param identified what the bench knows of its motor
 * @param sensed     what the bench knows of its angle sensor
 */
public record AxisParts(
        Axis axis,
        Optional<Motor> motor,
        Optional<IdentifiedMotor> identified,
        IdentifiedAxis sensed,
        Optional<Drive> drive,
        Optional<Sensor> sensor,
        Optional<Supply> supply,
        Figures<SurroundingsFigure> surroundings) {

    /** The axis with its parts looked up. */
    public static AxisParts of(IdentifiedMachine identified, Axis axis) {
        Machine machine = identified.machine();
        return new AxisParts(
                axis,
                axis.motor().map(name -> machine.motors().get(name)),
                axis.motor().map(name -> identified.motors().get(name)),
                identified.axis(axis.name()),
                axis.drive().map(name -> machine.drives().get(name)),
                axis.sensor().map(name -> machine.sensors().get(name)),
                machine.supply(),
                machine.surroundings());
    }

    public String name() {
        return axis.name();
    }

    Outcome<Known> parameter(MotorParameter what) {
        return identified.map(m -> m.best(what)).orElseGet(this::noMotor);
    }

    Outcome<Known> motor(MotorFigure what) {
        return motor.map(m -> Wanted.figure(m.figures(), what, m.name())).orElseGet(this::noMotor);
    }

    /** What is declared of the drive, or how to get it. */
    public Outcome<Declared> drive(DriveFigure what) {
        return drive.map(d -> Wanted.declared(d.figures(), what, d.name()))
                .orElseGet(() -> Outcome.missing("the drive of " + name(), "name it in axes / " + name()));
    }

    /** What is declared of the supply, or how to get it. */
    public Outcome<Declared> supply(SupplyFigure what) {
        return supply.map(s -> Wanted.declared(s.figures(), what, "the supply"))
                .orElseGet(() -> Outcome.missing("the supply", "describe it in machine.yaml, supply"));
    }

    Optional<Known> motorFigure(MotorFigure what) {
        return motor.flatMap(m -> m.figures().known(what));
    }

    Optional<Known> supplyFigure(SupplyFigure what) {
        return supply.flatMap(s -> s.figures().known(what));
    }

    Optional<Known> own(AxisFigure what) {
        return axis.figures().known(what);
    }

    private <T> Outcome<T> noMotor() {
        return Outcome.missing("the motor of " + name(), "name it in axes / " + name());
    }
}
