package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.known.Propagation;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Reading;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.motor.Saliency.TerminalPair;
import servowright.engine.motor.SaliencyFit;
import servowright.engine.numeric.Covariance;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.HookUp;
import servowright.engine.quantity.Quantity;

/** Inductance read with a meter between two terminals while the rotor is turned by hand from angle to angle. */
final class InductanceByAngle {
    /** Mean, cosine and sine take three; fewer than two more say nothing of the scatter. */
    private static final int FEWEST = 5;

    /** A swing below this many of its standard deviations may be scatter alone. */
    private static final double SEEN = 4;

    /** Readings beside the curve by more than this share of its swing (root mean square) are no two waves per electrical turn. */
    private static final double MOST_LEFT = 0.2;

    private static final List<TerminalPair> PAIRS = List.of(TerminalPair.AB, TerminalPair.BC, TerminalPair.CA);

    private final BenchTest test;
    private final ResultSheet sheet;
    private final Instruments instruments;

    private InductanceByAngle(BenchTest test, ResultSheet sheet) {
        this.test = test;
        this.sheet = sheet;
        this.instruments = new Instruments(test.instrument());
    }

    /** Whether a test holds readings between two terminals at several stated angles. */
    static boolean read(BenchTest test) {
        return rows(test).size() >= FEWEST;
    }

    /** Fits the readings and writes what they give to the sheet. */
    static void reduce(BenchTest test, Optional<Known> polePairs, ResultSheet sheet) {
        new InductanceByAngle(test, sheet).reduced(polePairs);
    }

    private static List<Reading> rows(BenchTest test) {
        return test.readings().stream()
                .filter(r -> r.figures().known(ReadingFigure.INDUCTANCE).isPresent())
                .filter(r -> r.figures().get(ReadingFigure.ANGLE).isPresent()
                        || r.figures().get(ReadingFigure.FIELD_ANGLE).isPresent())
                .filter(r -> Contacts.parse(r.contacts())
                        .filter(c -> c.hookUp() == HookUp.TWO_TERMINALS)
                        .isPresent())
                .toList();
    }

    private void reduced(Optional<Known> polePairs) {
        List<Reading> rows = rows(test);
        boolean mechanical = rows.stream()
                .anyMatch(r -> r.figures().get(ReadingFigure.FIELD_ANGLE).isEmpty());
        if (mechanical && polePairs.isEmpty()) {
            sheet.missing(
                    MotorParameter.D_INDUCTANCE,
                    "pole pairs, for the electrical angles of " + test.id(),
                    "count the magnets, or state field_angle with each reading");
            return;
        }
        int p = polePairs.map(k -> (int) Math.round(k.si())).orElse(1);
        double[] angles = rows.stream().mapToDouble(r -> electrical(r, p)).toArray();
        double[] henry = rows.stream()
                .mapToDouble(r -> r.figures()
                        .known(ReadingFigure.INDUCTANCE)
                        .orElseThrow()
                        .si())
                .toArray();
        Optional<SaliencyFit> fit = SaliencyFit.of(angles, henry);
        if (fit.isEmpty()) {
            sheet.missing(
                    MotorParameter.D_INDUCTANCE,
                    "angles that tell d and q apart in " + test.id(),
                    "read at five or more angles spread over half an electrical turn");
            return;
        }
        described(fit.get(), angles, henry);
        double digit = rows.stream()
                .mapToDouble(r -> Resolution.halfDigit(
                        r.figures().get(ReadingFigure.INDUCTANCE).orElseThrow()))
                .max()
                .orElse(0);
        results(fit.get(), digit / Math.sqrt(3));
    }

    /** Electrical angle as if the reading were between a and b: the other pairs see the rotor a third of a turn off. */
    private static double electrical(Reading reading, int polePairs) {
        double angle = reading.figures()
                .known(ReadingFigure.FIELD_ANGLE)
                .map(Known::si)
                .orElseGet(() -> polePairs
                        * reading.figures()
                                .known(ReadingFigure.ANGLE)
                                .orElseThrow()
                                .si());
        int pair = Contacts.parse(reading.contacts()).orElseThrow().index();
        return angle + (PAIRS.get(pair).phaseRad() - TerminalPair.AB.phaseRad()) / 2;
    }

    private void described(SaliencyFit fit, double[] angles, double[] henry) {
        double[] folded = Arrays.stream(angles)
                .map(a -> a - Math.PI * Math.floor(a / Math.PI))
                .toArray();
        sheet.curves(PointCurves.of(
                "between two terminals", "two waves per turn", folded, henry, fit.residuals(), "deg", "uH"));
        sheet.detail(Phrase.of(
                        "q over d inductance {r}; least at {t} electrical; {s} of scatter beside two waves per electrical turn")
                .with("r", Quantity.number(fit.qHenry() / fit.dHenry()), "")
                .with("t", Quantity.of(fit.leastElectricalRad(), "rad"), "deg")
                .with("s", Quantity.of(fit.scatterHenry(), "H"), "uH"));
        if (fit.scatterHenry() > MOST_LEFT * 2 * (fit.qHenry() - fit.dHenry())) {
            sheet.remark("the readings do not follow two waves per electrical turn: the rotor was turned by the meter's"
                    + " pull, the angles are off, or the pole pairs are wrong");
        }
    }

    private void results(SaliencyFit fit, double digitHenry) {
        double factor = Math.max(1, square(digitHenry / Math.max(fit.scatterHenry(), 1e-15)));
        Covariance covariance = fit.ofBoth().scaledBy(factor);
        List<Known> both = Propagation.jointly(
                List.of(Quantity.of(fit.dHenry(), "H"), Quantity.of(fit.qHenry(), "H")),
                covariance.toRows(),
                test.id() + " fit",
                factor > 1 ? Double.POSITIVE_INFINITY : fit.freedom(),
                Origin.MEASURED,
                test.id());
        if (fit.swingOverStandard() < SEEN * Math.sqrt(factor)) {
            sheet.remark("the swing over the angle does not stand out of the scatter: d and q are not told apart");
            value(MotorParameter.PHASE_INDUCTANCE, both.get(0).plus(both.get(1)).times(0.5), "mean over the angles");
            return;
        }
        value(MotorParameter.D_INDUCTANCE, both.get(0), "half of the least over the angles");
        value(MotorParameter.Q_INDUCTANCE, both.get(1), "half of the largest over the angles");
    }

    private static double square(double x) {
        return x * x;
    }

    private void value(MotorParameter what, Known phase, String how) {
        Known loop = instruments.limited(phase.times(2), Reads.METER_INDUCTANCE);
        Working.Sheet working = Working.begin();
        working.note(how + ", times two", "{Ll}", "uH", "L(θ) = m + A cos(2θ + φ) through the readings", loop);
        Known value = working.line(
                "phase of the equivalent star",
                "{" + what.symbol() + "} = {Ll} / 2",
                "uH",
                Dimension.INDUCTANCE,
                "inductance matrix of the salient machine in rotor axes, derived",
                v -> v[0] / 2,
                Term.of("Ll", loop, "uH"));
        List<Phrase> assumed = new ArrayList<>();
        instruments.assumption(Reads.METER_INDUCTANCE).ifPresent(assumed::add);
        sheet.value(what, new Candidate(value.as(Origin.MEASURED, test.id()), test.id(), working.end(), assumed));
    }
}
