package servowright.engine.worksheet.encoder;

import static servowright.engine.worksheet.encoder.EncoderInputs.whole;

import java.util.List;
import servowright.engine.encoder.Alignment;
import servowright.engine.encoder.AngleErrorCost;
import servowright.engine.encoder.ChannelErrors;
import servowright.engine.encoder.CorrectionTable;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.UsualInputs;
import servowright.engine.worksheet.Worksheet;

/** What a wrong angle costs, where it comes from in the channels, and what is left after correcting it. */
final class CostSheets {
    private static final String PARK = "current turned by a wrong angle (derived)";
    private static final String SERIES = "M. Abramowitz, I. Stegun, 9.1.42 (recalled)";
    private static final String CHASE = "closed speed loop with PI controller, linear (derived)";
    private static final String ELLIPSE = "P. L. M. Heydemann, Applied Optics 20 (1981) 3382 (recalled)";
    private static final String TABLE = "interpolation of a sine (derived)";

    private static final String[] COST_CONSTANT = {"p=pole_pairs", "ε=error"};

    private static final String[] COST_RIPPLE = {"p=pole_pairs", "A=ripple"};

    private static final Worksheet COST_SHEET = LineSheet.of(
            "angle-error-cost",
            "What an angle error costs",
            "Torque lost and current wasted by a constant error of the mechanical angle, and the torque ripple of one that"
                    + " swings.",
            List.of(
                    EncoderInputs.polePairs(),
                    EncoderInputs.angle("error", "constant mechanical error", "1 deg", 10),
                    EncoderInputs.angle("ripple", "amplitude of a mechanical ripple", "0.5 deg", 10)),
            List.of(
                    new Result("torque_left", "share of the torque left by the constant error", "%"),
                    new Result("flux_current", "share of the current in the flux axis", "%"),
                    new Result("mean_torque", "share of the torque left by the ripple", "%"),
                    new Result("torque_ripple", "torque ripple at twice the order of the ripple", "%")),
            List.of(
                    Line.of("torque_left", "{k} = cos({p} · {ε})", PARK, x -> Math.cos(x[0] * x[1]), COST_CONSTANT),
                    Line.of("flux_current", "{k} = sin({p} · {ε})", PARK, x -> Math.sin(x[0] * x[1]), COST_CONSTANT),
                    Line.of(
                            "mean_torque",
                            "{k} = J0({p} · {A})",
                            SERIES,
                            x -> AngleErrorCost.meanTorqueShare(whole(x[0]), Math.min(3 / x[0], Math.max(0, x[1]))),
                            COST_RIPPLE),
                    Line.of(
                            "torque_ripple",
                            "{k} = 2 · J2({p} · {A})",
                            SERIES,
                            x -> AngleErrorCost.torqueRippleShare(whole(x[0]), Math.min(3 / x[0], Math.max(0, x[1]))),
                            COST_RIPPLE)));

    private static final String[] CHASE_LOOP = {
        "k=order", "A=ripple", "ω=speed", "J=inertia", "fc=crossover", "n=integral_ratio"
    };

    private static final Worksheet CHASE_SHEET = LineSheet.of(
            "chased-ripple",
            "A speed loop that chases an angle error",
            "Speed ripple that an angle ripple feigns, and the true ripple and torque that a closed speed loop makes of it."
                    + " Needs a current loop much faster than the speed loop.",
            List.of(
                    Input.count("order", "times per turn", 1, 1000, "2"),
                    EncoderInputs.angle("ripple", "amplitude of the mechanical ripple", "0.5 deg", 10),
                    UsualInputs.speed("speed", "speed of the motor"),
                    Input.quantity("inertia", Dimension.INERTIA, "inertia at the motor", "1 kg cm2")
                            .within(Quantity.of(1e-10, "kg m2"), Quantity.of(1e4, "kg m2")),
                    EncoderInputs.frequency("crossover", "crossover of the speed loop", "20 Hz"),
                    Input.quantity(
                                    "integral_ratio",
                                    Dimension.NUMBER,
                                    "crossover over the corner of the integral part",
                                    "5")
                            .within(Quantity.number(1), Quantity.number(100))
                            .orElse("5")),
            List.of(
                    new Result("feigned", "speed ripple that is not there, share of the speed", "%"),
                    new Result("true_ripple", "speed that truly ripples", "rad/s"),
                    new Result("torque", "torque that makes it so", "mN m")),
            List.of(
                    Line.of(
                            "feigned",
                            "{r} = {k} · {A}",
                            "derivative of the error",
                            x -> x[0] * x[1],
                            "k=order",
                            "A=ripple"),
                    Line.of(
                            "true_ripple",
                            "{δω} = |T(2π · {fc}, {n}, {k} · {ω})| · {k} · {A} · {ω} at {J}",
                            CHASE,
                            x -> chased(x).trueSpeedRipple(),
                            CHASE_LOOP),
                    Line.of(
                            "torque",
                            "{T} = {J} · {k} · {ω} · δω, δω as above from {A}, {fc}, {n}",
                            CHASE,
                            x -> chased(x).torqueRipple(),
                            CHASE_LOOP)));

