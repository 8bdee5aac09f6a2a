package servowright.engine.bench;

import java.util.List;
import java.util.Optional;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Phrase;
import servowright.engine.known.Propagation;
import servowright.engine.known.Source;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.TestFigure;
import servowright.engine.motion.CoastDown;
import servowright.engine.motion.RunOutFit;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Recording;

/**
 * Coast-down: the shaft is brought to speed and left to itself. How it slows down, times its inertia, is drag. Models of two
 * and of three terms stand side by side; where they differ beyond scatter, the difference is model spread. A second run
 * with a known inertia added gives the inertia itself.
 */
final class CoastDownTest {
    private static final String REGRESSION = "regression on the integral form of the equation of motion";

    private final BenchTest test;
    private final ResultSheet sheet;
    private final Instruments instruments;
    private final Outcome<RunOut> run;

    private CoastDownTest(BenchTest test, Outcome<RunOut> run) {
        this.test = test;
        this.sheet = new ResultSheet(test);
        this.instruments = new Instruments(test.instrument());
        this.run = run;
    }

    /** Fits a recorded run-out; torque and inertia need more than one recording, and come after. */
    static CoastDownTest of(BenchTest test, Recording recording) {
        CoastDownTest made = new CoastDownTest(test, speed(test, recording));
        made.run.found().ifPresent(made::described);
        return made;
    }

    private static Outcome<RunOut> speed(BenchTest test, Recording recording) {
        for (Channel channel : recording.channels()) {
            String shows =
                    test.channels().getOrDefault(channel.name(), test.channels().isEmpty() ? "speed" : "");
            boolean right = channel.unit()
                    .map(u -> u.dimension().equals(Dimension.SPEED))
                    .orElse(false);
            if (shows.contains("speed") && right) {
                Outcome<Trace> trace = Trace.of(test, recording, channel);
                return trace.fold(a -> RunOut.of(a.value()), Missing::forAnother);
            }
        }
        return Outcome.missing(
                "a speed in " + recording.name(),
                "state channels: {CH1: speed}, with a unit of speed in the file or in scale");
    }

    /** Known inertia that was added to the shaft, if any. */
    Optional<Known> added() {
        return test.figures().known(TestFigure.ADDED_INERTIA).filter(k -> k.si() > 0);
    }

    /** Inertia of all that turns, if stated. */
    Optional<Known> stated() {
        return test.figures().known(TestFigure.INERTIA).filter(k -> k.si() > 0);
    }

    /** Inertia of the shaft without what was added, from this run and one without it; noted with this test. */
    Optional<Known> inertia(CoastDownTest own) {
        Optional<Known> more = added();
        if (more.isEmpty() || run.found().isEmpty() || own.run.found().isEmpty()) {
            return Optional.empty();
        }
        RunOut with = run.found().get();
        RunOut without = own.run.found().get();
        double high = Math.min(with.highest(), without.highest());
        double low = Math.max(with.lowest(), without.lowest());
        if (!(high > low)) {
            sheet.remark("the run-outs share no speeds: no inertia follows from them");
            return Optional.empty();
        }
        Known longer = seconds(with, high, low);
        Known shorter = own.seconds(without, high, low);
        if (!(longer.minus(shorter).si() > longer.minus(shorter).expandedUncertainty())) {
            sheet.remark("the added inertia does not show in the time of the run-out: add more");
            return Optional.empty();
        }
        Working.Sheet working = Working.begin();
        Known found = working.line(
                "inertia by an added one",
                "{J} = {Ja} · {t1} / ({t2} − {t1})",
                "kg cm2",
                Dimension.INERTIA,
                "the same drag slows both: J dω/dt is equal at equal speed",
                v -> CoastDown.inertiaKgM2(v[0], v[1], v[2]),
                Term.of("Ja", more.get(), "kg cm2"),
                Term.of("t1", shorter, "s"),
                Term.of("t2", longer, "s"));
        Known value = found.as(Origin.MEASURED, test.id());
        sheet.value(MotorParameter.ROTOR_INERTIA, new Candidate(value, test.id(), working.end()));
        return Optional.of(value);
    }

    private Known seconds(RunOut out, double high, double low) {
        return Known.of(
                Quantity.of(out.best().secondsBetween(high, low), "s"),
                out.best().secondsBetweenError(high, low),
                Source.of(test.id() + " run-out", out.best().fit().degreesOfFreedom()),
                Origin.MEASURED,
                test.id());
    }

