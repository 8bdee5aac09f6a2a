package servowright.engine.prediction;

import java.util.Optional;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import servowright.engine.bench.MotorParameter;
import servowright.engine.encoder.AxisField;
import servowright.engine.encoder.RoundMagnet;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.known.Term;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.Declared;
import servowright.engine.machine.SensorFigure;
import servowright.engine.machine.SurroundingsFigure;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** What field does the magnet of an axis make at its sensor, from cold to warm, and what does misplacement cost? */
public final class MountStudy {
    private static final String FIELD =
            "surface charge of a uniform disc magnetised across its axis, exact on the axis (derived)";
    private static final String SECOND_ORDER = "expansion of the field about the axis, second order (derived)";

    /** Reversible change of the remanence of neodymium magnets, trade tables. */
    private static final double PER_KELVIN = -0.0012;

    private static final double ROOM_KELVIN = 293.15;

    /** Elements lie 0.2 to 0.6 mm below the surface of their package; recalled. */
    private static final double DEPTH_METRE = 0.4e-3;

    private static final double DEPTH_SPREAD_METRE = 0.2e-3;

    private MountStudy() {}

    /** The mount of an axis; empty when none is described. */
    static Optional<Outcome<Mount>> of(AxisParts parts) {
        boolean described = parts.own(AxisFigure.GAP).isPresent()
                || parts.own(AxisFigure.MAGNET_DIAMETER).isPresent();
        return described ? Optional.of(answer(parts)) : Optional.empty();
    }

    private static Outcome<Mount> answer(AxisParts parts) {
        Inquiry in = new Inquiry();
        String owner = parts.name();
        Supplier<Known> diameter = in.take(own(parts, AxisFigure.MAGNET_DIAMETER, owner));
        Supplier<Known> length = in.take(own(parts, AxisFigure.MAGNET_LENGTH, owner));
        Supplier<Known> remanence = in.take(own(parts, AxisFigure.MAGNET_REMANENCE, owner));
        Supplier<Known> gap = in.take(own(parts, AxisFigure.GAP, owner));
        Optional<Known> stated = parts.sensor().flatMap(s -> s.figures().known(SensorFigure.DEPTH));
        Optional<Declared> window = parts.sensor().flatMap(s -> s.figures().get(SensorFigure.FIELD));
        return in.answer(() -> {
            in.assume(Phrase.of("neodymium: the remanence falls by 0.12 % per kelvin; no steel near the magnet"));
            Term[] terms = {
                Term.of("D", diameter.get(), "mm"),
                Term.of("L", length.get(), "mm"),
                Term.of("Br", remanence.get(), "T"),
                Term.of("g", gap.get(), "mm"),
                Term.of("d", stated.orElseGet(() -> assumedDepth(in)), "mm"),
                Term.of("T", air(parts, SurroundingsFigure.WARMEST), "degC")
            };
            return mount(in, parts, terms, stated.isPresent(), window);
        });
    }

    private static Mount mount(
            Inquiry in, AxisParts parts, Term[] warm, boolean depthStated, Optional<Declared> window) {
        Term[] cold = warm.clone();
        cold[5] = Term.of("T", air(parts, SurroundingsFigure.COLDEST), "degC");
        Term[] bare = cold.clone();
        bare[4] = Term.of("d", Known.exact(new Quantity(0, Dimension.LENGTH), Origin.ASSUMED, "none"), "mm");
        return new Mount(
                field(in, "field at the element, warmest", warm),
                field(in, "field at the element, coldest", cold),
                window.map(Wanted::least),
                window.map(Wanted::most),
                field(in, "field if the gap were to the element", bare),
                depthStated,
                error(in, parts, cold, "electrical error of the sensor offset, twice per turn", MountStudy::offset),
                error(in, parts, cold, "electrical error of offset with 1° of tilt, once per turn", MountStudy::tilt));
    }

    private static Outcome<Known> own(AxisParts parts, AxisFigure figure, String owner) {
        return Wanted.figure(parts.axis().figures(), figure, owner);
    }

    private static Known assumedDepth(Inquiry in) {
        in.assume(Phrase.of("depth of the element below its package not stated: 0.2 to 0.6 mm taken"));
        return Known.of(
                new Quantity(DEPTH_METRE, Dimension.LENGTH),
                DEPTH_SPREAD_METRE / Math.sqrt(3),
                Source.of("depth of the element"),
                Origin.ASSUMED,
                "assumed");
    }

    private static Known air(AxisParts parts, SurroundingsFigure which) {
        return parts.surroundings()
                .known(which)
                .orElseGet(() -> Known.exact(new Quantity(ROOM_KELVIN, Dimension.TEMPERATURE), Origin.ASSUMED, "room"));
    }

    private static Known field(Inquiry in, String label, Term... terms) {
        return in.sheet()
                .line(
                        label,
                        "{B} = ({Br}/4) · (1 − 0.0012 · ({T} − 20 °C)) · [u], u(s) = s/√({D}²/4 + s²), s from {g} + {d}"
                                + " over {L}",
                        "mT",
                        Dimension.FLUX_DENSITY,
                        FIELD,
                        x -> axis(x).strengthTesla() * (1 + PER_KELVIN * (x[5] - ROOM_KELVIN)),
                        terms);
    }

    private static AxisField axis(double[] x) {
        return RoundMagnet.disc(x[0], x[1]).onAxis(x[2], Math.max(0, x[3] + x[4]));
    }

    /** Electrical error of one harmonic; empty without an offset or without pole pairs. */
    private static Optional<Known> error(
            Inquiry in, AxisParts parts, Term[] terms, String label, ToDoubleFunction<double[]> harmonic) {
        Optional<Known> offset = parts.own(AxisFigure.SENSOR_OFFSET);
        Optional<Known> pairs = parts.parameter(MotorParameter.POLE_PAIRS).found();
        if (offset.isEmpty() || pairs.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(in.sheet()
                .line(
                        label,
                        "{ε} = {p} · A({e}; {D}, {L}, {Br}, {g} + {d}), A = κ e² alone, 1° · e · |B'/B| with a tilt",
                        "deg",
                        Dimension.ANGLE,
                        SECOND_ORDER,
                        harmonic,
                        terms[0],
                        terms[1],
                        terms[2],
                        terms[3],
                        terms[4],
                        Term.of("e", offset.get(), "mm"),
                        Term.of("p", pairs.get())));
    }

    private static double offset(double[] x) {
        return Math.abs(x[6] * axis(x).kappaPerSquareMetre() * x[5] * x[5]);
    }

    private static double tilt(double[] x) {
        return Math.abs(x[6] * axis(x).relativeSlopePerMetre() * x[5] * Math.toRadians(1));
    }
}
