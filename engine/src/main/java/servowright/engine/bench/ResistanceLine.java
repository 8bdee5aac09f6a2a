package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Propagation;
import servowright.engine.known.Source;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Reading;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.numeric.Design;
import servowright.engine.numeric.LinearFit;
import servowright.engine.numeric.Quantile;
import servowright.engine.numeric.Statistics;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** The readings at one pair of contacts, brought to one resistance. */
final class ResistanceLine {
    private static final double LEAST_CURRENT_RATIO = 1.2;
    private static final double SURE = 0.95;
    private static final String LINE = "least squares, line with intercept";

    private final BenchTest test;
    private final Contacts contacts;
    private final List<Reading> readings;
    private final Instruments instruments;
    private final Working.Sheet working;
    private final ResultSheet sheet;
    private final List<Phrase> assumptions = new ArrayList<>();
    private boolean byMeter;

    ResistanceLine(
            BenchTest test,
            Contacts contacts,
            List<Reading> readings,
            Instruments instruments,
            Working.Sheet working,
            ResultSheet sheet) {
        this.test = test;
        this.contacts = contacts;
        this.readings = readings;
        this.instruments = instruments;
        this.working = working;
        this.sheet = sheet;
    }

    List<Phrase> assumptions() {
        return List.copyOf(assumptions);
    }

    /** Whether an ohmmeter was read, whose leads count. */
    boolean byMeter() {
        return byMeter;
    }

    /** What a single reading shows, if it shows a resistance. */
    static Optional<Known> ohm(Reading reading, Instruments instruments) {
        Optional<Known> meter = reading.figures().known(ReadingFigure.RESISTANCE);
        if (meter.isPresent()) {
            return Optional.of(instruments.limited(
                    Resolution.of(reading, ReadingFigure.RESISTANCE, meter.get()), Reads.METER_RESISTANCE));
        }
        Optional<Known> volt = reading.figures().known(ReadingFigure.VOLTAGE);
        Optional<Known> amp = reading.figures().known(ReadingFigure.CURRENT);
        if (volt.isEmpty() || amp.isEmpty() || amp.get().si() == 0) {
            return Optional.empty();
        }
        Known v = instruments.limited(Resolution.of(reading, ReadingFigure.VOLTAGE, volt.get()), Reads.METER_VOLTAGE);
        Known i = instruments.limited(Resolution.of(reading, ReadingFigure.CURRENT, amp.get()), Reads.METER_CURRENT);
        return Optional.of(v.over(i));
    }

    /** Resistance between the contacts, leads included. */
    Outcome<Known> read() {
        List<Reading> pairs = readings.stream()
                .filter(r -> r.figures().get(ReadingFigure.VOLTAGE).isPresent()
                        && r.figures().get(ReadingFigure.CURRENT).isPresent())
                .toList();
        Outcome<Known> found = distinctCurrents(pairs) ? slope(pairs) : single();
        if (found.found().isPresent() && !(found.found().get().si() > 0)) {
            return Outcome.missing(
                    "voltage and current of one sign at " + contacts.words()
                            + ": the readings give a negative resistance",
                    "turn the leads of one instrument round and read again");
        }
        return found;
    }

    private static boolean distinctCurrents(List<Reading> pairs) {
        double[] amps = amps(pairs);
        double least = Arrays.stream(amps).map(Math::abs).min().orElse(0);
        double most = Arrays.stream(amps).map(Math::abs).max().orElse(0);
        boolean bothSigns =
                Arrays.stream(amps).anyMatch(a -> a > 0) && Arrays.stream(amps).anyMatch(a -> a < 0);
        return amps.length >= 2 && (bothSigns || most > LEAST_CURRENT_RATIO * least);
    }

    private static double[] amps(List<Reading> pairs) {
        return pairs.stream()
                .mapToDouble(r ->
                        r.figures().get(ReadingFigure.CURRENT).orElseThrow().si())
                .toArray();
    }

    /** The mean of what each reading shows by itself. */
    private Outcome<Known> single() {
        List<Known> each = new ArrayList<>();
        for (Reading reading : readings) {
            ohm(reading, instruments).ifPresent(each::add);
            byMeter |= reading.figures().get(ReadingFigure.RESISTANCE).isPresent();
        }
        if (each.isEmpty()) {
            return Outcome.missing(
                    "a current other than 0 with its voltage, or a resistance, at " + contacts.words(),
                    "add readings: {pair: " + contacts.words() + ", current: .. A, voltage: .. V}");
        }
        if (byMeter) {
            assume(Reads.METER_RESISTANCE);
        } else {
            assume(Reads.METER_VOLTAGE);
            assume(Reads.METER_CURRENT);
            sheet.remark(contacts.words() + " was read at one current only: a contact voltage would not show; "
                    + "a second current at least twice the first settles it");
        }
        List<String> names = each.stream().map(k -> contacts.words()).toList();
        for (Known one : each) {
            working.note("reading at " + contacts.words(), "{R}", "mohm", byMeter ? "ohmmeter" : "Ohm's law", one);
        }
        return Outcome.answer(scattered(Combination.mean(working, each, names), each), Working.NONE);
    }

