package servowright.engine.worksheet.encoder;

import static servowright.engine.worksheet.encoder.EncoderInputs.whole;

import java.util.List;
import servowright.engine.encoder.GearedAngle;
import servowright.engine.encoder.OffsetAtSpeeds.Direction;
import servowright.engine.encoder.SinglePrecision;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.UsualInputs;
import servowright.engine.worksheet.Worksheet;

/** What an angle is worth when power comes, when it was found from one side, and after a long run. */
final class StartSheets {
    private static final String GEAR = "turns of the motor within the travel of the output (derived)";
    private static final String HALVES = "mean and half difference of two directions (derived)";
    private static final String FLOAT = "IEEE 754 binary32";

    private static final String[] BOTH_WAYS = {"F=forwards", "B=back"};

    private static final Worksheet GEARED_SHEET = LineSheet.of(
            "geared-angle",
            "Angle through a gear",
            "How many places of the output one reading before the gear can mean, what a second sensor on the output must keep"
                    + " to tell them apart, and what commutating from the output costs.",
            List.of(
                    Input.quantity("gear_ratio", Dimension.NUMBER, "motor turns per turn of the output", "10")
                            .within(Quantity.number(1e-3), Quantity.number(1e5)),
                    EncoderInputs.angle("travel", "travel of the output", "270 deg", 1e6),
                    EncoderInputs.angle("output_error", "error of a sensor on the output", "0.1 deg", 180),
                    EncoderInputs.polePairs()),
            List.of(
                    new Result("places", "places of the output per reading", ""),
                    new Result("alias", "distance of two places with the same reading", "deg"),
                    new Result(
                            "second_sensor", "most a second sensor may err, or the output move without power", "deg"),
                    new Result("commutation_error", "electrical error through the gear", "deg")),
            List.of(
                    Line.of(
                            "places",
                            "{n} = ⌈{i} · {travel}/2π⌉",
                            GEAR,
                            x -> GearedAngle.meanings(x[0], Math.max(1e-9, x[1])),
                            "i=gear_ratio",
                            "travel=travel"),
                    Line.of("alias", "{a} = 2π/{i}", GEAR, x -> 2 * Math.PI / x[0], "i=gear_ratio"),
                    Line.of(
                            "second_sensor",
                            "{ε} = π/{i}",
                            GEAR,
                            x -> GearedAngle.tellsTurnWithinRad(x[0], 0),
                            "i=gear_ratio"),
                    Line.of(
                            "commutation_error",
                            "{εe} = {ε} · {p} · {i}",
                            GEAR,
                            x -> GearedAngle.throughGearElectricalRad(x[0], whole(x[1]), x[2]),
                            "ε=output_error",
                            "p=pole_pairs",
                            "i=gear_ratio")));

    private static final Worksheet OFFSET_SHEET = LineSheet.of(
            "offset-both-ways",
            "Commutation offset from both directions",
            "The offset between what was found turning forwards and back, what held the rotor back, and what an offset from one"
                    + " direction alone costs in the other. At speed the half difference may be delay instead of friction.",
            List.of(
                    EncoderInputs.angle("forwards", "offset found turning forwards, electrical", "0.63 rad", 360),
                    EncoderInputs.angle("back", "offset found turning back, electrical", "1.82 rad", 360),
                    UsualInputs.speed("speed", "speed of the motor while they were found"),
                    EncoderInputs.polePairs()),
            List.of(
                    new Result("offset", "offset free of the direction, electrical", "deg"),
                    new Result("lag", "held back, electrical", "deg"),
                    new Result("torque_left", "share of the torque if nothing holds back but the lag stays", "%"),
                    new Result("torque_left_other", "share in one direction with the offset of the other", "%"),
                    new Result("delay", "delay, if all of it is delay", "us")),
            List.of(
                    Line.of("offset", "{θ0} = ({F} + {B})/2", HALVES, x -> both(x).staticRad(), BOTH_WAYS),
                    Line.of("lag", "{δ} = |{F} − {B}|/2", HALVES, StartSheets::lag, BOTH_WAYS),
                    Line.of("torque_left", "{k} = cos(({F} − {B})/2)", HALVES, x -> Math.cos(lag(x)), BOTH_WAYS),
                    Line.of("torque_left_other", "{k} = cos({F} − {B})", HALVES, x -> Math.cos(2 * lag(x)), BOTH_WAYS),
                    Line.of(
                            "delay",
                            "{τ} = |{F} − {B}|/(2 · {p} · {ω})",
                            HALVES,
                            x -> Math.abs(both(x).asDelaySecond(Math.max(1e-9, whole(x[2]) * Math.abs(x[3])))),
                            "F=forwards",
                            "B=back",
                            "p=pole_pairs",
                            "ω=speed")));

    private static final Worksheet FLOAT_SHEET = LineSheet.of(
            "angle-in-float",
            "An angle in single precision",
            "How long a count, and how far an angle, may run in a number of single precision, and below which speed an angle"
                    + " that is added up step by step stands still.",
            List.of(
                    Input.quantity("counts", Dimension.NUMBER, "counts per turn", "4096")
                            .within(Quantity.number(1), Quantity.number(1L << 40)),
                    UsualInputs.speed("speed", "speed of the shaft"),
                    Input.quantity("angle", Dimension.ANGLE, "angle run so far", "30000 rad")
                            .within(Quantity.of(0, "rad"), Quantity.of(1e12, "rad")),
                    EncoderInputs.frequency("rate", "steps in a second", "1 kHz")),
            List.of(
                    new Result("counting", "time until single counts are lost", "s"),
                    new Result("spacing", "distance of two numbers there", "rad"),
                    new Result("stands_below", "speed below which the angle stands still", "rad/s")),
            List.of(
                    Line.of(
                            "counting",
                            "{t} = 2^24/({N} · {ω}/2π)",
                            FLOAT,
                            x -> SinglePrecision.countingSecond(x[0], Math.max(1e-9, Math.abs(x[1]))),
                            "N=counts",
                            "ω=speed"),
                    Line.of(
                            "spacing",
                            "{u}: spacing of numbers of 24 bits at {θ}",
                            FLOAT,
                            x -> SinglePrecision.spacingRad(x[0]),
                            "θ=angle"),
                    Line.of(
                            "stands_below",
                            "{ω} = u({θ})/2 · {f}",
                            FLOAT,
                            x -> SinglePrecision.standsBelowRadPerSecond(x[0], x[1]),
                            "θ=angle",
                            "f=rate")));

    private StartSheets() {}

    static List<Worksheet> all() {
        return List.of(GEARED_SHEET, new StartAngleSheet(), OFFSET_SHEET, FLOAT_SHEET);
    }

    private static Direction both(double[] x) {
        return Direction.of(x[0], x[1]);
    }

    private static double lag(double[] x) {
        return Math.abs(both(x).halfDifferenceRad());
    }
}
