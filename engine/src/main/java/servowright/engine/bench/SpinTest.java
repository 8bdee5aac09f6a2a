package servowright.engine.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.engine.bench.ChannelRole.Signal;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Phrase;
import servowright.engine.known.Propagation;
import servowright.engine.known.Source;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Motor;
import servowright.engine.machine.TestFigure;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.HookUp;
import servowright.engine.quantity.Quantity;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Recording;

/**
 * Back-EMF spin: the motor is driven by another machine with its terminals open, and the voltage is recorded. Fundamental
 * and harmonics are found by regression; flux linkage follows from fundamental and electrical frequency alone, so that
 * neither speed nor pole pairs are needed for it. A stated speed gives the pole pairs.
 */
final class SpinTest {
    private static final String REGRESSION = "regression on offset, fundamental and harmonics; covariance widened for "
            + "residuals that depend on their neighbours";

    private final BenchTest test;
    private final Recording recording;
    private final ResultSheet sheet;
    private final Instruments instruments;
    private final FluxReduction flux;
    private final List<SpinPoint> points = new ArrayList<>();
    private final List<SpinFit> fits = new ArrayList<>();
    private final List<ChannelRole> roles = new ArrayList<>();
    private final List<Missing<?>> refusals = new ArrayList<>();
    private Optional<Known> hertzOfFirst = Optional.empty();

    private SpinTest(BenchTest test, Motor motor, Recording recording) {
        this.test = test;
        this.recording = recording;
        this.sheet = new ResultSheet(test);
        this.instruments = new Instruments(test.instrument());
        this.flux = new FluxReduction(test, motor);
    }

    /** Reduces a recorded spin. */
    static Spun of(BenchTest test, Motor motor, Recording recording) {
        return new SpinTest(test, motor, recording).reduced();
    }

    private Spun reduced() {
        Map<String, String> shown = test.channels();
        List<Reduced> fitted = recording.channels().parallelStream()
                .filter(channel -> shown.isEmpty() || shown.containsKey(channel.name()))
                .map(channel -> fitted(channel, ChannelRole.parse(shown.getOrDefault(channel.name(), ""))))
                .toList();
        fitted.forEach(this::add);
        for (String name : shown.keySet()) {
            if (recording.channel(name).isEmpty()) {
                sheet.remark("the recording has no channel " + name);
            }
        }
        SpinDetails.of(fits, roles).forEach(sheet::detail);
        if (!fits.isEmpty()) {
            sheet.curves(SpinDetails.curves(fits.get(0)));
        }
        fluxLinkage();
        polePairs();
        return new Spun(sheet.end(), points);
    }

    /** A channel, and what was made of it if it shows a voltage. */
    private record Reduced(Channel channel, ChannelRole role, Optional<Outcome<SpinFit>> fit) {}

    private Reduced fitted(Channel channel, ChannelRole role) {
        boolean voltage = role.signal() == Signal.VOLTAGE;
        return new Reduced(channel, role, voltage ? Optional.of(usable(channel, role)) : Optional.empty());
    }

    private void add(Reduced reduced) {
        Channel channel = reduced.channel();
        ChannelRole role = reduced.role();
        if (reduced.fit().isEmpty()) {
            sheet.remark(channel.name() + " shows no voltage; a spin does not use it");
            return;
        }
        Outcome<SpinFit> outcome = reduced.fit().get();
        if (outcome instanceof Missing<SpinFit> why) {
            refusals.add(why);
            sheet.remark(channel.name() + " was not used: " + why.needs().get(0).what());
            return;
        }
        SpinFit fit = outcome.found().orElseThrow();
        fits.add(fit);
        roles.add(role);
        sheet.remarks(fit.remarks());
        Known[] found = voltAndHertz(fit);
        hertzOfFirst = hertzOfFirst.or(() -> Optional.of(found[1]));
        if (role.contacts().isEmpty()) {
            ask(channel.name(), found[0], found[1]);
        } else {
            Contacts contacts = role.contacts().get();
            flux.add(
                    channel.name() + ", " + contacts.words(),
                    found[0],
                    FluxReduction.basis(contacts.hookUp(), false),
                    found[1]);
            points.add(new SpinPoint(test, contacts, found[0], found[1]));
        }
    }

    private Outcome<SpinFit> usable(Channel channel, ChannelRole role) {
        String name = recording.name() + " " + channel.name();
        if (channel.unit().isEmpty()) {
            return Outcome.missing(
                    "the unit of " + name + ": it holds bare numbers",
                    "export it in volt, or state scale: {" + channel.name() + ": 1 V} with the worth of one count");
        }
        if (!channel.unit().get().dimension().equals(Dimension.VOLTAGE)) {
            return Outcome.missing(
                    "a voltage in " + name + ": it is in "
                            + channel.unit().get().symbol(),
                    "give the recording of the open-circuit voltage");
        }
        if (role.contacts().isPresent() && role.contacts().get().hookUp() == HookUp.ONE_AGAINST_TWO) {
            return Outcome.missing(
                    "open terminals during " + test.id() + ": two joined terminals carry current when the motor turns",
                    "record between two terminals, the third open");
        }
        Outcome<Trace> trace = Trace.of(test, recording, channel);
        return trace.fold(a -> SpinFit.of(a.value().scaledBy(probe().si())), Missing::forAnother);
    }

