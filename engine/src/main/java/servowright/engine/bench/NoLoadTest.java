package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.recording.Recording;

/**
 * No-load run: the drive turns the bare shaft at several settled speeds, and the current it takes, times the torque
 * constant, is drag. Models of two and of three terms stand side by side. Both directions show the offset of the current
 * sensing, which one direction counts as drag.
 */
final class NoLoadTest {
    private static final double MOST_LEFT = 0.5;

    /** Slower than this share of the largest speed the shaft counts as standing. */
    private static final double LEAST_SPEED = 0.04;

    /** A change by this share of the largest speed within a hundredth of the recording counts as acceleration. */
    private static final double MOST_CHANGE = 0.04;

    /** Where less than this share of the turning has settled, all of it counts. */
    private static final double SETTLED = 0.3;

    private static final double SEEN = 2;
    private static final double LESS_LEFT = 0.98;
    private static final String STEADY = "settled speed: the torque of the current is the drag";

    private final BenchTest test;
    private final ResultSheet sheet;
    private final Instruments instruments;
    private final Optional<Known> torqueConstant;
    private final List<Phrase> assumptions = new ArrayList<>();

    /** Of each stretch of a shaft whose speed does not settle, forward; empty where it does. */
    private double[] accelerations = {};

    private NoLoadTest(BenchTest test, Optional<Known> torqueConstant) {
        this.test = test;
        this.sheet = new ResultSheet(test);
        this.instruments = new Instruments(test.instrument());
        this.torqueConstant = torqueConstant;
    }

    /**
     * Reduces the run.
     *
     * @param torqueConstant per q-axis ampere, the best known
     */
    static TestResult of(BenchTest test, Optional<Recording> recording, Optional<Known> torqueConstant) {
        return new NoLoadTest(test, torqueConstant).reduced(recording);
    }

    private TestResult reduced(Optional<Recording> recording) {
        Outcome<Points> read = Points.of(test, recording, Wanted.SPEED, Wanted.CURRENT);
        if (read instanceof Missing<Points> why) {
            return refused(why);
        }
        Points all = read.found().orElseThrow();
        Points points = recording.map(r -> taken(all, r)).orElse(all);
        Outcome<AmpBasis> basis = AmpBasis.of(test, points.said());
        if (basis instanceof Missing<AmpBasis> why) {
            return refused(why);
        }
        sheet.remarks(points.remarks());
        Points forward = forward(points);
        boolean bothWays = Arrays.stream(points.x()).anyMatch(w -> w > 0)
                && Arrays.stream(points.x()).anyMatch(w -> w < 0);
        double[] senses = Arrays.stream(points.x()).map(Math::signum).toArray();
        Optional<Fitted> two = fit(forward, senses, bothWays, 2);
        Optional<Fitted> three = fit(forward, senses, bothWays, 3);
        if (two.isEmpty() || !drags(forward, two.get())) {
            return sheet.refused(
                    MotorParameter.DRY_DRAG,
                    "a current that brakes with the speed in " + test.id(),
                    "let each speed settle, read at five or more from slow to fast, without load");
        }
        AmpBasis counted = basis.found().orElseThrow();
        counted.assumed().ifPresent(assumptions::add);
        terms(forward, two.get(), three, bothWays, counted);
        return sheet.end();
    }

    /** Where the speed has settled; stretches with their acceleration where it hardly ever does. */
    private Points taken(Points all, Recording recording) {
        double most = Arrays.stream(all.x()).map(Math::abs).max().orElse(0);
        long turning = Arrays.stream(all.x())
                .filter(w -> Math.abs(w) > LEAST_SPEED * most)
                .count();
        int[] settled = settled(all.x());
        Optional<MovingPoints> moving = settled.length > SETTLED * turning
                ? Optional.empty()
                : MovingPoints.of(test, recording, all, LEAST_SPEED);
        moving.ifPresent(m -> {
            accelerations = m.accelerations();
            sheet.detail(Phrase.of("the speed hardly ever settles: the current that accelerates was fitted along"));
        });
        return moving.map(MovingPoints::points).orElseGet(() -> all.only(settled));
    }

    private TestResult refused(Missing<?> why) {
        sheet.missing(MotorParameter.DRY_DRAG, why);
        return sheet.end();
    }

    /** Rows where the shaft turns, and neither gains nor loses speed: elsewhere the current also accelerates. */
    private static int[] settled(double[] speed) {
        double most = Arrays.stream(speed).map(Math::abs).max().orElse(0);
        int half = Math.max(1, speed.length / 200);
        double[] mean = new double[speed.length];
        double sum = 0;
        for (int i = 0; i < speed.length; i++) {
            sum += speed[i] - (i >= half ? speed[i - half] : 0);
            mean[i] = sum / Math.min(i + 1, half);
        }
        return IntStream.range(half, speed.length - half)
                .filter(i -> Math.abs(mean[i]) > LEAST_SPEED * most)
                .filter(i -> Math.abs(mean[i + half] - mean[i - 1]) < MOST_CHANGE * most)
                .toArray();
    }

    /** Backward running counted forward. */
    private static Points forward(Points points) {
        double[] speed = Arrays.stream(points.x()).map(Math::abs).toArray();
        double[] amp = points.y().clone();
        for (int i = 0; i < amp.length; i++) {
            amp[i] *= points.x()[i] < 0 ? -1 : 1;
        }
        return new Points(
                speed, amp, points.xDigits(), points.yDigits(), points.recorded(), points.said(), points.remarks());
    }

