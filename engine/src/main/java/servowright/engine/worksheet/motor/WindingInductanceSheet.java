package servowright.engine.worksheet.motor;

import java.util.List;
import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Problem;
import servowright.engine.known.Term;
import servowright.engine.motor.Saliency;
import servowright.engine.motor.WindingInductance;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.HookUp;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.Stated;
import servowright.engine.worksheet.Basis;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Contradictions;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.UsualInputs;
import servowright.engine.worksheet.Worksheet;

/** Phase inductances from what was read at the terminals of a standing motor. */
public final class WindingInductanceSheet implements Worksheet {
    private static final String HALVES =
            "two terminals show 2 Ld to 2 Lq over the rotor angle, one against two 3/2 of each (Krause et al. 2013, recalled)";
    private static final String THREE =
            "first harmonic of the three pairs over the angle; Ld = (m − A)/2, Lq = (m + A)/2";
    private static final String IMPEDANCE = "Z = V/I, R = P/I², L = √(Z² − R²)/ω";
    private static final String TAU = "L = τ R with the resistance of the whole loop, shunt and source included";

    private static final Declaration DECLARATION = new Declaration(
            "winding-inductance",
            "Winding inductance",
            "From an inductance meter at one or three pairs of terminals, at its least and largest over the rotor angle,"
                    + " from the time constant of a voltage step, or from an alternating voltage, with the rotor standing.",
            inputs(),
            List.of(
                    new Result("phase_inductance", "mean inductance of one phase of the equivalent star", "uH"),
                    new Result("d_inductance", "phase inductance on the magnet axis", "uH"),
                    new Result("q_inductance", "phase inductance across the magnet axis", "uH"),
                    new Result("saliency", "q over d inductance", ""),
                    new Result("axis_angle", "electrical angle of the magnet axis from phase a", "deg"),
                    new Result("loop_resistance_ac", "resistance of the loop at that frequency", "ohm"),
                    new Result("impedance", "impedance of the loop", "ohm"),
                    new Result("phase_angle", "voltage before current", "deg"),
                    new Result("corner_frequency", "frequency from which on inductance outweighs resistance", "Hz")),
            List.of(HALVES, THREE, IMPEDANCE, TAU));

    private static List<Input> inputs() {
        return List.of(
                UsualInputs.inductance(
                                "reading", "inductance read: one, least and largest over the turn, or three pairs")
                        .repeatable(),
                UsualInputs.time(
                                "time_constant",
                                "time constant of the current step; twice for least and largest",
                                "700 us")
                        .repeatable(),
                UsualInputs.ohm("loop_resistance", "resistance of the whole loop of that step", "18 ohm")
                        .statedAs(Basis.HOOK_UP),
                Input.quantity("voltage", Dimension.VOLTAGE, "alternating voltage, RMS", "0.76 V")
                        .within(Quantity.of(1e-6, "V"), Quantity.of(1e4, "V"))
                        .statedAs(Basis.HOOK_UP),
                Input.quantity("current", Dimension.CURRENT, "alternating current, RMS", "1 A")
                        .within(Quantity.of(1e-6, "A"), Quantity.of(1e4, "A")),
                Input.quantity("power", Dimension.POWER, "power of the alternating current", "0.1 W")
                        .within(Quantity.of(0, "W"), Quantity.of(1e5, "W")),
                UsualInputs.frequency("frequency", "frequency of the alternating current", "1 kHz"),
                UsualInputs.resistance("resistance", "winding resistance, for the corner frequency"));
    }

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public List<Problem> contradictions(Inputs inputs) {
        double v = inputs.known("voltage").map(Known::si).orElse(1.0);
        double i = inputs.known("current").map(Known::si).orElse(1.0);
        double p = inputs.known("power").map(Known::si).orElse(0.0);
        Contradictions found = new Contradictions(DECLARATION)
                .when(inputs.all("reading").size() > 3, "reading", "more than three readings", "Give three at most.")
                .when(inputs.all("time_constant").size() > 2, "time_constant", "more than two", "Give two at most.")
                .when(p >= v * i, "power", "more power than voltage times current", "Check the units; all are RMS.");
        if (inputs.all("reading").size() == 3) {
            List<Known> l = inputs.all("reading").stream()
                    .flatMap(r -> r.known().stream())
                    .toList();
            double mean = (l.get(0).si() + l.get(1).si() + l.get(2).si()) / 3;
            double most = l.stream().mapToDouble(Known::si).max().orElse(0);
            found.when(most >= 2 * mean, "reading", "one pair outweighs the others", "Read that pair again.");
        }
        return found.problems();
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        boolean step = inputs.has("time_constant") && inputs.has("loop_resistance");
        boolean ac = inputs.has("voltage") && inputs.has("current") && inputs.has("frequency");
        return Calculation.of(DECLARATION, inputs)
                .needs(
                        inputs.has("reading") || step || ac,
                        "an inductance reading, a time constant with its loop resistance, or an alternating voltage with"
                                + " current and frequency",
                        "read between two terminals and give reading, for example 120 uH [two terminals]")
                .work(c -> fill(c, step));
    }

    private static void fill(Calculation c, boolean step) {
        int readings = c.inputs().all("reading").size();
        if (readings == 3) {
            threePairs(c);
        } else if (readings > 0) {
            HookUp hookUp = PhaseValue.hookUp(c, "reading", HookUp.TWO_TERMINALS);
            loop(c, hookUp, readings == 1 ? List.of(c.given("L1", "reading")) : ordered(c));
        } else if (step) {
            step(c);
        } else {
            alternating(c);
        }
    }

