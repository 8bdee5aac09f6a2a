package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import servowright.engine.known.CoverageInterval;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.motor.Saliency;
import servowright.engine.numeric.Interval;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.HookUp;
import servowright.engine.quantity.Quantity;

/** From inductances between contacts to those of a phase: on the rotor axis that was said, or somewhere between d and q. */
final class PhaseInductance {
    /** How far d and q usually lie from a value between them; small motors have L_q/L_d up to 2 (common practice). */
    private static final double SALIENCY_HALF_WIDTH = 0.3;

    /** Same readings, same interval. */
    private static final long SEED = 20080914;

    private PhaseInductance() {}

    /** Adds what one loop says to the result of its test. */
    static void add(ResultSheet sheet, BenchTest test, LoopInductance loop) {
        HookUp hookUp = loop.contacts().hookUp();
        Working.Sheet working = Working.begin().include(loop.working());
        Known phase = EquivalentStar.inductance(working, loop.henry(), hookUp);
        List<Phrase> assumptions = new ArrayList<>(loop.assumptions());
        Known value = phase.as(Origin.MEASURED, test.place().text());
        MotorParameter what = loop.axis()
                .map(a -> a == ChannelRole.RotorAxis.D ? MotorParameter.D_INDUCTANCE : MotorParameter.Q_INDUCTANCE)
                .orElse(MotorParameter.PHASE_INDUCTANCE);
        if (loop.axis().isEmpty()) {
            sheet.detail(Phrase.of("rotor position not stated: {L} lies between d and q inductance")
                    .with("L", value, "uH"));
        }
        sheet.value(what, new Candidate(value, loop.from(), working.end(), assumptions));
    }

    /** d or q inductance as far as a value between them tells. */
    static Candidate between(String motor, Candidate phase) {
        Known value = phase.value()
                .withPart(
                        Source.of("saliency of " + motor),
                        SALIENCY_HALF_WIDTH * phase.value().si() / Math.sqrt(3))
                .as(Origin.ASSUMED, phase.value().from());
        Working.Sheet working = Working.begin().include(phase.working());
        working.note("taken between d and q", "{L}", "uH", "common practice, no source", value);
        List<Phrase> assumptions = new ArrayList<>(phase.assumptions());
        assumptions.add(Phrase.of(
                        "d and q inductance of " + motor
                                + " not known apart; both taken within ± {w} of the value between them (common practice, no source)")
                .with("w", Quantity.number(SALIENCY_HALF_WIDTH), "%"));
        return new Candidate(value, phase.from(), working.end(), assumptions);
    }

    /** d and q inductance from the three pairs at one rotor position, if there are three. */
    static Optional<Pair> threePairs(List<LoopInductance> loops) {
        List<LoopInductance> pairs = new ArrayList<>();
        for (int index = 0; index < 3; index++) {
            int wanted = index;
            loops.stream()
                    .filter(l -> l.contacts().hookUp() == HookUp.TWO_TERMINALS
                            && l.axis().isEmpty()
                            && l.contacts().index() == wanted)
                    .findFirst()
                    .ifPresent(pairs::add);
        }
        return pairs.size() == 3 ? Optional.of(pair(pairs)) : Optional.empty();
    }

    /** Inductances on both axes. */
    record Pair(Candidate d, Candidate q) {}

    private static Pair pair(List<LoopInductance> loops) {
        Candidate d = axis(loops, "Ld", "{Ld} = (m − A)/2", true);
        Candidate q = axis(loops, "Lq", "{Lq} = (m + A)/2", false);
        return new Pair(d, q);
    }

    private static Candidate axis(List<LoopInductance> loops, String symbol, String formula, boolean d) {
        Working.Sheet working = Working.begin();
        loops.forEach(l -> working.include(l.working()));
        Known value = working.line(
                symbol + " from the three pairs at one rotor position",
                formula + ", m mean and A swing of {ab}, {bc}, {ca}",
                "uH",
                Dimension.INDUCTANCE,
                "inductance matrix of the salient machine in rotor axes, derived",
                v -> onAxis(v, d),
                Term.of("ab", loops.get(0).henry(), "uH"),
                Term.of("bc", loops.get(1).henry(), "uH"),
                Term.of("ca", loops.get(2).henry(), "uH"));
        List<Phrase> assumptions = new ArrayList<>();
        value = drawn(value, loops, d, symbol, working, assumptions);
        assumptions.add(Phrase.of("the rotor stood still between the readings of the three pairs"));
        loops.stream().flatMap(l -> l.assumptions().stream()).distinct().forEach(assumptions::add);
        String from = String.join(
                ", ", loops.stream().map(LoopInductance::from).distinct().toList());
        return new Candidate(value.as(Origin.MEASURED, from), from, working.end(), assumptions);
    }

    private static double onAxis(double[] v, boolean d) {
        if (!possible(v)) {
            return Double.NaN;
        }
        Saliency s = Saliency.fromThreePairs(v[0], v[1], v[2]);
        return d ? s.dHenry() : s.qHenry();
    }

    /**
     * Where the readings differ by little more than their last digits, the swing bends so much that first order loses its
     * uncertainty: the value is then widened until it holds the shortest interval of draws.
     */
    private static Known drawn(
            Known value,
            List<LoopInductance> loops,
            boolean d,
            String symbol,
            Working.Sheet working,
            List<Phrase> assumptions) {
        List<Known> readings = loops.stream().map(LoopInductance::henry).toList();
        Optional<CoverageInterval> interval =
                CoverageInterval.of(Dimension.INDUCTANCE, v -> onAxis(v, d), readings, new SplittableRandom(SEED));
        if (interval.filter(CoverageInterval::drawn).isEmpty()) {
            return value;
        }
        Interval range = interval.orElseThrow().range();
        double reach = Math.max(range.high() - value.si(), value.si() - range.low()) / CoverageInterval.FACTOR;
        double own = value.standardUncertainty();
        double more = Math.sqrt(Math.max(0, reach * reach - own * own));
        assumptions.add(Phrase.of("the swing of the three pairs bends: " + symbol
                        + " lies between {low} and {high} with 95 % (shortest interval of draws)")
                .with("low", new Quantity(range.low(), Dimension.INDUCTANCE), "uH")
                .with("high", new Quantity(range.high(), Dimension.INDUCTANCE), "uH"));
        return working.note(
                "widened to hold the shortest interval of draws",
                "{" + symbol + "}",
                "uH",
                "JCGM 101:2008, 5.3.4 and 7.7.4",
                value.withPart(Source.of(symbol + " of " + loops.get(0).from() + " by draws"), more));
    }

    /** Whether three readings can be those of one winding at one position: the smaller axis must come out above zero. */
    static boolean possible(List<LoopInductance> loops) {
        return possible(loops.stream().mapToDouble(l -> l.henry().si()).toArray());
    }

    private static boolean possible(double... henry) {
        double mean = Arrays.stream(henry).average().orElse(0);
        double most = Arrays.stream(henry).map(h -> Math.abs(h - mean)).max().orElse(0);
        return mean > 0 && most < mean / 2;
    }
}
