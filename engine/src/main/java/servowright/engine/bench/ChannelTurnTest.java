package servowright.engine.bench;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import servowright.engine.encoder.ChannelTurn;
import servowright.engine.encoder.EllipseFit;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.known.Propagation;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.Unit;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Recording;
import servowright.engine.recording.Saturation;

/** Both raw channels of a sine-cosine sensor over a turn: what they have wrong, and what that costs if nothing is done. */
final class ChannelTurnTest {
    private static final String MODEL = "ellipse through the points, least squares of their distance";
    private static final int FEWEST = 32;

    /** More rows make the fit slower, not better. */
    private static final int MOST = 20_000;

    private final BenchTest test;
    private final ResultSheet sheet;

    private ChannelTurnTest(BenchTest test) {
        this.test = test;
        this.sheet = new ResultSheet(test);
    }

    static Sensed of(BenchTest test, Recording recording) {
        return Sensed.without(new ChannelTurnTest(test).reduced(recording));
    }

    private TestResult reduced(Recording recording) {
        Optional<Channel> cosine = shown(recording, "cosine");
        Optional<Channel> sine = shown(recording, "sine");
        if (cosine.isEmpty() || sine.isEmpty()) {
            return refused(
                    "which channels of " + recording.name() + " show cosine and sine",
                    "state it under channels: {..: cosine, ..: sine}");
        }
        int[] rows = rows(cosine.get(), sine.get());
        if (rows.length < FEWEST) {
            return refused(
                    FEWEST + " rows or more in which both channels have a number in " + recording.name() + ": it has "
                            + rows.length,
                    "record at least 100 rows of one slow turn");
        }
        double[] x = picked(cosine.get(), rows);
        double[] y = picked(sine.get(), rows);
        if (cutOff(x) || cutOff(y)) {
            return refused(
                    "channels in " + recording.name() + " that do not run into their limit",
                    "choose a larger range, or a weaker magnet, and record again");
        }
        ChannelTurn.Result result = ChannelTurn.of(x, y);
        if (result.turn().isEmpty()) {
            boolean part = result.refusal()
                    .filter(ChannelTurn.Refusal.NO_WHOLE_TURN::equals)
                    .isPresent();
            return refused(
                    part
                            ? "a whole turn in " + recording.name() + ": a quarter of it or more has no reading"
                            : "channels that draw an ellipse in " + recording.name(),
                    "turn the shaft slowly through a whole turn while both channels are recorded");
        }
        describe(result.turn().get(), cosine.get());
        values(result.turn().get());
        return sheet.end();
    }

    private TestResult refused(String need, String settle) {
        return sheet.refused(AxisParameter.CHANNEL_OFFSET, need, settle);
    }

    private Optional<Channel> shown(Recording recording, String word) {
        return recording.channels().stream()
                .filter(c -> Arrays.asList(said(c).split("[,\\s]+")).contains(word))
                .findFirst();
    }

    private String said(Channel channel) {
        return test.channels().getOrDefault(channel.name(), "").toLowerCase(Locale.ROOT);
    }

    private static int[] rows(Channel a, Channel b) {
        int[] all = IntStream.range(0, a.samples().length)
                .filter(i -> Double.isFinite(a.samples()[i]) && Double.isFinite(b.samples()[i]))
                .toArray();
        int every = (all.length + MOST - 1) / MOST;
        return every < 2
                ? all
                : IntStream.range(0, all.length / every)
                        .map(i -> all[i * every])
                        .toArray();
    }

    private static double[] picked(Channel channel, int... rows) {
        return Arrays.stream(rows).mapToDouble(i -> channel.samples()[i]).toArray();
    }

    private static boolean cutOff(double... values) {
        return Saturation.ofWave(values).filter(Saturation::sure).isPresent();
    }

