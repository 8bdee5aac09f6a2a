package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import servowright.engine.bench.ChannelRole.Signal;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Motor;
import servowright.engine.machine.TestFigure;
import servowright.engine.numeric.Statistics;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Recording;

/**
 * Voltage step on the locked rotor: the current, or the voltage across a shunt, rises towards V/R with the time constant
 * L/R. Exponential fit and flux-linkage integral stand side by side; what they differ beyond scatter is model spread. The
 * resistance is that of the whole loop: winding, shunt, leads and source.
 */
final class InductanceStepTest {
    /** A step over fewer values than this is lost in the steps of its converter. */
    private static final int FEWEST_LEVELS = 12;

    /** The last part of a recording, one in so many, shows what the current settles at. */
    private static final int SETTLED = 5;

    private final BenchTest test;
    private final Recording recording;
    private final ResultSheet sheet;
    private final Instruments instruments;
    private final StepReduction reduction;
    private Optional<ChannelRole> role = Optional.empty();
    private Optional<ChannelRole> voltageRole = Optional.empty();
    private Optional<Trace> current = Optional.empty();
    private Optional<Trace> voltage = Optional.empty();

    private InductanceStepTest(BenchTest test, Motor motor, Recording recording, Optional<Known> phaseOhmAtTwenty) {
        this.test = test;
        this.recording = recording;
        this.sheet = new ResultSheet(test);
        this.instruments = new Instruments(test.instrument());
        this.reduction = new StepReduction(test, motor, instruments, phaseOhmAtTwenty);
    }

    /**
     * Reduces a recorded step.
     *
     * @param phaseOhmAtTwenty phase resistance, for a test that states no voltage
     */
    static Stepped of(BenchTest test, Motor motor, Recording recording, Optional<Known> phaseOhmAtTwenty) {
        return new InductanceStepTest(test, motor, recording, phaseOhmAtTwenty).reduced();
    }

    private Stepped reduced() {
        Optional<Missing<?>> unusable = channels();
        if (unusable.isPresent()) {
            sheet.missing(MotorParameter.PHASE_INDUCTANCE, unusable.get());
            return new Stepped(sheet.end(), List.of());
        }
        Outcome<LoopInductance> loop = loop();
        if (loop instanceof Missing<LoopInductance> why) {
            sheet.missing(MotorParameter.PHASE_INDUCTANCE, why);
            return new Stepped(sheet.end(), List.of());
        }
        LoopInductance found = loop.found().orElseThrow();
        PhaseInductance.add(sheet, test, found);
        return new Stepped(sheet.end(), List.of(found));
    }

    /** Finds current and voltage among the channels; what cannot be used is the answer. */
    private Optional<Missing<?>> channels() {
        for (Channel channel : recording.channels()) {
            Optional<ChannelRole> shown = role(channel);
            if (shown.isEmpty() || shown.get().signal() == Signal.OTHER) {
                continue;
            }
            Outcome<Trace> trace = Trace.of(test, recording, channel);
            if (trace instanceof Missing<Trace> why) {
                return Optional.of(why);
            }
            boolean volts = shown.get().signal() == Signal.VOLTAGE;
            Trace found = trace.found().map(t -> volts ? t : t.doubted()).orElseThrow();
            sheet.remarks(found.remarks());
            if (!volts && (cutOff(found) || coarse(found))) {
                return Optional.of(limited(found));
            }
            if (volts) {
                voltage = voltage.or(() -> Optional.of(found));
                voltageRole = voltageRole.or(() -> shown);
            } else {
                current = current.or(() -> Optional.of(found));
                role = role.or(() -> shown);
            }
        }
        if (current.isEmpty()) {
            return Optional.of(
                    new Missing<Trace>(
                            List.of(
                                    new Outcome.Need(
                                            "the current in " + recording.name(),
                                            "state channels: {CH1: current A to B}, or {CH1: shunt, A to B} with the resistance of the shunt"))));
        }
        return unit();
    }

    /** At its limit while it rises, or in the noise of what it settles at. */
    private static boolean cutOff(Trace trace) {
        double[] v = trace.values();
        return trace.saturation().isPresent()
                || CutNoise.at(Arrays.copyOfRange(v, v.length - v.length / SETTLED, v.length));
    }

    private static boolean coarse(Trace trace) {
        return Arrays.stream(trace.values()).distinct().limit(FEWEST_LEVELS).count() < FEWEST_LEVELS;
    }

    private Missing<Trace> limited(Trace trace) {
        String what = recording.name() + " " + trace.channel();
        return new Missing<Trace>(List.of(
                coarse(trace)
                        ? new Outcome.Need(
                                "a current that takes more than " + FEWEST_LEVELS + " values in " + what,
                                "choose a smaller range and record again")
                        : new Outcome.Need(
                                "a current in " + what + " that does not run into its limit: it is cut off",
                                "choose a larger range and record again")));
    }

    private Optional<ChannelRole> role(Channel channel) {
        String words = test.channels().get(channel.name());
        if (words != null) {
            return Optional.of(ChannelRole.parse(words));
        }
        boolean amps =
                channel.unit().isPresent() && channel.unit().get().dimension().equals(Dimension.CURRENT);
        return test.channels().isEmpty() && amps ? Optional.of(ChannelRole.parse("current")) : Optional.empty();
    }

