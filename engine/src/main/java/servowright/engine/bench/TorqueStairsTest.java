package servowright.engine.bench;

import java.util.Arrays;
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
import servowright.engine.machine.Declared;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.recording.Recording;

/**
 * Torque stairs: the shaft held by a lever on a scale or by a torque sensor, the current raised step by step. The slope of
 * torque against current is the torque constant; its loss at high current, beyond scatter, is spread of the model.
 */
final class TorqueStairsTest {
    /** Currents up to this share of the largest count as small. */
    private static final double SMALL = 0.6;

    /** A line that leaves more than this share of its own range is no line. */
    private static final double MOST_LEFT = 0.2;

    /** A declared constant farther off than this many combined standard uncertainties, and than 2 %, contradicts. */
    private static final double COVERAGE = 2;

    private static final double LEAST_OFF = 0.02;

    private final BenchTest test;
    private final Motor motor;
    private final Optional<Known> polePairs;
    private final ResultSheet sheet;
    private final Instruments instruments;
    private final FluxReduction flux;
    private final Wanted followed;

    private TorqueStairsTest(BenchTest test, Motor motor, Optional<Recording> recording, Optional<Known> polePairs) {
        this.test = test;
        this.motor = motor;
        this.polePairs = polePairs;
        this.sheet = new ResultSheet(test);
        this.instruments = new Instruments(test.instrument());
        this.flux = new FluxReduction(test, motor);
        this.followed = byForce(test, recording) ? Wanted.FORCE : Wanted.TORQUE;
    }

    /** Reduces the stairs; the flux linkage needs the pole pairs as well. */
    static TestResult of(BenchTest test, Motor motor, Optional<Recording> recording, Optional<Known> polePairs) {
        return new TorqueStairsTest(test, motor, recording, polePairs).reduced(recording);
    }

    private static boolean byForce(BenchTest test, Optional<Recording> recording) {
        boolean readings = test.readings().stream()
                .anyMatch(r -> r.figures().get(Wanted.FORCE.figure()).isPresent());
        boolean channel = recording.isPresent()
                && test.channels().values().stream()
                        .anyMatch(said -> said.contains("force") && !said.contains("torque"));
        return readings || channel;
    }

    private TestResult reduced(Optional<Recording> recording) {
        Outcome<Points> read = Points.of(test, recording, Wanted.CURRENT, followed);
        if (read instanceof Missing<Points> why) {
            return refused(why);
        }
        Points points = read.found().orElseThrow();
        Outcome<AmpBasis> basis = AmpBasis.of(test, points.said());
        if (basis instanceof Missing<AmpBasis> why) {
            return refused(why);
        }
        if (followed.figure() == ReadingFigure.FORCE
                && test.figures().get(TestFigure.ARM).isEmpty()) {
            return sheet.refused(
                    MotorParameter.FLUX_LINKAGE, "length of the lever in " + test.id(), "state arm with the test");
        }
        sheet.remarks(points.remarks());
        Optional<Fitted> line = line(points);
        if (line.isEmpty() || !follows(points, line.get())) {
            return sheet.refused(
                    MotorParameter.FLUX_LINKAGE,
                    "a " + followed.words() + " that follows the current on a line in " + test.id(),
                    "hold the shaft, raise the current in steps, and let each reading settle");
        }
        constant(points, line.get(), basis.found().orElseThrow());
        return sheet.end();
    }

    private TestResult refused(Missing<?> why) {
        sheet.missing(MotorParameter.FLUX_LINKAGE, why);
        return sheet.end();
    }

    private static Optional<Fitted> line(Points points) {
        double[] ones = new double[points.x().length];
        Arrays.fill(ones, 1);
        return Fitted.of(points, ones, points.x());
    }

    private static boolean follows(Points points, Fitted line) {
        double[] x = points.x();
        double range = Math.abs(line.parameters()[1])
                * (Arrays.stream(x).max().orElse(0) - Arrays.stream(x).min().orElse(0));
        return line.rms() < MOST_LEFT * range && Math.abs(line.parameters()[1]) > 2 * COVERAGE * line.error(1);
    }

