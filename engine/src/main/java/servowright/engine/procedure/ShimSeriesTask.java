package servowright.engine.procedure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.Sought;
import servowright.engine.encoder.AxisField;
import servowright.engine.encoder.RoundMagnet;
import servowright.engine.known.CoverageInterval;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Working;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.SensorFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** The field magnitude at three or more shims under the sensor. */
final class ShimSeriesTask implements AxisTask {
    private static final long SEED = 20080914;

    @Override
    public TestKind kind() {
        return TestKind.SHIM_SERIES;
    }

    @Override
    public List<Sought> settles() {
        return List.of(AxisParameter.FIELD_SLOPE, AxisParameter.FIELD_BEND);
    }

    @Override
    public boolean suits(AxisBench bench) {
        return bench.onAxisMagnet();
    }

    /** Worth it where the gap decides whether the sensor sees enough and not too much. */
    @Override
    public boolean needed(AxisBench bench) {
        return bench.prediction()
                .mount()
                .flatMap(Outcome::found)
                .filter(m ->
                        m.most().filter(most -> most.si() < m.strongest().si()).isPresent()
                                || m.least()
                                        .filter(least ->
                                                least.si() > m.weakest().si())
                                        .isPresent())
                .isPresent();
    }

    @Override
    public List<Phrase> hookUp(AxisBench bench) {
        return List.of(Phrase.of(
                "Bridge off, sensor supplied. Field magnitude read with no shim and with two or more of known thickness"
                        + " under every screw, screws drawn alike."));
    }

    @Override
    public List<Phrase> cautions(AxisBench bench) {
        return List.of(Phrase.of("A magnet snaps to steel and splinters: aluminium or plastic shims, eyes away."));
    }

    @Override
    public List<Expectation> expectations(AxisBench bench) {
        Phrase at = Phrase.of("at the gap as mounted");
        return List.of(
                bench.bounded(
                        "change of the field with the gap, of itself",
                        at,
                        "1/mm",
                        AxisParameter.FIELD_SLOPE,
                        window(bench, AxisField::relativeSlopePerMetre, Dimension.NUMBER.over(Dimension.LENGTH))),
                bench.bounded(
                        "bend of the field with the gap",
                        at,
                        "1/mm2",
                        AxisParameter.FIELD_BEND,
                        window(bench, AxisField::kappaPerSquareMetre, Dimension.NUMBER.over(Dimension.AREA))));
    }

    private static Outcome<Window> window(AxisBench bench, ToDoubleFunction<AxisField> figure, Dimension dimension) {
        List<Known> inputs = new ArrayList<>();
        for (AxisFigure one : List.of(AxisFigure.MAGNET_DIAMETER, AxisFigure.MAGNET_LENGTH, AxisFigure.GAP)) {
            Optional<Known> known = bench.own(one);
            if (known.isEmpty()) {
                return Outcome.missing(
                        one.key().meaning() + " of " + bench.name(),
                        "state it, for example " + one.key().example());
            }
            inputs.add(known.get());
        }
        inputs.add(bench.sensor(SensorFigure.DEPTH)
                .orElseGet(() -> Known.exact(new Quantity(0, Dimension.LENGTH), Origin.ASSUMED, "at the surface")));
        return CoverageInterval.of(
                        dimension,
                        x -> figure.applyAsDouble(RoundMagnet.disc(x[0], x[1]).onAxis(1, x[2] + x[3])),
                        inputs,
                        new SplittableRandom(SEED))
                .<Outcome<Window>>map(c -> Outcome.answer(
                        new Window(
                                c.value(),
                                new Quantity(c.range().low(), dimension),
                                new Quantity(c.range().high(), dimension),
                                c.drawn() ? Window.Ends.DRAWN : Window.Ends.TWICE,
                                "magnet and gap as declared"),
                        Working.NONE))
                .orElseGet(() -> Outcome.missing("the gap of " + bench.name(), "state it with its limits"));
    }
}
