package servowright.engine.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.known.Propagation;
import servowright.engine.known.Source;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.TestFigure;
import servowright.engine.motion.DrivenFit;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** From the motion of a driven shaft to inertia, torque constant and drag. */
final class DrivenValues {
    private static final String MOTION = "equation of motion, means over short stretches";

    private final BenchTest test;
    private final DrivenRun run;
    private final ResultSheet sheet;
    private final double perQAxisAmp;
    private final Instruments instruments;
    private final List<Phrase> assumptions = new ArrayList<>();
    private final List<Known> terms;

    /**
     * Values of a run.
     *
     * @param basis how the current was counted
     */
    DrivenValues(BenchTest test, DrivenRun run, AmpBasis basis, ResultSheet sheet) {
        this.test = test;
        this.run = run;
        this.sheet = sheet;
        this.perQAxisAmp = basis.overQAxis();
        this.instruments = new Instruments(test.instrument());
        basis.assumed().ifPresent(assumptions::add);
        instruments.assumption(Reads.DRIVE_CURRENT).ifPresent(assumptions::add);
        this.terms = terms();
    }

    /** Acceleration per q-axis ampere, slowing down by dry drag, slowing down per speed. */
    private List<Known> terms() {
        DrivenFit best = run.best();
        double[][] covariance = new double[3][3];
        for (int i = 0; i < 3; i++) {
            for (int k = 0; k < 3; k++) {
                covariance[i][k] = best.covariance().at(i, k);
            }
        }
        List<Known> joint = Propagation.jointly(
                List.of(
                        Quantity.of(best.perAmp(), "rad/s2/A"),
                        Quantity.of(best.constantRadPerS2(), "rad/s2"),
                        Quantity.of(best.perSecond(), "1/s")),
                covariance,
                test.id() + " motion",
                best.freedom(),
                Origin.MEASURED,
                test.id());
        double share = run.bends() ? 1 / Math.sqrt(3) : 0;
        Known perAmp = joint.get(0)
                .withPart(Source.of(test.id() + " noise of the current"), run.shadow() * Math.abs(best.perAmp()))
                .times(1 / perQAxisAmp)
                .over(instruments.gain(Reads.DRIVE_CURRENT));
        return List.of(
                perAmp,
                joint.get(1)
                        .withPart(
                                Source.of(test.id() + " drag model 0"),
                                share
                                        * Math.abs(run.three().constantRadPerS2()
                                                - run.two().constantRadPerS2())),
                joint.get(2)
                        .withPart(
                                Source.of(test.id() + " drag model 1"),
                                share
                                        * Math.abs(run.three().perSecond()
                                                - run.two().perSecond())));
    }

    /** Torque per q-axis ampere when the inertia of all that turns is stated with the test. */
    Optional<Known> torqueConstant(Working.Sheet working) {
        return test.figures()
                .known(TestFigure.INERTIA)
                .filter(j -> j.si() > 0)
                .map(j -> working.line(
                        "torque per q-axis ampere",
                        "{Kt} = {J} · {g}",
                        "N m/A",
                        Dimension.TORQUE_CONSTANT,
                        MOTION,
                        v -> v[0] * Math.abs(v[1]),
                        Term.of("J", j, "kg cm2"),
                        Term.of("g", terms.get(0), "rad/s2/A")));
    }

    /** Inertia and drag by a known torque constant. */
    void byTorqueConstant(Known newtonMetrePerAmp) {
        Working.Sheet working = Working.begin();
        Term kt = Term.of("Kt", newtonMetrePerAmp, "N m/A");
        Term g = Term.of("g", terms.get(0), "rad/s2/A");
        Known all = working.line(
                "inertia of all that turned",
                "{Ja} = {Kt} / {g}",
                "kg cm2",
                Dimension.INERTIA,
                MOTION,
                v -> v[0] / Math.abs(v[1]),
                kt,
                g);
        inertia(working, all);
        drag(MotorParameter.DRY_DRAG, Dimension.TORQUE, Term.of("a", terms.get(1), "rad/s2"), kt, g);
        drag(MotorParameter.VISCOUS_DRAG, Dimension.VISCOUS_FRICTION, Term.of("b", terms.get(2), "1/s"), kt, g);
        sheet.remark("friction and iron loss cannot be told apart with the magnets in place: both are drag");
        if (!run.best().bothWays()) {
            sheet.remark("one direction only: an offset of the current or a steady torque counts as dry drag");
        }
    }

    private void inertia(Working.Sheet working, Known all) {
        Optional<Known> added = test.figures().known(TestFigure.ADDED_INERTIA);
        Known own = added.map(a -> working.line(
                        "less what was added",
                        "{J} = {Ja} − {Jadd}",
                        "kg cm2",
                        Dimension.INERTIA,
                        "inertias on one shaft add",
                        v -> v[0] - v[1],
                        Term.of("Ja", all, "kg cm2"),
                        Term.of("Jadd", a, "kg cm2")))
                .orElse(all);
        if (own.si() > 0) {
            candidate(MotorParameter.ROTOR_INERTIA, own, working);
        } else {
            sheet.missing(
                    MotorParameter.ROTOR_INERTIA,
                    "an inertia above what was added in " + test.id(),
                    "check added_inertia and the torque constant");
        }
    }

    private void drag(MotorParameter what, Dimension dimension, Term term, Term kt, Term g) {
        Working.Sheet working = Working.begin();
        Known drag = working.line(
                what.words(),
                "{" + what.symbol() + "} = {Kt} · {" + term.symbol() + "} / {g}",
                what.unit(),
                dimension,
                MOTION,
                v -> v[0] * v[1] / Math.abs(v[2]),
                kt,
                term,
                g);
        candidate(what, drag, working);
    }

    private void candidate(MotorParameter what, Known value, Working.Sheet working) {
        sheet.value(what, new Candidate(value.as(Origin.MEASURED, test.id()), test.id(), working.end(), assumptions));
    }

    List<Phrase> assumptions() {
        return List.copyOf(assumptions);
    }
}
