package servowright.engine.findings;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import servowright.engine.acceptance.Verdict;
import servowright.engine.bus.TimingPair;
import servowright.engine.known.Outcome.Need;
import servowright.engine.known.Phrase;
import servowright.engine.prediction.ControllerTiming;
import servowright.engine.prediction.Predictions;
import servowright.engine.quantity.Quantity;

/** Two controllers against each other: rate, sample point, clocks. */
final class BusTimingRule implements BusRule {
    @Override
    public String id() {
        return "bus-timing";
    }

    @Override
    public String source() {
        return "Hartwich and Bassemir, The configuration of the CAN bit timing, 6th iCC; sample points within 2 % of a bit"
                + " are common practice";
    }

    @Override
    public List<Finding> examine(Predictions predictions) {
        List<Finding> found = new ArrayList<>();
        Map<String, ControllerTiming> nodes = new LinkedHashMap<>();
        predictions.machine().bus().controllers().forEach((name, c) -> {
            Optional<ControllerTiming> node = ControllerTiming.of(c);
            if (node.isEmpty()) {
                found.add(unclear(name));
            }
            node.ifPresent(n -> nodes.put(name, n));
        });
        List<String> names = List.copyOf(nodes.keySet());
        for (int i = 1; i < names.size(); i++) {
            found.add(pair(names.get(0), names.get(i), nodes));
        }
        return found;
    }

    private Finding unclear(String name) {
        return Draft.of(this, name)
                .verdict(Verdict.NOT_SHOWN)
                .says(Phrase.of("the bit timing of {name} is not complete, or its jump is wider than a phase segment")
                        .with("name", name))
                .needs(List.of(new Need(
                        "bit timing of " + name,
                        "clock, prescaler, prop, phase_one, phase_two and jump in machine.yaml, bus / controllers")))
                .done();
    }

    private Finding pair(String first, String second, Map<String, ControllerTiming> nodes) {
        ControllerTiming a = Objects.requireNonNull(nodes.get(first));
        ControllerTiming b = Objects.requireNonNull(nodes.get(second));
        TimingPair p = TimingPair.of(a.timing(), a.deviation(), b.timing(), b.deviation());
        Verdict verdict = !p.clocksHold() ? Verdict.FAILS : p.samplesAgree() ? Verdict.HOLDS : Verdict.TIGHT;
        return Draft.of(this, second)
                .verdict(verdict)
                .says(Phrase.of("{second} samples at {its} of {itsRate}, {first} at {other} of {otherRate}")
                        .with("second", second)
                        .with("its", BusRule.share(b.timing().samplePoint()), "%")
                        .with("itsRate", rate(b), "kbit/s")
                        .with("first", first)
                        .with("other", BusRule.share(a.timing().samplePoint()), "%")
                        .with("otherRate", rate(a), "kbit/s"))
                .because(Phrase.of("bit clocks differ by up to {differs}, both timings bear {bears}")
                        .with("differs", BusRule.share(p.differs()), "%")
                        .with("bears", BusRule.share(p.bears()), "%"))
                .remedy(Phrase.of("the same rate and sample point in all nodes, the jump as wide as phase segment 2"))
                .atMost(BusRule.share(p.differs()), BusRule.share(p.bears()), "%")
                .done();
    }

    private static Quantity rate(ControllerTiming n) {
        return Quantity.of(n.timing().bitsPerSecond(), "bit/s");
    }
}
