package servowright.engine.findings;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;
import servowright.engine.acceptance.Judge;
import servowright.engine.acceptance.PlanSeen;
import servowright.engine.bench.SignalScale;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;

/** A speed is the rate of its position. */
final class BusScaleRule implements SeenRule {
    private static final double MOST_OFF = 0.02;
    private static final double COMFORT = 0.5;
    private static final double ALIKE = 0.02;

    private static final Map<Double, String> FACTORS = factors();

    private static Map<Double, String> factors() {
        Map<Double, String> all = new LinkedHashMap<>();
        all.put(60 / (2 * Math.PI), "60 / 2 pi: turns per minute against radians per second");
        all.put(2 * Math.PI / 60, "2 pi / 60: radians per second against turns per minute");
        all.put(2 * Math.PI, "2 pi: radians against turns");
        all.put(1 / (2 * Math.PI), "1 / 2 pi: turns against radians");
        all.put(180 / Math.PI, "180 / pi: degrees against radians");
        all.put(Math.PI / 180, "pi / 180: radians against degrees");
        all.put(60.0, "60: per minute against per second");
        all.put(1 / 60.0, "1 / 60: per second against per minute");
        all.put(10.0, "10: tenths");
        all.put(0.1, "1 / 10: tenths");
        all.put(-1.0, "-1: the sign");
        return all;
    }

    @Override
    public String id() {
        return "bus-signal-scale";
    }

    @Override
    public String source() {
        return "practitioners' reports: slope 1.00 ± 0.02; common practice, no source";
    }

    @Override
    public Stream<Draft> look(PlanSeen seen, String subject) {
        return seen.capture().scales().stream().max((a, b) -> Double.compare(off(a), off(b))).stream()
                .map(s -> draft(s, subject));
    }

    private static double off(SignalScale scale) {
        return Math.abs(scale.ratio().si() - 1);
    }

    private Draft draft(SignalScale worst, String subject) {
        Known off = worst.ratio().si() >= 1
                ? worst.ratio().minus(BusRule.share(1))
                : BusRule.share(1).minus(worst.ratio());
        Known most = BusRule.share(MOST_OFF);
        return Draft.of(this, subject)
                .verdict(Judge.atMost(off, most, COMFORT).verdict())
                .says(Phrase.of("{speed} shows {ratio} times the rate of {position}")
                        .with("speed", worst.speed())
                        .with("ratio", worst.ratio())
                        .with("position", worst.position()))
                .because(Phrase.of(factor(worst.ratio().si())))
                .remedy(Phrase.of(
                        "correct scale, order of bytes or number of bits of one of them; then the gear between them"))
                .wouldSettle("the scale of " + worst.speed(), "a capture with more motion")
                .atMost(off, most, "%");
    }

    private static String factor(double ratio) {
        return FACTORS.entrySet().stream()
                .filter(e -> Math.abs(ratio / e.getKey() - 1) < ALIKE)
                .map(e -> "the ratio looks like " + e.getValue())
                .findFirst()
                .orElse("positions against the sum of the speed");
    }
}
