package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import servowright.engine.acceptance.Verdict;
import servowright.engine.bus.TrunkCable;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.machine.BusFigure;
import servowright.engine.machine.Figures;
import servowright.engine.machine.SurroundingsFigure;
import servowright.engine.prediction.Predictions;
import servowright.engine.quantity.Quantity;

/** The level at the far end of the trunk, with the weakest sender. */
final class BusFarEndRule implements BusRule {
    /** Least dominant level of a sender, and what receivers need with a third of the difference kept, V. */
    private static final double OUT = 1.5;

    private static final double NEEDED = 1.0 + 0.5 / 3;
    private static final double ROOM_CELSIUS = 20;

    @Override
    public String id() {
        return "bus-far-end";
    }

    @Override
    public String source() {
        return "formula and margin of 1/3 that give the lengths of the CiA 303-1 table as reprinted in public fieldbus"
                + " manuals (seen)";
    }

    @Override
    public List<Finding> examine(Predictions predictions) {
        Figures<BusFigure> bus = predictions.machine().bus().figures();
        Optional<Known> section = bus.known(BusFigure.CROSS_SECTION);
        return bus.known(BusFigure.CABLE).stream()
                .flatMap(c -> section.map(a -> level(c, a, predictions)).stream())
                .toList();
    }

    private Finding level(Known cable, Known section, Predictions predictions) {
        double warm = predictions
                .machine()
                .surroundings()
                .known(SurroundingsFigure.WARMEST)
                .map(k -> k.si() - 273.15)
                .orElse(ROOM_CELSIUS);
        int nodes = predictions.machine().axes().size() + 1;
        double ohm = TrunkCable.wireOhm(cable.si(), section.si() * 1e6, warm);
        double volt = TrunkCable.farEndVolt(OUT, ohm, 118, nodes, 20_000);
        return Draft.of(this, SUBJECT)
                .verdict(volt >= NEEDED ? Verdict.HOLDS : Verdict.FAILS)
                .says(Phrase.of("of {out} at the weakest sender {volt} reach the far end, {needed} are wanted")
                        .with("out", Quantity.of(OUT, "V"), "V")
                        .with("volt", Quantity.of(volt, "V"), "V")
                        .with("needed", Quantity.of(NEEDED, "V"), "V"))
                .because(Phrase.of("each wire has {ohm}").with("ohm", Quantity.of(ohm, "ohm"), "ohm"))
                .remedy(Phrase.of("a thicker wire"))
                .done();
    }
}
