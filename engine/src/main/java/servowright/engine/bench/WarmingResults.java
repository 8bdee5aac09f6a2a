package servowright.engine.bench;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.known.Propagation;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.motor.Conductor;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.thermal.TwoNode;
import servowright.engine.thermal.TwoNodeDuty;
import servowright.engine.thermal.TwoNodeFit;

/** What a run from cold says of winding and housing, and of short and periodic duty; or why it cannot say it. */
final class WarmingResults {
    private static final String MODEL =
            "winding and housing as two heat stores under the heat that was read, least squares";

    /** A figure whose standard uncertainty is a larger share of it than this is not shown. */
    private static final double WEAK = 0.3;

    /** The run lasts so many of the longer time constant at least, or where it ends is a guess. */
    private static final double LONG_ENOUGH = 1.5;

    /** Readings in the first two of the shorter time constant, at least. */
    private static final int CLOSE_ENOUGH = 5;

    private static final double[] BURSTS_SECOND = {10, 60, 600};

    /** Shares of a cycle as in IEC 60034-1 (recalled), the cycle of ten minutes too. */
    private static final double[] SHARES = {0.15, 0.25, 0.40, 0.60};

    private static final double CYCLE_SECOND = 600;

    private final BenchTest test;
    private final Motor motor;
    private final ResultSheet sheet;

    WarmingResults(BenchTest test, Motor motor, ResultSheet sheet) {
        this.test = test;
        this.motor = motor;
        this.sheet = sheet;
    }

    /**
     * Puts everything that can be said on the sheet.
     *
     * @param figures R_wh, C_w, R_ha, C_h
     * @param air     temperature of the air
     */
    void put(TwoNodeFit fit, List<Known> figures, Known air, List<Phrase> assumptions) {
        TwoNode pair = fit.pair();
        double[] t = fit.seconds();
        sheet.curves(PointCurves.of(
                "winding by its resistance", "two heat stores", t, fit.winding(), fit.rests(), "s", "degC"));
        describe(fit, figures);
        double early = t[0] + 2 * pair.shortTimeConstantSecond();
        boolean close = Arrays.stream(t).filter(s -> s < early).count() >= CLOSE_ENOUGH;
        boolean lasted = t[t.length - 1] > LONG_ENOUGH * pair.longTimeConstantSecond();
        boolean winding = close && strong(figures, 0, 1);
        boolean housing = lasted && strong(figures, 2, 3);
        if (winding) {
            put(MotorParameter.WINDING_TO_HOUSING, figures.get(0), assumptions);
            put(MotorParameter.WINDING_CAPACITY, figures.get(1), assumptions);
        } else {
            missing(
                    MotorParameter.WINDING_TO_HOUSING,
                    "readings close enough to tell winding and housing apart in ",
                    "read every few seconds at the start, and right after switching off");
        }
        if (!housing) {
            missing(
                    MotorParameter.THERMAL_RESISTANCE,
                    "a run long enough to see where it ends in ",
                    "heat until the housing stays as it is: three of the longer time constants");
            return;
        }
        put(MotorParameter.HOUSING_TO_AIR, figures.get(2), assumptions);
        put(MotorParameter.HOUSING_CAPACITY, figures.get(3), assumptions);
        total(figures, assumptions);
        if (winding) {
            duty(figures, air);
        }
    }

    private static boolean strong(List<Known> figures, int... which) {
        return Arrays.stream(which).allMatch(j -> figures.get(j).relativeUncertainty() < WEAK);
    }

    private void missing(MotorParameter what, String need, String settle) {
        sheet.missing(what, need + test.id(), settle);
    }

