package servowright.engine.worksheet.duty;

import java.util.List;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Problem;
import servowright.engine.known.Term;
import servowright.engine.motion.MovingEnergy;
import servowright.engine.power.CapacitorRise;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Contradictions;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.UsualInputs;
import servowright.engine.worksheet.Worksheet;

/** Energy that a stop sends back and what it does to the bus. */
public final class BrakeEnergySheet implements Worksheet {
    private static final String KINETIC = "kinetic energy J ω²/2";
    private static final String CAPACITOR = "energy of a capacitor C V²/2";

    private static final Declaration DECLARATION = new Declaration(
            "brake-energy",
            "Energy of a stop and the bus",
            "Energy of a turning axis, the share that comes back, the voltage it lifts the bus capacitor to when nothing else"
                    + " takes it, and the capacitance that keeps the voltage below a limit. A supply that takes current back,"
                    + " a brake resistor or a battery keeps it lower.",
            List.of(
                    Input.quantity(
                                    "inertia",
                                    Dimension.INERTIA,
                                    "inertia at the shaft whose speed is given",
                                    "0.004 kg m2")
                            .within(Quantity.of(1e-12, "kg m2"), Quantity.of(1e6, "kg m2")),
                    UsualInputs.speed("speed", "speed at the start of the stop"),
                    Input.quantity("returned", Dimension.NUMBER, "share that reaches the bus", "0.85")
                            .within(Quantity.number(0), Quantity.number(1))
                            .orElse("1"),
                    UsualInputs.supply(),
                    Input.quantity("capacitance", Dimension.CAPACITANCE, "capacitance at the bus", "4.7 mF")
                            .within(Quantity.of(1e-9, "F"), Quantity.of(1e3, "F")),
                    Input.quantity("highest_voltage", Dimension.VOLTAGE, "voltage to keep below", "56 V")
                            .within(Quantity.of(1, "V"), Quantity.of(2000, "V"))),
            List.of(
                    new Result("kinetic_energy", "energy of the turning axis", "J"),
                    new Result("returned_energy", "energy that reaches the bus", "J"),
                    new Result("bus_voltage", "bus voltage after the stop", "V"),
                    new Result("capacitance_needed", "capacitance that keeps the voltage", "F")),
            List.of(KINETIC, CAPACITOR));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public List<Problem> contradictions(Inputs inputs) {
        double supply = inputs.known("supply").map(Known::si).orElse(0.0);
        return new Contradictions(DECLARATION)
                .when(
                        inputs.known("highest_voltage")
                                .filter(v -> v.si() <= supply)
                                .isPresent(),
                        "highest_voltage",
                        "it is not above the supply",
                        "Give the voltage at which the drive trips.")
                .problems();
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs).needs("inertia", "speed").work(BrakeEnergySheet::fill);
    }

    private static void fill(Calculation c) {
        Term energy = c.result(
                "kinetic_energy",
                "{E} = {J} · {ω}² / 2",
                KINETIC,
                x -> MovingEnergy.joule(x[0], x[1]),
                c.given("J", "inertia"),
                c.given("ω", "speed"));
        Term back = c.result(
                "returned_energy",
                "{E back} = {η} · {E}",
                "share stated",
                x -> x[0] * x[1],
                c.given("η", "returned"),
                energy);
        if (!c.inputs().has("supply")) {
            return;
        }
        Term volt = c.given("V1", "supply");
        c.term("C", "capacitance")
                .ifPresent(farad -> c.result(
                        "bus_voltage",
                        "{V2} = √({V1}² + 2 · {E back} / {C})",
                        CAPACITOR,
                        x -> CapacitorRise.volt(x[0], x[1], x[2]),
                        volt,
                        back,
                        farad));
        c.term("V max", "highest_voltage")
                .ifPresent(most -> c.result(
                        "capacitance_needed",
                        "{C} = 2 · {E back} / ({V max}² − {V1}²)",
                        CAPACITOR,
                        x -> CapacitorRise.farad(x[0], x[1], x[2]),
                        volt,
                        back,
                        most));
    }
}
