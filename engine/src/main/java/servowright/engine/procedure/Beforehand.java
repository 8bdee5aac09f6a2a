package servowright.engine.procedure;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import servowright.engine.bench.Candidate;
import servowright.engine.bench.IdentifiedMotor;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.SensingParameter;
import servowright.engine.bench.Sought;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Source;
import servowright.engine.known.Working;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.Stated;

/**
 * What is known of a motor without the tests of one step: a reading is held against what could be known before it was taken,
 * never against itself.
 */
final class Beforehand implements Function<Sought, Outcome<Question.Found>> {
    /** Limits of a declared figure without its own (common practice, no source). */
    private static final double DECLARED_HALF_WIDTH = 0.10;

    private static final String COMBINED = " tests together";

    private final Motor motor;
    private final IdentifiedMotor identified;
    private final Set<String> without;

    Beforehand(Motor motor, IdentifiedMotor identified, Set<String> without) {
        this.motor = motor;
        this.identified = identified;
        this.without = without;
    }

    @Override
    public Outcome<Question.Found> apply(Sought what) {
        if (what instanceof SensingParameter sensing) {
            return Outcome.answer(ideal(sensing), Working.NONE);
        }
        if (!(what instanceof MotorParameter parameter)) {
            return Outcome.missing(what.words() + " of " + motor.name(), what.settle());
        }
        return others(parameter)
                .or(() -> declared(parameter))
                .<Outcome<Question.Found>>map(f -> Outcome.answer(f, Working.NONE))
                .orElseGet(() -> Outcome.missing(parameter.words() + " of " + motor.name(), parameter.settle()));
    }

    private Optional<Question.Found> others(MotorParameter what) {
        List<Candidate> all = identified.candidates(what);
        boolean untouched = all.stream().noneMatch(c -> without.contains(c.from()));
        if (untouched) {
            String from = all.stream().findFirst().map(Candidate::from).orElse("");
            return identified.best(what).found().map(k -> new Question.Found(k, from.isEmpty() ? k.from() : from));
        }
        List<Candidate> rest = all.stream()
                .filter(c -> !without.contains(c.from()) && !c.from().endsWith(COMBINED))
                .toList();
        return rest.stream()
                .filter(c -> c.value().origin() == Origin.MEASURED)
                .min(Comparator.comparingDouble(c -> c.value().standardUncertainty()))
                .or(() -> rest.stream().findFirst())
                .map(Beforehand::found);
    }

    /** A sound drive measures nothing where there is nothing, and all phases alike. */
    private static Question.Found ideal(SensingParameter what) {
        boolean gain = what.unit().isEmpty();
        Quantity value = gain ? Quantity.number(1) : new Quantity(0, Dimension.CURRENT);
        return new Question.Found(Known.exact(value, Origin.ASSUMED, "sound drive"), "what a sound drive shows");
    }

    private static Question.Found found(Candidate candidate) {
        return new Question.Found(candidate.value(), candidate.from());
    }

    /** The bench looks at a declared thermal resistance only beside a heating run. */
    private Optional<Question.Found> declared(MotorParameter what) {
        if (what != MotorParameter.THERMAL_RESISTANCE) {
            return Optional.empty();
        }
        return motor.figures().get(MotorFigure.THERMAL_RESISTANCE).map(d -> {
            Known known = d.known();
            if (d.stated().spread() == Stated.Spread.VALUE) {
                known = known.withPart(tolerance(d), DECLARED_HALF_WIDTH * Math.abs(d.si()) / Math.sqrt(3));
            }
            return new Question.Found(known, "data sheet, " + d.place().text());
        });
    }

    private static Source tolerance(Declared declared) {
        return Source.of(declared.place().text() + " " + declared.place().path() + " tolerance");
    }
}