    /** Readings repeated at one pair scatter by more than their digits: contacts, temperature, hand. */
    private Known scattered(Known mean, List<Known> each) {
        if (each.size() < 3) {
            return mean;
        }
        double[] values = each.stream().mapToDouble(Known::si).toArray();
        double error = Statistics.standardError(values);
        return mean.withPart(Source.of(test.id() + " scatter " + contacts.words(), each.size() - 1.0), error);
    }

    private Outcome<Known> slope(List<Reading> pairs) {
        double[] amps = amps(pairs);
        double[] volts = pairs.stream()
                .mapToDouble(r ->
                        r.figures().get(ReadingFigure.VOLTAGE).orElseThrow().si())
                .toArray();
        double[] digits = digits(pairs, amps, volts);
        LinearFit byDigits = LinearFit.withKnownSigma(Design.line(amps), volts, digits);
        LinearFit byScatter = LinearFit.of(Design.line(amps), volts);
        if (!byDigits.status().converged()) {
            return Outcome.missing(
                    "different currents at " + contacts.words(), "read at two currents, one twice the other");
        }
        boolean scatter = byScatter.degreesOfFreedom() > 0 && byScatter.standardError(1) > byDigits.standardError(1);
        LinearFit fit = scatter ? byScatter : byDigits;
        double freedom = scatter ? byScatter.degreesOfFreedom() : Double.POSITIVE_INFINITY;
        List<Known> line = Propagation.jointly(
                List.of(Quantity.of(fit.parameter(0), "V"), Quantity.of(fit.parameter(1), "ohm")),
                new double[][] {
                    {fit.covariance().at(0, 0), fit.covariance().at(0, 1)},
                    {fit.covariance().at(1, 0), fit.covariance().at(1, 1)}
                },
                test.id() + " " + contacts.words(),
                freedom,
                Origin.MEASURED,
                test.place().text());
        intercept(line.get(0), freedom);
        return Outcome.answer(gains(line.get(1)), Working.NONE);
    }

    private void intercept(Known volt, double freedom) {
        sheet.detail(Phrase.of(contacts.words() + ": the line of voltage against current meets zero current at {U}")
                .with("U", volt, "mV"));
        Known whole = volt.withPart(
                Source.of(test.id() + " zero of the voltmeter"),
                instruments.accuracy(Reads.METER_VOLTAGE).absolute().si() / Math.sqrt(3));
        if (Math.abs(volt.si()) > Quantile.coverageFactor(SURE, freedom) * whole.standardUncertainty()) {
            sheet.remark(Phrase.of(contacts.words()
                            + ": {U} at zero current is more than reading error: contact voltage, offset or dead time; "
                            + "the slope is free of it")
                    .with("U", volt, "mV"));
        }
    }

    /** The gains of both instruments are common to all readings: the slope has them in full. */
    private Known gains(Known slope) {
        assume(Reads.METER_VOLTAGE);
        assume(Reads.METER_CURRENT);
        working.note("slope of voltage against current at " + contacts.words(), "{s}", "mohm", LINE, slope);
        return working.line(
                "with the gains of voltmeter and ammeter",
                "{R} = {s} · {gV} / {gI}",
                "mohm",
                Dimension.RESISTANCE,
                "limits of the instruments, rectangular, JCGM 100:2008, 4.3.7",
                v -> v[0] * v[1] / v[2],
                Term.of("s", slope, "mohm"),
                Term.of("gV", instruments.gain(Reads.METER_VOLTAGE)),
                Term.of("gI", instruments.gain(Reads.METER_CURRENT)));
    }

    /** Standard uncertainty of each voltage from the last digits of voltage and current. */
    private static double[] digits(List<Reading> pairs, double[] amps, double[] volts) {
        double[] sigma = new double[amps.length];
        for (int i = 0; i < sigma.length; i++) {
            double v = own(pairs.get(i), ReadingFigure.VOLTAGE);
            double a = own(pairs.get(i), ReadingFigure.CURRENT);
            double ohm = amps[i] == 0 ? 0 : volts[i] / amps[i];
            sigma[i] = Math.max(Math.hypot(v, ohm * a), 1e-9 * Math.max(1e-6, Math.abs(volts[i])));
        }
        return sigma;
    }

    private static double own(Reading reading, ReadingFigure figure) {
        Known stated = reading.figures().known(figure).orElseThrow();
        return Resolution.of(reading, figure, stated).standardUncertainty();
    }

    private void assume(Reads what) {
        instruments.assumption(what).filter(p -> !assumptions.contains(p)).ifPresent(assumptions::add);
    }
}
