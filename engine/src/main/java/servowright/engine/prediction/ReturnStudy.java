package servowright.engine.prediction;

import java.util.Optional;
import java.util.function.Supplier;
import servowright.engine.bench.MotorParameter;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Term;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Duty;
import servowright.engine.machine.SupplyFigure;
import servowright.engine.motion.MovingEnergy;
import servowright.engine.power.CapacitorRise;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** What comes back into the supply when an axis brakes? */
public final class ReturnStudy {
    private static final String BALANCE = "power balance; copper loss while braking not taken off";

    private ReturnStudy() {}

    /** Return of one duty. */
    public static Outcome<Returned> of(AxisParts parts, Duty duty) {
        Inquiry in = new Inquiry();
        Supplier<Demand> demand = in.take(DemandStudy.of(parts, duty));
        Supplier<Declared> supply = in.take(parts.supply(SupplyFigure.VOLTAGE));
        Optional<Known> capacitance = parts.supplyFigure(SupplyFigure.CAPACITANCE);
        in.assume(Phrase.of("all of the braking power comes back: copper loss would take some of it"));
        return in.answer(() -> {
            Known full = Wanted.most(supply.get());
            Known power = demand.get().brakingPower();
            Known current = in.sheet()
                    .line(
                            "current that comes back, at most",
                            "{Ib} = {Pb} / {V}",
                            "A",
                            Dimension.CURRENT,
                            BALANCE,
                            x -> x[0] / x[1],
                            Term.of("Pb", power, "W"),
                            Term.of("V", full, "V"));
            Known energy = energy(in, parts, demand.get().topSpeed());
            return new Returned(power, current, energy, capacitance.map(c -> rise(in, full, energy, c)));
        });
    }

    private static Known energy(Inquiry in, AxisParts parts, Known speed) {
        Known none = Known.exact(new Quantity(0, Dimension.INERTIA), Origin.DECLARED, "not stated");
        Known turns = parts.own(AxisFigure.MOTOR_TURNS).orElse(Known.number(1, Origin.ASSUMED, "no gear"));
        return in.sheet()
                .line(
                        "moving energy at top speed",
                        "{E} = 1/2 · ({J} + {Jg} + {JL} / {n}²) · {ω}²",
                        "J",
                        Dimension.ENERGY,
                        "kinetic energy of rotation",
                        x -> MovingEnergy.joule(x[0] + x[1] + x[2] / (x[3] * x[3]), x[4]),
                        Term.of(
                                "J",
                                parts.parameter(MotorParameter.ROTOR_INERTIA)
                                        .found()
                                        .orElse(none),
                                "kg cm2"),
                        Term.of("Jg", parts.own(AxisFigure.GEAR_INERTIA).orElse(none), "kg cm2"),
                        Term.of("JL", parts.own(AxisFigure.LOAD_INERTIA).orElse(none), "kg m2"),
                        Term.of("n", turns),
                        Term.of("ω", speed, "rpm"));
    }

    private static Known rise(Inquiry in, Known full, Known energy, Known capacitance) {
        return in.sheet()
                .line(
                        "voltage the capacitors rise to",
                        "{V2} = √({V}² + 2 · {E} / {C})",
                        "V",
                        Dimension.VOLTAGE,
                        "energy of a capacitor",
                        x -> CapacitorRise.volt(x[0], x[1], x[2]),
                        Term.of("V", full, "V"),
                        Term.of("E", energy, "J"),
                        Term.of("C", capacitance, "mF"));
    }
}