    /** Fundamental and frequency with everything that makes them uncertain. */
    private Known[] voltAndHertz(SpinFit fit) {
        String id = test.id() + " " + fit.trace().channel();
        List<Quantity> values = List.of(Quantity.of(fit.volt(), "V"), Quantity.of(fit.hertz(), "Hz"));
        String from = recording.name() + " " + fit.trace().channel();
        Known volt;
        Known hertz;
        if (fit.pieces().speedChanged()) {
            double mean = fit.pieces().meanHertz();
            double scatter = fit.pieces().meanVoltPerHertzError() * mean;
            Source source = Source.of(id + " pieces", fit.pieces().count() - 1.0);
            Source count = Source.of(id + " mean frequency");
            double error = fit.pieces().meanHertzError();
            // The quotient is what the pieces fix: an error of the mean frequency moves both together.
            volt = Known.of(
                            Quantity.of(fit.pieces().meanVoltPerHertz() * mean, "V"),
                            scatter,
                            source,
                            Origin.MEASURED,
                            from)
                    .withPart(count, fit.pieces().meanVoltPerHertz() * error);
            hertz = Known.of(Quantity.of(mean, "Hz"), error, count, Origin.MEASURED, from);
            sheet.remark(
                    Phrase.of("the speed changed from {least} to {most} electrical during the record; it was reduced "
                                    + "in {count} pieces")
                            .with("least", Quantity.of(fit.pieces().leastHertz(), "Hz"), "Hz")
                            .with("most", Quantity.of(fit.pieces().mostHertz(), "Hz"), "Hz")
                            .with("count", fit.pieces().count()));
        } else {
            double widened = fit.pieces().scatterFactor() * fit.pieces().scatterFactor();
            double[][] covariance = {
                {fit.voltAndHertz().at(0, 0) * widened, fit.voltAndHertz().at(0, 1) * widened},
                {fit.voltAndHertz().at(1, 0) * widened, fit.voltAndHertz().at(1, 1) * widened}
            };
            List<Known> both = Propagation.jointly(
                    values, covariance, id, fit.fit().effectiveDegreesOfFreedom(), Origin.MEASURED, from);
            volt = both.get(0);
            hertz = both.get(1);
        }
        return noted(fit, volt, hertz);
    }

    private Known[] noted(SpinFit fit, Known volt, Known hertz) {
        // The nominal factor is already in the samples; its tolerance is not.
        Known scaled = volt.times(probe()).times(1 / probe().si());
        Known limited = instruments.limited(scaled, Reads.SCOPE_VOLTAGE);
        Known timed = instruments.limited(hertz, Reads.TIME);
        instruments.assumption(Reads.SCOPE_VOLTAGE).ifPresent(flux::assume);
        instruments.assumption(Reads.TIME).ifPresent(flux::assume);
        String channel = fit.trace().channel();
        flux.sheet().note("fundamental of " + channel + ", peak", "{E}", "V", REGRESSION, limited);
        flux.sheet().note("frequency of " + channel, "{f}", "Hz", REGRESSION, timed);
        return new Known[] {limited, timed};
    }

    private Known probe() {
        return test.figures()
                .known(TestFigure.PROBE)
                .filter(k -> k.si() > 0)
                .orElse(Known.number(1, Origin.DECLARED, "direct"));
    }

    private void ask(String channel, Known volt, Known hertz) {
        Working.Sheet line = Working.begin();
        Phrase phrase = Phrase.of(
                        channel + ": {E} peak at {f}; flux linkage would be {line} between two terminals, {phase} "
                                + "from a terminal to the star point")
                .with("E", volt, "V")
                .with("f", hertz, "Hz")
                .with(
                        "line",
                        FluxReduction.flux(
                                line, channel, volt, FluxReduction.basis(HookUp.TWO_TERMINALS, false), hertz),
                        "mWb")
                .with(
                        "phase",
                        FluxReduction.flux(line, channel, volt, FluxReduction.basis(HookUp.PHASE, false), hertz),
                        "mWb");
        sheet.detail(phrase);
        sheet.missing(
                MotorParameter.FLUX_LINKAGE,
                "where " + channel + " of " + recording.name() + " was contacted",
                "state channels: {" + channel + ": A to B} for two terminals, {" + channel
                        + ": A to star} for the star point");
    }

    private void fluxLinkage() {
        if (!flux.fluxes().isEmpty()) {
            sheet.value(MotorParameter.FLUX_LINKAGE, flux.result());
        } else if (sheet.found(MotorParameter.FLUX_LINKAGE).isEmpty()) {
            if (refusals.isEmpty()) {
                sheet.missing(
                        MotorParameter.FLUX_LINKAGE,
                        "a voltage channel in " + recording.name(),
                        "state which channel shows which pair of terminals");
            } else {
                sheet.missing(MotorParameter.FLUX_LINKAGE, refusals.get(0));
            }
        }
    }

    private void polePairs() {
        hertzOfFirst.ifPresent(
                hertz -> SpinPolePairs.add(sheet, test, hertz, test.figures().known(TestFigure.SPEED), instruments));
    }
}