    private static List<Term> ordered(Calculation c) {
        Term first = c.given("L1", "reading", 0);
        Term second = c.given("L2", "reading", 1);
        return first.value().si() <= second.value().si()
                ? List.of(first, second)
                : List.of(c.given("L1", "reading", 1), c.given("L2", "reading", 0));
    }

    /** One loop inductance, or the least and the largest. */
    private static void loop(Calculation c, HookUp hookUp, List<Term> loops) {
        if (loops.size() == 1) {
            Term phase = phase(c, "phase_inductance", "L", loops.get(0), hookUp);
            c.remark(Phrase.of("one rotor position: a salient motor shows anything between its two axes"));
            corner(c, phase);
            return;
        }
        Term d = phase(c, "d_inductance", "Ld", loops.get(0), hookUp);
        Term q = phase(c, "q_inductance", "Lq", loops.get(1), hookUp);
        both(c, d, q);
    }

    private static Term phase(Calculation c, String result, String symbol, Term loop, HookUp hookUp) {
        return c.result(
                result,
                "{" + symbol + "} = {" + loop.symbol() + "} / " + PhaseValue.number(hookUp),
                HALVES,
                x -> WindingInductance.phaseHenry(x[0], hookUp),
                loop);
    }

    private static void both(Calculation c, Term d, Term q) {
        c.result("saliency", "{ratio} = {Lq} / {Ld}", "definition", x -> new Saliency(x[0], x[1], 0).ratio(), d, q);
        Term mean = c.result(
                "phase_inductance", "{L} = ({Ld} + {Lq}) / 2", "mean of both axes", x -> (x[0] + x[1]) / 2, d, q);
        corner(c, mean);
    }

    private static void threePairs(Calculation c) {
        Term[] pairs = {c.given("ab", "reading", 0), c.given("bc", "reading", 1), c.given("ca", "reading", 2)};
        String a = "A = 2/3 √({ab}² + {bc}² + {ca}² − {ab}·{bc} − {bc}·{ca} − {ca}·{ab})";
        Term d = c.result(
                "d_inductance",
                "{Ld} = (({ab} + {bc} + {ca})/3 − A)/2, " + a,
                THREE,
                x -> saliency(x).dHenry(),
                pairs);
        Term q = c.result(
                "q_inductance",
                "{Lq} = (({ab} + {bc} + {ca})/3 + A)/2, " + a,
                THREE,
                x -> saliency(x).qHenry(),
                pairs);
        c.result(
                "axis_angle",
                "{θ} from the sine √3/2 ({ab} − {ca}) and the cosine {bc} − ({ab} + {ca})/2 of 2θ",
                THREE,
                x -> saliency(x).electricalRad(),
                pairs);
        both(c, d, q);
    }

    private static Saliency saliency(double[] x) {
        return Saliency.fromThreePairs(x[0], x[1], x[2]);
    }

    private static void step(Calculation c) {
        List<Inputs.Value> taus = c.inputs().all("time_constant");
        boolean rising = taus.size() == 1
                || taus.get(0).known().orElseThrow().si()
                        <= taus.get(1).known().orElseThrow().si();
        List<Term> loops = new java.util.ArrayList<>();
        for (int n = 0; n < taus.size(); n++) {
            int index = rising ? n : taus.size() - 1 - n;
            loops.add(c.step(
                    "inductance of the loop",
                    "{L" + (n + 1) + "} = {τ} · {R loop}",
                    "uH",
                    TAU,
                    x -> WindingInductance.fromTimeConstant(x[0], x[1]),
                    c.given("τ", "time_constant", index),
                    c.given("R loop", "loop_resistance")));
        }
        loop(c, PhaseValue.hookUp(c, "loop_resistance", HookUp.TWO_TERMINALS), loops);
    }

    private static void alternating(Calculation c) {
        Optional<Term> power = c.term("P", "power");
        c.needs(
                power.isPresent(),
                "the power",
                "read it with a wattmeter, or give I² times the resistance of the loop");
        if (power.isEmpty()) {
            return;
        }
        Term[] terms = {c.given("V", "voltage"), c.given("I", "current"), power.get(), c.given("f", "frequency")};
        c.result("impedance", "{Z} = {V} / {I}", IMPEDANCE, x -> impedance(x).impedanceOhm(), terms);
        c.result(
                "loop_resistance_ac",
                "{R} = {P} / {I}²",
                IMPEDANCE,
                x -> impedance(x).seriesOhm(),
                terms);
        c.result(
                "phase_angle",
                "{φ} = arccos({P} / ({V} · {I}))",
                IMPEDANCE,
                x -> impedance(x).angleRad(),
                terms);
        Term loop = c.step(
                "inductance of the loop",
                "{L1} = √(({V}/{I})² − ({P}/{I}²)²) / (2π · {f})",
                "uH",
                IMPEDANCE,
                x -> impedance(x).loopHenry(),
                terms);
        HookUp hookUp = c.inputs()
                .stated("voltage")
                .flatMap(Stated::hookUp)
                .orElseGet(() -> PhaseValue.hookUp(c, "voltage", HookUp.TWO_TERMINALS));
        loop(c, hookUp, List.of(loop));
    }

    private static WindingInductance.Impedance impedance(double[] x) {
        return WindingInductance.fromAlternatingCurrent(x[0], x[1], x[2], x[3]);
    }

    private static void corner(Calculation c, Term phaseInductance) {
        if (c.inputs().has("resistance")) {
            c.result(
                    "corner_frequency",
                    "{f} = {R} / (2π · {L})",
                    "where ω L equals R",
                    x -> WindingInductance.cornerHertz(x[0], x[1]),
                    PhaseValue.resistance(c, "resistance"),
                    phaseInductance);
        }
    }
}
