package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Phrase;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Figures;
import servowright.engine.machine.Reading;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Recording;
import servowright.engine.thermal.HeatingRun;

/**
 * Voltage and current of a winding that is heated, with the housing's temperature if it was read: from a recording, as means
 * over neighbours, or from readings by hand.
 *
 * @param seconds from the start
 * @param means   whether every row is a mean over its stretch of time
 * @param volt    mean voltage
 * @param amp     mean current
 * @param watt    mean of their product
 * @param square  mean of the current squared, A²
 * @param housing temperature of the housing in kelvin; empty when it was not read
 * @param remarks what was found and how it was handled
 */
@SuppressWarnings("ArrayRecordComponent") // compared by identity on purpose, as in Trace
record HeatingRows(
        double[] seconds,
        boolean means,
        double[] volt,
        double[] amp,
        double[] watt,
        double[] square,
        double[] housing,
        List<Phrase> remarks) {
    /** That many means carry all that four figures need. */
    private static final int MOST = 600;

    /** Currents below this share of the largest read no resistance worth having. */
    private static final double READS = 0.05;

    HeatingRows {
        remarks = List.copyOf(remarks);
    }

    /** From the recording, or from readings when there is none. */
    static Outcome<HeatingRows> of(BenchTest test, Optional<Recording> recording) {
        return recording.map(r -> recorded(test, r)).orElseGet(() -> byHand(test));
    }

    /** Whether the winding was followed while it warmed, rather than read while it cooled. */
    static boolean followed(BenchTest test) {
        boolean since = test.readings().stream()
                .anyMatch(r -> r.figures().get(ReadingFigure.SINCE).isPresent());
        boolean current = test.channels().values().stream().anyMatch(said -> said.contains(Wanted.CURRENT.words()));
        return since || current;
    }

    private static Outcome<HeatingRows> byHand(BenchTest test) {
        List<Figures<ReadingFigure>> all = test.readings().stream()
                .map(Reading::figures)
                .filter(f -> f.get(ReadingFigure.SINCE).isPresent()
                        && f.get(ReadingFigure.VOLTAGE).isPresent()
                        && f.get(ReadingFigure.CURRENT).isPresent())
                .toList();
        double[] seconds = si(all, ReadingFigure.SINCE);
        if (IntStream.range(1, seconds.length).anyMatch(k -> !(seconds[k] > seconds[k - 1]))) {
            return Outcome.missing(
                    "readings of " + test.id() + " in the order of time", "sort them by since, each time once");
        }
        double[] volt = si(all, ReadingFigure.VOLTAGE);
        double[] amp = si(all, ReadingFigure.CURRENT);
        boolean thermometer =
                all.stream().allMatch(f -> f.get(ReadingFigure.TEMPERATURE).isPresent());
        double[] housing = thermometer ? si(all, ReadingFigure.TEMPERATURE) : new double[0];
        return Outcome.answer(
                new HeatingRows(seconds, false, volt, amp, products(volt, amp), products(amp, amp), housing, List.of()),
                Working.NONE);
    }

    private static double[] si(List<Figures<ReadingFigure>> all, ReadingFigure figure) {
        return all.stream().mapToDouble(f -> f.get(figure).orElseThrow().si()).toArray();
    }

    private static double[] products(double[] a, double[] b) {
        return IntStream.range(0, a.length).mapToDouble(k -> a[k] * b[k]).toArray();
    }

    private static Outcome<HeatingRows> recorded(BenchTest test, Recording recording) {
        Outcome<Trace> voltage = steady(test, recording, Wanted.VOLTAGE);
        Outcome<Trace> current = steady(test, recording, Wanted.CURRENT);
        boolean thermometer = test.channels().values().stream().anyMatch(said -> said.contains(Wanted.HOUSING.words()));
        Optional<Outcome<Trace>> third =
                thermometer ? Optional.of(Points.trace(test, recording, Wanted.HOUSING)) : Optional.empty();
        if (voltage instanceof Missing<Trace> why) {
            return why.forAnother();
        }
        if (current instanceof Missing<Trace> why) {
            return why.forAnother();
        }
        if (third.isPresent() && third.get() instanceof Missing<Trace> why) {
            return why.forAnother();
        }
        Trace volt = voltage.found().orElseThrow();
        Trace amp = current.found().orElseThrow();
        Optional<Trace> housing = third.flatMap(Outcome::found);
        boolean alike = volt.count() == amp.count()
                && housing.map(h -> h.count() == amp.count()).orElse(true);
        return alike
                ? Outcome.answer(means(volt, amp, housing), Working.NONE)
                : Outcome.missing(
                        "voltage, current and temperatures of " + recording.name() + " at the same times",
                        "record all of them without gaps");
    }

    /** A channel that a supply may hold where it is. */
    private static Outcome<Trace> steady(BenchTest test, Recording recording, Wanted wanted) {
        for (Channel channel : recording.channels()) {
            String said =
                    test.channels().isEmpty() ? wanted.words() : test.channels().getOrDefault(channel.name(), "");
            if (wanted.shownBy(channel, said)) {
                return Trace.perhapsHeld(test, recording, channel);
            }
        }
        return Points.trace(test, recording, wanted);
    }

    private static HeatingRows means(Trace volt, Trace amp, Optional<Trace> housing) {
        List<Phrase> remarks = new ArrayList<>(volt.remarks());
        amp.remarks().stream().filter(r -> !remarks.contains(r)).forEach(remarks::add);
        return new HeatingRows(
                volt.thinned(MOST).seconds(),
                true,
                volt.thinned(MOST).values(),
                amp.thinned(MOST).values(),
                volt.with(products(volt.values(), amp.values())).thinned(MOST).values(),
                amp.with(products(amp.values(), amp.values())).thinned(MOST).values(),
                housing.map(h -> h.thinned(MOST).values()).orElseGet(() -> new double[0]),
                remarks);
    }

    /** Whether voltage and current were counted in opposite senses. */
    boolean opposed() {
        return Arrays.stream(watt).sum() < 0;
    }

    double meanVolt() {
        return mean(volt);
    }

    double meanAmp() {
        return mean(amp);
    }

    /** Size of a signal while the current heats. */
    private double mean(double... values) {
        double largest = largestAmp();
        return IntStream.range(0, values.length)
                .filter(k -> Math.abs(amp[k]) > largest / 2)
                .mapToDouble(k -> Math.abs(values[k]))
                .average()
                .orElse(0);
    }

    private double largestAmp() {
        return Arrays.stream(amp).map(Math::abs).max().orElse(0);
    }

    /**
     * As heat and resistance of the winding.
     *
     * @param surroundings    temperature at the start, of the air, resistance of the leads
     * @param riseStandard    of the share of the housing's rise that its thermometer shows
     * @param vanishingKelvin where the conductor's resistance would be zero
     */
    HeatingRun run(Warmth surroundings, double riseStandard, double vanishingKelvin) {
        double sense = opposed() ? -1 : 1;
        double largest = largestAmp();
        double[] ohm = new double[seconds.length];
        double[] heat = new double[seconds.length];
        double[] sigma = new double[seconds.length];
        for (int k = 0; k < ohm.length; k++) {
            boolean reads = Math.abs(amp[k]) > READS * largest;
            ohm[k] = reads ? sense * volt[k] / amp[k] - surroundings.leadOhm() : Double.NaN;
            heat[k] = sense * watt[k] - surroundings.leadOhm() * square[k];
            sigma[k] = reads ? largest / Math.abs(amp[k]) : 1;
        }
        double start = surroundings.startKelvin();
        return new HeatingRun(
                seconds,
                means,
                heat,
                ohm,
                sigma,
                housing,
                riseStandard,
                surroundings.airKelvin(),
                start,
                vanishingKelvin);
    }

    /** What the run was made in. */
    record Warmth(double startKelvin, double airKelvin, double leadOhm) {
        static Warmth of(double... x) {
            return new Warmth(x[0], x[1], x[2]);
        }
    }
}
