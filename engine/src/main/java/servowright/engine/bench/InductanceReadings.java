package servowright.engine.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Reading;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.quantity.Quantity;

/** Inductance read with a meter between terminals; three pairs at one position, or one pair at several, give d and q. */
final class InductanceReadings {
    private InductanceReadings() {}

    /** Reduces them; readings at several mechanical angles need the pole pairs. */
    static Stepped of(BenchTest test, Optional<Known> polePairs) {
        ResultSheet sheet = new ResultSheet(test);
        if (InductanceByAngle.read(test)) {
            InductanceByAngle.reduce(test, polePairs, sheet);
            return new Stepped(sheet.end(), List.of());
        }
        Instruments instruments = new Instruments(test.instrument());
        List<LoopInductance> loops = new ArrayList<>();
        boolean unsaid = false;
        for (Reading reading : test.readings()) {
            Optional<Known> henry =
                    reading.figures().known(ReadingFigure.INDUCTANCE).filter(h -> h.si() > 0);
            Optional<Contacts> contacts = Contacts.parse(reading.contacts());
            unsaid |= henry.isPresent() && contacts.isEmpty();
            if (henry.isPresent() && contacts.isPresent()) {
                Known limited = instruments.limited(
                        Resolution.of(reading, ReadingFigure.INDUCTANCE, henry.get()), Reads.METER_INDUCTANCE);
                Working.Sheet working = Working.begin();
                working.note("inductance " + contacts.get().words(), "{Ll}", "uH", "inductance meter", limited);
                List<Phrase> assumptions =
                        instruments.assumption(Reads.METER_INDUCTANCE).stream().toList();
                loops.add(new LoopInductance(
                        contacts.get(),
                        ChannelRole.parse(reading.contacts()).axis(),
                        limited,
                        test.id(),
                        working.end(),
                        assumptions));
            }
        }
        values(sheet, test, loops, unsaid);
        return new Stepped(sheet.end(), loops);
    }

    private static void values(ResultSheet sheet, BenchTest test, List<LoopInductance> loops, boolean unsaid) {
        if (loops.isEmpty()) {
            sheet.missing(
                    MotorParameter.PHASE_INDUCTANCE,
                    unsaid
                            ? "where the winding was contacted in " + test.id()
                            : "a recording or readings of " + test.id(),
                    unsaid ? "state pair: A to B" : "record the current after a voltage step with the rotor locked");
            return;
        }
        Optional<PhaseInductance.Pair> axes =
                PhaseInductance.possible(loops) ? PhaseInductance.threePairs(loops) : Optional.empty();
        if (axes.isPresent()) {
            sheet.value(MotorParameter.D_INDUCTANCE, axes.get().d());
            sheet.value(MotorParameter.Q_INDUCTANCE, axes.get().q());
            double ratio = axes.get().q().value().si() / axes.get().d().value().si();
            sheet.detail(Phrase.of("q over d inductance {r}").with("r", Quantity.number(ratio), ""));
        } else {
            PhaseInductance.add(sheet, test, loops.get(0));
        }
    }
}
