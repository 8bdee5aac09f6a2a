package servowright.engine.bench;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.known.Term;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Motor;
import servowright.engine.machine.TestFigure;
import servowright.engine.motor.LoadCurveFit;
import servowright.engine.numeric.BlockJackknife;
import servowright.engine.numeric.Statistics;
import servowright.engine.power.Chopper;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Recording;

/**
 * Load curve: at one constant voltage the motor is loaded from free to standing still, with speed, torque and current read along. Where the
 * power from the supply was recorded too, it tells whether the current is the motor's or that of a supply before a chopper.
 */
final class LoadCurveTest {
    private static final String LINES =
            "straight lines of current over speed and of torque over current, least squares";
    private static final double STEADY = 0.02;
    private static final double SAME = 0.05;
    private static final double MOST_LEFT = 0.1;
    private static final double STANDS_OUT = 4;

    private final BenchTest test;
    private final Motor motor;
    private final Optional<Known> polePairs;
    private final ResultSheet sheet;
    private final Instruments instruments;

    private LoadCurveTest(BenchTest test, Motor motor, Optional<Known> polePairs) {
        this.test = test;
        this.motor = motor;
        this.polePairs = polePairs;
        this.sheet = new ResultSheet(test);
        this.instruments = new Instruments(test.instrument());
    }

    /** Reduces the curve; the flux linkage needs the pole pairs as well. */
    static TestResult of(BenchTest test, Motor motor, Optional<Recording> recording, Optional<Known> polePairs) {
        return new LoadCurveTest(test, motor, polePairs).reduced(recording);
    }

    private TestResult reduced(Optional<Recording> recording) {
        Optional<Known> volt = test.figures().known(TestFigure.APPLIED_VOLTAGE).filter(u -> u.si() > 0);
        if (recording.isEmpty()) {
            return refused(
                    "a recording of " + test.id(), "record speed, torque and current from free to standing still");
        }
        if (volt.isEmpty()) {
            return refused("the voltage at the motor in " + test.id(), "state applied_voltage with the test");
        }
        Outcome<Points> bySpeed = Points.of(test, recording, Wanted.SPEED, Wanted.CURRENT);
        Outcome<Points> byAmp = Points.of(test, recording, Wanted.CURRENT, Wanted.TORQUE);
        Optional<Missing<?>> why = bySpeed instanceof Missing<Points> a
                ? Optional.of(a)
                : byAmp instanceof Missing<Points> b ? Optional.of(b) : Optional.empty();
        if (why.isPresent()) {
            sheet.missing(MotorParameter.FLUX_LINKAGE, why.get());
            return sheet.end();
        }
        Points speed = bySpeed.found().orElseThrow();
        sheet.remarks(speed.remarks());
        AtLimit.remark("the current", speed.y()).ifPresent(sheet::remark);
        AtLimit.remark("the torque", byAmp.found().orElseThrow().y()).ifPresent(sheet::remark);
        return fitted(recording.get(), volt.get().si(), speed, byAmp.found().orElseThrow());
    }

    private TestResult refused(String need, String settle) {
        return sheet.refused(MotorParameter.FLUX_LINKAGE, need, settle);
    }

    private TestResult fitted(Recording recording, double volt, Points speed, Points torque) {
        String said = torque.said();
        Optional<Double> supply = supplyVolt(recording, torque.x());
        if (supply.isEmpty() && said.contains("supply")) {
            return refused(
                    "a motor current in " + test.id() + ": the supply's current is not the motor's",
                    "record the power from the supply too: {..: power}");
        }
        double factor = factor(supply, volt);
        if (!(factor >= 1)) {
            return refused(
                    "power and current of one supply in " + test.id() + ": their ratio lies below the voltage applied",
                    "check applied_voltage and the units of power and current");
        }
        double[] amp = Arrays.stream(torque.x()).map(i -> factor * i).toArray();
        Optional<LoadCurveFit> fit = LoadCurveFit.of(volt, speed.x(), amp, torque.y());
        if (fit.isEmpty() || !lines(fit.get(), amp, torque.y())) {
            return refused(
                    "current that falls with speed and torque that rises with current, on lines, in " + test.id(),
                    "load the motor in steps from free to standing still, at one voltage");
        }
        describe(fit.get());
        sheet.curves(PointCurves.of(
                "torque",
                "line",
                amp,
                torque.y(),
                fit.get().torque().fit().residuals().toArray(),
                "A",
                "N m"));
        constant(fit.get(), said, atMost(amp, torque.y()));
        return sheet.end();
    }

    /** Power over current, where a power was recorded and the two keep their ratio. */
    private Optional<Double> supplyVolt(Recording recording, double[] amp) {
        Optional<Trace> power = recording.channels().stream()
                .filter(c -> power(c))
                .findFirst()
                .flatMap(c -> Trace.of(test, recording, c).found())
                .filter(t -> t.count() == amp.length);
        double most = Arrays.stream(amp).map(Math::abs).max().orElse(0);
        double[] ratios = IntStream.range(0, power.map(Trace::count).orElse(0))
                .filter(k -> Math.abs(amp[k]) > SAME * most)
                .mapToDouble(k -> power.orElseThrow().values()[k] / amp[k])
                .toArray();
        if (ratios.length < 3) {
            return Optional.empty();
        }
        double middle = Statistics.median(ratios);
        return Statistics.robustStandardDeviation(ratios) < STEADY * Math.abs(middle)
                ? Optional.of(middle)
                : Optional.empty();
    }

