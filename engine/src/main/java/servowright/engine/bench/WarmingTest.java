package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Phrase;
import servowright.engine.known.Propagation;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Motor;
import servowright.engine.machine.TestFigure;
import servowright.engine.motor.Conductor;
import servowright.engine.quantity.Accuracy;
import servowright.engine.quantity.Quantity;
import servowright.engine.recording.Recording;
import servowright.engine.thermal.HeatingRun;
import servowright.engine.thermal.TwoNodeFit;

/**
 * Heating followed from cold: direct current through two terminals, voltage and current read all along. The winding is its
 * own thermometer; what it shows against the heat put in tells winding and housing apart.
 */
final class WarmingTest {
    /** A rise below this, or below so many times the scatter, says little of heat. */
    private static final double LEAST_RISE_KELVIN = 5;

    private static final double ABOVE_SCATTER = 10;

    /** Share by which the run may begin beside the stated cold resistance: 4 K of copper. */
    private static final double NOT_COLD = 0.015;

    private static final double NEARLY_EXACT = 1e-6;

    private static final int FIGURES = 4;

    private final BenchTest test;
    private final Motor motor;
    private final ResultSheet sheet;
    private final Instruments instruments;
    private final List<Phrase> assumptions = new ArrayList<>();

    private WarmingTest(BenchTest test, Motor motor) {
        this.test = test;
        this.motor = motor;
        this.sheet = new ResultSheet(test);
        this.instruments = new Instruments(test.instrument());
    }

    /** Reduces the run. */
    static TestResult of(BenchTest test, Motor motor, Optional<Recording> recording) {
        return new WarmingTest(test, motor).reduced(recording);
    }

    private TestResult reduced(Optional<Recording> recording) {
        Outcome<HeatingRows> read = HeatingRows.of(test, recording);
        if (read instanceof Missing<HeatingRows> why) {
            sheet.missing(MotorParameter.THERMAL_RESISTANCE, why);
            return sheet.end();
        }
        if (test.figures().get(TestFigure.WINDING_AT).isEmpty()
                || test.figures().get(TestFigure.AIR_AT).isEmpty()) {
            return refused(
                    "temperatures of the winding at the start and of the air, in " + test.id(),
                    "state winding_at and air_at: let the motor lie in the room for some hours first");
        }
        HeatingRows rows = read.found().orElseThrow();
        sheet.remarks(rows.remarks());
        List<Known> given = given();
        if (rows.housing().length > 0) {
            instruments.assumption(Reads.HOUSING_RISE).ifPresent(assumptions::add);
        }
        Optional<TwoNodeFit> fit =
                TwoNodeFit.of(run(rows, given.stream().mapToDouble(Known::si).toArray()));
        if (fit.isEmpty() || !warms(fit.get())) {
            return refused(
                    "a winding that warms by 5 K or more under the heat put in, in " + test.id(),
                    "record voltage at the terminals and current, from cold, for as long as the housing still warms");
        }
        if (rows.opposed()) {
            sheet.remark("voltage and current are counted in opposite senses; the size was used");
        }
        coldResistance(fit.get());
        new WarmingResults(test, motor, sheet)
                .put(fit.get(), figures(rows, fit.get(), given), given.get(1), assumptions);
        return sheet.end();
    }

    private TestResult refused(String need, String settle) {
        return sheet.refused(MotorParameter.THERMAL_RESISTANCE, need, settle);
    }

    private HeatingRun run(HeatingRows rows, double... x) {
        Conductor copper = Conductor.COPPER_IEC;
        double vanishing = x[0] - 1 / copper.relativePerKelvin(x[0]);
        return rows.run(HeatingRows.Warmth.of(x), riseStandard(rows), vanishing);
    }

    /** Of the share of the rise that the thermometer shows; a fixed limit is one of the whole rise, for its zero is fitted. */
    private double riseStandard(HeatingRows rows) {
        double rise = Arrays.stream(rows.housing()).max().orElse(0)
                - Arrays.stream(rows.housing()).min().orElse(0);
        Accuracy limits = instruments.accuracy(Reads.HOUSING_RISE);
        return Math.max(NEARLY_EXACT, limits.standardUncertainty(rise) / Math.max(NEARLY_EXACT, rise));
    }

