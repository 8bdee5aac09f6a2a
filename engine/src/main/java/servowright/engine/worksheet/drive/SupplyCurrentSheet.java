package servowright.engine.worksheet.drive;

import java.util.List;
import servowright.engine.known.Outcome;
import servowright.engine.known.Term;
import servowright.engine.power.SupplyCurrent;
import servowright.engine.power.SupplySag;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.UsualInputs;
import servowright.engine.worksheet.Worksheet;
import servowright.engine.worksheet.motor.PhaseValue;

/** What a drive draws from its supply, which is no motor current. */
public final class SupplyCurrentSheet implements Worksheet {
    private static final String BALANCE =
            "power balance: torque times speed, copper loss and idle power come from the supply";

    private static final Declaration DECLARATION = new Declaration(
            "supply-current",
            "Supply current against motor current",
            "Mean current from the supply for a motor current, torque and speed. At standstill only the copper loss is paid"
                    + " for; a negative current means that power comes back.",
            List.of(
                    UsualInputs.supply(),
                    UsualInputs.current("current", "motor current"),
                    UsualInputs.resistance("resistance", "winding resistance, as warm as in question"),
                    Input.quantity(
                                    "torque",
                                    Dimension.TORQUE,
                                    "torque at the motor shaft; negative when braking",
                                    "0.5 N m")
                            .within(Quantity.of(-1e6, "N m"), Quantity.of(1e6, "N m"))
                            .orElse("0 N m"),
                    UsualInputs.speed("speed", "speed of the motor shaft").orElse("0 rpm"),
                    Input.quantity("idle_power", Dimension.POWER, "power the drive takes by itself", "2 W")
                            .within(Quantity.of(0, "W"), Quantity.of(1e4, "W"))
                            .orElse("0 W"),
                    Input.quantity(
                                    "source_resistance",
                                    Dimension.RESISTANCE,
                                    "inner resistance of the supply and its wires",
                                    "45 mohm")
                            .within(Quantity.of(1e-6, "ohm"), Quantity.of(1e3, "ohm"))),
            List.of(
                    new Result("copper_loss", "heat in the copper of three phases", "W"),
                    new Result("mechanical_power", "torque times speed", "W"),
                    new Result("supply_current", "mean current from the supply", "A"),
                    new Result("voltage_under_load", "voltage behind the inner resistance", "V"),
                    new Result("most_power", "most power the supply can give", "W")),
            List.of(BALANCE));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs)
                .needs("supply", "current", "resistance")
                .work(SupplyCurrentSheet::fill);
    }

    private static void fill(Calculation c) {
        Term[] terms = {
            c.given("T", "torque"),
            c.given("ω", "speed"),
            PhaseValue.current(c, "current"),
            PhaseValue.resistance(c, "resistance"),
            c.given("P idle", "idle_power"),
            c.given("V", "supply")
        };
        Term copper = c.result(
                "copper_loss",
                "{P} = 3/2 · {R} · {" + terms[2].symbol() + "}²",
                "Joule's law in three phases",
                x -> drawn(x).copperWatt(),
                terms);
        Term power = c.result(
                "mechanical_power", "{P out} = {T} · {ω}", "definition", x -> drawn(x).mechanicalWatt(), terms);
        c.result(
                "supply_current",
                "{I supply} = ({T} · {ω} + 3/2 · {R} · {" + terms[2].symbol() + "}² + {P idle}) / {V}",
                BALANCE,
                x -> drawn(x).busAmp(),
                terms);
        underLoad(c, terms, power, copper);
    }

    private static void underLoad(Calculation c, Term[] terms, Term power, Term copper) {
        c.term("Ri", "source_resistance").ifPresent(ri -> {
            c.result(
                    "voltage_under_load",
                    "{V load} = {V}/2 + √({V}²/4 − ({P out} + {P} + {P idle}) · {Ri})",
                    "constant power behind a resistance",
                    x -> SupplySag.volt(x[0], x[1], x[2] + x[3] + x[4]),
                    terms[5],
                    ri,
                    power,
                    copper,
                    terms[4]);
            c.result(
                    "most_power",
                    "{P most} = {V}² / (4 · {Ri})",
                    "maximum power theorem",
                    x -> SupplySag.mostWatt(x[0], x[1]),
                    terms[5],
                    ri);
        });
    }

    private static SupplyCurrent drawn(double[] x) {
        return SupplyCurrent.of(x[0], x[1], x[2], x[3], x[4], x[5]);
    }
}
