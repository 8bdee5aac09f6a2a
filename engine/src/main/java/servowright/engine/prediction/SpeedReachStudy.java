package servowright.engine.prediction;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import servowright.engine.bench.MotorParameter;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Propagation;
import servowright.engine.known.Term;
import servowright.engine.machine.Drive;
import servowright.engine.machine.DriveFigure;
import servowright.engine.machine.Duty;
import servowright.engine.motor.MotorConstants;
import servowright.engine.motor.OperatingPoint;
import servowright.engine.motor.SpeedReach;
import servowright.engine.motor.Winding;
import servowright.engine.power.Modulation;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** What speed does an axis reach with its supply empty, its winding warm and its magnets cold? */
public final class SpeedReachStudy {
    private static final String SOURCE =
            "steady-state dq voltage equations, Krause, Wasynczuk, Sudhoff, Pekarek, 2013, ch. 4 (recalled)";
    private static final Quantity USUAL_RESERVE = Quantity.of(10, "%");

    private SpeedReachStudy() {}

    /** The speed reach of one duty. */
    public static Outcome<Reach> of(AxisParts parts, Duty duty) {
        Inquiry in = new Inquiry();
        Supplier<Demand> demand = in.take(DemandStudy.of(parts, duty));
        Supplier<Draw> draw = in.take(DrawStudy.of(parts, duty));
        Supplier<Known> flux = in.take(WarmMotorStudy.coldFlux(parts));
        Supplier<Known> ohm = in.take(WarmMotorStudy.warmResistance(parts));
        Supplier<Known> pairs = in.take(parts.parameter(MotorParameter.POLE_PAIRS));
        Known d = inductance(in, parts, MotorParameter.D_INDUCTANCE);
        Known q = inductance(in, parts, MotorParameter.Q_INDUCTANCE);
        Known reserve = reserve(in, parts);
        Modulation modulation = modulation(in, parts);
        return in.answer(() -> {
            List<Known> winding = List.of(ohm.get(), d, q, flux.get(), pairs.get());
            return compute(in, demand.get(), draw.get().voltage(), winding, reserve, modulation);
        });
    }

    /** Share of the voltage kept for control. */
    static Known reserve(Inquiry in, AxisParts parts) {
        Optional<Known> stated = parts.drive().flatMap(x -> x.figures().known(DriveFigure.RESERVE));
        return in.orAssume(
                stated,
                USUAL_RESERVE,
                Phrase.of("{reserve} of the voltage kept for control, as no reserve is stated")
                        .with("reserve", USUAL_RESERVE, "%"));
    }

    static Modulation modulation(Inquiry in, AxisParts parts) {
        return parts.drive()
                .flatMap(Drive::modulation)
                .map(m -> Modulation.valueOf(m.name()))
                .orElseGet(() -> {
                    in.assume(Phrase.of("drive taken to use space vector modulation, as it is not stated"));
                    return Modulation.SPACE_VECTOR;
                });
    }

    private static Known inductance(Inquiry in, AxisParts parts, MotorParameter which) {
        return in.orAssume(
                parts.parameter(which).found(),
                new Quantity(0, Dimension.INDUCTANCE),
                Phrase.of("inductance left out, as it is not known: the true speed is lower"));
    }

    private static Reach compute(
            Inquiry in, Demand demand, Known supply, List<Known> w, Known reserve, Modulation modulation) {
        Known limit = in.sheet()
                .line(
                        "voltage for control, phase peak",
                        "{V} = (1 - {r}) · {Vs} · " + (modulation == Modulation.SPACE_VECTOR ? "1/√3" : "1/2"),
                        "V",
                        Dimension.VOLTAGE,
                        modulation.words() + " modulation, voltage hexagon",
                        x -> modulation.phasePeakVolt(x[1], x[0]),
                        Term.of("r", reserve, "%"),
                        Term.of("Vs", supply, "V"));
        Known amp = in.sheet()
                .line(
                        "current for the peak torque, magnets cold",
                        "{iq} = {T} / (3/2 · {p} · {λcold})",
                        "A",
                        Dimension.CURRENT,
                        SOURCE,
                        x -> x[0] / constants(x[1], x[2]).torqueConstant(CurrentBasis.Q_AXIS),
                        Term.of("T", demand.peakTorque(), "N m"),
                        Term.of("p", w.get(4)),
                        Term.of("λcold", w.get(3), "mWb"));
        Known reaches = reaches(in, w, amp, limit);
        Known noLoad = in.sheet()
                .line(
                        "speed without load",
                        "{ω0} = {V} / ({p} · {λcold})",
                        "rpm",
                        Dimension.SPEED,
                        SOURCE,
                        x -> SpeedReach.idealNoLoadMechRadPerS(constants(x[1], x[2]), x[0]),
                        Term.of("V", limit, "V"),
                        Term.of("p", w.get(4)),
                        Term.of("λcold", w.get(3), "mWb"));
        return new Reach(
                demand.topSpeed(), reaches, noLoad, supply, needed(w, amp, demand, reserve, modulation), reserve);
    }

    private static Known reaches(Inquiry in, List<Known> w, Known amp, Known limit) {
        return in.sheet()
                .line(
                        "speed at the peak torque",
                        "{ω}: ({Rwarm} · {iq} + {p} · {ω} · {λcold})² + ({p} · {ω} · {Lq} · {iq})² = {V}²",
                        "rpm",
                        Dimension.SPEED,
                        SOURCE,
                        x -> SpeedReach.mechRadPerS(winding(x), 0, x[5], x[6]).orElse(0),
                        Term.of("Rwarm", w.get(0), "mohm"),
                        Term.of("Ld", w.get(1), "uH"),
                        Term.of("Lq", w.get(2), "uH"),
                        Term.of("λcold", w.get(3), "mWb"),
                        Term.of("p", w.get(4)),
                        Term.of("iq", amp, "A"),
                        Term.of("V", limit, "V"));
    }

    private static Known needed(List<Known> w, Known amp, Demand demand, Known reserve, Modulation modulation) {
        List<Known> all = List.of(w.get(0), w.get(1), w.get(2), w.get(3), w.get(4), amp, demand.topSpeed(), reserve);
        return Propagation.derive(
                Dimension.VOLTAGE,
                x -> {
                    double volt = OperatingPoint.of(winding(x), 0, x[5], x[6]).phasePeakVolt();
                    return volt > 0 ? modulation.busVolt(volt, x[7]) : 0;
                },
                all);
    }

    private static Winding winding(double[] x) {
        return new Winding(x[0], x[1], x[2], x[3], (int) Math.round(x[4]));
    }

    private static MotorConstants constants(double pairs, double flux) {
        return MotorConstants.ofFluxLinkage(flux, (int) Math.round(pairs));
    }
}
