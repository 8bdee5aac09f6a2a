package servowright.engine.worksheet.motor;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.known.Term;
import servowright.engine.motor.Winding;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.HookUp;
import servowright.engine.quantity.Quantity;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.UsualInputs;

/**
 * A motor as a worksheet was told of it. What was left out counts as nothing and is named as an assumption.
 *
 * @param pLambda   pole pairs times flux linkage
 * @param polePairs 1 where nothing depends on it
 * @param known     whether the pole pairs were given
 * @param ohm       phase resistance
 * @param dHenry    phase inductance on the magnet axis
 * @param qHenry    phase inductance across it
 */
public record GivenMotor(Term pLambda, int polePairs, boolean known, Term ohm, Term dHenry, Term qHenry) {
    /** How many terms a motor puts in front of others. */
    private static final int TERMS = 4;

    /** The inputs that tell of a winding beside its constants. */
    public static List<Input> and(Input... further) {
        List<Input> winding = new ArrayList<>(List.of(
                UsualInputs.resistance("resistance", "winding resistance, as warm as in question"),
                UsualInputs.inductance("inductance", "winding inductance"),
                UsualInputs.inductance("d_inductance", "phase inductance on the magnet axis"),
                UsualInputs.inductance("q_inductance", "phase inductance across the magnet axis")));
        winding.addAll(List.of(further));
        return ConstantInputs.and(winding.toArray(Input[]::new));
    }

    /** Asks for the inductance where it was not given, neither as one nor on both axes. */
    static Calculation needInductance(Calculation c) {
        Inputs given = c.inputs();
        boolean inductive = given.has("inductance") || (given.has("d_inductance") && given.has("q_inductance"));
        return c.needs(inductive, "the inductance", "give inductance, for example 120 uH [two terminals]");
    }

    /** The motor; empty, with the need noted, if nothing tells its constants. */
    public static Optional<GivenMotor> of(Calculation c) {
        GivenPoles poles = GivenPoles.of(c);
        return GivenConstants.of(c, poles).common(c).map(pLambda -> {
            Term ohm = c.inputs().has("resistance")
                    ? PhaseValue.resistance(c, "resistance")
                    : leftOut(c, "R", "resistance", Dimension.RESISTANCE);
            boolean axes = c.inputs().has("d_inductance") && c.inputs().has("q_inductance");
            boolean inductive = axes || c.inputs().has("inductance");
            Term d = axes
                    ? PhaseValue.inductance(c, "d_inductance", "Ld", HookUp.PHASE)
                    : inductive
                            ? PhaseValue.inductance(c, "inductance", "Ld", HookUp.TWO_TERMINALS)
                            : leftOut(c, "Ld", "inductance", Dimension.INDUCTANCE);
            Term q = axes
                    ? PhaseValue.inductance(c, "q_inductance", "Lq", HookUp.PHASE)
                    : Term.of("Lq", d.value(), d.unit());
            if (inductive) {
                c.needs(poles.number().isPresent(), "pole pairs", "count the magnets and give magnets, for example 14");
            }
            return new GivenMotor(
                    pLambda, poles.number().orElse(1), poles.number().isPresent(), ohm, d, q);
        });
    }

    private static Term leftOut(Calculation c, String symbol, String words, Dimension dimension) {
        c.assume(Phrase.of(words + " not given: left out"));
        return Term.of(symbol, Known.exact(new Quantity(0, dimension), Origin.ASSUMED, "left out"));
    }

    /** The motor's terms and what else goes into a line. */
    public Term[] terms(Term... further) {
        List<Term> all = new ArrayList<>(List.of(pLambda, ohm, dHenry, qHenry));
        all.addAll(List.of(further));
        return all.toArray(Term[]::new);
    }

    /** The winding from the SI values of {@link #terms}. */
    public Winding winding(double[] x) {
        return new Winding(x[1], x[2], x[3], x[0] / polePairs, polePairs);
    }

    /** The n-th further value among the SI values of {@link #terms}, counted from 0. */
    public static double further(double[] x, int n) {
        return x[TERMS + n];
    }
}