    private void constant(Points points, Fitted line, AmpBasis basis) {
        basis.assumed().ifPresent(flux::assume);
        boolean reversed = line.parameters()[1] < 0;
        if (reversed) {
            sheet.remark("torque falls where current rises: they are counted in opposite senses; the size was used");
        }
        String[] units =
                followed.figure() == ReadingFigure.FORCE ? new String[] {"N", "N/A"} : new String[] {"N m", "N m/A"};
        Known slope = line.known(test.id(), units).get(1).times(reversed ? -1 : 1);
        Known offset = line.known(test.id(), units).get(0);
        Known bent = bent(points, line, slope);
        Known perAmp = perQAxisAmp(bent, basis);
        sheet.detail(Phrase.of(
                        "torque constant {Kt} per q-axis ampere; at no current {T0} is left, {rms} rms beside the line")
                .with("Kt", perAmp, "N m/A")
                .with("T0", offset, units[0])
                .with("rms", Quantity.of(line.rms(), units[0]), units[0]));
        declared(perAmp, basis);
        sheet.curves(PointCurves.of(followed.words(), "line", points.x(), points.y(), line.residuals(), "A", units[0]));
        if (polePairs.isEmpty()) {
            FluxReduction.askForPolePairs(sheet, test, motor);
            return;
        }
        flux.addTorque(test.id(), perAmp, polePairs.get());
        sheet.value(MotorParameter.FLUX_LINKAGE, flux.result());
    }

    /** The slope with what it loses at high current as spread, where that stands out of the scatter. */
    private Known bent(Points points, Fitted line, Known slope) {
        double most = Arrays.stream(points.x()).map(Math::abs).max().orElse(0);
        int[] small = IntStream.range(0, points.x().length)
                .filter(i -> Math.abs(points.x()[i]) <= SMALL * most)
                .toArray();
        Optional<Fitted> low = small.length < 3 ? Optional.empty() : line(points.only(small));
        if (low.isEmpty()) {
            return slope;
        }
        double loss = Math.abs(low.get().parameters()[1]) - Math.abs(line.parameters()[1]);
        if (!(Math.abs(loss) > COVERAGE * Math.hypot(low.get().error(1), line.error(1)))) {
            sheet.detail(Phrase.of("no loss of slope at high current stands out of the scatter"));
            return slope;
        }
        sheet.detail(
                Phrase.of("the slope below {share} of the largest current is {loss} {word}: iron that saturates, or a"
                                + " reading that lags")
                        .with("share", Quantity.number(SMALL), "%")
                        .with("loss", Quantity.number(Math.abs(loss / line.parameters()[1])), "%")
                        .with("word", loss > 0 ? "larger" : "smaller"));
        return slope.withPart(Source.of(test.id() + " line bends"), Math.abs(loss) / Math.sqrt(3));
    }

    private Known perQAxisAmp(Known slope, AmpBasis basis) {
        Reads current = test.recording().isPresent() ? Reads.DRIVE_CURRENT : Reads.METER_CURRENT;
        Reads read = followed.figure() == ReadingFigure.FORCE ? Reads.FORCE : Reads.TORQUE;
        instruments.assumption(current).ifPresent(flux::assume);
        instruments.assumption(read).ifPresent(flux::assume);
        boolean lever = followed.figure() == ReadingFigure.FORCE;
        String unit = lever ? "N/A" : "N m/A";
        Working.Sheet working = flux.sheet();
        working.note("slope of " + followed.words() + " against current", "{s}", unit, "least squares, line", slope);
        Known arm = test.figures()
                .known(TestFigure.ARM)
                .filter(a -> lever)
                .orElse(Known.number(1, Origin.DERIVED, "torque sensor"));
        return working.line(
                "torque per q-axis ampere",
                "{Kt} = {s} · {arm} · {gT} / {gI} / " + basis.overQAxis(),
                "N m/A",
                Dimension.TORQUE_CONSTANT,
                "definition; limits of the instruments, rectangular, JCGM 100:2008, 4.3.7",
                v -> v[0] * v[1] * v[2] / v[3] / basis.overQAxis(),
                Term.of("s", slope, unit),
                Term.of("arm", arm, lever ? "mm" : ""),
                Term.of("gT", instruments.gain(read)),
                Term.of("gI", instruments.gain(current)));
    }

    /** A declared torque constant that this one contradicts, with what the ratio probably means. */
    private void declared(Known perAmp, AmpBasis basis) {
        for (Declared declared : motor.figures().all(MotorFigure.TORQUE_CONSTANT)) {
            double onAxis = declared.stated()
                    .currentBasis()
                    .filter(b -> b != CurrentBasis.SUPPLY)
                    .map(b -> new AmpBasis(b, Optional.empty()).overQAxis())
                    .orElse(basis.overQAxis());
            double ratio = perAmp.si() / (declared.si() / onAxis);
            double off = Math.abs(ratio - 1);
            if (off > LEAST_OFF && off > COVERAGE * perAmp.relativeUncertainty()) {
                String named = RatioReading.named(ratio, 0.03, 1)
                        .map(r -> ", near " + r.words())
                        .orElse("");
                sheet.remark(Phrase.of("the torque constant declared in "
                                + declared.place().text() + " is {declared}; measured over declared is {ratio}" + named)
                        .with("declared", declared.known(), "N m/A")
                        .with("ratio", ratio));
            }
        }
    }
}