    private void describe(TwoNodeFit fit, List<Known> figures) {
        double top = Arrays.stream(fit.winding()).max().orElseThrow();
        sheet.detail(Phrase.of(
                        "winding at {t} at most; {scatter} of scatter; time constants of the pair {short} and {long}")
                .with("t", new Quantity(top, Dimension.TEMPERATURE), "degC")
                .with("scatter", Quantity.of(fit.scatter().winding(), "K"), "K")
                .with("short", Propagation.derive(Dimension.TIME, x -> pair(x).shortTimeConstantSecond(), figures), "s")
                .with("long", Propagation.derive(Dimension.TIME, x -> pair(x).longTimeConstantSecond(), figures), "s"));
        if (fit.housingRests().length > 0) {
            double off = Math.sqrt(
                    Arrays.stream(fit.housingRests()).map(r -> r * r).average().orElseThrow());
            sheet.detail(Phrase.of("the thermometer on the housing agrees to {off}")
                    .with("off", Quantity.of(off, "K"), "K"));
        }
        sheet.remark(
                "two of three phases were heated: if they hardly warm each other, evenly loaded ones stand at two thirds of the"
                        + " winding's resistance to the housing");
    }

    private void put(MotorParameter what, Known value, List<Phrase> assumptions) {
        Working.Sheet working = Working.begin();
        working.note(what.words(), "{" + what.symbol() + "}", what.unit(), MODEL, value);
        sheet.value(what, new Candidate(value, test.id(), working.end(), assumptions));
    }

    private void total(List<Known> figures, List<Phrase> assumptions) {
        Working.Sheet working = Working.begin();
        Known sum = working.line(
                MotorParameter.THERMAL_RESISTANCE.words(),
                "{Rth} = {Rwh} + {Rha}",
                "K/W",
                Dimension.THERMAL_RESISTANCE,
                MODEL,
                v -> v[0] + v[1],
                Term.of("Rwh", figures.get(0), "K/W"),
                Term.of("Rha", figures.get(2), "K/W"));
        sheet.value(
                MotorParameter.THERMAL_RESISTANCE,
                new Candidate(sum.as(figures.get(0).origin(), test.id()), test.id(), working.end(), assumptions));
    }

    /** Current over continuous current for bursts from cold (S2) and for a cycle of ten minutes (S3). */
    private void duty(List<Known> figures, Known air) {
        Optional<Known> limit = motor.figures().known(MotorFigure.WINDING_LIMIT);
        if (limit.isEmpty()) {
            sheet.detail(
                    Phrase.of("state winding_limit of " + motor.name() + " to see what it may carry for a short time"));
            return;
        }
        List<Known> from = List.of(figures.get(0), figures.get(1), figures.get(2), figures.get(3), limit.get(), air);
        Phrase bursts = Phrase.of(
                "from cold it may carry, times the current for good: {a} for 10 s, {b} for 60 s, {c} for 10 min"
                        + " (S2); winding up to {limit} in air of {air}");
        Phrase cycles = Phrase.of(
                "in cycles of 10 min (S3): {a} for 15 % of the time, {b} for 25 %, {c} for 40 %, {d} for 60 %");
        for (int k = 0; k < BURSTS_SECOND.length; k++) {
            double on = BURSTS_SECOND[k];
            bursts = bursts.with(letter(k), number(from, x -> duty(x).shortTimeFactor(on)));
        }
        for (int k = 0; k < SHARES.length; k++) {
            double share = SHARES[k];
            cycles = cycles.with(letter(k), number(from, x -> duty(x).periodicFactor(CYCLE_SECOND, share)));
        }
        sheet.detail(bursts.with("limit", limit.get(), "degC").with("air", air, "degC"));
        sheet.detail(cycles);
    }

    private static String letter(int k) {
        return String.valueOf((char) ('a' + k));
    }

    private static Known number(List<Known> from, ToDoubleFunction<double[]> f) {
        return Propagation.derive(Dimension.NUMBER, f, from);
    }

    private static TwoNode pair(double... x) {
        return new TwoNode(x[0], x[1], x[2], x[3]);
    }

    private static TwoNodeDuty duty(double... x) {
        return new TwoNodeDuty(pair(x), Conductor.COPPER_IEC.relativePerKelvin(x[5]), x[4] - x[5]);
    }
}
