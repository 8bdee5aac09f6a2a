package servowright.engine.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Motor;
import servowright.engine.machine.TestFigure;
import servowright.engine.motor.Conductor;
import servowright.engine.motor.WindingInductance;
import servowright.engine.motor.WindingResistance;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** From time constant, current and voltage of a step to the inductance between the contacts. */
final class StepReduction {
    private static final double TWENTY_CELSIUS_KELVIN = 293.15;

    /** Standard errors up to which the two methods are taken to agree. */
    private static final double COVERAGE = 2;

    private final BenchTest test;
    private final Motor motor;
    private final Instruments instruments;
    private final Optional<Known> phaseOhmAtTwenty;
    private final Working.Sheet working = Working.begin();
    private final List<Phrase> assumptions = new ArrayList<>();

    StepReduction(BenchTest test, Motor motor, Instruments instruments, Optional<Known> phaseOhmAtTwenty) {
        this.test = test;
        this.motor = motor;
        this.instruments = instruments;
        this.phaseOhmAtTwenty = phaseOhmAtTwenty;
    }

    void assume(Phrase phrase) {
        if (!assumptions.contains(phrase)) {
            assumptions.add(phrase);
        }
    }

    Known asRead(Known amp) {
        return working.note("change of the current", "{ΔI}", "A", "level before and level settled at", amp);
    }

    Known throughShunt(Known volt) {
        return working.line(
                "change of the current",
                "{ΔI} = {ΔU} / {Rs}",
                "A",
                Dimension.CURRENT,
                "Ohm's law at the shunt",
                v -> v[0] / v[1],
                Term.of("ΔU", volt, "V"),
                Term.of("Rs", test.figures().known(TestFigure.SHUNT).orElseThrow(), "ohm"));
    }

    /** The inductance between the contacts, or what is missing for it. */
    Outcome<LoopInductance> loop(
            ResultSheet sheet,
            Contacts contacts,
            Optional<ChannelRole.RotorAxis> axis,
            List<StepFit> fits,
            Known amp,
            Optional<Known> volt) {
        Outcome<Known> ohm =
                volt.isPresent() ? Outcome.answer(fromStep(volt.get(), amp), Working.NONE) : fromWinding(contacts);
        if (ohm instanceof Outcome.Missing<Known> why) {
            return why.forAnother();
        }
        Known loop = ohm.found().orElseThrow();
        if (!(loop.si() > 0)) {
            return Outcome.missing("a loop resistance above 0 in " + test.id(), "check step voltage and current");
        }
        Known tau = tau(sheet, fits);
        Known henry = working.line(
                "inductance of the loop",
                "{Ll} = {τ} · {R}",
                "uH",
                Dimension.INDUCTANCE,
                "i = I∞ + B exp(−t R/L); R of the whole loop",
                v -> WindingInductance.fromTimeConstant(v[0], v[1]),
                Term.of("τ", tau, "us"),
                Term.of("R", loop, "ohm"));
        crossCheck(sheet, contacts, loop, volt.isPresent());
        return Outcome.answer(
                new LoopInductance(contacts, axis, henry, test.id(), working.end(), assumptions), Working.NONE);
    }

    private Known fromStep(Known volt, Known amp) {
        return working.line(
                "resistance of the whole loop",
                "{R} = {V} / {ΔI}",
                "ohm",
                Dimension.RESISTANCE,
                "Ohm's law for the settled current: winding, shunt and leads together",
                v -> v[0] / v[1],
                Term.of("V", volt, "V"),
                Term.of("ΔI", amp, "A"));
    }

