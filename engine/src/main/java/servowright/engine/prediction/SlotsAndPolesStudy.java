package servowright.engine.prediction;

import java.util.OptionalInt;
import java.util.function.Supplier;
import servowright.engine.bench.IdentifiedMotor;
import servowright.engine.bench.MotorParameter;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.motor.Cogging;
import servowright.engine.motor.StarOfSlots;

/** Do slots, magnets and detents of a motor go together? */
public final class SlotsAndPolesStudy {
    private SlotsAndPolesStudy() {}

    /** The combination of one motor: magnets as counted, else twice the best pole pairs. */
    public static Outcome<SlotsAndPoles> of(Motor motor, IdentifiedMotor identified) {
        Inquiry in = new Inquiry();
        Supplier<Known> slots = in.take(Wanted.figure(motor.figures(), MotorFigure.SLOTS, motor.name()));
        Supplier<Integer> poles = in.take(poles(motor, identified));
        return in.answer(() -> {
            int q = whole(slots.get());
            int magnets = poles.get();
            OptionalInt counted = motor.figures()
                    .known(MotorFigure.DETENTS)
                    .map(d -> OptionalInt.of(whole(d)))
                    .orElse(OptionalInt.empty());
            return new SlotsAndPoles(q, magnets, StarOfSlots.of(q, magnets), Cogging.of(q, magnets), counted);
        });
    }

    private static Outcome<Integer> poles(Motor motor, IdentifiedMotor identified) {
        Inquiry in = new Inquiry();
        if (motor.figures().get(MotorFigure.MAGNETS).isPresent()) {
            Supplier<Known> magnets = in.take(Wanted.figure(motor.figures(), MotorFigure.MAGNETS, motor.name()));
            return in.answer(() -> whole(magnets.get()));
        }
        Supplier<Known> pairs = in.take(identified.best(MotorParameter.POLE_PAIRS));
        return in.answer(() -> 2 * whole(pairs.get()));
    }

    private static int whole(Known counted) {
        return (int) Math.round(counted.si());
    }
}
