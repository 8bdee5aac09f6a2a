package servowright.app;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.engine.acceptance.Verdict;
import servowright.engine.assessment.Assessment;
import servowright.engine.bench.AngleEvidence;
import servowright.engine.bench.Candidate;
import servowright.engine.bench.Contradiction;
import servowright.engine.bench.Curve;
import servowright.engine.bench.IdentifiedAxis;
import servowright.engine.bench.IdentifiedMachine;
import servowright.engine.bench.IdentifiedMotor;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.Parameter;
import servowright.engine.bench.TestResult;
import servowright.engine.encoder.ReferencedFit;
import servowright.engine.findings.Finding;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Need;
import servowright.engine.known.Phrase;
import servowright.engine.known.Place;
import servowright.engine.known.Source;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.machine.Axis;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Bus;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Duty;
import servowright.engine.machine.DutyFigure;
import servowright.engine.machine.Figures;
import servowright.engine.machine.Machine;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.Profile;
import servowright.engine.machine.Supply;
import servowright.engine.machine.SupplyFigure;
import servowright.engine.machine.SupplyKind;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.quantity.Accuracy;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.QuantityText;
import servowright.engine.quantity.Stated;
import servowright.engine.quantity.Units;

/** An assessment put together by hand, with invented figures: one finding of each verdict, one motor, one test. */
public final class FrostCart {
    private static final Place NOWHERE = new Place("machine.yaml", 12, "");

    private FrostCart() {}

    public static Assessment assessment() {
        return assessment("Frost cart");
    }

    /** The same machine under another name, which also stands in for every other name. */
    public static Assessment assessment(String name) {
        Machine machine = machine(name);
        IdentifiedMachine identified =
                new IdentifiedMachine(machine, Map.of("hub", motor()), Map.of("lift", sensor()), List.of(spin()));
        List<Finding> findings = List.of(speedReach(), torqueReserve(), heat(), window());
        return new Assessment(machine, identified, findings, "0.1.0", Map.of("machine.yaml", "ab".repeat(32)));
    }

    private static Machine machine(String name) {
        Figures<SupplyFigure> supply =
                Figures.<SupplyFigure>none().with(SupplyFigure.VOLTAGE, declared("20.0..29.2 V", 5));
        Figures<MotorFigure> hub = Figures.<MotorFigure>none()
                .with(MotorFigure.MAGNETS, declared("20", 10))
                .with(MotorFigure.SPEED_CONSTANT, declared("42 rpm/V [line peak, label]", 12));
        Duty patrol = new Duty(
                "patrol",
                NOWHERE,
                Profile.TRAPEZOID,
                Figures.<DutyFigure>none().with(DutyFigure.SPEED, declared("95 rpm", 31)));
        Axis lift = new Axis(
                "lift",
                NOWHERE,
                Optional.of("hub"),
                Optional.empty(),
                Optional.empty(),
                Figures.<AxisFigure>none().with(AxisFigure.LOAD_INERTIA, declared("0.042 kg m2", 28)),
                Map.of("patrol", patrol));
        return new Machine(
                name,
                "Patrols an orchard on frost nights.",
                Figures.none(),
                Optional.of(new Supply(SupplyKind.BATTERY, NOWHERE, supply)),
                Map.of("hub", new Motor("hub", NOWHERE, hub, Optional.empty())),
                Map.of(),
                Map.of(),
                Map.of("lift", lift),
                Bus.none());
    }

    private static Declared declared(String text, int line) {
        return Declared.of((Stated) QuantityText.parse(text), new Place("machine.yaml", line, ""));
    }

