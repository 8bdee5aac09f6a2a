package servowright.engine.worksheet.motor;

import java.util.List;
import java.util.stream.Collectors;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Term;
import servowright.engine.motor.Cogging;
import servowright.engine.motor.StarOfSlots;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.Worksheet;

/** What slots and poles make of a winding, and how the motor cogs. */
public final class WindingFactorSheet implements Worksheet {
    private static final String STAR =
            "star of slots; Ouamara et al., Acta Polytechnica 59(2) 2019, 153-161 (abstract seen)";
    private static final String SYMMETRY =
            "symmetry of slots against poles; Skaar, Krøvel, Nilssen, ICEM 2006 (recalled)";

    /** Fewer slots and poles than this hold for nearly all small motors (own choice). */
    private static final int MOST_SLOTS = 48;

    private static final int MOST_POLES = 56;

    /** Below this no one winds a motor (own choice). */
    private static final double LEAST_FACTOR = 0.85;

    private static final Declaration DECLARATION = new Declaration(
            "winding-factor",
            "Winding factor and cogging from slots and poles",
            "For three phases with a coil around every tooth. From a count of detents alone it gives the combinations of"
                    + " slots and poles that would show them; the answer is rarely unique.",
            List.of(
                    Input.count("slots", "teeth of the stator", 3, 400, "12"),
                    Input.count("poles", "magnets of the rotor", 2, 400, "14"),
                    Input.count("detents", "detents felt in one turn of the shaft", 2, 100_000, "84")),
            List.of(
                    new Result("verdict", "whether slots and poles make a winding", ""),
                    new Result("pitch_factor", "pitch factor", ""),
                    new Result("distribution_factor", "distribution factor", ""),
                    new Result("winding_factor", "winding factor of the fundamental", ""),
                    new Result("slots_per_pole_per_phase", "slots per pole and phase", ""),
                    new Result("cogging_periods", "detents in one turn", ""),
                    new Result("cogging_angle", "angle from one detent to the next", "deg"),
                    new Result("symmetry", "how often the motor repeats around the turn", ""),
                    new Result("combinations", "slots/poles that show the detents counted", "")),
            List.of(STAR, SYMMETRY));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        boolean whole = inputs.has("slots") && inputs.has("poles");
        return Calculation.of(DECLARATION, inputs)
                .needs(whole || inputs.has("detents"), "slots and poles, or the detents of one turn", "count them")
                .work(c -> {
                    if (whole) {
                        winding(c);
                    }
                    if (inputs.has("detents")) {
                        combinations(c);
                    }
                });
    }

    private static void winding(Calculation c) {
        int slots = c.count("slots");
        int poles = c.count("poles");
        StarOfSlots.Result found = StarOfSlots.of(slots, poles);
        if (found instanceof StarOfSlots.Impossible impossible) {
            c.word("verdict", impossible.reason().words());
        } else if (found instanceof StarOfSlots.Balanced balanced) {
            c.word("verdict", "balanced");
            factors(c, balanced);
        }
        if (poles % 2 == 0) {
            cogging(c, Cogging.of(slots, poles));
        }
    }

    private static void factors(Calculation c, StarOfSlots.Balanced balanced) {
        Term q = c.given("Q", "slots");
        Term poles = c.given("2p", "poles");
        Term pitch =
                c.result("pitch_factor", "{kp} = |sin(π/2 · {2p} / {Q})|", STAR, x -> balanced.pitchFactor(), poles, q);
        Term distribution = c.result(
                "distribution_factor",
                "{kd} = |sum of the phasors of one phase| / their number, at π · {2p} / {Q} from tooth to tooth",
                STAR,
                x -> balanced.distributionFactor(),
                poles,
                q);
        c.result("winding_factor", "{kw} = {kp} · {kd}", STAR, x -> balanced.windingFactor(), pitch, distribution);
        c.result(
                "slots_per_pole_per_phase",
                "{q} = {Q} / (3 · {2p})",
                "definition",
                x -> balanced.slotsPerPolePerPhase(),
                q,
                poles);
    }

    private static void cogging(Calculation c, Cogging cogging) {
        Term q = c.given("Q", "slots");
        Term poles = c.given("2p", "poles");
        Term periods =
                c.result("cogging_periods", "{N} = lcm({Q}, {2p})", SYMMETRY, x -> cogging.periodsPerTurn(), q, poles);
        c.result("cogging_angle", "{angle} = 360° / {N}", SYMMETRY, x -> cogging.periodMechRad(), periods);
        c.result("symmetry", "{t} = gcd({Q}, {2p})", SYMMETRY, x -> cogging.symmetry(), q, poles);
        if (cogging.radialPullPossible()) {
            c.remark(Phrase.of("nothing repeats around the turn: a net radial pull on the rotor is possible"));
        }
        c.inputs()
                .known("detents")
                .filter(d -> d.si() != cogging.periodsPerTurn())
                .ifPresent(d -> c.remark(Phrase.of("{counted} detents counted, these slots and poles show {expected}")
                        .with("counted", d)
                        .with("expected", Known.number(cogging.periodsPerTurn(), Origin.DERIVED, ""))));
    }

    private static void combinations(Calculation c) {
        List<Cogging.Candidate> found = Cogging.forDetents(c.count("detents"), MOST_SLOTS, MOST_POLES, LEAST_FACTOR);
        String words = found.stream()
                .map(f -> f.cogging().slots() + "/" + f.cogging().poles())
                .collect(Collectors.joining(", "));
        c.word("combinations", words.isEmpty() ? "none up to " + MOST_SLOTS + " slots" : words);
        if (found.size() > 1) {
            c.remark(Phrase.of("more than one combination fits: count the magnets or the slots as well"));
        }
    }
}
