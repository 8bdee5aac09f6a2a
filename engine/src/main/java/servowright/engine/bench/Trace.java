package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.TestFigure;
import servowright.engine.numeric.HarmonicFit;
import servowright.engine.numeric.HarmonicTerms;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Clock;
import servowright.engine.recording.Recording;
import servowright.engine.recording.Saturation;
import servowright.engine.recording.Spread;

/**
 * One channel of a recording, fit to be reduced: finite samples in one stretch, with rising times.
 *
 * @param channel   its name
 * @param intervalS mean time between samples
 * @param seconds   time of each sample, the first about 0; not to be written to
 * @param values    samples in SI; not to be written to
 * @param even      whether the times are evenly spaced
 * @param remarks   what was found and how it was handled
 */
@SuppressWarnings("ArrayRecordComponent") // compared by identity on purpose, as in Channel
record Trace(String channel, double intervalS, double[] seconds, double[] values, boolean even, List<Phrase> remarks) {
    /** Fewer samples than this show no waveform. */
    static final int FEWEST = 32;

    private static final double MOST_LOST = 0.1;
    private static final double EVEN = 1e-6;

    Trace {
        remarks = List.copyOf(remarks);
    }

    /** A channel of a recording that shows a signal, or why it cannot be used. */
    static Outcome<Trace> of(BenchTest test, Recording recording, Channel channel) {
        Outcome<Trace> trace = perhapsHeld(test, recording, channel);
        return trace.found()
                .map(t -> t.moving(recording.name() + " " + channel.name()))
                .orElse(trace);
    }

    /** The same for a channel that may well show one value all the time, as a supply does that holds its current. */
    static Outcome<Trace> perhapsHeld(BenchTest test, Recording recording, Channel channel) {
        String name = recording.name() + " " + channel.name();
        Optional<Clock> clock = clock(test, recording);
        if (clock.isEmpty()) {
            return Outcome.missing("time between two samples of " + name, "state sample_interval with the test");
        }
        List<Phrase> remarks = new ArrayList<>();
        int[] stretch = longest(clock.get(), remarks);
        Trace whole = finite(channel, clock.get(), stretch[0], stretch[1], remarks);
        int lost = stretch[1] - stretch[0] - whole.count();
        if (whole.count() < FEWEST || lost > MOST_LOST * (stretch[1] - stretch[0])) {
            return Outcome.missing(
                    "enough samples in " + name + ": it has " + whole.count() + " that are numbers, " + lost
                            + " that are not",
                    "record at least 100 samples without gaps");
        }
        return whole.checked(name);
    }

    private Outcome<Trace> checked(String name) {
        for (int i = 1; i < seconds.length; i++) {
            if (!(seconds[i] > seconds[i - 1])) {
                return Outcome.missing(
                        "rising times in " + name, "export the recording again, or state sample_interval");
            }
        }
        return Outcome.answer(this, Working.NONE);
    }

    private Outcome<Trace> moving(String name) {
        Spread spread = Spread.of(values);
        if (!(spread.most() > spread.least())) {
            return Outcome.missing(
                    "a signal in " + name + ": all samples are equal",
                    "check probe, channel and coupling, and record again");
        }
        return Outcome.answer(this, Working.NONE);
    }

    /** The limit that the signal surely runs into, if it does. */
    Optional<Saturation> saturation() {
        return Saturation.find(values).filter(Saturation::sure);
    }

    /** The same, with a word where the signal stands still at a limit, and may be held there or cut off. */
    Trace doubted() {
        Optional<Saturation> still = Saturation.find(values).filter(s -> !s.sure());
        return still.map(s -> noting(AtLimit.words(channel, s.count() / (double) count())))
                .orElse(this);
    }

    private Trace noting(Phrase remark) {
        List<Phrase> more = new ArrayList<>(remarks);
        more.add(remark);
        return new Trace(channel, intervalS, seconds, values, even, more);
    }

    int count() {
        return values.length;
    }

    double spanS() {
        return seconds[seconds.length - 1] - seconds[0];
    }

    HarmonicFit fit(HarmonicTerms terms) {
        return even ? HarmonicFit.ofSamples(terms, values, intervalS) : HarmonicFit.overTime(terms, seconds, values);
    }

    /** Samples {@code from} (included) to {@code to} (excluded). */
    Trace part(int from, int to) {
        return new Trace(
                channel,
                intervalS,
                Arrays.copyOfRange(seconds, from, to),
                Arrays.copyOfRange(values, from, to),
                even,
                List.of());
    }

    /** Means of neighbours, so many that no more than {@code most} samples are left. */
    Trace thinned(int most) {
        int block = (count() + most - 1) / most;
        if (block <= 1) {
            return this;
        }
        double[] times = new double[count() / block];
        double[] means = new double[times.length];
        for (int b = 0; b < means.length; b++) {
            for (int i = b * block; i < (b + 1) * block; i++) {
                times[b] += seconds[i] / block;
                means[b] += values[i] / block;
            }
        }
        return new Trace(channel, block * intervalS, times, means, even, remarks);
    }

    /** The same times with other values. */
    Trace with(double[] others) {
        return new Trace(channel, intervalS, seconds, others, even, remarks);
    }

    /** The same trace, times a factor. */
    Trace scaledBy(double factor) {
        return factor == 1
                ? this
                : with(Arrays.stream(values).map(v -> factor * v).toArray());
    }

    private static Optional<Clock> clock(BenchTest test, Recording recording) {
        if (recording.clock().timed()) {
            return Optional.of(recording.clock());
        }
        return test.figures().get(TestFigure.SAMPLE_INTERVAL).map(d -> Clock.uniform(0, d.si(), recording.count()));
    }

    private static int[] longest(Clock clock, List<Phrase> remarks) {
        List<Integer> starts = clock.segmentStarts();
        int from = 0;
        int to = starts.size() > 1 ? starts.get(1) : clock.count();
        for (int k = 1; k < starts.size(); k++) {
            int end = k + 1 < starts.size() ? starts.get(k + 1) : clock.count();
            if (end - starts.get(k) > to - from) {
                from = starts.get(k);
                to = end;
            }
        }
        if (starts.size() > 1) {
            remarks.add(Phrase.of("{count} segments; the longest was used").with("count", starts.size()));
        }
        return new int[] {from, to};
    }

    private static Trace finite(Channel channel, Clock clock, int from, int to, List<Phrase> remarks) {
        double[] seconds = new double[to - from];
        double[] values = new double[to - from];
        int n = 0;
        for (int i = from; i < to; i++) {
            if (Double.isFinite(channel.samples()[i])) {
                seconds[n] = clock.timeS(i) - clock.timeS(from);
                values[n] = channel.samples()[i];
                n++;
            }
        }
        int lost = to - from - n;
        if (lost > 0) {
            remarks.add(Phrase.of(channel.name() + ": {lost} samples are no numbers and were left out")
                    .with("lost", lost));
        }
        double interval = clock.intervalS();
        boolean even = lost == 0 && clock.jitterS() < EVEN * interval;
        return new Trace(channel.name(), interval, Arrays.copyOf(seconds, n), Arrays.copyOf(values, n), even, remarks);
    }
}
