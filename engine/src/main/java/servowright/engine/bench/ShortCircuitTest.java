package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.TestFigure;
import servowright.engine.motor.Conductor;
import servowright.engine.motor.ShortCircuit;
import servowright.engine.motor.ShortCircuitFit;
import servowright.engine.motor.WindingResistance;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.recording.Recording;

/**
 * Short circuit: the shaft is turned from outside with the three terminals joined, and the current of a phase is read at
 * one or more speeds. With flux linkage and resistance known, the current at speed gives the inductance on the magnet axis
 * and the braking torque.
 */
final class ShortCircuitTest {
    private static final double TWENTY_CELSIUS_KELVIN = 293.15;
    /** Currents that lie farther than this share of their mean from the fit are no short-circuit currents. */
    private static final double MOST_LEFT = 0.2;

    private static final String SOURCE = "rotor-frame voltage equations with zero voltage, Ld near Lq";

    /** What the test builds on. */
    record Given(Optional<Known> polePairs, Optional<Known> flux, Optional<Known> ohm) {}

    private final BenchTest test;
    private final Given given;
    private final ResultSheet sheet;
    private final Instruments instruments;
    private final List<Phrase> assumptions = new ArrayList<>();
    private final Working.Sheet working = Working.begin();

    private ShortCircuitTest(BenchTest test, Given given) {
        this.test = test;
        this.given = given;
        this.sheet = new ResultSheet(test);
        this.instruments = new Instruments(test.instrument());
    }

    /** Reduces the readings. */
    static TestResult of(BenchTest test, Optional<Recording> recording, Given given) {
        return new ShortCircuitTest(test, given).reduced(recording);
    }

    private TestResult reduced(Optional<Recording> recording) {
        Outcome<Points> read = Points.of(test, recording, Wanted.SPEED, Wanted.CURRENT);
        Outcome<AmpBasis> basis = read.found()
                .map(p -> AmpBasis.of(test, p.said()))
                .orElseGet(() -> ((Missing<Points>) read).forAnother());
        if (basis instanceof Missing<AmpBasis> why) {
            sheet.missing(MotorParameter.D_INDUCTANCE, why);
            return sheet.end();
        }
        if (given.polePairs().isEmpty() || given.flux().isEmpty() || given.ohm().isEmpty()) {
            return sheet.refused(
                    MotorParameter.D_INDUCTANCE,
                    "pole pairs, flux linkage and resistance, for the inductance from " + test.id(),
                    "a spin and a resistance test give them");
        }
        Points points = read.found().orElseThrow();
        sheet.remarks(points.remarks());
        basis.found().orElseThrow().assumed().ifPresent(assumptions::add);
        fit(points, basis.found().orElseThrow().overQAxis());
        return sheet.end();
    }

    private void fit(Points points, double peak) {
        double[] speed = Arrays.stream(points.x()).map(Math::abs).toArray();
        double[] amp = Arrays.stream(points.y()).map(i -> peak * Math.abs(i)).toArray();
        boolean still =
                Arrays.stream(speed).anyMatch(w -> w == 0) || Arrays.stream(amp).anyMatch(i -> i == 0);
        int p = (int) Math.round(given.polePairs().orElseThrow().si());
        Known flux = warmFlux();
        Known ohm = warmOhm();
        Optional<ShortCircuitFit> found = still
                ? Optional.empty()
                : ShortCircuitFit.of(speed, amp, ohm.si(), flux.si(), p).filter(f -> near(f, amp));
        if (found.isEmpty()) {
            sheet.missing(
                    MotorParameter.D_INDUCTANCE,
                    "currents below ω λ/R, at speeds where the inductance limits them, in " + test.id(),
                    "turn faster, and check the basis of the current");
            return;
        }
        Known henry = henry(points, speed, amp, p, List.of(flux, ohm), found.get());
        brake(ohm, henry, flux, p);
        sheet.curves(PointCurves.of(
                "current, phase peak", "one inductance", speed, amp, found.get().restsAmp(), "rpm", "A"));
        sheet.value(
                MotorParameter.D_INDUCTANCE,
                new Candidate(henry.as(Origin.MEASURED, test.id()), test.id(), working.end(), assumptions));
    }

