package servowright.engine.procedure;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.Sought;
import servowright.engine.encoder.ClearanceHole;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.quantity.Dimension;

/** The mount taken apart and put together several times. */
final class ReseatingTask implements AxisTask {
    @Override
    public TestKind kind() {
        return TestKind.RESEATING;
    }

    @Override
    public List<Sought> settles() {
        return List.of(AxisParameter.RESEATING_SPREAD);
    }

    @Override
    public boolean suits(AxisBench bench) {
        return bench.onAxisMagnet();
    }

    /** Worth it where somebody will take the mount apart after the offset was found, which no file tells. */
    @Override
    public boolean needed(AxisBench bench) {
        return false;
    }

    @Override
    public List<Phrase> hookUp(AxisBench bench) {
        return List.of(Phrase.of(
                "Offset by an alignment, then supply off, board and magnet taken off and put back as they will"
                        + " be in service, five times; the offset found after each."));
    }

    @Override
    public List<Phrase> cautions(AxisBench bench) {
        return List.of(
                Phrase.of("A board under supply shorts on a screwdriver: supply off, capacitors empty, every time."),
                Phrase.of("A magnet snaps to steel and splinters: aluminium or plastic tools, eyes away."));
    }

    @Override
    public List<Expectation> expectations(AxisBench bench) {
        return List.of(bench.bounded(
                "largest distance of an offset from the mean",
                Phrase.of("electrical; the magnet back in its place"),
                "deg",
                AxisParameter.RESEATING_SPREAD,
                play(bench)));
    }

    /** Every seating lies between the ends of the play, so none is farther from the mean than from end to end. */
    private static Outcome<Window> play(AxisBench bench) {
        Optional<Double> hole = bench.own(AxisFigure.HOLE_DIAMETER).map(Known::si);
        Optional<Double> radius = radius(bench);
        if (hole.isEmpty() || radius.isEmpty()) {
            return Outcome.missing(
                    "screw holes of the board of " + bench.name(),
                    "state mount holes, for example holes: {count: 4, circle: 16 mm, diameter: 2.2 mm}");
        }
        OptionalDouble screw = ClearanceHole.screwMetre(hole.get());
        Outcome<Known> pairs = bench.motor(MotorParameter.POLE_PAIRS);
        if (screw.isEmpty()) {
            return Outcome.missing(
                    "screws that belong to the holes of " + bench.name() + ": they are no clearance holes of M2 to M4",
                    "worksheet screw-float takes any diameters");
        }
        double turn = ClearanceHole.turnRad(ClearanceHole.floatMetre(hole.get(), screw.getAsDouble()), radius.get());
        return pairs.fold(
                a -> AxisBench.between(
                        0,
                        a.value().si() * turn,
                        2 * a.value().si() * turn,
                        Dimension.ANGLE,
                        "play of the screws in their holes, ISO 273"),
                m -> m.forAnother());
    }

    private static Optional<Double> radius(AxisBench bench) {
        Optional<Double> circle = bench.own(AxisFigure.HOLE_CIRCLE).map(k -> k.si() / 2);
        return circle.or(() -> bench.own(AxisFigure.HOLE_WIDTH)
                .flatMap(w -> bench.own(AxisFigure.HOLE_HEIGHT).map(h -> Math.hypot(w.si(), h.si()) / 2)));
    }
}
