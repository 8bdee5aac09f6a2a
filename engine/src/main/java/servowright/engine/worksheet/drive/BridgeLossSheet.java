package servowright.engine.worksheet.drive;

import java.util.List;
import servowright.engine.known.Outcome;
import servowright.engine.known.Term;
import servowright.engine.power.BridgeLoss;
import servowright.engine.power.LinkCapacitor;
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

/** Heat in the bridge and current in its capacitor. */
public final class BridgeLossSheet implements Worksheet {
    private static final String SINE = "averages over a sine, MOSFETs that conduct both ways (derived)";
    private static final String LINK =
            "Kolar, Round, IEE Proceedings Electric Power Applications 153(4) 2006 (formula from memory)";

    private static final Declaration DECLARATION = new Declaration(
            "bridge-loss",
            "Heat in the bridge, current in its capacitor",
            "Conduction, switching and dead-time loss of a three-phase MOSFET bridge with sinusoidal current, and the ripple"
                    + " current of the capacitor at the bus. Gate drive and current ripple are not in it.",
            List.of(
                    UsualInputs.current("current", "motor current"),
                    UsualInputs.ohm("switch_resistance", "resistance of one switch, warm", "2 mohm"),
                    Input.quantity(
                                    "switching_energy",
                                    Dimension.ENERGY,
                                    "energy of one on and off at that current",
                                    "60 uJ")
                            .within(Quantity.of(0, "J"), Quantity.of(10, "J"))
                            .orElse("0 J"),
                    UsualInputs.frequency("pwm", "switching frequency", "20 kHz"),
                    UsualInputs.time("dead_time", "dead time at each edge", "0.5 us"),
                    Input.quantity("diode_drop", Dimension.VOLTAGE, "forward drop of the body diode", "0.9 V")
                            .within(Quantity.of(0, "V"), Quantity.of(5, "V"))
                            .orElse("0.9 V"),
                    Input.quantity("depth_of_half", Dimension.NUMBER, "phase peak over half the bus voltage", "0.6")
                            .within(Quantity.number(0), Quantity.number(1.1547)),
                    Input.quantity("power_factor", Dimension.NUMBER, "power factor of the motor", "1")
                            .within(Quantity.number(-1), Quantity.number(1))
                            .orElse("1")),
            List.of(
                    new Result("conduction", "loss of conduction", "W"),
                    new Result("switching", "loss of the edges", "W"),
                    new Result("dead_time_diodes", "loss of the diodes in the dead time", "W"),
                    new Result("total", "heat of the bridge", "W"),
                    new Result("capacitor_current", "ripple current of the bus capacitor, RMS", "A")),
            List.of(SINE, LINK));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        boolean bridge = inputs.has("switch_resistance") && inputs.has("pwm") && inputs.has("dead_time");
        return Calculation.of(DECLARATION, inputs)
                .needs("current")
                .needs(
                        bridge || inputs.has("depth_of_half"),
                        "switch resistance, switching frequency and dead time, or a depth of modulation",
                        "give switch_resistance, pwm and dead_time")
                .work(c -> {
                    Term current = PhaseValue.current(c, "current");
                    if (bridge) {
                        loss(c, current);
                    }
                    c.term("M", "depth_of_half").ifPresent(m -> capacitor(c, current, m));
                });
    }

    private static void loss(Calculation c, Term current) {
        Term[] terms = {
            current,
            c.given("R on", "switch_resistance"),
            c.given("E", "switching_energy"),
            c.given("V d", "diode_drop"),
            c.given("td", "dead_time"),
            c.given("f", "pwm")
        };
        String i = "{" + current.symbol() + "}";
        if (current.value().si() > 0) {
            c.result(
                    "conduction",
                    "{P c} = 3/2 · {R on} · " + i + "²",
                    SINE,
                    x -> bridge(x).conductionWatt(),
                    terms);
            c.result(
                    "switching", "{P s} = 6/π · {E} · {f}", SINE, x -> bridge(x).switchingWatt(), terms);
            c.result(
                    "dead_time_diodes",
                    "{P d} = 12/π · {td} · {f} · {V d} · " + i,
                    SINE,
                    x -> bridge(x).diodeWatt(),
                    terms);
            c.result(
                    "total",
                    "{P} = sum for " + i + ", {R on}, {E}, {V d}, {td}, {f}",
                    SINE,
                    x -> bridge(x).totalWatt(),
                    terms);
        }
    }

    private static BridgeLoss bridge(double[] x) {
        return BridgeLoss.of(new BridgeLoss.Switches(x[1], x[2], x[0], x[3], x[4], x[5]), x[0]);
    }

    private static void capacitor(Calculation c, Term current, Term depth) {
        c.result(
                "capacitor_current",
                "{I c} = {" + current.symbol() + "}/√2 · √(2 {M} (√3/(4π) + {cos φ}² (√3/π − 9 {M}/16)))",
                LINK,
                x -> LinkCapacitor.rmsAmp(x[0] / Math.sqrt(2), x[1], x[2]),
                current,
                depth,
                c.given("cos φ", "power_factor"));
    }
}