    private void describe(ChannelTurn turn, Channel channel) {
        EllipseFit e = turn.ellipse();
        Dimension dimension = channel.unit().map(Unit::dimension).orElse(Dimension.NUMBER);
        String unit = channel.unit().map(Unit::symbol).orElse("");
        sheet.detail(Phrase.of("centre {x}, {y}; half axes {a} and {b}, the longer one at {tilt}")
                .with("x", new Quantity(e.centreX(), dimension), unit)
                .with("y", new Quantity(e.centreY(), dimension), unit)
                .with("a", new Quantity(e.semiMajor(), dimension), unit)
                .with("b", new Quantity(e.semiMinor(), dimension), unit)
                .with("tilt", new Quantity(e.tiltRad(), Dimension.ANGLE), "deg"));
        turn.untreatedRad()
                .ifPresentOrElse(
                        worst -> sheet.detail(Phrase.of(
                                        "with nothing taken off, the angle errs by {worst} about its mean at most, electrical")
                                .with("worst", new Quantity(worst, Dimension.ANGLE), "deg")),
                        () -> sheet.remark(
                                "the offset is larger than the amplitude: until it is taken off, the angle does not"
                                        + " even go round"));
        double[] ones = new double[turn.radius().length];
        Arrays.fill(ones, 1);
        int[] order = IntStream.range(0, ones.length)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> turn.angleRad()[i]))
                .mapToInt(i -> i)
                .toArray();
        double[] radius = DrivenRun.picked(turn.radius(), order);
        sheet.curves(PointCurves.of(
                "radius, taken back to a circle",
                "circle",
                DrivenRun.picked(turn.angleRad(), order),
                radius,
                Arrays.stream(radius).map(r -> r - 1).toArray(),
                "deg",
                "%"));
    }

    private void values(ChannelTurn turn) {
        List<Known> five = five(turn);
        Term a = Term.of("A", five.get(2), "");
        Term b = Term.of("B", five.get(3), "");
        Working.Sheet offset = Working.begin();
        Known o = offset.line(
                AxisParameter.CHANNEL_OFFSET.words(),
                "{o} = √(({x0}/{A})² + ({y0}/{B})²)",
                "%",
                Dimension.NUMBER,
                MODEL,
                v -> Math.hypot(v[0] / v[2], v[1] / v[3]),
                Term.of("x0", five.get(0), ""),
                Term.of("y0", five.get(1), ""),
                a,
                b);
        put(AxisParameter.CHANNEL_OFFSET, o, offset);
        Working.Sheet gain = Working.begin();
        Known g = gain.line(
                AxisParameter.CHANNEL_GAIN.words(),
                "{g} = {A}/{B} − 1",
                "%",
                Dimension.NUMBER,
                MODEL,
                v -> v[0] / v[1] - 1,
                a,
                b);
        put(AxisParameter.CHANNEL_GAIN, g, gain);
        Working.Sheet quadrature = Working.begin();
        Known d = quadrature.note(AxisParameter.CHANNEL_QUADRATURE.words(), "{δ}", "deg", MODEL, five.get(4));
        put(AxisParameter.CHANNEL_QUADRATURE, d, quadrature);
    }

    /** Centre, amplitudes and quadrature, which move together. */
    private List<Known> five(ChannelTurn turn) {
        EllipseFit e = turn.ellipse();
        return Propagation.jointly(
                List.of(
                        Quantity.number(e.centreX()),
                        Quantity.number(e.centreY()),
                        Quantity.number(e.amplitudeX()),
                        Quantity.number(e.amplitudeY()),
                        new Quantity(e.quadratureRad(), Dimension.ANGLE)),
                turn.covariance().toRows(),
                test.id() + " fit",
                turn.freedom(),
                Origin.MEASURED,
                test.id());
    }

    private void put(AxisParameter what, Known value, Working.Sheet working) {
        sheet.value(what, new Candidate(value.as(Origin.MEASURED, test.id()), test.id(), working.end()));
    }
}
