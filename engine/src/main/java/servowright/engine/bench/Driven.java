package servowright.engine.bench;

import java.util.Optional;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Phrase;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.recording.Recording;
import servowright.engine.recording.Saturation;

/**
 * A recorded run of a driven shaft.
 *
 * @param amp   current as recorded
 * @param speed speed as recorded
 * @param basis how the current was counted
 * @param run   how the shaft moved
 */
record Driven(Trace amp, Trace speed, AmpBasis basis, DrivenRun run) {

    /** Finds current and speed in a recording and fits the motion; what was noticed goes to the sheet. */
    static Outcome<Driven> of(BenchTest test, Recording recording, ResultSheet sheet) {
        Outcome<Trace> amp = Points.shown(test, recording, Wanted.CURRENT);
        Outcome<Trace> speed = Points.trace(test, recording, Wanted.SPEED);
        if (amp instanceof Missing<Trace> why) {
            return why.forAnother();
        }
        if (speed instanceof Missing<Trace> why) {
            return why.forAnother();
        }
        Trace i = amp.found().orElseThrow();
        Trace w = speed.found().orElseThrow();
        if (i.count() != w.count()) {
            return Outcome.missing(
                    i.channel() + " and " + w.channel() + " of " + recording.name() + " at the same times",
                    "record both without gaps");
        }
        Outcome<AmpBasis> basis = AmpBasis.of(test, test.channels().getOrDefault(i.channel(), ""));
        if (basis instanceof Missing<AmpBasis> why) {
            return why.forAnother();
        }
        if (!moves(i, w, sheet)) {
            return Points.cutOff(recording, Wanted.CURRENT, i);
        }
        DrivenRun.stamps(w).ifPresent(sheet::remark);
        Outcome<DrivenRun> run = DrivenRun.of(test, i, w);
        if (run instanceof Missing<DrivenRun> why) {
            return why.forAnother();
        }
        DrivenRun found = run.found().orElseThrow();
        if (found.best().perAmp() < 0) {
            sheet.remark(
                    "the shaft slows down where the current rises: they are counted in opposite senses; the size was used");
        }
        found.details().forEach(sheet::detail);
        sheet.curves(found.curves());
        return Outcome.answer(new Driven(i, w, basis.found().orElseThrow(), found), Working.NONE);
    }

    /** Whether the current is whole, or held where it stands still; what is to be said of it goes to the sheet. */
    private static boolean moves(Trace amp, Trace speed, ResultSheet sheet) {
        Optional<Phrase> held =
                Saturation.find(amp.values()).isEmpty() ? Optional.empty() : HeldCurrent.remark(amp, speed);
        held.ifPresent(sheet::remark);
        sheet.remarks(held.isEmpty() ? amp.doubted().remarks() : amp.remarks());
        return held.isPresent() || amp.saturation().isEmpty();
    }
}
