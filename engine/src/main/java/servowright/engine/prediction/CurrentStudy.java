package servowright.engine.prediction;

import java.util.Optional;
import java.util.function.Supplier;
import servowright.engine.bench.MotorParameter;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Term;
import servowright.engine.machine.Duty;
import servowright.engine.machine.MotorFigure;
import servowright.engine.motor.MotorConstants;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Dimension;

/** What current does a duty ask of the motor? */
public final class CurrentStudy {
    private static final String TORQUE =
            "T = 3/2 p λ iq, Krause, Wasynczuk, Sudhoff, Pekarek, Analysis of Electric Machinery, 2013, ch. 4 (recalled)";

    private CurrentStudy() {}

    /** Current for one duty, all on the q axis. */
    public static Outcome<Current> of(AxisParts parts, Duty duty) {
        Inquiry in = new Inquiry();
        Supplier<Demand> demand = in.take(DemandStudy.of(parts, duty));
        Supplier<Known> constant = in.take(torqueConstant(parts));
        Optional<Known> drag = parts.motor()
                .flatMap(m -> m.figures().get(MotorFigure.NO_LOAD_CURRENT))
                .map(d -> CurrentFigure.phasePeak(in, d, "no-load current"));
        in.assume(Phrase.of("the whole current makes torque: id = 0"));
        return in.answer(() -> new Current(
                current(in, "peak current", "ipk", demand.get().peakTorque(), constant.get(), drag),
                current(in, "RMS current", "irms", demand.get().rmsTorque(), constant.get(), drag),
                constant.get()));
    }

    /** Torque per q-axis ampere with warm magnets. */
    static Outcome<Known> torqueConstant(AxisParts parts) {
        Inquiry in = new Inquiry();
        Supplier<Known> flux = in.take(WarmMotorStudy.warmFlux(parts));
        Supplier<Known> pairs = in.take(parts.parameter(MotorParameter.POLE_PAIRS));
        return in.answer(() -> in.sheet()
                .line(
                        "torque per q-axis ampere, magnets warm",
                        "{Kt} = 3/2 · {p} · {λwarm}",
                        "N m/A",
                        Dimension.TORQUE_CONSTANT,
                        TORQUE,
                        x -> MotorConstants.ofFluxLinkage(x[1], (int) Math.round(x[0]))
                                .torqueConstant(CurrentBasis.Q_AXIS),
                        Term.of("p", pairs.get()),
                        Term.of("λwarm", flux.get(), "mWb")));
    }

    private static Known current(
            Inquiry in, String label, String symbol, Known torque, Known constant, Optional<Known> drag) {
        Term t = Term.of("T", torque, "N m");
        Term k = Term.of("Kt", constant, "N m/A");
        if (drag.isEmpty()) {
            return in.sheet()
                    .line(
                            label,
                            "{" + symbol + "} = {T} / {Kt}",
                            "A",
                            Dimension.CURRENT,
                            TORQUE,
                            x -> x[0] / x[1],
                            t,
                            k);
        }
        return in.sheet()
                .line(
                        label,
                        "{" + symbol + "} = {T} / {Kt} + {i0}",
                        "A",
                        Dimension.CURRENT,
                        TORQUE,
                        x -> x[0] / x[1] + x[2],
                        t,
                        k,
                        Term.of("i0", drag.get(), "A"));
    }
}
