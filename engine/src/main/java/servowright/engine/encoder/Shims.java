package servowright.engine.encoder;

import java.util.List;
import java.util.OptionalDouble;
import servowright.engine.quantity.Require;

/** Which shims bring the gap where it should be. */
public final class Shims {
    private Shims() {}

    /**
     * By how much the gap is to be widened (above 0) or narrowed, from a field that was read.
     *
     * <p><b>Formula.</b> g(B_wanted) − g(B_read) with the remanence that is thought to be there. To first order
     * (B_wanted − B_read)/B'. Empty if the magnet reaches one of the fields nowhere.
     */
    public static OptionalDouble wantedMetre(
            RoundMagnet magnet, double remanenceTesla, double readTesla, double wantedTesla) {
        OptionalDouble now = magnet.widestGapMetre(remanenceTesla, readTesla);
        OptionalDouble then = magnet.widestGapMetre(remanenceTesla, wantedTesla);
        return now.isPresent() && then.isPresent()
                ? OptionalDouble.of(then.getAsDouble() - now.getAsDouble())
                : OptionalDouble.empty();
    }

    /**
     * Shims to put under every screw, thinnest stack first that comes nearest to the thickness wanted: none, one or two of
     * the thicknesses that are at hand.
     */
    public static List<Double> nearest(double wantedMetre, List<Double> atHandMetre) {
        Require.finite("thickness wanted", wantedMetre, "m");
        List<Double> best = List.of();
        for (double first : atHandMetre) {
            Require.positive("thickness of a shim", first, "m");
            best = nearer(wantedMetre, best, List.of(first));
            for (double second : atHandMetre) {
                best = nearer(wantedMetre, best, List.of(first, second));
            }
        }
        return best;
    }

    private static List<Double> nearer(double wanted, List<Double> held, List<Double> offered) {
        double better = Math.abs(wanted - sum(held)) - Math.abs(wanted - sum(offered));
        boolean fewer = offered.size() < held.size();
        return better > 1e-9 || (better > -1e-9 && fewer) ? offered : held;
    }

    private static double sum(List<Double> thicknesses) {
        return thicknesses.stream().mapToDouble(Double::doubleValue).sum();
    }
}
