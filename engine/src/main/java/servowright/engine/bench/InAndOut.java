package servowright.engine.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.TestKind;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.Unit;
import servowright.engine.quantity.Units;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Recording;
import servowright.engine.recording.Saturation;

/**
 * What was put into something and what came out, recorded together.
 *
 * @param gain    dimension of output over input
 * @param inUnit  unit to show the input in; empty for bare numbers
 * @param outUnit unit to show the output in; empty for bare numbers
 * @param said    what the test says of both
 * @param remarks what was found and how it was handled
 */
record InAndOut(Trace in, Trace out, Dimension gain, String inUnit, String outUnit, String said, List<Phrase> remarks) {
    InAndOut {
        remarks = List.copyOf(remarks);
    }

    /** Both, or what is missing. */
    static Outcome<InAndOut> of(BenchTest test, Recording recording) {
        Optional<Channel> first = shown(test, recording, "input");
        Optional<Channel> second = shown(test, recording, "output");
        if (first.isEmpty() || second.isEmpty()) {
            return Outcome.missing(
                    "an input and an output in " + recording.name(), "state channels: {..: input, ..: output}");
        }
        Outcome<Trace> in = Trace.of(test, recording, first.get());
        Outcome<Trace> out = Trace.of(test, recording, second.get());
        if (in instanceof Missing<Trace> why) {
            return why.forAnother();
        }
        if (out instanceof Missing<Trace> why) {
            return why.forAnother();
        }
        Trace u = in.found().orElseThrow();
        Trace y = out.found().orElseThrow();
        if (u.count() != y.count()) {
            return Outcome.missing(
                    "input and output of " + recording.name() + " at the same times", "record both without gaps");
        }
        boolean output = cutOff(test, y);
        if (output || (test.kind() == TestKind.SINE_RESPONSE && cutOff(test, u))) {
            return Outcome.missing(
                    (output ? "an output in " : "an input in ") + recording.name()
                            + " that does not run into its limit: " + (output ? y : u).channel() + " is cut off",
                    "choose a larger range or a smaller input, and record again");
        }
        List<Phrase> remarks = new ArrayList<>(u.remarks());
        y.remarks().stream().filter(r -> !remarks.contains(r)).forEach(remarks::add);
        AtLimit.remark(y.channel(), y.values()).ifPresent(remarks::add);
        AtLimit.remark(u.channel(), u.values()).ifPresent(remarks::add);
        Dimension gain = dimension(second.get()).over(dimension(first.get()));
        String inUnit = first.get().unit().map(Unit::symbol).orElse("");
        String outUnit = second.get().unit().map(Unit::symbol).orElse("");
        String said = said(test, first.get()) + " to " + said(test, second.get());
        return Outcome.answer(new InAndOut(u, y, gain, inUnit, outUnit, said, remarks), Working.NONE);
    }

    /** An input may be held at its limit, an output may not. */
    private static boolean cutOff(BenchTest test, Trace trace) {
        return test.kind() == TestKind.SINE_RESPONSE
                ? Saturation.ofWave(trace.values()).isPresent()
                : trace.saturation().isPresent();
    }

    private static Optional<Channel> shown(BenchTest test, Recording recording, String word) {
        return recording.channels().stream()
                .filter(c -> said(test, c).contains(word))
                .findFirst();
    }

    private static String said(BenchTest test, Channel channel) {
        return test.channels().getOrDefault(channel.name(), "").toLowerCase(Locale.ROOT);
    }

    private static Dimension dimension(Channel channel) {
        return channel.unit().map(Unit::dimension).orElse(Dimension.NUMBER);
    }

    /** A figure in the dimension of the input. */
    Quantity input(double si) {
        return new Quantity(si, Units.named(inUnit).dimension());
    }

    /** A figure in the dimension of the output. */
    Quantity output(double si) {
        return new Quantity(si, Units.named(outUnit).dimension());
    }

    /** Unit that a ratio of both can be plotted in; empty where theirs make none. */
    String gainUnit() {
        if (gain.equals(Dimension.SPEED_CONSTANT)) {
            return "rpm/V";
        }
        if (gain.equals(Dimension.NUMBER)) {
            return "1";
        }
        String quotient = outUnit + "/" + inUnit;
        return Units.find(quotient)
                .filter(u -> u.dimension().equals(gain))
                .map(u -> quotient)
                .orElse("");
    }

    /** What every gain of the two rests on. */
    static Phrase assumption() {
        return Phrase.of("scales of input and output taken as exact: an error of theirs is one of the gain");
    }

    /** A figure that this test found. */
    static Candidate candidate(
            BenchTest test,
            ResponseParameter what,
            Quantity value,
            double standard,
            double freedom,
            String how,
            String source) {
        return candidate(
                test,
                what,
                Known.of(
                        value,
                        standard,
                        Source.of(test.id() + " " + what.symbol(), freedom),
                        Origin.MEASURED,
                        test.id()),
                how,
                source);
    }

    /** The same, with an uncertainty of several parts. */
    static Candidate candidate(BenchTest test, ResponseParameter what, Known known, String how, String source) {
        Working.Sheet working = Working.begin();
        working.note(how, "{" + what.symbol() + "}", what.unit(), source, known);
        boolean scaled = what == ResponseParameter.GAIN || what == ResponseParameter.RATIO;
        return new Candidate(known, test.id(), working.end(), scaled ? List.of(assumption()) : List.of());
    }
}
