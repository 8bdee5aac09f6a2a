package servowright.engine.prediction;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import servowright.engine.bench.MotorParameter;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Propagation;
import servowright.engine.known.Source;
import servowright.engine.known.Term;
import servowright.engine.machine.Duty;
import servowright.engine.machine.MotorFigure;
import servowright.engine.motor.Conductor;
import servowright.engine.power.CopperLoss;
import servowright.engine.quantity.Dimension;
import servowright.engine.thermal.CopperHeat;

/** What torque may a motor give for good before its winding gets too warm, and how warm does a duty make it? */
public final class HeatStudy {
    private static final String BALANCE = "heat balance with resistance that grows with temperature, copper loss alone";

    /** Half width, as a share, of a thermal resistance that a data sheet gives without limits: the mounting decides. */
    private static final double MOUNTING = 0.30;

    private HeatStudy() {}

    /** Heat of one duty. */
    public static Outcome<Heat> of(AxisParts parts, Duty duty) {
        Inquiry in = new Inquiry();
        Supplier<Demand> demand = in.take(DemandStudy.of(parts, duty));
        Supplier<Current> current = in.take(CurrentStudy.of(parts, duty));
        Supplier<Known> ohm = in.take(parts.parameter(MotorParameter.PHASE_RESISTANCE));
        Supplier<Known> thermal = in.take(thermalResistance(parts));
        Known limit = WarmMotorStudy.limit(in, parts);
        Known warmest = WarmMotorStudy.warmest(in, parts);
        in.assume(Phrase.of("copper loss alone; iron loss and friction heat not counted; the cycle is short against the"
                + " winding's time constant"));
        return in.answer(() -> {
            Known kelvinPerWatt = mounted(in, thermal.get());
            boolean atRest = demand.get().atRest();
            Known amp = allowed(in, kelvinPerWatt, limit, warmest, ohm.get(), atRest);
            Known torque = in.sheet()
                    .line(
                            "torque it may give for good",
                            "{Tc} = {Kt} · {ic}",
                            "N m",
                            Dimension.TORQUE,
                            BALANCE,
                            x -> x[0] * x[1],
                            Term.of("Kt", current.get().torqueConstant(), "N m/A"),
                            Term.of("ic", amp, "A"));
            Known loss = loss(in, current.get().rms(), ohm.get(), atRest);
            return new Heat(
                    demand.get().rmsTorque(), torque, amp, limit, settled(in, kelvinPerWatt, warmest, loss), loss);
        });
    }

    /** As measured on the bench, else as declared. */
    private static Outcome<Known> thermalResistance(AxisParts parts) {
        Outcome<Known> measured = parts.parameter(MotorParameter.THERMAL_RESISTANCE);
        boolean onBench =
                measured.found().filter(k -> k.origin() == Origin.MEASURED).isPresent();
        return onBench ? measured : parts.motor(MotorFigure.THERMAL_RESISTANCE);
    }

    private static Known mounted(Inquiry in, Known stated) {
        if (stated.origin() == Origin.MEASURED || stated.standardUncertainty() > 0) {
            return stated;
        }
        in.assume(Phrase.of("thermal resistance taken as good to {share}: how the motor is mounted decides")
                .with("share", servowright.engine.quantity.Quantity.number(MOUNTING), "%"));
        return stated.withPart(Source.of("mounting behind " + stated.from()), MOUNTING * stated.si() / Math.sqrt(3));
    }

    private static CopperHeat copper(double ambient, double kelvinPerWatt) {
        return new CopperHeat(
                ambient,
                kelvinPerWatt,
                WarmMotorStudy.REFERENCE_KELVIN,
                Conductor.COPPER_IACS.relativePerKelvin(WarmMotorStudy.REFERENCE_KELVIN));
    }

    private static Known allowed(Inquiry in, Known thermal, Known limit, Known warmest, Known ohm, boolean atRest) {
        double share = atRest ? CopperHeat.standstillShare() : 1;
        String standing = atRest ? " · 1/√2" : "";
        return in.sheet()
                .line(
                        atRest
                                ? "current one phase may carry standing still"
                                : "current the winding may carry for good",
                        "{ic} = √(({tmax} - {ta}) / ({Rth} · 3/2 · {R} · (234.5 + {tmax}) / 254.5))" + standing,
                        "A",
                        Dimension.CURRENT,
                        BALANCE,
                        x -> share
                                * (x[0] > x[1]
                                        ? copper(x[1], x[2])
                                                .continuous(x[0], x[3], 1, 0)
                                                .phasePeakAmp()
                                        : 0),
                        Term.of("tmax", limit, "degC"),
                        Term.of("ta", warmest, "degC"),
                        Term.of("Rth", thermal, "K/W"),
                        Term.of("R", ohm, "mohm"));
    }

    private static Known loss(Inquiry in, Known rms, Known ohm, boolean atRest) {
        double phases = atRest ? 2 : 1;
        return in.sheet()
                .line(
                        "copper loss at 20 degC",
                        atRest ? "{P20} = 2 · 3/2 · {R} · {irms}²" : "{P20} = 3/2 · {R} · {irms}²",
                        "W",
                        Dimension.POWER,
                        atRest
                                ? "Joule's law; standing still, one phase may heat twice as much as the mean"
                                : "Joule's law",
                        x -> phases * CopperLoss.watt(x[1], x[0]),
                        Term.of("R", ohm, "mohm"),
                        Term.of("irms", rms, "A"));
    }

    private static Optional<Known> settled(Inquiry in, Known thermal, Known warmest, Known loss) {
        if (copper(warmest.si(), thermal.si()).settledKelvin(loss.si()).isEmpty()) {
            return Optional.empty();
        }
        Known kelvin = Propagation.derive(
                Dimension.TEMPERATURE,
                x -> copper(x[1], x[0]).settledKelvin(x[2]).orElse(Double.MAX_VALUE),
                List.of(thermal, warmest, loss));
        return Optional.of(in.sheet()
                .note(
                        "winding temperature under the duty",
                        "{t} = {ta} + {Rth} · {P20} · (234.5 + {t}) / 254.5",
                        "degC",
                        BALANCE,
                        kelvin,
                        Term.of("ta", warmest, "degC"),
                        Term.of("Rth", thermal, "K/W"),
                        Term.of("P20", loss, "W")));
    }
}
