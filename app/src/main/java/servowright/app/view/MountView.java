package servowright.app.view;

import java.util.Locale;
import java.util.Optional;
import servowright.engine.machine.Axis;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Machine;
import servowright.engine.machine.SensorFigure;

/**
 * The magnet of an axis before its sensor, as it is drawn; lengths in millimetres.
 *
 * @param axis     name of the axis
 * @param diameter of the magnet
 * @param length   of the magnet along the shaft
 * @param gap      face of the magnet to the package, least, nominal and greatest
 * @param depth    sensing element below the surface of the package, if stated
 */
public record MountView(String axis, double diameter, double length, Gap gap, Optional<Double> depth) {

    /** The gap with its tolerance. */
    public record Gap(double least, double nominal, double most) {}

    /** Empty unless magnet and gap are stated. */
    static Optional<MountView> of(Machine machine, Axis axis) {
        Optional<Declared> diameter = axis.figures().get(AxisFigure.MAGNET_DIAMETER);
        Optional<Declared> length = axis.figures().get(AxisFigure.MAGNET_LENGTH);
        Optional<Declared> gap = axis.figures().get(AxisFigure.GAP);
        if (diameter.isEmpty() || length.isEmpty() || gap.isEmpty()) {
            return Optional.empty();
        }
        Optional<Double> depth = axis.sensor()
                .flatMap(name -> Optional.ofNullable(machine.sensors().get(name)))
                .flatMap(s -> s.figures().get(SensorFigure.DEPTH))
                .map(d -> 1e3 * d.si());
        Gap limits = new Gap(
                1e3 * gap.get().stated().lower().si(),
                1e3 * gap.get().si(),
                1e3 * gap.get().stated().upper().si());
        return Optional.of(new MountView(
                axis.name(), 1e3 * diameter.get().si(), 1e3 * length.get().si(), limits, depth));
    }

    /** The same with the gap moved; its tolerance moves along. */
    public MountView at(double gapMm) {
        double by = gapMm - gap.nominal();
        Gap moved = new Gap(Math.max(0, gap.least() + by), gapMm, gap.most() + by);
        return new MountView(axis, diameter, length, moved, depth);
    }

    /** Face of the magnet to the sensing element; to the package where its depth is not stated. */
    public double elementGap() {
        return gap.nominal() + depth.orElse(0.0);
    }

    /** Without zeros that say nothing. */
    public static String plain(double millimetres) {
        return String.format(Locale.ROOT, "%.2f", millimetres)
                .replaceAll("0+$", "")
                .replaceAll("\\.$", "");
    }
}
