package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.numeric.BlockJackknife;
import servowright.engine.numeric.Design;
import servowright.engine.numeric.LinearFit;
import servowright.engine.numeric.Statistics;
import servowright.engine.power.BridgeSigns;
import servowright.engine.power.SenseError;
import servowright.engine.power.SensorFit;
import servowright.engine.quantity.Quantity;
import servowright.engine.recording.Recording;

/** Current sensing of a drive: zero with the bridge off; offsets, gains and sum while the motor turns; signs that a switch prevents. */
final class CurrentSensingTest {
    private static final int STRETCHES = 16;

    /** Currents below this share of the largest count as none. */
    private static final double BAND = 0.1;

    /** Currents below this share may be offsets of their sensors. */
    private static final double LARGE = 0.3;

    /** Phases a third of a turn apart correlate by −1/2; unequal sizes move that a little. */
    private static final double LEAST_CORRELATION = -0.8;

    private static final double MOST_CORRELATION = -0.2;

    /** Fewer samples than this per electrical turn show signs and means only. */
    private static final double FEWEST_PER_TURN = 8;

    private static final int FEWEST_TURNS = 6;

    /** That many samples carry all that offsets and gains need. */
    private static final int MOST = 50_000;

    /** Samples that an electrical turn keeps when neighbours are averaged: that flattens a sine by less than 0.2 %, all alike. */
    private static final double KEPT_PER_TURN = 32;

    /** Degree of the curve of electrical turns over time: the speed may rise or fall and bend. */
    private static final int SMOOTH = 3;

    private final BenchTest test;
    private final Optional<Known> polePairs;
    private final ResultSheet sheet;

    private CurrentSensingTest(BenchTest test, Optional<Known> polePairs) {
        this.test = test;
        this.polePairs = polePairs;
        this.sheet = new ResultSheet(test);
    }

    /** Reduces the currents; stated speed and pole pairs tell whether the electrical turns were sampled at all. */
    static TestResult of(BenchTest test, Optional<Recording> recording, Optional<Known> polePairs) {
        return new CurrentSensingTest(test, polePairs).reduced(recording);
    }

    private TestResult reduced(Optional<Recording> recording) {
        if (recording.isEmpty()) {
            return sheet.refused(
                    SensingParameter.OFFSET_A,
                    "a recording of the phase currents in " + test.id(),
                    SensingParameter.OFFSET_A.settle());
        }
        Outcome<PhaseTraces> read = PhaseTraces.of(test, recording.get());
        if (read instanceof Missing<PhaseTraces> why) {
            sheet.missing(SensingParameter.OFFSET_A, why);
            return sheet.end();
        }
        PhaseTraces phases = read.found().orElseThrow();
        sheet.remarks(phases.remarks());
        if (test.kind() == TestKind.CURRENT_ZERO) {
            zero(phases);
        } else {
            running(phases);
        }
        return sheet.end();
    }

    private void zero(PhaseTraces phases) {
        for (int k = 0; k < phases.phases().size(); k++) {
            double[] amp = phases.traces().get(k).values();
            SensingParameter what = SensingParameter.offset(phases.phases().get(k));
            if (CutNoise.at(amp)) {
                sheet.missing(
                        what,
                        "a current in " + test.id() + " that does not run into its limit: its noise is cut off",
                        "move the zero into the range of the converter, and record again");
            } else if (alternates(amp)) {
                sheet.missing(
                        what,
                        "currents that stand still in " + test.id(),
                        "switch the bridge off, or call the test current sensing");
            } else {
                double[] ones = new double[amp.length];
                Arrays.fill(ones, 1);
                BlockJackknife.of(Design.ofColumns(ones), amp, STRETCHES)
                        .ifPresentOrElse(
                                f -> value(what, f.parameter(0), f.standardError(0), "mean with the bridge off"),
                                () -> sheet.missing(what, "enough samples in " + test.id(), "record longer"));
            }
        }
    }

