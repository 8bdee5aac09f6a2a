package servowright.engine.bench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import servowright.engine.bench.SineResponseTest.Found;
import servowright.engine.control.DelayedLag;
import servowright.engine.control.FrequencyFit;
import servowright.engine.control.SinePoint;
import servowright.engine.known.Phrase;
import servowright.engine.quantity.Quantity;

/** All sine responses of one motor: those of the same input and output make one frequency response. */
final class SineResponses {
    private static final String LAG = "first-order lag";
    private static final String MODEL = "first-order lag with delay through ratios and phases, least squares";

    /** A delay, or a time constant, that is less than this many of its standard errors is not seen. */
    private static final double SEEN = 2;

    /** From here on a delay is sure, and the model without one is no longer held against it. */
    private static final double SURE = 4;

    private SineResponses() {}

    /** Reduces them together; what rests on all of them stands with the first. */
    static List<TestResult> of(List<SineResponseTest> tests) {
        Map<String, List<SineResponseTest>> alike = new LinkedHashMap<>();
        for (SineResponseTest test : tests) {
            test.found()
                    .ifPresent(f -> alike.computeIfAbsent(f.said() + " " + f.gain(), k -> new ArrayList<>())
                            .add(test));
        }
        alike.values().forEach(SineResponses::together);
        return tests.stream().map(t -> t.sheet().end()).toList();
    }

    private static void together(List<SineResponseTest> tests) {
        SineResponseTest first = tests.get(0);
        List<SinePoint> points =
                tests.stream().map(t -> t.found().orElseThrow().point()).toList();
        Optional<FrequencyFit> plain = FrequencyFit.of(points, false);
        Optional<FrequencyFit> delayed = FrequencyFit.of(points, true);
        if (plain.isEmpty() || !seen(plain.get())) {
            first.sheet()
                    .missing(
                            ResponseParameter.GAIN,
                            "three or more sines around the corner of the response, of "
                                    + first.test().id() + " and its like",
                            ResponseParameter.GAIN.settle());
            return;
        }
        boolean late =
                delayed.filter(SineResponses::seen).filter(d -> isLate(d, SEEN)).isPresent();
        FrequencyFit best = late ? delayed.orElseThrow() : plain.get();
        describe(first, "first order", plain.get());
        delayed.ifPresent(d -> describe(first, "first order with delay", d));
        first.sheet()
                .detail(Phrase.of(
                        late
                                ? "the delay stands out and was kept; a further time constant much shorter than the first would look the same"
                                : "a delay does not stand out of the scatter"));
        values(first, best, late && !isLate(best, SURE) ? plain.get() : best);
        ratios(first, best);
        phases(first.sheet(), best);
    }

    private static boolean seen(FrequencyFit fit) {
        return fit.lag().tauSecond() > SEEN * fit.tauStandard();
    }

    private static boolean isLate(FrequencyFit fit, double times) {
        return fit.lag().delaySecond() > times * fit.delayStandard();
    }

    private static void describe(SineResponseTest first, String name, FrequencyFit fit) {
        first.sheet()
                .detail(Phrase.of(
                                name
                                        + " through {n} sines: gain {K}, time constant {tau}, corner {w}, delay {T}; {s} of scatter beside it")
                        .with("n", fit.points().size())
                        .with(
                                "K",
                                new Quantity(
                                        fit.lag().gain(),
                                        first.found().orElseThrow().gain()),
                                "")
                        .with("tau", Quantity.of(fit.lag().tauSecond(), "s"), "ms")
                        .with("w", Quantity.of(fit.lag().cornerRadPerS() / (2 * Math.PI), "Hz"), "Hz")
                        .with("T", Quantity.of(fit.lag().delaySecond(), "s"), "ms")
                        .with("s", Quantity.number(fit.scatter()), "%"));
    }

    private static void values(SineResponseTest first, FrequencyFit best, FrequencyFit other) {
        Found found = first.found().orElseThrow();
        DelayedLag lag = best.lag();
        double freedom = best.fit().degreesOfFreedom();
        double share = 1 / Math.sqrt(3);
        if (lag.gain() < 0) {
            first.sheet().remark("the output falls when the input rises: the gain is negative");
        }
        put(
                first,
                ResponseParameter.GAIN,
                new Quantity(lag.gain(), found.gain()),
                Math.hypot(
                        best.gainStandard(), share * (lag.gain() - other.lag().gain())),
                freedom);
        put(
                first,
                ResponseParameter.TIME_CONSTANT,
                Quantity.of(lag.tauSecond(), "s"),
                Math.hypot(
                        best.tauStandard(),
                        share * (lag.tauSecond() - other.lag().tauSecond())),
                freedom);
        if (best.delayed()) {
            put(first, ResponseParameter.DELAY, Quantity.of(lag.delaySecond(), "s"), best.delayStandard(), freedom);
        }
    }

    private static void put(
            SineResponseTest first, ResponseParameter what, Quantity value, double standard, double freedom) {
        first.sheet()
                .value(what, InAndOut.candidate(first.test(), what, value, standard, freedom, what.words(), MODEL));
    }

    private static void ratios(SineResponseTest first, FrequencyFit fit) {
        double[] ratio = each(fit, SinePoint::ratio);
        String unit = first.found().orElseThrow().gainUnit();
        first.sheet()
                .curves(PointCurves.smooth(
                        "ratio", LAG, hertz(fit), ratio, f -> fit.lag().ratio(2 * Math.PI * f), "Hz", unit));
    }

    /** Phases of one turn less or more than the lag's are the same. */
    private static void phases(ResultSheet sheet, FrequencyFit fit) {
        double[] phase = each(fit, p -> {
            double lag = fit.lag().phaseRad(p.radPerS());
            return lag + Math.IEEEremainder(p.phaseRad() - lag, 2 * Math.PI);
        });
        sheet.curves(PointCurves.smooth(
                "phase", LAG, hertz(fit), phase, f -> fit.lag().phaseRad(2 * Math.PI * f), "Hz", "deg"));
    }

    private static double[] hertz(FrequencyFit fit) {
        return each(fit, p -> p.radPerS() / (2 * Math.PI));
    }

    private static double[] each(FrequencyFit fit, ToDoubleFunction<SinePoint> figure) {
        return fit.points().stream().mapToDouble(figure).toArray();
    }
}