    /** A current in ampere, or a voltage with the resistance of its shunt. */
    private Optional<Missing<?>> unit() {
        Channel channel = recording.channel(current.orElseThrow().channel()).orElseThrow();
        boolean shunt = role.orElseThrow().signal() == Signal.SHUNT;
        Dimension wanted = shunt ? Dimension.VOLTAGE : Dimension.CURRENT;
        boolean right =
                channel.unit().isPresent() && channel.unit().get().dimension().equals(wanted);
        Optional<Known> ohm = test.figures().known(TestFigure.SHUNT);
        if (!right) {
            return Optional.of(new Missing<Trace>(List.of(new Outcome.Need(
                    channel.name() + " in " + (shunt ? "volt" : "ampere"),
                    "give the unit of " + channel.name() + ", or say that it shows the voltage of a shunt"))));
        }
        if (shunt && (ohm.isEmpty() || ohm.get().si() <= 0)) {
            return Optional.of(new Missing<Trace>(
                    List.of(new Outcome.Need("resistance of the shunt in " + test.id(), "state shunt with the test"))));
        }
        return Optional.empty();
    }

    private Outcome<LoopInductance> loop() {
        Optional<Contacts> contacts = role.orElseThrow()
                .contacts()
                .or(() -> voltageRole.flatMap(ChannelRole::contacts))
                .or(() -> test.readings().stream()
                        .map(r -> Contacts.parse(r.contacts()))
                        .flatMap(Optional::stream)
                        .findFirst());
        Outcome<List<StepFit>> fits = fits();
        if (fits instanceof Missing<List<StepFit>> why) {
            return why.forAnother();
        }
        List<StepFit> good = fits.found().orElseThrow();
        StepCurves.add(sheet, current.orElseThrow(), good);
        if (contacts.isEmpty()) {
            sheet.detail(Phrase.of("time constant of all steps together {tau}")
                    .with("tau", reduction.tau(sheet, good), "us"));
            return Outcome.missing(
                    "where the winding was contacted in " + test.id(),
                    "state channels: {.. : current A to B}, or {.. : current A to BC}");
        }
        Known amp = amp(good);
        Optional<ChannelRole.RotorAxis> axis = role.get().axis().or(() -> voltageRole.flatMap(ChannelRole::axis));
        return reduction.loop(sheet, contacts.get(), axis, good, amp, volt());
    }

    private Outcome<List<StepFit>> fits() {
        Trace amps = current.orElseThrow();
        StepEdges edges = voltage.map(v -> StepEdges.ofVoltage(v.values()))
                .filter(e -> voltage.get().count() == amps.count())
                .orElseGet(() -> StepEdges.ofCurrent(amps.values()));
        List<StepFit> good = new ArrayList<>();
        Optional<Missing<StepFit>> refusal = Optional.empty();
        for (int k = 0; k < edges.count(); k++) {
            int from = edges.from().get(k);
            Outcome<StepFit> fit = StepFit.of(
                    amps, levelBefore(amps, edges, k), from, edges.to().get(k));
            fit.found().ifPresent(good::add);
            if (fit instanceof Missing<StepFit> why) {
                refusal = Optional.of(why);
            }
        }
        if (!good.isEmpty()) {
            return Outcome.answer(good, Working.NONE);
        }
        return refusal.map(m -> m.<List<StepFit>>forAnother())
                .orElseGet(() -> new Missing<>(List.of(new Outcome.Need(
                        "a step in " + recording.name(),
                        "record from before the step until the current stands still"))));
    }

    private static double levelBefore(Trace amps, StepEdges edges, int k) {
        int end = edges.from().get(k);
        int start = k == 0 ? 0 : Math.max(0, end - (end - edges.from().get(k - 1)) / 8);
        int most = Math.max(start, end - Math.max(3, amps.count() / 50));
        int from = k == 0 ? Math.min(most, Math.max(0, end - 1)) : start;
        double[] before = Arrays.copyOfRange(amps.values(), from, Math.max(from + 1, end));
        return Statistics.median(before);
    }

    /** Change of the current with everything that makes it uncertain. */
    private Known amp(List<StepFit> fits) {
        StepFit first = fits.get(0);
        boolean shunt = role.orElseThrow().signal() == Signal.SHUNT;
        String from = recording.name() + " " + current.orElseThrow().channel();
        Known change = Known.of(
                Quantity.of(Math.abs(first.changeAmp()), shunt ? "V" : "A"),
                first.finalAmpError() * Math.sqrt(2),
                Source.of(test.id() + " settled level", first.freedom()),
                Origin.MEASURED,
                from);
        Known limited = instruments.limited(change, shunt ? Reads.SCOPE_SHUNT : Reads.SCOPE_CURRENT);
        instruments.assumption(shunt ? Reads.SCOPE_SHUNT : Reads.SCOPE_CURRENT).ifPresent(reduction::assume);
        return shunt ? reduction.throughShunt(limited) : reduction.asRead(limited);
    }

    /** Change of the applied voltage at the first step used, if it was recorded or stated. */
    private Optional<Known> volt() {
        Optional<Known> stated = test.figures().known(TestFigure.STEP_VOLTAGE);
        if (voltage.isEmpty()) {
            return stated.filter(v -> v.si() > 0);
        }
        double[] v = voltage.get().values();
        double change = Statistics.quantile(v, 0.9) - Statistics.quantile(v, 0.1);
        if (!(change > 0)) {
            return stated;
        }
        Known read = Known.of(
                Quantity.of(change, "V"),
                0.002 * change,
                Source.of(test.id() + " step voltage"),
                Origin.MEASURED,
                recording.name() + " " + voltage.get().channel());
        instruments.assumption(Reads.SCOPE_VOLTAGE).ifPresent(reduction::assume);
        return Optional.of(instruments.limited(read, Reads.SCOPE_VOLTAGE));
    }
}