    private static Finding speedReach() {
        Known gets = measured(2690, 20, "rpm", "spin hub 1");
        Known asked = Known.exact(Quantity.of(3200, "rpm"), Origin.DECLARED, "machine.yaml:71");
        Phrase statement = new Phrase("asks {asked}, gets {gets} at {supply} (battery empty)", Map.of())
                .with("asked", asked)
                .with("gets", gets)
                .with("supply", Quantity.of(20, "V"), "V");
        return finding(
                "speed-reach",
                "lift",
                Verdict.FAILS,
                statement,
                Phrase.of("10 % of the voltage is kept for control"),
                Phrase.of("a gear with 16 % fewer motor turns, a winding with more rpm per volt, or less speed"),
                List.of(),
                Optional.of(new Finding.Margin(gets, asked, Finding.Sense.AT_LEAST, "rpm")));
    }

    private static Finding torqueReserve() {
        Known has = measured(1.18, 0.045, "N m", "spin hub 1");
        Known asked = Known.exact(Quantity.of(1.02, "N m"), Origin.DERIVED, "");
        return finding(
                "torque-reserve",
                "left wheel",
                Verdict.TIGHT,
                new Phrase("asks {asked}, has {has} with the winding at 110 degC", Map.of())
                        .with("asked", asked)
                        .with("has", has),
                Phrase.of(""),
                Phrase.of("less acceleration leaves more"),
                List.of(),
                Optional.of(new Finding.Margin(has, asked, Finding.Sense.AT_LEAST, "N m")));
    }

    private static Finding heat() {
        return finding(
                "heat",
                "tilt",
                Verdict.NOT_SHOWN,
                Phrase.of("no thermal data"),
                Phrase.of(""),
                Phrase.of(""),
                List.of(new Need("thermal resistance of hub", "a heating run of 20 min at 2 A")),
                Optional.empty());
    }

    private static Finding window() {
        return finding(
                "supply-window",
                "lift",
                Verdict.HOLDS,
                Phrase.of("battery stays within what the drive takes"),
                Phrase.of(""),
                Phrase.of(""),
                List.of(),
                Optional.empty());
    }

    private static Finding finding(
            String id,
            String subject,
            Verdict verdict,
            Phrase statement,
            Phrase reason,
            Phrase remedy,
            List<Need> needs,
            Optional<Finding.Margin> margin) {
        return new Finding(
                id,
                subject,
                verdict == Verdict.NOT_SHOWN ? Finding.Area.HEAT : Finding.Area.FIT,
                verdict,
                statement,
                reason,
                remedy,
                needs,
                margin,
                margin.isEmpty() ? Working.NONE : working(),
                List.of(Phrase.of("reserve of 10 % for control taken, none is stated")),
                "steady-state dq voltage equations; common practice");
    }

    private static Working working() {
        Working.Sheet sheet = Working.begin();
        Known supply = Known.exact(Quantity.of(20, "V"), Origin.DECLARED, "machine.yaml:9");
        Known kept = Known.number(0.1, Origin.ASSUMED, "common practice");
        sheet.line(
                "voltage for control",
                "{V} = (1 - {r}) · {U} / sqrt 3",
                "V",
                Dimension.VOLTAGE,
                "space-vector modulation, linear range",
                x -> (1 - x[0]) * x[1] / Math.sqrt(3),
                Term.of("r", kept, "%"),
                Term.of("U", supply, "V"));
        sheet.note(
                "flux linkage",
                "{λ}",
                "mWb",
                "spin of 14 November",
                measured(5.161, 0.0135, "mWb", "recordings/lift-spin-2.csv"));
        return sheet.end();
    }

    /** An angle sensor that was calibrated beside a reference: half a degree once per turn. */
    private static IdentifiedAxis sensor() {
        double[] shaft = new double[720];
        double[] read = new double[720];
        for (int i = 0; i < shaft.length; i++) {
            shaft[i] = Math.toRadians(i / 2.0);
            read[i] = shaft[i] + Math.toRadians(0.5) * Math.sin(shaft[i]) + 1e-5 * (7 * i % 5 - 2);
        }
        AngleEvidence fit =
                new AngleEvidence.Calibrated("reference run lift 1", ReferencedFit.of(shaft, read, 4), false, 10);
        return new IdentifiedAxis("lift", Map.of(), List.of(fit), List.of());
    }

