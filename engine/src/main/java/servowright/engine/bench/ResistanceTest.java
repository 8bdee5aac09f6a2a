package servowright.engine.bench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Reading;
import servowright.engine.machine.TestFigure;
import servowright.engine.motor.Conductor;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.HookUp;
import servowright.engine.quantity.Quantity;

/**
 * Winding resistance by direct current: voltage and current, or an ohmmeter, at one to three pairs of terminals. Two or
 * more currents at one pair give the slope, which a contact voltage does not move.
 */
final class ResistanceTest {
    private static final double METER_LEADS_HALF_WIDTH_OHM = 0.1;

    private final BenchTest test;
    private final ResultSheet sheet;
    private final Instruments instruments;
    private final Working.Sheet working = Working.begin();
    private final List<Phrase> assumptions = new ArrayList<>();

    private ResistanceTest(BenchTest test) {
        this.test = test;
        this.sheet = new ResultSheet(test);
        this.instruments = new Instruments(test.instrument());
    }

    /** Reduces the readings of a test. */
    static TestResult of(BenchTest test) {
        return new ResistanceTest(test).reduced();
    }

    private TestResult reduced() {
        Map<Contacts, List<Reading>> groups = new LinkedHashMap<>();
        boolean unsaid = false;
        for (Reading reading : test.readings()) {
            Optional<Contacts> contacts = Contacts.parse(reading.contacts());
            if (contacts.isPresent()) {
                groups.computeIfAbsent(contacts.get().usual(), c -> new ArrayList<>())
                        .add(reading);
            } else {
                unsaid = true;
                ask(reading);
            }
        }
        Map<Contacts, Known> loops = new LinkedHashMap<>();
        List<Missing<?>> refusals = new ArrayList<>();
        groups.forEach((contacts, readings) -> {
            Outcome<Known> found = loop(contacts, readings);
            found.found().ifPresent(ohm -> loops.put(contacts, ohm));
            if (found instanceof Missing<Known> why) {
                refusals.add(why);
                sheet.remark(contacts.words() + " was not used: "
                        + why.needs().get(0).what());
            }
        });
        if (loops.isEmpty()) {
            return refused(unsaid, refusals);
        }
        sheet.value(MotorParameter.PHASE_RESISTANCE, candidate(loops));
        return sheet.end();
    }

    private TestResult refused(boolean unsaid, List<Missing<?>> refusals) {
        if (unsaid) {
            return sheet.refused(
                    MotorParameter.PHASE_RESISTANCE,
                    "how the winding was contacted in " + test.id(),
                    "state pair: A to B for two terminals, A to BC for one against two joined, A to star for a phase");
        }
        if (refusals.isEmpty()) {
            return sheet.refused(
                    MotorParameter.PHASE_RESISTANCE,
                    "readings in " + test.id(),
                    "add readings: {pair: A to B, current: .. A, voltage: .. V}");
        }
        sheet.missing(MotorParameter.PHASE_RESISTANCE, refusals.get(0));
        return sheet.end();
    }

    private void ask(Reading reading) {
        ResistanceLine.ohm(reading, instruments)
                .ifPresent(ohm -> sheet.detail(Phrase.of(
                                "{R} would be {two} per phase read between two terminals, {one} read from one terminal to "
                                        + "the two others joined")
                        .with("R", ohm, "mohm")
                        .with("two", ohm.times(1 / HookUp.TWO_TERMINALS.perPhase()), "mohm")
                        .with("one", ohm.times(1 / HookUp.ONE_AGAINST_TWO.perPhase()), "mohm")));
    }

    /** Resistance between the contacts, leads taken off. */
    private Outcome<Known> loop(Contacts contacts, List<Reading> readings) {
        ResistanceLine line = new ResistanceLine(test, contacts, readings, instruments, working, sheet);
        Outcome<Known> read = line.read();
        if (read instanceof Missing<Known>) {
            return read;
        }
        line.assumptions().forEach(this::assume);
        Known ohm = read.found().orElseThrow();
        Optional<Known> leads = test.figures().known(TestFigure.LEADS);
        if (leads.isEmpty()) {
            return Outcome.answer(line.byMeter() ? withUnknownLeads(ohm) : fourWire(ohm), Working.NONE);
        }
        if (!(ohm.si() > leads.get().si())) {
            return Outcome.missing(
                    "a reading above the resistance of the leads at " + contacts.words(),
                    "check leads, and read again");
        }
        return Outcome.answer(
                working.line(
                        "less the leads",
                        "{Rl} = {R} − {r}",
                        "mohm",
                        Dimension.RESISTANCE,
                        "series connection",
                        v -> v[0] - v[1],
                        Term.of("R", ohm, "mohm"),
                        Term.of("r", leads.get(), "mohm")),
                Working.NONE);
    }

    private Known withUnknownLeads(Known ohm) {
        assume(Phrase.of(
                        "leads of the ohmmeter not stated; up to {r} may be in the reading (common practice, no source); "
                                + "state leads: 0 mohm for four wires")
                .with("r", Quantity.of(METER_LEADS_HALF_WIDTH_OHM, "ohm"), "ohm"));
        return ohm.withPart(Source.of(test.id() + " leads"), METER_LEADS_HALF_WIDTH_OHM / Math.sqrt(3));
    }

    private Known fourWire(Known ohm) {
        assume(Phrase.of("voltage read at the winding itself (four wires) in " + test.id() + "; no leads taken off"));
        return ohm;
    }

    private Candidate candidate(Map<Contacts, Known> loops) {
        List<Known> phases = new ArrayList<>();
        List<String> names = new ArrayList<>();
        loops.forEach((contacts, ohm) -> {
            phases.add(EquivalentStar.resistance(
                    working, EquivalentStar.LABEL + " from " + contacts.words(), ohm, contacts.hookUp()));
            names.add(contacts.words());
        });
        ResistanceDetails.of(loops, sheet);
        Known mean = Combination.mean(working, phases, names);
        Surroundings winding = Surroundings.of(test, TestFigure.WINDING_AT, "winding");
        winding.assumptions().forEach(this::assume);
        Known cold = ColdWinding.resistance(working, mean, winding.kelvin());
        double iec = Conductor.COPPER_IEC.resistanceFactor(winding.kelvin().si(), ColdWinding.TWENTY_CELSIUS_KELVIN)
                / Conductor.COPPER_IACS.resistanceFactor(winding.kelvin().si(), ColdWinding.TWENTY_CELSIUS_KELVIN);
        sheet.detail(Phrase.of("with 235 instead of 234.5 for copper the resistance at 20 degC changes by {d}")
                .with("d", Quantity.number(iec - 1), "ppm"));
        return new Candidate(cold.as(Origin.MEASURED, test.place().text()), test.id(), working.end(), assumptions);
    }

    private void assume(Phrase phrase) {
        if (!assumptions.contains(phrase)) {
            assumptions.add(phrase);
        }
    }
}
