package servowright.engine.procedure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.bench.Sought;
import servowright.engine.bench.TestResult;
import servowright.engine.known.CoverageInterval;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Outcome.Need;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.known.Working;
import servowright.engine.motor.RatioName;
import servowright.engine.quantity.Accuracy;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/**
 * One reading that a step asks for, as a function of parameters and conditions.
 *
 * @param from        parameters it is computed from; their SI values come first
 * @param conditions  speed, current, temperature; their SI values come after those of the parameters
 * @param instruments limits of what reads it; their errors multiply
 * @param f           the reading, SI; not finite where there is none
 * @param also        ratios of this motor that a reading may be off by
 * @param told        what a test read, where it says so itself; otherwise f of what it found
 */
record Question(
        String what,
        Phrase at,
        String unit,
        Dimension dimension,
        List<Sought> from,
        List<Known> conditions,
        List<Accuracy> instruments,
        ToDoubleFunction<double[]> f,
        List<RatioName> also,
        Optional<Told> told) {
    /** Same inputs, same window. */
    private static final long SEED = 20080914;

    /** A parameter with where it comes from. */
    record Found(Known value, String from) {}

    /** A reading that is a function of what the test found. */
    Question(
            String what,
            Phrase at,
            String unit,
            Dimension dimension,
            List<Sought> from,
            List<Known> conditions,
            List<Accuracy> instruments,
            ToDoubleFunction<double[]> f,
            List<RatioName> also) {
        this(what, at, unit, dimension, from, conditions, instruments, f, also, Optional.empty());
    }

    /** The same where the test itself says what was read. */
    Question told(Told by) {
        return new Question(what, at, unit, dimension, from, conditions, instruments, f, also, Optional.of(by));
    }

    /** While no test was made. */
    Expectation planned(Function<Sought, Outcome<Found>> before) {
        return new Expectation(what, at, unit, "", window(before), Optional.empty(), Optional.empty());
    }

    /** What one test makes of this: its own figures where it gives them, otherwise those of the plan. */
    Expectation asked(
            TestResult test, Function<Sought, Outcome<Found>> before, Function<Sought, Optional<Known>> otherwise) {
        Outcome<Window> window = window(before);
        Optional<Quantity> read =
                told.map(t -> t.in(test)).orElseGet(() -> read(what -> Told.found(test, what), otherwise));
        Optional<Agreement> agreement = window.found().flatMap(w -> read.map(r -> Agreement.of(w, r, also)));
        return new Expectation(what, at, unit, test.test().id(), window, read, agreement);
    }

    private Outcome<Window> window(Function<Sought, Outcome<Found>> before) {
        List<Known> inputs = new ArrayList<>();
        List<Need> needs = new ArrayList<>();
        String source = "";
        for (Sought one : from) {
            Outcome<Found> outcome = before.apply(one);
            if (outcome instanceof Missing<Found> missing) {
                needs.addAll(missing.needs());
            } else {
                Found found = outcome.found().orElseThrow();
                inputs.add(found.value());
                source = source.isEmpty() ? found.from() : source;
            }
        }
        if (!needs.isEmpty()) {
            return new Missing<>(needs.stream().distinct().toList());
        }
        inputs.addAll(conditions);
        source = source.isEmpty() ? sheet() : source;
        int plain = inputs.size();
        instruments.forEach(i -> inputs.add(gain(i, inputs.size())));
        inputs.add(zero());
        String stated = source;
        return CoverageInterval.of(dimension, x -> shown(x, plain), inputs, new SplittableRandom(SEED))
                .<Outcome<Window>>map(c -> Outcome.answer(window(c, stated), Working.NONE))
                .orElseGet(
                        () -> Outcome.missing(what, "what is known is too wide for a window: a careful first reading"));
    }

    /** Where a condition comes from that somebody declared; empty where none was. */
    private String sheet() {
        return conditions.stream()
                .filter(k -> k.origin() == Origin.DATA_SHEET)
                .findFirst()
                .map(k -> k.origin().words() + ", " + k.from())
                .orElse("");
    }

    private Window window(CoverageInterval interval, String source) {
        return new Window(
                interval.value(),
                new Quantity(interval.range().low(), dimension),
                new Quantity(interval.range().high(), dimension),
                interval.drawn() ? Window.Ends.DRAWN : Window.Ends.TWICE,
                source);
    }

    /** The reading as the instruments show it. */
    private double shown(double[] x, int plain) {
        double y = f.applyAsDouble(x);
        for (int i = plain; i < x.length - 1; i++) {
            y *= x[i];
        }
        return y + x[x.length - 1];
    }

    private static Known gain(Accuracy limits, int number) {
        double u = limits.relative() / Math.sqrt(3);
        return Known.of(Quantity.number(1), u, Source.of("gain " + number), Origin.DECLARED, "instrument");
    }

    private Known zero() {
        double square = instruments.stream()
                .filter(i -> i.absolute().dimension().equals(dimension))
                .mapToDouble(i -> i.absolute().si() * i.absolute().si() / 3)
                .sum();
        return Known.of(
                new Quantity(0, dimension), Math.sqrt(square), Source.of("zero"), Origin.DECLARED, "instrument");
    }

    /** What was read: the function of what the test found, under the same conditions; empty where it found nothing. */
    private Optional<Quantity> read(
            Function<Sought, Optional<Known>> given, Function<Sought, Optional<Known>> otherwise) {
        double[] x = new double[from.size() + conditions.size()];
        boolean any = false;
        for (int i = 0; i < from.size(); i++) {
            Sought one = from.get(i);
            Optional<Known> own = given.apply(one);
            Optional<Known> value = own.isPresent() ? own : otherwise.apply(one);
            if (value.isEmpty() || (i == 0 && own.isEmpty())) {
                return Optional.empty();
            }
            any |= own.isPresent();
            x[i] = value.get().si();
        }
        for (int i = 0; i < conditions.size(); i++) {
            x[from.size() + i] = conditions.get(i).si();
        }
        double y = any ? f.applyAsDouble(x) : Double.NaN;
        return Double.isFinite(y) ? Optional.of(new Quantity(y, dimension)) : Optional.empty();
    }

    /** What the instruments of a test read that closely. */
    static List<Accuracy> limits(servowright.engine.bench.Instruments instruments, Reads... reads) {
        return List.of(reads).stream().map(instruments::accuracy).toList();
    }
}