    /** A sine has a kurtosis of 1.5, noise one of 3; a reading that flickers between few codes is no sine. */
    private static boolean alternates(double[] amp) {
        double mean = Statistics.mean(amp);
        double variance = Statistics.variance(amp);
        double fourth =
                Arrays.stream(amp).map(i -> Math.pow(i - mean, 4)).average().orElse(0);
        return fourth < 2.2 * variance * variance
                && Arrays.stream(amp).distinct().count() > 16;
    }

    /** More samples are brought to means of neighbours, as long as an electrical turn keeps enough of them. */
    private static PhaseTraces thinned(PhaseTraces phases) {
        int count = phases.traces().get(0).count();
        double[] crossings = crossings(phases.traces().get(0).values());
        double perTurn = perTurn(crossings);
        int block = (int) Math.min(count / (double) MOST, perTurn / KEPT_PER_TURN);
        return block > 1 ? phases.thinned((count + block - 1) / block) : phases;
    }

    private void running(PhaseTraces recorded) {
        PhaseTraces phases = thinned(recorded);
        double[][] all = phases.allThree();
        double largest = Arrays.stream(all)
                .mapToDouble(
                        i -> Statistics.quantile(Arrays.stream(i).map(Math::abs).toArray(), 0.99))
                .max()
                .orElse(0);
        BridgeSigns large = BridgeSigns.of(Math.max(LARGE * largest, 1e-9), all);
        if (!bothSigns(BridgeSigns.of(Math.max(BAND * largest, 1e-9), all), large, largest, phases)) {
            sheet.missing(
                    SensingParameter.OFFSET_A,
                    "currents of both signs in every phase of " + test.id(),
                    "repair the bridge first, or record a turning motor");
            return;
        }
        double[][] amps = phases.amps();
        double correlation = Statistics.correlation(amps[0], amps[1]);
        if (!(correlation > LEAST_CORRELATION && correlation < MOST_CORRELATION)) {
            sheet.missing(
                    SensingParameter.OFFSET_A,
                    "phase currents a third of a turn apart in " + test.id(),
                    "record a motor that turns steadily under current");
            return;
        }
        double[] crossings = followed(phases);
        PhaseTraces whole = crossings.length == 0
                ? phases
                : phases.part((int) Math.ceil(crossings[0]), (int) Math.ceil(crossings[crossings.length - 1]));
        Optional<SensorFit> fit = SensorFit.of(angles(crossings), whole.amps());
        if (fit.isEmpty()) {
            sheet.missing(
                    SensingParameter.OFFSET_A,
                    "currents that add to nothing in " + test.id(),
                    "check which channel shows which phase, and their signs");
            return;
        }
        results(whole, fit.get(), largest);
    }

    private boolean bothSigns(BridgeSigns signs, BridgeSigns large, double largest, PhaseTraces phases) {
        BridgeWords.of(signs, BAND * largest, phases.phases()).forEach(sheet::detail);
        BridgeWords.verdict(signs, large).ifPresent(sheet::remark);
        return signs.healthy();
    }

    /** Beginnings of electrical turns; empty where the samples do not show them. */
    private double[] followed(PhaseTraces phases) {
        double[] crossings = crossings(phases.traces().get(0).values());
        double perTurn = perTurn(crossings);
        Optional<Double> stated = test.figures()
                .known(TestFigure.SPEED)
                .flatMap(w -> polePairs.map(p -> p.si() * w.si() / (2 * Math.PI)));
        double interval = phases.traces().get(0).intervalS();
        boolean slow =
                stated.filter(hertz -> 1 / interval < FEWEST_PER_TURN * hertz).isPresent();
        if (slow || perTurn < FEWEST_PER_TURN || crossings.length <= FEWEST_TURNS) {
            sheet.remark(Phrase.of(
                            "a sample every {dt} does not follow the electrical turns: only signs, means and sizes count")
                    .with("dt", Quantity.of(interval, "s"), "ms"));
            return new double[0];
        }
        return crossings;
    }

