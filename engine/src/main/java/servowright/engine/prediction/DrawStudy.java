package servowright.engine.prediction;

import java.util.Optional;
import java.util.function.Supplier;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Term;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Duty;
import servowright.engine.machine.SupplyFigure;
import servowright.engine.power.CopperLoss;
import servowright.engine.power.SupplySag;
import servowright.engine.quantity.Dimension;

/** What does a duty take from the supply, and what voltage is left under it? */
public final class DrawStudy {
    private static final String BALANCE = "power balance: shaft power and copper loss";
    private static final String BOUND = "mean of a product is at most the product of the RMS values (Cauchy-Schwarz)";

    private DrawStudy() {}

    /** The draw of one duty. */
    public static Outcome<Draw> of(AxisParts parts, Duty duty) {
        Inquiry in = new Inquiry();
        Supplier<Demand> demand = in.take(DemandStudy.of(parts, duty));
        Supplier<Current> current = in.take(CurrentStudy.of(parts, duty));
        Supplier<Known> ohm = in.take(WarmMotorStudy.warmResistance(parts));
        Supplier<Declared> supply = in.take(parts.supply(SupplyFigure.VOLTAGE));
        Optional<Known> inner = parts.supplyFigure(SupplyFigure.RESISTANCE);
        in.assume(Phrase.of("losses of drive and iron not counted"));
        return in.answer(() -> {
            Known empty = Wanted.least(supply.get());
            Known peak = power(
                    in,
                    "peak power from the supply",
                    "Ppk",
                    demand.get().peakTorque(),
                    demand.get().topSpeed(),
                    current.get().peak(),
                    ohm.get(),
                    BALANCE);
            Known mean = power(
                    in,
                    "mean power from the supply, at most",
                    "Pm",
                    demand.get().rmsTorque(),
                    demand.get().rmsSpeed(),
                    current.get().rms(),
                    ohm.get(),
                    BOUND);
            Known volt = voltage(in, empty, peak, inner);
            return new Draw(peak, mean, over(in, "peak", peak, volt), over(in, "mean", mean, empty), volt);
        });
    }

    private static Known power(
            Inquiry in, String label, String symbol, Known torque, Known speed, Known amp, Known ohm, String source) {
        return in.sheet()
                .line(
                        label,
                        "{" + symbol + "} = {T} · {ω} + 3/2 · {Rwarm} · {i}²",
                        "W",
                        Dimension.POWER,
                        source,
                        x -> x[0] * x[1] + CopperLoss.watt(x[2], x[3]),
                        Term.of("T", torque, "N m"),
                        Term.of("ω", speed, "rpm"),
                        Term.of("i", amp, "A"),
                        Term.of("Rwarm", ohm, "mohm"));
    }

    private static Known voltage(Inquiry in, Known empty, Known power, Optional<Known> inner) {
        if (inner.isEmpty()) {
            in.assume(Phrase.of("the supply keeps its voltage under load, as its resistance is not stated"));
            return empty;
        }
        return in.sheet()
                .line(
                        "supply voltage under this axis' peak",
                        "{V} = {Vempty} / 2 + √({Vempty}² / 4 - {P} · {Ri})",
                        "V",
                        Dimension.VOLTAGE,
                        "voltage divider with a load of constant power",
                        x -> SupplySag.volt(x[0], x[1], x[2]),
                        Term.of("Vempty", empty, "V"),
                        Term.of("Ri", inner.get(), "mohm"),
                        Term.of("P", power, "W"));
    }

    private static Known over(Inquiry in, String what, Known power, Known volt) {
        return in.sheet()
                .line(
                        what + " supply current",
                        "{Is} = {P} / {V}",
                        "A",
                        Dimension.CURRENT,
                        BALANCE,
                        x -> x[0] / x[1],
                        Term.of("P", power, "W"),
                        Term.of("V", volt, "V"));
    }
}