    private static boolean near(ShortCircuitFit fit, double[] amp) {
        double rests = Arrays.stream(fit.restsAmp()).map(r -> r * r).average().orElse(0);
        double mean = Arrays.stream(amp).average().orElse(0);
        return Math.sqrt(rests) < MOST_LEFT * mean;
    }

    private Known henry(
            Points points, double[] speed, double[] amp, int p, List<Known> fluxAndOhm, ShortCircuitFit found) {
        Reads reads = points.recorded() ? Reads.DRIVE_CURRENT : Reads.METER_CURRENT;
        instruments.assumption(reads).ifPresent(assumptions::add);
        instruments.assumption(Reads.SPEED).ifPresent(assumptions::add);
        Known best = working.line(
                "inductance on the magnet axis",
                "{Ld}: I · {gI} = ω {λ} / √({R}² + (ω Ld)²), ω = p · speed · {gω}, least squares over the readings",
                "uH",
                Dimension.INDUCTANCE,
                SOURCE,
                v -> ShortCircuitFit.of(scaled(speed, v[3]), scaled(amp, v[2]), v[1], v[0], p)
                        .map(ShortCircuitFit::henry)
                        .orElse(Double.NaN),
                Term.of("λ", fluxAndOhm.get(0), "mWb"),
                Term.of("R", fluxAndOhm.get(1), "mohm"),
                Term.of("gI", instruments.gain(reads)),
                Term.of("gω", instruments.gain(Reads.SPEED)));
        int freedom = Math.max(1, speed.length - 1);
        return best.withPart(
                Source.of(test.id() + " scatter", freedom), Math.max(found.standardHenry(), digits(points, best)));
    }

    /** What the last digit of the current at the fastest reading leaves open. */
    private static double digits(Points points, Known henry) {
        double relative = 0;
        for (int i = 0; i < points.y().length; i++) {
            relative = Math.max(relative, points.yDigits()[i] / Math.abs(points.y()[i]));
        }
        return relative * henry.si();
    }

    private static double[] scaled(double[] values, double factor) {
        return Arrays.stream(values).map(v -> factor * v).toArray();
    }

    private Known warmFlux() {
        Known flux = given.flux().orElseThrow();
        if (test.figures().get(TestFigure.MAGNETS_AT).isEmpty()) {
            assumptions.add(Phrase.of("temperature of the magnets not stated in " + test.id() + "; 20 degC assumed"));
        }
        return flux;
    }

    private Known warmOhm() {
        Surroundings winding = Surroundings.of(test, TestFigure.WINDING_AT, "winding");
        assumptions.addAll(winding.assumptions());
        return working.line(
                "phase resistance as warm as it was",
                "{R} = {R20} · (234.5 + {t}) / (234.5 + 20)",
                "mohm",
                Dimension.RESISTANCE,
                "annealed copper of 100 % IACS",
                v -> WindingResistance.atTemperature(v[0], TWENTY_CELSIUS_KELVIN, v[1], Conductor.COPPER_IACS),
                Term.of("R20", given.ohm().orElseThrow(), "mohm"),
                Term.of("t", winding.kelvin(), "degC"));
    }

    private void brake(Known ohm, Known henry, Known flux, int p) {
        ShortCircuit.Peak peak = ShortCircuit.peak(ohm.si(), henry.si(), flux.si(), p);
        sheet.detail(Phrase.of(
                        "with the terminals joined it brakes hardest at {n}, with {T}; at speed the current tends to {I} peak")
                .with("n", Quantity.of(peak.mechRadPerS(), "rad/s"), "rpm")
                .with("T", Quantity.of(peak.brakeNewtonMetre(), "N m"), "N m")
                .with("I", Quantity.of(flux.si() / henry.si(), "A"), "A"));
    }
}