    private static final Worksheet CHANNELS_SHEET = LineSheet.of(
            "channel-errors",
            "Errors of two sine channels",
            "Harmonics of the angle from offset, unequal gain, error of quadrature and soft saturation of two channels that"
                    + " should be sine and cosine; each from its own cause, first order.",
            List.of(
                    EncoderInputs.share("offset", "offset of one channel over its amplitude", "1 %", 0.5),
                    EncoderInputs.share("gain", "excess gain of one channel", "1 %", 1),
                    EncoderInputs.angle("quadrature", "error of the right angle between the channels", "1 deg", 30),
                    EncoderInputs.share("saturation", "third-order loss at the peak", "2 %", 0.3)),
            List.of(
                    new Result("offset_error", "once per period", "deg"),
                    new Result("gain_error", "twice per period", "deg"),
                    new Result("quadrature_error", "twice per period", "deg"),
                    new Result("saturation_error", "four times per period", "deg")),
            List.of(
                    Line.of(
                            "offset_error",
                            "{A1} = {o}",
                            ELLIPSE,
                            x -> new ChannelErrors(Math.max(0, x[0]), 0, 0, 0, 0).firstHarmonicRad(),
                            "o=offset"),
                    Line.of(
                            "gain_error",
                            "{A2} = {g}/(2 + {g})",
                            ELLIPSE,
                            x -> new ChannelErrors(0, 0, x[0], 0, 0).secondHarmonicRad(),
                            "g=gain"),
                    Line.of(
                            "quadrature_error",
                            "{A2} = tan({δ}/2)",
                            ELLIPSE,
                            x -> new ChannelErrors(0, 0, 0, x[0], 0).secondHarmonicRad(),
                            "δ=quadrature"),
                    Line.of(
                            "saturation_error",
                            "{A4} = ({s}/4)/(1 − 3 · {s}/4)",
                            "x − s x³ on both channels (derived)",
                            x -> new ChannelErrors(0, 0, 0, 0, Math.min(0.3, x[0])).fourthHarmonicRad(),
                            "s=saturation")));

    private static final String[] TABLE_INPUTS = {"A=ripple", "k=order", "N=entries"};

    private static final Worksheet TABLE_SHEET = LineSheet.of(
            "correction-residue",
            "What a correction table leaves",
            "Largest error that remains of one harmonic after a table of evenly spaced entries, read at the nearest entry or"
                    + " linearly between two.",
            List.of(
                    EncoderInputs.angle("ripple", "amplitude of the harmonic", "0.5 deg", 30),
                    Input.count("order", "times per turn", 1, 100, "1"),
                    Input.count("entries", "entries of the table", 4, 65536, "64")),
            List.of(
                    new Result("nearest", "left when read at the nearest entry", "deg"),
                    new Result("linear", "left when read between two entries", "deg")),
            List.of(
                    Line.of(
                            "nearest",
                            "{e} = 2 · {A} · sin(π · {k}/(2 · {N}))",
                            TABLE,
                            x -> left(x, CorrectionTable.Reading.NEAREST),
                            TABLE_INPUTS),
                    Line.of(
                            "linear",
                            "{e} = {A} · (1 − cos(π · {k}/{N}))",
                            TABLE,
                            x -> left(x, CorrectionTable.Reading.LINEAR),
                            TABLE_INPUTS)));

    private static final String[] ALIGNMENT_INPUTS = {"f=friction", "p=pole_pairs"};

    private static final Worksheet ALIGNMENT_SHEET = LineSheet.of(
            "alignment-error",
            "Friction in an alignment",
            "How far friction can hold a rotor from a standing field: what a commutation offset from one side alone may err.",
            List.of(
                    EncoderInputs.share("friction", "friction over holding torque", "10 %", 1),
                    EncoderInputs.polePairs().orElse("1")),
            List.of(
                    new Result("electrical", "farthest, electrical", "deg"),
                    new Result("mechanical", "farthest, mechanical", "deg"),
                    new Result("torque_left", "share of the torque left", "%")),
            List.of(
                    Line.of("electrical", "{ε} = asin({f})", PARK, x -> bound(x[0]), "f=friction"),
                    Line.of("mechanical", "{ε} = asin({f})/{p}", PARK, x -> bound(x[0]) / x[1], ALIGNMENT_INPUTS),
                    Line.of("torque_left", "{k} = √(1 − {f}²)", PARK, x -> Math.cos(bound(x[0])), "f=friction")));

    private CostSheets() {}

    static List<Worksheet> all() {
        return List.of(COST_SHEET, CHASE_SHEET, CHANNELS_SHEET, TABLE_SHEET, ALIGNMENT_SHEET);
    }

    private static AngleErrorCost.Chased chased(double[] x) {
        return AngleErrorCost.chased(
                whole(x[0]), Math.max(0, x[1]), Math.max(1e-6, x[2]), x[3], 2 * Math.PI * x[4], x[5]);
    }

    private static double left(double[] x, CorrectionTable.Reading reading) {
        int order = whole(x[1]);
        return CorrectionTable.residueRad(Math.max(0, x[0]), order, Math.max(2 * order, whole(x[2])), reading);
    }

    private static double bound(double share) {
        return Alignment.frictionBoundElectricalRad(Math.min(1, Math.max(0, share)));
    }
}
