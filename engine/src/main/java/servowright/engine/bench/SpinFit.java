package servowright.engine.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Working;
import servowright.engine.numeric.Covariance;
import servowright.engine.numeric.FitStatus;
import servowright.engine.numeric.Harmonic;
import servowright.engine.numeric.HarmonicFit;
import servowright.engine.numeric.HarmonicTerms;
import servowright.engine.numeric.Rounding;
import servowright.engine.quantity.Quantity;
import servowright.engine.recording.Saturation;

/**
 * Fundamental and harmonics of one open-circuit voltage, by regression: a record need not hold whole periods.
 *
 * @param trace        what was fitted
 * @param fit          over the whole record, harmonics included
 * @param pieces       the same over pieces of the record, for what a single fit cannot see
 * @param plainVolt    amplitude when harmonics are left out of the model
 * @param remarks      what was found and how it was handled
 */
record SpinFit(Trace trace, HarmonicFit fit, SpinPieces pieces, double plainVolt, List<Phrase> remarks) {
    /** Orders looked for; higher ones are small in a back-EMF. */
    private static final int HIGHEST_ORDER = 13;

    private static final double FEWEST_PERIODS = 1.5;
    private static final double DRIFT_FROM_PERIODS = 3;
    private static final double FEWEST_SAMPLES_PER_PERIOD = 6;

    /** An order is fitted when it has at least this many samples in its own period. */
    private static final double SAMPLES_PER_HARMONIC = 3;

    /** Standard errors of the amplitude below which there is no fundamental to speak of. */
    private static final double CLEAR = 10;

    SpinFit {
        remarks = List.copyOf(remarks);
    }

    /** The fit of a trace, or why there is none. */
    static Outcome<SpinFit> of(Trace trace) {
        if (Saturation.find(trace.values()).isPresent()) {
            return Outcome.missing(
                    trace.channel() + " within the range of its instrument: it stands at its limit again and again",
                    "record with more volts per division");
        }
        HarmonicFit first = trace.fit(HarmonicTerms.ofOrders(1));
        double periods = first.status().converged() ? first.frequency() * trace.spanS() : 0;
        if (!first.status().converged() || periods < FEWEST_PERIODS) {
            return noWave(trace, first.status());
        }
        double perPeriod = 1 / (first.frequency() * trace.intervalS());
        if (perPeriod < FEWEST_SAMPLES_PER_PERIOD) {
            return Outcome.missing(
                    "samples within a period of " + trace.channel(), "record with at least 20 samples a period");
        }
        HarmonicTerms terms = terms(trace, periods, perPeriod).startingAt(first.frequency());
        return fitted(trace, first, terms);
    }

    private static Outcome<SpinFit> fitted(Trace trace, HarmonicFit first, HarmonicTerms terms) {
        List<Phrase> remarks = new ArrayList<>(trace.remarks());
        // A chopped terminal voltage stands at 0 by rights, so that this is a word and no refusal.
        Saturation.ofWave(trace.values())
                .ifPresent(s -> remarks.add(AtLimit.words(trace.channel(), s.count() / (double) trace.count())));
        HarmonicFit fit = trace.fit(terms);
        Trace used = trace;
        if (fit.status().converged()) {
            Optional<Hum> hum = Hum.find(trace, fit, terms);
            if (hum.isPresent()) {
                used = hum.get().removed();
                fit = hum.get().fit();
                remarks.add(humRemark(trace, hum.get()));
            } else if (Hum.couldHide(fit.frequency(), trace.spanS())) {
                remarks.add(Phrase.of(trace.channel()
                                + " turns at {f}: mains hum cannot be told from it; another speed would show it")
                        .with("f", hertz(fit.frequency()), "Hz"));
            }
        }
        if (!fit.status().converged() || !clear(fit)) {
            return noWave(trace, fit.status());
        }
        SpinPieces pieces = SpinPieces.of(used, fit, terms);
        return Outcome.answer(new SpinFit(used, fit, pieces, first.harmonic(1).amplitude(), remarks), Working.NONE);
    }

    private static boolean clear(HarmonicFit fit) {
        Harmonic one = fit.harmonic(1);
        return one.amplitude() > CLEAR * one.amplitudeStandardError() && one.amplitude() > fit.residualSd();
    }

    private static HarmonicTerms terms(Trace trace, double periods, double perPeriod) {
        int highest = (int) Math.max(1, Math.min(HIGHEST_ORDER, perPeriod / SAMPLES_PER_HARMONIC));
        HarmonicTerms terms =
                HarmonicTerms.ofOrders(IntStream.rangeClosed(1, highest).toArray());
        if (periods >= DRIFT_FROM_PERIODS) {
            terms = terms.withDrift();
        }
        OptionalDouble step = Rounding.stepOf(trace.values());
        return step.isPresent() ? terms.roundedTo(step.getAsDouble()) : terms;
    }

    private static Outcome<SpinFit> noWave(Trace trace, FitStatus status) {
        String why = status.converged() ? "it holds less than 1.5 periods, or noise" : status.reason();
        return Outcome.missing(
                "a clear alternating voltage in " + trace.channel() + " (" + why + ")",
                "record at least 2 periods, better 10, with the motor driven and its terminals open");
    }

    private static Phrase humRemark(Trace trace, Hum hum) {
        return Phrase.of(trace.channel() + " holds mains hum, {f} of {a}; it was fitted along and taken out")
                .with("f", hertz(hum.hertz()), "Hz")
                .with("a", Quantity.of(hum.amplitude(), "V"), "V");
    }

    /** Fundamental, peak. */
    double volt() {
        return fit.harmonic(1).amplitude();
    }

    double hertz() {
        return fit.frequency();
    }

    /** Covariance of the fundamental and its frequency. */
    Covariance voltAndHertz() {
        double[][] rows = new double[2][fit.covariance().size()];
        Harmonic one = fit.harmonic(1);
        rows[0][3] = Math.cos(one.phase());
        rows[0][4] = Math.sin(one.phase());
        rows[1][2] = 1;
        return fit.covariance().through(rows);
    }

    /** Phase of the fundamental in the middle of the record, where it is known best. */
    double phaseInMiddle() {
        return fit.harmonic(1).phase() + Math.PI * fit.frequency() * trace.spanS();
    }

    /** Root of the sum of squares of orders 2 and up over the fundamental; only lines that stand out of the noise count. */
    double distortion() {
        double sum = 0;
        for (Harmonic h : fit.harmonics()) {
            if (h.order() > 1) {
                double noise = h.amplitudeStandardError();
                sum += Math.max(0, h.amplitude() * h.amplitude() - 2 * noise * noise);
            }
        }
        return Math.sqrt(sum) / volt();
    }

    private static Quantity hertz(double f) {
        return Quantity.of(f, "Hz");
    }
}
