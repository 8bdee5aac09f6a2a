package servowright.app.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.machine.Axis;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.Figures;

/**
 * Where the plate of a sensor board is to be drilled; lengths in millimetres, the axis of rotation at 0, seen from the
 * board.
 *
 * @param axis   name of the axis
 * @param holes  middles of the screw holes
 * @param size   diameter of the screw holes
 * @param bore   opening for shaft and magnet, if there is one
 * @param magnet diameter of the magnet, if stated
 */
public record DrillView(String axis, List<Hole> holes, double size, Optional<Double> bore, Optional<Double> magnet) {

    /** Middle of a hole, x to the right and y up. */
    public record Hole(double x, double y) {}

    public DrillView {
        holes = List.copyOf(holes);
    }

    /** Empty unless the size of the holes and their circle or rectangle are stated. */
    static Optional<DrillView> of(Axis axis) {
        Figures<AxisFigure> figures = axis.figures();
        Optional<Double> size = millimetre(figures, AxisFigure.HOLE_DIAMETER);
        List<Hole> holes = circle(figures);
        if (holes.isEmpty()) {
            holes = rectangle(figures);
        }
        if (size.isEmpty() || holes.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new DrillView(
                axis.name(),
                holes,
                size.get(),
                millimetre(figures, AxisFigure.BORE),
                millimetre(figures, AxisFigure.MAGNET_DIAMETER)));
    }

    private static List<Hole> circle(Figures<AxisFigure> figures) {
        Optional<Double> across = millimetre(figures, AxisFigure.HOLE_CIRCLE);
        Optional<Known> count = figures.known(AxisFigure.HOLE_COUNT);
        List<Hole> holes = new ArrayList<>();
        if (across.isPresent() && count.isPresent()) {
            int n = (int) Math.round(count.get().si());
            double from = figures.known(AxisFigure.HOLE_FROM).map(Known::si).orElse(0.0);
            for (int i = 0; i < n; i++) {
                double angle = from + 2 * Math.PI * i / n;
                holes.add(new Hole(across.get() / 2 * Math.cos(angle), across.get() / 2 * Math.sin(angle)));
            }
        }
        return holes;
    }

    private static List<Hole> rectangle(Figures<AxisFigure> figures) {
        Optional<Double> width = millimetre(figures, AxisFigure.HOLE_WIDTH);
        Optional<Double> height = millimetre(figures, AxisFigure.HOLE_HEIGHT);
        if (width.isEmpty() || height.isEmpty()) {
            return List.of();
        }
        double x = width.get() / 2;
        double y = height.get() / 2;
        return List.of(new Hole(x, y), new Hole(-x, y), new Hole(-x, -y), new Hole(x, -y));
    }

    private static Optional<Double> millimetre(Figures<AxisFigure> figures, AxisFigure key) {
        return figures.known(key).map(k -> 1e3 * k.si());
    }

    /** Farthest that anything lies from the axis of rotation, to the side or up. */
    double reach() {
        double farthest = Math.max(bore.orElse(0.0), magnet.orElse(0.0)) / 2;
        for (Hole hole : holes) {
            farthest = Math.max(farthest, Math.max(Math.abs(hole.x()), Math.abs(hole.y())) + size / 2);
        }
        return farthest;
    }
}
