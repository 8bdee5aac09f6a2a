package servowright.engine.worksheet.motor;

import java.util.List;
import servowright.engine.known.Outcome;
import servowright.engine.known.Term;
import servowright.engine.motor.Conductor;
import servowright.engine.motor.HotEffect;
import servowright.engine.motor.MagnetMaterial;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.UsualInputs;
import servowright.engine.worksheet.Worksheet;

/** What warm copper and warm magnets together do to a motor. */
public final class HotMotorSheet implements Worksheet {
    private static final String COPPER =
            "R(t) = R(t0) (k + t)/(k + t0); k 234.5 for copper of 100 % IACS, 235 in IEC 60034-1 (seen as quoted)";
    private static final String MAGNET =
            "λ(t) = λ(20 °C) [1 + α (t − 20 °C)]; usual α of the material (handbook range, from memory)";
    private static final String BOTH = "loss R i² at the same torque, with i as 1/λ";

    private static final Declaration DECLARATION = new Declaration(
            "hot-motor",
            "Warm winding and warm magnets",
            "How resistance, torque constant and copper loss change between two temperatures. Reversible changes only: above"
                    + " the limit of their grade magnets lose flux for good.",
            List.of(
                    UsualInputs.temperature("winding_from", "winding temperature of the known figures", "20 degC")
                            .orElse("20 degC"),
                    UsualInputs.temperature("winding_to", "winding temperature in question", "120 degC"),
                    UsualInputs.temperature("magnets_from", "magnet temperature of the known figures", "20 degC")
                            .orElse("20 degC"),
                    UsualInputs.temperature("magnets_to", "magnet temperature in question", "80 degC"),
                    Conductors.conductor(),
                    Conductors.magnetMaterial()),
            List.of(
                    new Result("resistance_factor", "resistance, warm over cold", ""),
                    new Result("flux_factor", "flux linkage and torque constant, warm over cold", ""),
                    new Result("loss_factor", "copper loss for the same torque, warm over cold", ""),
                    new Result("torque_factor", "torque for the same copper loss, warm over cold", "")),
            List.of(COPPER, MAGNET, BOTH));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs)
                .needs("winding_to", "magnets_to")
                .work(HotMotorSheet::fill);
    }

    private static void fill(Calculation c) {
        Conductor conductor = Conductors.conductor(c.inputs());
        MagnetMaterial material = Conductors.magnetMaterial(c.inputs());
        Term resistance = c.result(
                "resistance_factor",
                "{f R} = (" + conductor.kCelsius() + " + {t}) / (" + conductor.kCelsius() + " + {t0}), in °C",
                COPPER,
                x -> conductor.resistanceFactor(x[0], x[1]),
                c.given("t0", "winding_from"),
                c.given("t", "winding_to"));
        String alpha = String.valueOf(material.perKelvin());
        Term flux = c.result(
                "flux_factor",
                "{f λ} = (1 + " + alpha + " ({t} − 20)) / (1 + " + alpha + " ({t0} − 20)), in °C",
                MAGNET,
                x -> material.fluxFactor(x[0], x[1]),
                c.given("t0", "magnets_from"),
                c.given("t", "magnets_to"));
        c.result(
                "loss_factor",
                "{loss} = {f R} / {f λ}²",
                BOTH,
                x -> new HotEffect(x[0], x[1]).lossForSameTorque(),
                resistance,
                flux);
        c.result(
                "torque_factor",
                "{torque} = {f λ} / √{f R}",
                BOTH,
                x -> new HotEffect(x[0], x[1]).torqueForSameLoss(),
                resistance,
                flux);
    }
}