    /** Electrical angle of each sample from the first to the last of the beginnings, by a smooth curve through all of them. */
    private static double[] angles(double... crossings) {
        if (crossings.length == 0) {
            return new double[0];
        }
        int from = (int) Math.ceil(crossings[0]);
        double[] angles = new double[(int) Math.ceil(crossings[crossings.length - 1]) - from];
        double[] turns = new double[crossings.length];
        double[] shares = new double[crossings.length];
        for (int turn = 0; turn < crossings.length; turn++) {
            turns[turn] = turn;
            shares[turn] = (crossings[turn] - from) / angles.length;
        }
        LinearFit curve = LinearFit.of(Design.polynomial(shares, SMOOTH), turns);
        for (int i = 0; i < angles.length; i++) {
            double share = (double) i / angles.length;
            double turn = 0;
            for (int power = SMOOTH; power >= 0; power--) {
                turn = turn * share + curve.parameter(power);
            }
            angles[i] = 2 * Math.PI * turn;
        }
        return angles;
    }

    /** Samples of an electrical turn; 0 where less than one was seen. */
    private static double perTurn(double... crossings) {
        return crossings.length < 2 ? 0 : (crossings[crossings.length - 1] - crossings[0]) / (crossings.length - 1.0);
    }

    /** Where the current rises through its mean, having been well below it. */
    private static double[] crossings(double[] amp) {
        double mean = Statistics.mean(amp);
        double well = 0.4 * Statistics.standardDeviation(amp);
        List<Double> found = new ArrayList<>();
        boolean low = false;
        for (int i = 0; i < amp.length; i++) {
            low |= amp[i] < mean - well;
            if (low && amp[i] >= mean && amp[i - 1] < mean) {
                found.add(i - (amp[i] - mean) / (amp[i] - amp[i - 1]));
                low = false;
            }
        }
        return found.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private void results(PhaseTraces phases, SensorFit fit, double largest) {
        int n = phases.phases().size();
        for (int k = 0; k < n; k++) {
            value(
                    SensingParameter.offset(phases.phases().get(k)),
                    fit.offsets()[k],
                    fit.offsetStandard()[k],
                    "mean while turning");
        }
        double[] o = fit.offsets();
        double once = n == 3 ? SenseError.onceAmp(o[0], o[1], o[2]) : SenseError.onceAmp(o[0], o[1], -o[0] - o[1]);
        double[] g = fit.gains();
        double twice = n == 3 ? SenseError.twiceShare(g[0], g[1], g[2]) : SenseError.twiceShareOfTwo(g[0], g[1]);
        sheet.detail(
                Phrase.of("these offsets swing the torque current by {once} once per electrical turn, these gains by"
                                + " {twice} of the current twice")
                        .with("once", Quantity.of(once, "A"), "A")
                        .with("twice", Quantity.number(twice), "%"));
        if (phases.phases().get(0) != 0) {
            sheet.remark("the current of A was not recorded: no gain over it");
            return;
        }
        for (int k = 1; k < n; k++) {
            value(SensingParameter.gain(phases.phases().get(k)), g[k], fit.gainStandard()[k], "gain over that of A");
        }
        if (n == 3) {
            sheet.detail(Phrase.of(
                            "the three currents add to {s} rms beside the sum of their offsets, {share} of the largest")
                    .with("s", Quantity.of(fit.sumRmsAmp(), "A"), "A")
                    .with("share", Quantity.number(fit.sumRmsAmp() / largest), "%"));
        } else {
            sheet.remark(
                    "two sensors: their sum cannot be checked, and phases that are not alike would look like unequal gains");
        }
    }

    private void value(SensingParameter what, double value, double standard, String how) {
        Quantity quantity = what.unit().isEmpty() ? Quantity.number(value) : Quantity.of(value, "A");
        Known known = Known.of(
                quantity,
                standard,
                Source.of(test.id() + " " + what.symbol(), STRETCHES - 1.0),
                Origin.MEASURED,
                test.id());
        Working.Sheet working = Working.begin();
        working.note(
                how, "{" + what.symbol() + "}", what.unit(), "stretches left out in turn give the uncertainty", known);
        sheet.value(what, new Candidate(known, test.id(), working.end()));
    }
}