    private Optional<Fitted> fit(Points points, double[] senses, boolean bothWays, int terms) {
        double[] ones = new double[senses.length];
        Arrays.fill(ones, 1);
        List<double[]> columns = new ArrayList<>(List.of(ones, points.x()));
        if (terms == 3) {
            columns.add(Arrays.stream(points.x()).map(w -> w * w).toArray());
        }
        if (bothWays) {
            columns.add(senses);
        }
        if (accelerations.length > 0) {
            double[] along = accelerations.clone();
            for (int i = 0; i < along.length; i++) {
                along[i] *= senses[i];
            }
            columns.add(along);
        }
        return points.y().length <= columns.size()
                ? Optional.empty()
                : Fitted.of(points, columns.toArray(double[][]::new));
    }

    /** Whether the currents have the sense of the speed and lie near the curve. */
    private static boolean drags(Points points, Fitted fit) {
        double mean = Arrays.stream(points.y()).average().orElse(0);
        return mean > 0 && fit.rms() < MOST_LEFT * mean;
    }

    private void terms(Points points, Fitted two, Optional<Fitted> three, boolean bothWays, AmpBasis basis) {
        describe("two terms", two, 2, bothWays);
        three.ifPresent(t -> describe("three terms", t, 3, bothWays));
        boolean curved = three.filter(t -> curved(two, t)).isPresent();
        sheet.detail(Phrase.of(
                curved
                        ? "three terms were taken: the drag bends, and the difference to two terms widens the result"
                        : "two terms were taken: a third does not stand out of the scatter"));
        sheet.remark("friction and iron loss cannot be told apart with the magnets in place: both are drag");
        Fitted best = curved ? three.orElseThrow() : two;
        String name = curved ? "three terms" : "two terms";
        sheet.curves(PointCurves.of("current", name, points.x(), points.y(), best.residuals(), "rpm", "A"));
        if (torqueConstant.isEmpty()) {
            sheet.missing(
                    MotorParameter.DRY_DRAG,
                    "torque constant, for the drag from " + test.id(),
                    "a spin and the pole pairs give it");
            return;
        }
        List<Known> line = best.known(test.id(), "A", "A s/rad");
        Source spread = Source.of(test.id() + " drag model 0");
        Source slope = Source.of(test.id() + " drag model 1");
        double[] off = new double[2];
        if (curved) {
            off[0] = Math.abs(best.parameters()[0] - two.parameters()[0]) / Math.sqrt(3);
            off[1] = Math.abs(best.parameters()[1] - two.parameters()[1]) / Math.sqrt(3);
        }
        torque(MotorParameter.DRY_DRAG, "i0", "A", zeroed(line.get(0).withPart(spread, off[0]), bothWays), basis);
        torque(MotorParameter.VISCOUS_DRAG, "i1", "A s/rad", line.get(1).withPart(slope, off[1]), basis);
    }

    private static boolean curved(Fitted two, Fitted three) {
        return Math.abs(three.parameters()[2]) > SEEN * three.error(2)
                || (three.sumOfSquares() < LESS_LEFT * two.sumOfSquares() && three.residuals().length > 100);
    }

    /** One direction alone cannot tell the zero of the current sensing from dry drag. */
    private Known zeroed(Known constant, boolean bothWays) {
        double zero = instruments.accuracy(reads()).absolute().si() / Math.sqrt(3);
        if (bothWays) {
            return constant;
        }
        sheet.remark(
                "one direction only: an offset of the current sensing counts as dry drag; run the other way as well");
        return constant.withPart(Source.of(test.id() + " zero of the current"), zero);
    }

    private Reads reads() {
        return test.recording().isPresent() ? Reads.DRIVE_CURRENT : Reads.METER_CURRENT;
    }

    private void torque(MotorParameter what, String symbol, String unit, Known term, AmpBasis basis) {
        Working.Sheet working = Working.begin();
        working.note("current, " + what.words(), "{" + symbol + "}", unit, "least squares", term);
        Known drag = working.line(
                what.words(),
                "{" + what.symbol() + "} = {Kt} · {" + symbol + "} · {gI} · " + basis.overQAxis(),
                what.unit(),
                what == MotorParameter.DRY_DRAG ? Dimension.TORQUE : Dimension.VISCOUS_FRICTION,
                STEADY,
                v -> v[0] * v[1] * v[2] * basis.overQAxis(),
                Term.of("Kt", torqueConstant.orElseThrow(), "N m/A"),
                Term.of(symbol, term, unit),
                Term.of("gI", instruments.gain(reads())));
        List<Phrase> all = new ArrayList<>(assumptions);
        instruments.assumption(reads()).ifPresent(all::add);
        sheet.value(what, new Candidate(drag.as(Origin.MEASURED, test.id()), test.id(), working.end(), all));
    }

    private void describe(String name, Fitted fit, int terms, boolean bothWays) {
        Phrase phrase = Phrase.of(name + ": {i0} and {i1}" + (terms == 3 ? ", {i2} at square" : "")
                        + (bothWays ? ", offset {off}" : "") + "; {rms} rms left over")
                .with("i0", Quantity.of(fit.parameters()[0], "A"), "A")
                .with("i1", Quantity.of(fit.parameters()[1], "A s/rad"), "mA s/rad")
                .with("rms", Quantity.of(fit.rms(), "A"), "A");
        if (terms == 3) {
            phrase = phrase.with("i2", Quantity.of(fit.parameters()[2], "A s2/rad2"), "uA s2/rad2");
        }
        if (bothWays) {
            phrase = phrase.with("off", Quantity.of(fit.parameters()[terms], "A"), "mA");
        }
        sheet.detail(phrase);
        if (accelerations.length > 0) {
            sheet.detail(Phrase.of(name + " take {m} to accelerate by one radian per second squared")
                    .with("m", Quantity.of(fit.parameters()[terms + (bothWays ? 1 : 0)], "A s2/rad"), "mA s2/rad"));
        }
    }
}
