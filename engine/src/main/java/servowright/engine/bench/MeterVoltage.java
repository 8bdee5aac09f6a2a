package servowright.engine.bench;

import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.motor.BackEmf;
import servowright.engine.motor.Waveform;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.HookUp;
import servowright.engine.quantity.Meter;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.VoltageBasis;

/**
 * A back-EMF as an instrument showed it, on the basis on which it is meant.
 *
 * @param volt     before any diodes, with what an unknown shape between a sine and a trapezoid does to such a reading
 * @param basis    what it is of the back-EMF
 * @param contacts where it was read; absent behind a rectifier of all three terminals
 */
record MeterVoltage(Known volt, VoltageBasis basis, Optional<Contacts> contacts) {
    /** Two silicon diodes in series, V, and half the range from Schottky diodes to large currents; from memory. */
    private static final double DIODES = 1.2;

    private static final double DIODES_HALF_RANGE = 0.6;

    /**
     * The reading; missing when it does not say where it was taken.
     *
     * @param test what shape and diodes are common to
     * @param id   the reading in words
     */
    static Outcome<MeterVoltage> of(
            String test, String id, String contacts, Known read, Meter meter, Working.Sheet working) {
        if (meter.behindDiodes()) {
            VoltageBasis basis = meter == Meter.RECTIFIED ? VoltageBasis.SIX_STEP : VoltageBasis.LINE_PEAK;
            Known volt = shaped(test, beforeDiodes(test, id, read, working), meter);
            return Outcome.answer(
                    new MeterVoltage(volt, basis, Optional.empty()),
                    Working.begin().end());
        }
        return Contacts.parse(contacts)
                .filter(c -> c.hookUp() != HookUp.ONE_AGAINST_TWO)
                .map(c -> Outcome.answer(
                        new MeterVoltage(
                                shaped(test, read, meter),
                                FluxReduction.basis(c.hookUp(), meter != Meter.PEAK),
                                Optional.of(c)),
                        Working.begin().end()))
                .orElseGet(() -> Outcome.missing(
                        "where " + id + " was contacted, with the other terminals open",
                        "state pair: A to B, or A to star"));
    }

    /** Peak of the fundamental between the contacts. */
    Known peak() {
        boolean rms = basis == VoltageBasis.LINE_RMS || basis == VoltageBasis.PHASE_RMS;
        return rms ? volt.times(Math.sqrt(2)) : volt;
    }

    /** What is taken of an instrument without being known. */
    static Phrase assumption(Meter meter, boolean stated) {
        return switch (meter) {
            case TRUE_RMS ->
                stated
                        ? Phrase.of("between a sine and a trapezoid a true-RMS meter reads up to 0.1 % high")
                        : Phrase.of(
                                "the voltmeter shows true RMS; one that averages reads up to 0.7 % low on a trapezoid");
            case AVERAGING -> Phrase.of("an averaging meter is scaled for sines: up to 0.6 % low on a trapezoid");
            case PEAK ->
                Phrase.of("a peak stands for a sine: up to 5 % low on a trapezoid; a true-RMS meter tells more");
            case RECTIFIED ->
                Phrase.of(
                        "two diodes took 1.2 ± 0.6 V; the load is light and there is no capacitor, else read the peak");
            case RECTIFIED_HELD ->
                Phrase.of("two diodes took 1.2 ± 0.6 V; the capacitor holds the peak, with next to no load");
        };
    }

    private static Known beforeDiodes(String test, String id, Known read, Working.Sheet working) {
        Known drop = Known.of(
                new Quantity(DIODES, Dimension.VOLTAGE),
                DIODES_HALF_RANGE / Math.sqrt(3),
                Source.of("diodes of " + test),
                Origin.ASSUMED,
                "two diodes");
        return working.line(
                "voltage before the diodes of " + id,
                "{E} = {V} + {2 Vd}",
                "V",
                Dimension.VOLTAGE,
                "two diodes carry at any time in a rectifier of three terminals",
                v -> v[0] + v[1],
                Term.of("V", read, "V"),
                Term.of("2 Vd", drop, "V"));
    }

    /** The shape lies between a sine and the ideal trapezoid: what that would do is half the range, JCGM 100, 4.3.7. */
    private static Known shaped(String test, Known volt, Meter meter) {
        double most = Math.abs(BackEmf.excess(meter, Waveform.TRAPEZOID_120));
        return volt.withPart(Source.of(test + " waveform"), most * volt.si() / Math.sqrt(3));
    }
}
