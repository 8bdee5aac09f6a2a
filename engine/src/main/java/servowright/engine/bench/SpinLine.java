package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.numeric.Design;
import servowright.engine.numeric.LinearFit;
import servowright.engine.numeric.Quantile;
import servowright.engine.quantity.Quantity;

/**
 * Back-EMF against electrical frequency over several spins: a straight line through zero. An intercept that is more than
 * scatter says that voltage or speed has an offset.
 */
final class SpinLine {
    private static final int FEWEST_SPEEDS = 3;
    private static final double DIFFERENT = 1.05;
    private static final double SURE = 0.95;

    private SpinLine() {}

    /** What the spins of one motor say together; nothing with fewer than three speeds at one pair. */
    static List<Phrase> check(List<SpinPoint> points) {
        Map<String, List<SpinPoint>> pairs = new LinkedHashMap<>();
        for (SpinPoint point : points) {
            pairs.computeIfAbsent(point.contacts().words(), c -> new ArrayList<>())
                    .add(point);
        }
        List<Phrase> said = new ArrayList<>();
        pairs.forEach((pair, list) -> {
            if (speeds(list) >= FEWEST_SPEEDS) {
                said.add(intercept(pair, list));
            }
        });
        return said;
    }

    private static int speeds(List<SpinPoint> points) {
        double[] hertz =
                points.stream().mapToDouble(p -> p.hertz().si()).sorted().toArray();
        int different = hertz.length == 0 ? 0 : 1;
        double last = hertz.length == 0 ? 0 : hertz[0];
        for (double f : hertz) {
            if (f > DIFFERENT * last) {
                different++;
                last = f;
            }
        }
        return different;
    }

    private static Phrase intercept(String pair, List<SpinPoint> points) {
        double[] hertz = points.stream().mapToDouble(p -> p.hertz().si()).toArray();
        double[] volts = points.stream().mapToDouble(p -> p.volt().si()).toArray();
        double[] size = Arrays.stream(volts).map(Math::abs).toArray();
        LinearFit fit = LinearFit.weighted(Design.line(hertz), volts, size);
        if (!fit.status().converged()) {
            return Phrase.of(pair + ": the speeds do not fix a line");
        }
        Known zero = Known.of(
                Quantity.of(fit.parameter(0), "V"),
                fit.standardError(0),
                Source.of("line of back-EMF " + pair, Math.max(1, fit.degreesOfFreedom())),
                Origin.DERIVED,
                pair);
        double share = fit.parameter(0) / Arrays.stream(volts).max().orElse(1);
        double k = Quantile.coverageFactor(SURE, Math.max(1, fit.degreesOfFreedom()));
        boolean off = Math.abs(fit.parameter(0)) > k * fit.standardError(0) && Math.abs(share) > 1e-3;
        String verdict = off
                ? ": back-EMF against speed misses zero by {U} ({share} of the largest): an offset in voltage or speed"
                : ": back-EMF against speed goes through zero within {U}, {share} of the largest";
        return Phrase.of(pair + verdict).with("U", zero, "mV").with("share", Quantity.number(share), "%");
    }
}
