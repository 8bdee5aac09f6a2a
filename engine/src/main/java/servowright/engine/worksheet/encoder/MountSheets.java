package servowright.engine.worksheet.encoder;

import java.util.List;
import java.util.function.ToDoubleFunction;
import servowright.engine.encoder.Assembly;
import servowright.engine.encoder.ClearanceHole;
import servowright.engine.encoder.GapWindow;
import servowright.engine.encoder.Planar;
import servowright.engine.encoder.Remanence;
import servowright.engine.encoder.RoundMagnet;
import servowright.engine.encoder.Sensing;
import servowright.engine.numeric.Interval;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Worksheet;

/** What misplacement does, and the room there is for it. */
final class MountSheets {
    private static final String FULL = "field of a uniform cylinder in space, 72 angles of one turn (derived)";
    private static final String WINDOW = "B(g) of the strongest and the weakest magnet, inverted (derived)";
    private static final String SIZES = "ISO 273 clearance holes (sizes seen in trade tables)";
    private static final int ANGLES = 72;

    /** What sums over a turn leave of nothing. */
    private static final double ROUNDING_RAD = 1e-12;

    private static final String[] MISPLACEMENT_INPUTS = {
        "D=diameter",
        "L=length",
        "g=gap",
        "ws=sensor_offset",
        "wm=magnet_offset",
        "t=sensor_tilt",
        "sx=magnet_tilt_along",
        "sy=magnet_tilt_across",
        "η=elevation"
    };

    private static final String MISPLACEMENT_FORMULA =
            " of arg[z e^(−iθ)] for {D}, {L}, {g} with {ws}, {wm}, {t}, {sx}, {sy}, {η}";

    private static final Worksheet MISPLACEMENT_SHEET = LineSheet.of(
            "magnet-misplacement",
            "Angle error of a misplaced magnet and sensor",
            "Harmonics of the angle error over one turn with the field in space, for a point sensor. Sensor offset and"
                    + " sensor tilt point the same way, magnet offset along the magnetisation: the pairs that add up.",
            List.of(
                    EncoderInputs.diameter(),
                    EncoderInputs.thickness(),
                    EncoderInputs.gap(),
                    offset("sensor_offset", "sensing element off the axis of rotation"),
                    offset("magnet_offset", "centre of the magnet off the axis, along its magnetisation"),
                    tilt("sensor_tilt", "tilt of the sensor, towards its offset"),
                    tilt("magnet_tilt_along", "tilt of the magnet towards its magnetisation"),
                    tilt("magnet_tilt_across", "tilt of the magnet across its magnetisation"),
                    tilt("elevation", "magnetisation out of the plane of the magnet")),
            List.of(
                    new Result("first_harmonic", "once per turn, amplitude", "deg"),
                    new Result("second_harmonic", "twice per turn, amplitude", "deg"),
                    new Result("third_harmonic", "three times per turn, amplitude", "deg"),
                    new Result("peak", "largest error about the mean", "deg")),
            List.of(
                    Line.of("first_harmonic", "{A1}" + MISPLACEMENT_FORMULA, FULL, harmonic(1), MISPLACEMENT_INPUTS),
                    Line.of("second_harmonic", "{A2}" + MISPLACEMENT_FORMULA, FULL, harmonic(2), MISPLACEMENT_INPUTS),
                    Line.of("third_harmonic", "{A3}" + MISPLACEMENT_FORMULA, FULL, harmonic(3), MISPLACEMENT_INPUTS),
                    Line.of(
                            "peak",
                            "{peak}" + MISPLACEMENT_FORMULA,
                            FULL,
                            x -> rounded(turn(x).turn(new Sensing.Point(), ANGLES)
                                    .error()
                                    .peakRad()),
                            MISPLACEMENT_INPUTS)));

    private static final String[] WINDOW_INPUTS = {
        "D=diameter", "L=length", "Br least=remanence_least", "Br most=remanence_most", "α=per_kelvin",
        "T cold=coldest", "T hot=hottest", "B least=field_least", "B most=field_most", "s=field_share"
    };

    private static final String WINDOW_FORMULA =
            " of a disc {D} by {L}, remanence {Br least} to {Br most} at 20 °C with {α} from {T cold} to"
                    + " {T hot}, field {B least} to {B most}, share {s}";