    /** The test's result, with drag where an inertia is known. */
    TestResult result(Optional<Known> inertia) {
        if (run instanceof Missing<RunOut> why) {
            sheet.missing(MotorParameter.DRY_DRAG, why);
        } else if (inertia.isEmpty()) {
            sheet.missing(
                    MotorParameter.DRY_DRAG,
                    "inertia of all that turned in " + test.id(),
                    "state inertia with the test, or run out a second time with a known added_inertia");
        } else {
            run.found().ifPresent(r -> drag(r, inertia.get()));
        }
        return sheet.end();
    }

    private void drag(RunOut out, Known inertia) {
        RunOutFit best = out.best();
        double freedom = best.fit().degreesOfFreedom();
        List<Known> terms = Propagation.jointly(
                List.of(Quantity.of(best.constantRadPerS2(), "rad/s2"), Quantity.of(best.perSecond(), "1/s")),
                new double[][] {
                    {best.fit().covariance().at(1, 1), best.fit().covariance().at(1, 2)},
                    {best.fit().covariance().at(2, 1), best.fit().covariance().at(2, 2)}
                },
                test.id(),
                freedom,
                Origin.MEASURED,
                test.id());
        Known constant = widened(out, terms.get(0).times(instruments.gain(Reads.SPEED)), true);
        Known perSecond = widened(out, terms.get(1), false);
        torque(MotorParameter.DRY_DRAG, "a", "rad/s2", constant, inertia);
        torque(MotorParameter.VISCOUS_DRAG, "b", "1/s", perSecond, inertia);
    }

    /** With the difference of the two models as limits, where neither follows the recording to within its scatter. */
    private Known widened(RunOut out, Known term, boolean constant) {
        if (!out.curved() || !out.bends()) {
            return term;
        }
        double difference = constant
                ? out.three().constantRadPerS2() - out.two().constantRadPerS2()
                : out.three().perSecond() - out.two().perSecond();
        return term.withPart(Source.of(test.id() + " drag model " + constant), Math.abs(difference) / Math.sqrt(3));
    }

    private void torque(MotorParameter what, String symbol, String unit, Known term, Known inertia) {
        Working.Sheet working = Working.begin();
        working.note("slowing down, " + what.words(), "{" + symbol + "}", unit, REGRESSION, term);
        Dimension dimension = what == MotorParameter.DRY_DRAG ? Dimension.TORQUE : Dimension.VISCOUS_FRICTION;
        Known drag = working.line(
                what.words(),
                "{" + what.symbol() + "} = {J} · {" + symbol + "}",
                what.unit(),
                dimension,
                "equation of motion of a shaft left to itself",
                v -> v[0] * v[1],
                Term.of("J", inertia, "kg cm2"),
                Term.of(symbol, term, unit));
        List<Phrase> assumed = instruments.assumption(Reads.SPEED).stream().toList();
        sheet.value(what, new Candidate(drag.as(Origin.MEASURED, test.id()), test.id(), working.end(), assumed));
    }

    private void described(RunOut out) {
        sheet.remarks(out.remarks());
        sheet.detail(terms("two terms", out.two()));
        sheet.detail(terms("three terms", out.three())
                .with("c", Known.exact(Quantity.number(out.three().perRadian()), Origin.MEASURED, test.id())));
        sheet.detail(Phrase.of(
                out.curved() ? threeTerms(out) : "two terms were taken: a third does not stand out of the scatter"));
        sheet.remark("friction and iron loss cannot be told apart with the magnets in place: both are drag");
        sheet.curves(RunOutCurves.of(out));
    }

    private static String threeTerms(RunOut out) {
        return "three terms were taken: the drag bends, "
                + (out.bends()
                        ? "more than they follow, and the difference to two terms widens the result"
                        : "and they follow it to within the scatter");
    }

    private static Phrase terms(String name, RunOutFit fit) {
        String more = fit.quadratic() ? ", {c} per radian" : "";
        return Phrase.of(name + ": slows by {a} and {b} of its speed" + more + "; {rms} rms left over")
                .with("a", Quantity.of(fit.constantRadPerS2(), "rad/s2"), "rad/s2")
                .with("b", Quantity.of(fit.perSecond(), "1/s"), "1/s")
                .with("rms", Quantity.of(fit.fit().fit().residualSd(), "rad/s"), "rad/s");
    }
}
