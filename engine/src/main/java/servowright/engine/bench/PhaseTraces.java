package servowright.engine.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Phrase;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.quantity.Dimension;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Recording;

/**
 * Phase currents recorded together.
 *
 * @param phases  0 to 2 for each current, rising
 * @param traces  the currents, all of the same times
 * @param remarks what was found and how it was handled
 */
record PhaseTraces(List<Integer> phases, List<Trace> traces, List<Phrase> remarks) {
    private static final Pattern PHASE =
            Pattern.compile("current\\s+([abcuvw123])(?![a-z0-9])|([abcuvw123])\\s*to\\s*star");

    PhaseTraces {
        phases = List.copyOf(phases);
        traces = List.copyOf(traces);
        remarks = List.copyOf(remarks);
    }

    /** Two or three phase currents, or what is missing. */
    static Outcome<PhaseTraces> of(BenchTest test, Recording recording) {
        Map<Integer, Trace> found = new TreeMap<>();
        List<Phrase> remarks = new ArrayList<>();
        for (Channel channel : recording.channels()) {
            Matcher m = PHASE.matcher(
                    test.channels().getOrDefault(channel.name(), "").toLowerCase(Locale.ROOT));
            boolean ampere = channel.unit()
                    .filter(u -> u.dimension().equals(Dimension.CURRENT))
                    .isPresent();
            if (m.find() && ampere) {
                Outcome<Trace> trace = Trace.of(test, recording, channel);
                if (trace instanceof Missing<Trace> why) {
                    return why.forAnother();
                }
                Trace t = trace.found().orElseThrow();
                if (t.saturation().isPresent()) {
                    return Outcome.missing(
                            "currents in " + recording.name() + " that do not run into a limit: " + channel.name()
                                    + " is cut off",
                            "choose a larger range or less current, and record again");
                }
                String letter = m.group(1) == null ? m.group(2) : m.group(1);
                found.put("abcuvw123".indexOf(letter) % 3, t);
                t.remarks().stream().filter(r -> !remarks.contains(r)).forEach(remarks::add);
            }
        }
        if (found.size() < 2) {
            return Outcome.missing(
                    "the currents of two or three phases in " + recording.name(),
                    "state channels: {..: current A, ..: current B}, with a unit of current in the file or in scale");
        }
        List<Trace> traces = List.copyOf(found.values());
        if (traces.stream().mapToInt(Trace::count).distinct().count() > 1) {
            return Outcome.missing(
                    "phase currents of " + recording.name() + " at the same times", "record them without gaps");
        }
        return Outcome.answer(new PhaseTraces(List.copyOf(found.keySet()), traces, remarks), Working.NONE);
    }

    double[][] amps() {
        return traces.stream().map(Trace::values).toArray(double[][]::new);
    }

    /** With the third current computed from two, in the order A, B, C. */
    double[][] allThree() {
        if (phases.size() == 3) {
            return amps();
        }
        double[] minus = new double[traces.get(0).count()];
        for (int i = 0; i < minus.length; i++) {
            minus[i] = -traces.get(0).values()[i] - traces.get(1).values()[i];
        }
        double[][] all = new double[3][];
        for (int k = 0; k < 2; k++) {
            all[phases.get(k)] = traces.get(k).values();
        }
        all[3 - phases.get(0) - phases.get(1)] = minus;
        return all;
    }

    /** Means of neighbours, so many that no more than {@code most} samples are left. */
    PhaseTraces thinned(int most) {
        return new PhaseTraces(phases, traces.stream().map(t -> t.thinned(most)).toList(), remarks);
    }

    /** The samples from one to another. */
    PhaseTraces part(int from, int to) {
        return new PhaseTraces(
                phases, traces.stream().map(t -> t.part(from, to)).toList(), remarks);
    }
}