    private boolean power(Channel channel) {
        String said = test.channels().getOrDefault(channel.name(), "").toLowerCase(Locale.ROOT);
        return said.contains("power")
                && channel.unit()
                        .filter(u -> u.dimension().equals(Dimension.POWER))
                        .isPresent();
    }

    /** Motor ampere per recorded ampere, with what gives it away. */
    private double factor(Optional<Double> supply, double volt) {
        if (supply.isEmpty() || Math.abs(supply.get() / volt - 1) < SAME) {
            return 1;
        }
        if (supply.get() < volt) {
            return 0;
        }
        double factor = Chopper.motorPerSupplyAmp(supply.get(), volt);
        sheet.remark(Phrase.of(
                        "power over current is {us} all along, but {u} was applied to the motor: the current recorded is that of the"
                                + " supply before a chopper; the motor's is {k} times as large, and that was used")
                .with("us", Quantity.of(supply.get(), "V"), "V")
                .with("u", Quantity.of(volt, "V"), "V")
                .with("k", factor));
        return factor;
    }

    private static boolean lines(LoadCurveFit fit, double[] amp, double[] torque) {
        return fit.emfVoltSecondPerRad()
                        > STANDS_OUT * fit.ohm() * fit.current().standardError(1)
                && Math.abs(fit.newtonMetrePerAmp()) > STANDS_OUT * fit.torque().standardError(1)
                && near(fit.current(), amp)
                && near(fit.torque(), torque);
    }

    private static boolean near(BlockJackknife line, double[] y) {
        double range = Arrays.stream(y).max().orElse(0) - Arrays.stream(y).min().orElse(0);
        return line.fit().residualSd() < MOST_LEFT * range;
    }

    private void describe(LoadCurveFit fit) {
        sheet.detail(Phrase.of(
                        "{R} between the terminals, motor, leads and bridge together: not taken for the winding; {Ke} back-EMF constant,"
                                + " {Kt} torque constant, {T0} of drag")
                .with("R", Quantity.of(fit.ohm(), "ohm"), "mohm")
                .with("Ke", Quantity.of(fit.emfVoltSecondPerRad(), "V s/rad"), "mV s/rad")
                .with("Kt", Quantity.of(fit.newtonMetrePerAmp(), "N m/A"), "mN m/A")
                .with("T0", Quantity.of(fit.dragNewtonMetre(), "N m"), "mN m"));
    }

    private static double atMost(double[] amp, double[] torque) {
        int most = IntStream.range(0, amp.length)
                .boxed()
                .max((a, b) -> Double.compare(Math.abs(amp[a]), Math.abs(amp[b])))
                .orElseThrow();
        return torque[most] / amp[most];
    }

    private void constant(LoadCurveFit fit, String said, double standing) {
        FluxReduction flux = new FluxReduction(test, motor);
        instruments.assumption(Reads.METER_CURRENT).ifPresent(flux::assume);
        instruments.assumption(Reads.TORQUE).ifPresent(flux::assume);
        AmpBasis basis = basis(said, flux);
        double slope = fit.newtonMetrePerAmp();
        if (slope < 0) {
            sheet.remark("torque falls where current rises: they are counted in opposite senses; the size was used");
        }
        Known perAmp = Known.of(
                Quantity.of(Math.abs(slope), "N m/A"),
                fit.torque().standardError(1),
                Source.of(test.id() + " line", fit.torque().degreesOfFreedom()),
                Origin.MEASURED,
                test.id());
        sheet.detail(Phrase.of("torque over current at the largest current is {k}: the drag is missing from it")
                .with("k", Quantity.of(standing, "N m/A"), "mN m/A"));
        Known axis = flux.sheet()
                .line(
                        "torque per q-axis ampere",
                        "{Kt} = {s} · {gT} / {gI} / " + basis.overQAxis(),
                        "mN m/A",
                        Dimension.TORQUE_CONSTANT,
                        LINES,
                        v -> v[0] * v[1] / v[2] / basis.overQAxis(),
                        Term.of("s", perAmp, "mN m/A"),
                        Term.of("gT", instruments.gain(Reads.TORQUE)),
                        Term.of("gI", instruments.gain(Reads.METER_CURRENT)));
        if (polePairs.isEmpty()) {
            FluxReduction.askForPolePairs(sheet, test, motor);
            return;
        }
        flux.addTorque(test.id(), axis, polePairs.get());
        sheet.value(MotorParameter.FLUX_LINKAGE, flux.result());
    }

    private AmpBasis basis(String said, FluxReduction flux) {
        for (CurrentBasis basis : new CurrentBasis[] {CurrentBasis.PHASE_RMS, CurrentBasis.Q_AXIS}) {
            if (said.contains(basis.words())) {
                return new AmpBasis(basis, Optional.empty());
            }
        }
        if (!said.contains(CurrentBasis.SIX_STEP.words())) {
            flux.assume(Phrase.of("current counted as six-step: that of the two phases that carry it in turn"));
        }
        return new AmpBasis(CurrentBasis.SIX_STEP, Optional.empty());
    }
}