    private static boolean warms(TwoNodeFit fit) {
        double least = Arrays.stream(fit.winding()).min().orElseThrow();
        double rise = Arrays.stream(fit.winding()).max().orElseThrow() - least;
        double scatter =
                Math.sqrt(Arrays.stream(fit.rests()).map(r -> r * r).average().orElseThrow());
        return fit.coldOhm() > 0 && rise > LEAST_RISE_KELVIN && rise > ABOVE_SCATTER * scatter;
    }

    /** Start, air, leads. */
    private List<Known> given() {
        Surroundings start = Surroundings.of(test, TestFigure.WINDING_AT, "winding");
        Surroundings air = Surroundings.of(test, TestFigure.AIR_AT, "air");
        assumptions.addAll(start.assumptions());
        air.assumptions().stream().filter(a -> !assumptions.contains(a)).forEach(assumptions::add);
        Known leads = test.figures()
                .known(TestFigure.LEADS)
                .orElseGet(() -> Known.exact(Quantity.of(0, "ohm"), Origin.ASSUMED, "no leads"));
        return List.of(start.kelvin(), air.kelvin(), leads);
    }

    /** R_wh, C_w, R_ha and C_h with scatter, temperatures, leads and instruments. */
    private List<Known> figures(HeatingRows rows, TwoNodeFit fit, List<Known> given) {
        double[][] slopes = slopes(rows, fit, given);
        Known heat =
                gain(Reads.METER_VOLTAGE, "V", rows.meanVolt()).times(gain(Reads.METER_CURRENT, "A", rows.meanAmp()));
        List<Known> scatter = scatter(fit);
        List<Known> figures = new ArrayList<>();
        for (int j = 0; j < FIGURES; j++) {
            List<Known> from = new ArrayList<>(List.of(scatter.get(j)));
            from.addAll(given);
            Known all = Propagation.linear(scatter.get(j).dimension(), fit.figure(j), from, slopes[j]);
            boolean resistance = j % 2 == 0;
            figures.add((resistance ? all.over(heat) : all.times(heat)).as(Origin.MEASURED, test.id()));
        }
        return figures;
    }

    /** Sensitivity of each figure to itself and to what is given, first order. */
    private double[][] slopes(HeatingRows rows, TwoNodeFit fit, List<Known> given) {
        double[][] slopes = new double[FIGURES][1 + given.size()];
        double[] x = given.stream().mapToDouble(Known::si).toArray();
        for (int j = 0; j < FIGURES; j++) {
            slopes[j][0] = 1;
        }
        for (int i = 0; i < x.length; i++) {
            double u = given.get(i).standardUncertainty();
            if (u > 0) {
                double[] beside = x.clone();
                beside[i] += u;
                double[] change = fit.change(run(rows, x), run(rows, beside));
                for (int j = 0; j < FIGURES; j++) {
                    slopes[j][1 + i] = change[j] / u;
                }
            }
        }
        return slopes;
    }

    private List<Known> scatter(TwoNodeFit fit) {
        List<Quantity> values = new ArrayList<>();
        double[][] covariance = new double[FIGURES][FIGURES];
        for (int j = 0; j < FIGURES; j++) {
            values.add(Quantity.of(fit.figure(j), j % 2 == 0 ? "K/W" : "J/K"));
            for (int k = 0; k < FIGURES; k++) {
                covariance[j][k] = fit.covariance().at(j, k) * fit.figure(j) * fit.figure(k);
            }
        }
        return Propagation.jointly(
                values, covariance, test.id() + " fit", fit.scatter().freedom(), Origin.MEASURED, test.id());
    }

    /** A factor 1 with what the instrument may be off by at this reading. */
    private Known gain(Reads what, String unit, double size) {
        instruments.assumption(what).ifPresent(assumptions::add);
        Known one = Known.exact(Quantity.of(size, unit), Origin.MEASURED, test.id());
        return instruments.limited(one, what).over(one);
    }

    /** A cold resistance that was stated beside the one with which the run begins. */
    private void coldResistance(TwoNodeFit fit) {
        test.figures().known(TestFigure.COLD_RESISTANCE).ifPresent(stated -> {
            Known begins = instruments.limited(
                    Known.exact(Quantity.of(fit.coldOhm(), "ohm"), Origin.MEASURED, test.id()), Reads.METER_RESISTANCE);
            double off = Math.abs(begins.si() / stated.si() - 1);
            if (off > NOT_COLD) {
                sheet.remark(Phrase.of(
                                "the run begins at {R}, the cold resistance is stated as {C}: leads that were not taken off,"
                                        + " or a start that was not cold")
                        .with("R", begins, "mohm")
                        .with("C", stated, "mohm"));
            }
        });
    }
}