    private static IdentifiedMotor motor() {
        Candidate label = new Candidate(measured(13.12, 0, "mWb", "label"), "label", Working.NONE);
        Candidate spun = new Candidate(measured(13.1, 0.035, "mWb", "spin hub 1"), "spin hub 1", working());
        Map<MotorParameter, Parameter> parameters = new LinkedHashMap<>();
        parameters.put(
                MotorParameter.FLUX_LINKAGE,
                new Parameter(
                        MotorParameter.FLUX_LINKAGE,
                        Outcome.answer(spun.value(), spun.working()),
                        List.of(spun, label)));
        parameters.put(
                MotorParameter.D_INDUCTANCE,
                new Parameter(
                        MotorParameter.D_INDUCTANCE,
                        Outcome.missing("d inductance of hub", "an inductance step on the locked rotor"),
                        List.of()));
        Contradiction poles = new Contradiction(
                "hub",
                MotorParameter.POLE_PAIRS,
                new Candidate(Known.number(12, Origin.DATA_SHEET, "machine.yaml:11"), "label", Working.NONE),
                new Candidate(Known.number(11, Origin.MEASURED, "spin hub 1"), "spin hub 1", Working.NONE),
                Known.number(11.0 / 12, Origin.DERIVED, ""),
                Optional.of("11/12"));
        return new IdentifiedMotor("hub", parameters, List.of(poles));
    }

    private static TestResult spin() {
        BenchTest test = new BenchTest(
                "spin hub 1",
                new Place("bench.yaml", 3, "tests / 1"),
                TestKind.SPIN,
                "hub",
                Optional.of("recordings/hub-spin-1.csv"),
                Map.of("CH1", "A to B"),
                Figures.<TestFigure>none().with(TestFigure.SPEED, declared("410 rpm ± 2 rpm", 6)),
                List.of(),
                Map.of("voltage", new Accuracy(0.001, Quantity.of(2, "mV"))));
        Candidate flux = new Candidate(measured(13.1, 0.035, "mWb", "spin hub 1"), "spin hub 1", working());
        return new TestResult(
                test,
                Map.of(MotorParameter.FLUX_LINKAGE, Outcome.answer(flux, flux.working())),
                List.of(new Phrase("fifth harmonic {h5} of the fundamental", Map.of())
                        .with("h5", Known.number(0.0213, Origin.DERIVED, ""), "%")),
                List.of(Phrase.of("3 single samples of 0 V were left out")),
                curves());
    }

    private static List<Curve> curves() {
        int n = 4000;
        double[] time = new double[n];
        double[] seen = new double[n];
        double[] fitted = new double[n];
        double[] left = new double[n];
        for (int i = 0; i < n; i++) {
            time[i] = i * 20e-6;
            double angle = 2 * Math.PI * 66 * time[i];
            fitted[i] = 5.6 * Math.sin(angle) + 0.12 * Math.sin(5 * angle);
            left[i] = 0.03 * Math.sin(13 * angle) + 0.02 * Math.sin(1e4 * i);
            seen[i] = fitted[i] + left[i];
        }
        return List.of(
                new Curve("A to B, measured", time, seen, "ms", "V", Curve.Role.MEASURED),
                new Curve("A to B, fitted", time, fitted, "ms", "V", Curve.Role.FITTED),
                new Curve("left over", time, left, "ms", "V", Curve.Role.RESIDUAL));
    }

    /** A measured figure; value and standard uncertainty in the unit. */
    public static Known measured(double value, double standardUncertainty, String unit, String from) {
        return Known.of(
                Quantity.of(value, unit),
                standardUncertainty * Units.named(unit).factor(),
                Source.of(from),
                Origin.MEASURED,
                from);
    }
}