    private Outcome<Known> fromWinding(Contacts contacts) {
        if (phaseOhmAtTwenty.isEmpty()) {
            return Outcome.missing(
                    "voltage of the step or resistance of the winding of " + motor.name(),
                    "state step_voltage with the test, or measure the resistance");
        }
        Surroundings winding = Surroundings.of(test, TestFigure.WINDING_AT, "winding");
        winding.assumptions().forEach(this::assume);
        assume(Phrase.of("the source of the step has no resistance of its own; state step_voltage to be free of it"));
        Known warm = working.line(
                "phase resistance during the step",
                "{Rp} = {R20} · (234.5 + {t}) / (234.5 + 20)",
                "ohm",
                Dimension.RESISTANCE,
                "annealed copper of 100 % IACS",
                v -> WindingResistance.atTemperature(v[0], TWENTY_CELSIUS_KELVIN, v[1], Conductor.COPPER_IACS),
                Term.of("R20", phaseOhmAtTwenty.get(), "ohm"),
                Term.of("t", winding.kelvin(), "degC"));
        Known extra = extra();
        double perPhase = contacts.hookUp().perPhase();
        return Outcome.answer(
                working.line(
                        "resistance of the whole loop",
                        "{R} = " + perPhase + " · {Rp} + {Rs}",
                        "ohm",
                        Dimension.RESISTANCE,
                        contacts.hookUp().words() + ", in series with shunt and leads",
                        v -> WindingResistance.expectedReadingOhm(v[0], contacts.hookUp(), v[1]),
                        Term.of("Rp", warm, "ohm"),
                        Term.of("Rs", extra, "ohm")),
                Working.NONE);
    }

    /** Shunt and leads in the loop. */
    private Known extra() {
        Known none = Known.exact(Quantity.of(0, "ohm"), Origin.DECLARED, "none stated");
        Known shunt = test.figures().known(TestFigure.SHUNT).orElse(none);
        return test.figures().known(TestFigure.LEADS).map(shunt::plus).orElse(shunt);
    }

    /** Time constant: exponential fit, with what the integral differs beyond scatter as model spread. */
    Known tau(ResultSheet sheet, List<StepFit> fits) {
        List<Known> each = new ArrayList<>();
        for (int k = 0; k < fits.size(); k++) {
            StepFit fit = fits.get(k);
            Known one = Known.of(
                    Quantity.of(fit.tauS(), "s"),
                    fit.tauError(),
                    Source.of(test.id() + " step " + (k + 1), fit.freedom()),
                    Origin.MEASURED,
                    test.id());
            double apart = Math.abs(fit.integralTauS() - fit.tauS());
            double scatter = COVERAGE * Math.hypot(fit.integralError(), fit.tauError());
            double model = apart > scatter ? Math.sqrt(apart * apart - scatter * scatter) / Math.sqrt(3) : 0;
            each.add(one.withPart(Source.of(test.id() + " model " + (k + 1)), model));
            sheet.detail(
                    Phrase.of("step {k}: time constant {tau} by exponential fit, {sum} by the flux-linkage integral")
                            .with("k", k + 1)
                            .with("tau", one, "us")
                            .with("sum", Quantity.of(fit.integralTauS(), "s"), "us"));
        }
        Known tau = each.size() == 1 ? each.get(0) : together(sheet, each);
        instruments.assumption(Reads.TIME).ifPresent(this::assume);
        Known timed = instruments.limited(tau, Reads.TIME);
        return working.note(
                "time constant",
                "{τ}",
                "us",
                "least squares of an exponential from a tenth of the step on; model spread against the integral",
                timed);
    }

    private Known together(ResultSheet sheet, List<Known> each) {
        Combination all = Combination.of(each);
        if (all.consistent()) {
            return all.value();
        }
        double least = each.stream().mapToDouble(Known::si).min().orElseThrow();
        double most = each.stream().mapToDouble(Known::si).max().orElseThrow();
        sheet.remark("the steps of this record differ by more than scatter; their range counts as uncertainty");
        return all.value().withPart(Source.of(test.id() + " steps differ"), (most - least) / Math.sqrt(12));
    }

    /** Loop resistance from the settled current against winding and shunt. */
    private void crossCheck(ResultSheet sheet, Contacts contacts, Known loop, boolean fromStep) {
        if (!fromStep || phaseOhmAtTwenty.isEmpty()) {
            return;
        }
        double winding =
                WindingResistance.expectedReadingOhm(phaseOhmAtTwenty.get().si(), contacts.hookUp(), extra().si());
        sheet.detail(
                Phrase.of("loop resistance {R} from the settled current; winding at 20 degC, shunt and leads make {W}")
                        .with("R", loop, "ohm")
                        .with("W", Quantity.of(winding, "ohm"), "ohm"));
    }
}
