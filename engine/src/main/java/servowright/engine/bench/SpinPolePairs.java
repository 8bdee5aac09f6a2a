package servowright.engine.bench;

import java.util.List;
import java.util.Optional;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Declared;
import servowright.engine.machine.TestFigure;
import servowright.engine.motor.PolePairs;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Stated;

/** Pole pairs from electrical frequency and shaft speed. */
final class SpinPolePairs {
    private SpinPolePairs() {}

    /** Adds the pole pairs, or why they do not follow, to a result. */
    static void add(ResultSheet sheet, BenchTest test, Known hertz, Optional<Known> shaft, Instruments instruments) {
        if (shaft.isEmpty()) {
            sheet.missing(
                    MotorParameter.POLE_PAIRS,
                    "speed of the shaft during " + test.id(),
                    "state speed with the test, read with a tachometer");
            return;
        }
        if (shaft.get().si() == 0) {
            sheet.missing(MotorParameter.POLE_PAIRS, "a turning shaft", "state the speed it was driven at");
            return;
        }
        Known speed = withLimits(test, shaft.get(), instruments);
        Working.Sheet working = Working.begin();
        Known quotient = working.line(
                "electrical periods per turn",
                "{n} = 2π · {f} / {ω}",
                "",
                Dimension.NUMBER,
                "definition of the electrical angle",
                v -> 2 * Math.PI * v[0] / Math.abs(v[1]),
                Term.of("f", hertz, "Hz"),
                Term.of("ω", speed, "rpm"));
        judge(sheet, test, working, quotient, hertz, speed);
    }

    private static void judge(
            ResultSheet sheet, BenchTest test, Working.Sheet working, Known quotient, Known hertz, Known speed) {
        double turns = Math.abs(speed.si()) / (2 * Math.PI);
        if (PolePairs.fromPeriods(hertz.si(), turns) instanceof PolePairs.Accepted accepted) {
            Known whole = Known.number(
                    accepted.polePairs(), Origin.MEASURED, test.place().text());
            working.note(
                    "pole pairs",
                    "{p} = {n} rounded, accepted within 2 % of a whole number",
                    "",
                    "common practice, no source",
                    whole,
                    Term.of("n", quotient));
            sheet.value(MotorParameter.POLE_PAIRS, new Candidate(whole, test.id(), working.end(), List.of()));
            sheet.detail(
                    Phrase.of("{n} electrical periods per turn of the shaft").with("n", quotient));
        } else {
            sheet.remark(Phrase.of("{f} at {w} are {n} electrical periods per turn, not near a whole number: speed or "
                            + "frequency is wrong")
                    .with("f", hertz, "Hz")
                    .with("w", speed, "rpm")
                    .with("n", quotient));
            sheet.missing(
                    MotorParameter.POLE_PAIRS,
                    "a whole number of electrical periods per turn in " + test.id(),
                    "read the speed again, at the motor's own shaft");
        }
    }

    private static Known withLimits(BenchTest test, Known speed, Instruments instruments) {
        Optional<Declared> stated = test.figures().get(TestFigure.SPEED);
        boolean own = stated.isPresent() && stated.get().stated().spread() != Stated.Spread.VALUE;
        return own ? speed : instruments.limited(speed, Reads.SPEED);
    }
}