    private static final Worksheet WINDOW_SHEET = LineSheet.of(
            "gap-window",
            "Gap window of an on-axis sensor",
            "Gaps from the face of the magnet to the sensing element at which the field stays within what the sensor works"
                    + " in, over the spread of magnets and temperature. Both ends 0 mm: no gap serves them all.",
            List.of(
                    EncoderInputs.diameter(),
                    EncoderInputs.thickness(),
                    EncoderInputs.remanence("remanence_least", "remanence of the weakest magnet at 20 °C", "1.17 T"),
                    EncoderInputs.remanence("remanence_most", "remanence of the strongest magnet at 20 °C", "1.22 T"),
                    Input.quantity(
                                    "per_kelvin",
                                    Dimension.TEMPERATURE_COEFFICIENT,
                                    "change of the remanence per kelvin",
                                    "-0.12 %/K")
                            .within(Quantity.of(-0.3, "%/K"), Quantity.of(0.3, "%/K"))
                            .orElse("-0.12 %/K"),
                    temperature("coldest", "lowest temperature", "-20 degC"),
                    temperature("hottest", "highest temperature", "100 degC"),
                    EncoderInputs.field("field_least", "least field the sensor works in", "30 mT"),
                    EncoderInputs.field("field_most", "greatest field the sensor works in", "80 mT"),
                    EncoderInputs.share("field_share", "share of the field that nearby steel leaves", "1", 1)
                            .orElse("1")),
            List.of(new Result("nearest", "nearest gap", "mm"), new Result("farthest", "farthest gap", "mm")),
            List.of(
                    Line.of("nearest", "{g}" + WINDOW_FORMULA, WINDOW, x -> gaps(x).low(), WINDOW_INPUTS),
                    Line.of("farthest", "{g}" + WINDOW_FORMULA, WINDOW, x -> gaps(x).high(), WINDOW_INPUTS)));

    private static final Worksheet SCREW_FLOAT_SHEET = LineSheet.of(
            "screw-float",
            "Float of a board on its screws",
            "How far a board can move and turn within its clearance holes, and what a new seating does to the commutation"
                    + " offset.",
            List.of(
                    EncoderInputs.length("hole", "diameter of the holes", "3.4 mm", 0.5, 50),
                    EncoderInputs.length("screw", "diameter of the screws", "3 mm", 0.5, 50),
                    EncoderInputs.length("bolt_circle", "distance of the screws from the axis", "10 mm", 1, 500),
                    EncoderInputs.polePairs()),
            List.of(
                    new Result("float", "largest shift from the centre", "mm"),
                    new Result("turn", "largest turn from the middle", "deg"),
                    new Result("offset_change", "electrical angle of that turn", "deg")),
            List.of(
                    Line.of("float", "{f} = ({D} − {d})/2", SIZES, MountSheets::floatMetre, "D=hole", "d=screw"),
                    Line.of(
                            "turn",
                            "{φ} = atan(({D} − {d})/(2 · {r}))",
                            "geometry",
                            x -> ClearanceHole.turnRad(floatMetre(x), x[2]),
                            "D=hole",
                            "d=screw",
                            "r=bolt_circle"),
                    Line.of(
                            "offset_change",
                            "{φe} = {p} · atan(({D} − {d})/(2 · {r}))",
                            "geometry",
                            x -> x[3] * ClearanceHole.turnRad(floatMetre(x), x[2]),
                            "D=hole",
                            "d=screw",
                            "r=bolt_circle",
                            "p=pole_pairs")));

    private MountSheets() {}

    static List<Worksheet> all() {
        return List.of(MISPLACEMENT_SHEET, WINDOW_SHEET, SCREW_FLOAT_SHEET);
    }

    private static Input offset(String name, String meaning) {
        return EncoderInputs.length(name, meaning, "0.2 mm", 0, 5).orElse("0 mm");
    }

    private static Input tilt(String name, String meaning) {
        return EncoderInputs.angle(name, meaning, "1 deg", 30).orElse("0 deg");
    }

    private static ToDoubleFunction<double[]> harmonic(int order) {
        return x -> rounded(
                turn(x).turn(new Sensing.Point(), ANGLES).error().ripple(order).amplitudeRad());
    }

    private static double rounded(double rad) {
        return Math.abs(rad) < ROUNDING_RAD ? 0 : rad;
    }

    private static Assembly turn(double[] x) {
        return Assembly.centred(RoundMagnet.disc(x[0], x[1]), 1, x[2])
                .withElevation(x[8])
                .withOffsets(new Planar(x[3], 0), new Planar(x[4], 0))
                .withTilts(new Planar(x[5], 0), new Planar(x[6], x[7]));
    }

    private static Input temperature(String name, String meaning, String example) {
        return Input.quantity(name, Dimension.TEMPERATURE, meaning, example)
                .within(Quantity.of(-100, "degC"), Quantity.of(300, "degC"));
    }

    private static Interval gaps(double[] x) {
        double kelvinOfZero = 273.15;
        Interval remanence = new Remanence(Math.min(x[2], x[3]), Math.max(x[2], x[3]), x[4], 20)
                .overCelsius(Math.min(x[5], x[6]) - kelvinOfZero, Math.max(x[5], x[6]) - kelvinOfZero);
        return GapWindow.metre(
                        RoundMagnet.disc(x[0], x[1]),
                        remanence,
                        new Interval(Math.min(x[7], x[8]), Math.max(x[7], x[8])),
                        Math.max(1e-3, x[9]))
                .orElse(new Interval(0, 0));
    }

    private static double floatMetre(double[] x) {
        return Math.max(0, x[0] - x[1]) / 2;
    }
}
