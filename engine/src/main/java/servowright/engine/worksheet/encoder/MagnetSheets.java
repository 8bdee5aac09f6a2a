package servowright.engine.worksheet.encoder;

import java.util.List;
import servowright.engine.encoder.AxisField;
import servowright.engine.encoder.IronBound;
import servowright.engine.encoder.RoundMagnet;
import servowright.engine.encoder.StrayField;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Worksheet;

/** Field of the magnet and of what disturbs it. */
final class MagnetSheets {
    private static final String CHARGE = "surface charge of a uniform cylinder, exact on the axis (derived)";
    private static final String IMAGES = "image in a plane of infinite permeability, an upper bound (derived)";
    private static final String PHASOR = "phasor of the two channels, first order (derived)";
    private static final String[] DISC = {"D=diameter", "L=length", "Br=remanence", "g=gap"};

    private static final Worksheet FIELD_SHEET = LineSheet.of(
            "magnet-field",
            "Field of a disc magnet before its face",
            "Flux density on the axis of a disc magnetised across its axis, how it changes with the gap, and how"
                    + " sensitive the angle is to eccentricity. Permeability 1; steel nearby is not in it.",
            List.of(
                    EncoderInputs.diameter(),
                    EncoderInputs.thickness(),
                    EncoderInputs.remanence("remanence", "remanence of the magnet", "1.2 T"),
                    EncoderInputs.gap(),
                    EncoderInputs.field("field", "flux density to find the gap for", "70 mT")),
            List.of(
                    new Result("field_across", "flux density across the axis at the element", "mT"),
                    new Result("field_slope", "change of it per gap", "mT/mm"),
                    new Result("field_along", "flux density along the axis if magnetised along it", "mT"),
                    new Result("eccentricity", "error per square of sensor offset, second harmonic", "deg/mm2"),
                    new Result("gap_for_field", "widest gap with the flux density asked for", "mm"),
                    new Result("gap_without_error", "gap at which eccentricity does no harm", "mm")),
            List.of(
                    Line.of(
                            "field_across",
                            "{B} = ({Br}/4) · [u({g} + {L}) − u({g})], u(s) = s/√({D}²/4 + s²)",
                            CHARGE,
                            x -> axis(x).strengthTesla(),
                            DISC),
                    Line.of(
                            "field_slope",
                            "{B'} = ({Br}/4) · {D}²/4 · [({D}²/4 + s²)^(−3/2)], s from {g} to {g} + {L}",
                            CHARGE,
                            x -> axis(x).slopeTeslaPerMetre(),
                            DISC),
                    Line.of(
                            "field_along",
                            "{B} = ({Br}/2) · [u({g} + {L}) − u({g})], u(s) = s/√({D}²/4 + s²)",
                            CHARGE,
                            x -> axis(x).alongAxisTesla(),
                            DISC),
                    Line.of(
                            "eccentricity",
                            "{κ} = −B''/(8 B) at {g} of a disc {D} by {L}",
                            CHARGE,
                            x -> RoundMagnet.disc(x[0], x[1]).onAxis(1, x[2]).kappaPerSquareMetre(),
                            "D=diameter",
                            "L=length",
                            "g=gap"),
                    Line.of(
                            "gap_for_field",
                            "{g} where B of {Br}, {D} and {L} is {B}",
                            CHARGE,
                            x -> disc(x).widestGapMetre(x[2], x[3]).orElse(0),
                            "D=diameter",
                            "L=length",
                            "Br=remanence",
                            "B=field"),
                    Line.of(
                            "gap_without_error",
                            "{g} where B'' of a disc {D} by {L} is 0",
                            CHARGE,
                            x -> disc(x).gapWithoutEccentricityErrorMetre().orElse(0),
                            "D=diameter",
                            "L=length")));

    private static final String[] STEEL_INPUTS = {"D=diameter", "L=length", "g=gap", "d=distance"};

    private static final Worksheet STEEL_SHEET = LineSheet.of(
            "steel-nearby",
            "Field lost to a steel plane",
            "Share of the field at the sensor that a steel plane behind the magnet or behind the sensor takes away. Upper"
                    + " bounds: a real shaft end is finite and takes less.",
            List.of(
                    EncoderInputs.diameter(),
                    EncoderInputs.thickness(),
                    EncoderInputs.gap(),
                    EncoderInputs.length("distance", "magnet face or sensing element to the steel", "2 mm", 0, 200)),
            List.of(
                    new Result("behind_magnet", "change of the field, steel behind the magnet", "%"),
                    new Result("behind_sensor", "change of the field, steel behind the sensor", "%")),
            List.of(
                    Line.of(
                            "behind_magnet",
                            "{change} = −B({g} + {L} + 2 {d})/B({g}), diameter {D}",
                            IMAGES,
                            x -> IronBound.behindMagnet(disc(x), x[2], x[3]),
                            STEEL_INPUTS),
                    Line.of(
                            "behind_sensor",
                            "{change} = −B({g} + 2 {d})/B({g}), diameter {D} and length {L}",
                            IMAGES,
                            x -> IronBound.behindSensor(disc(x), x[2], x[3]),
                            STEEL_INPUTS)));

    private static final Worksheet STRAY_SHEET = LineSheet.of(
            "stray-field",
            "Angle error from a stray field",
            "First harmonic of the angle from a field that does not turn with the shaft, given or from a straight"
                    + " conductor. For sensors that read the field at one place; differences over a distance cancel it.",
            List.of(
                    EncoderInputs.field("magnet_field", "flux density of the magnet at the sensor", "50 mT"),
                    EncoderInputs.field("stray_field", "flux density of the stray field there", "0.5 mT"),
                    Input.quantity("current", Dimension.CURRENT, "current in a nearby conductor", "10 A")
                            .within(Quantity.of(0, "A"), Quantity.of(1e5, "A")),
                    EncoderInputs.length("distance", "conductor to sensing element", "5 mm", 0.1, 1e4)),
            List.of(
                    new Result("error", "first harmonic from the stray field", "deg"),
                    new Result("conductor_field", "flux density of the conductor", "mT"),
                    new Result("conductor_error", "first harmonic from the conductor", "deg")),
            List.of(
                    Line.of("error", "{A1} = {Bs}/{B}", PHASOR, x -> x[0] / x[1], "Bs=stray_field", "B=magnet_field"),
                    Line.of(
                            "conductor_field",
                            "{Bs} = μ0 · {I} / (2π · {d})",
                            "Ampère's law, long straight conductor",
                            x -> StrayField.ofConductorTesla(x[0], x[1]),
                            "I=current",
                            "d=distance"),
                    Line.of(
                            "conductor_error",
                            "{A1} = μ0 · {I} / (2π · {d} · {B})",
                            PHASOR,
                            x -> StrayField.ofConductorTesla(x[0], x[1]) / x[2],
                            "I=current",
                            "d=distance",
                            "B=magnet_field")));

    private MagnetSheets() {}

    static List<Worksheet> all() {
        return List.of(FIELD_SHEET, STEEL_SHEET, STRAY_SHEET);
    }

    private static RoundMagnet disc(double[] x) {
        return RoundMagnet.disc(x[0], x[1]);
    }

    private static AxisField axis(double[] x) {
        return disc(x).onAxis(x[2], x[3]);
    }
}
