package servowright.engine.bench;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import servowright.engine.motor.ConstantBasis;
import servowright.engine.motor.RatioName;
import servowright.engine.motor.StatedConstant;
import servowright.engine.quantity.HookUp;

/**
 * What a ratio between two values of one parameter probably is.
 *
 * @param ratio named ratio, right over stated
 * @param words the ratio and what stands behind it
 */
record RatioReading(double ratio, String words) {
    private static final double NEAR_FOR_CONSTANTS = 0.03;
    private static final double NEAR_FOR_WINDINGS = 0.08;

    /**
     * A motor constant read on one basis that was meant on another.
     *
     * @param ratio flux linkage that is right over the one stated
     */
    static Optional<RatioReading> ofConstant(double ratio, LabelFlux label, int polePairs) {
        List<ConstantBasis> all = label.constant().withBasisOpen().candidates();
        Optional<RatioReading> basis = all.stream()
                .filter(b -> !b.words().equals(label.basis().words()))
                .map(b -> swapped(b, label.basis(), label.constant()))
                .filter(r -> Math.abs(ratio / r.ratio() - 1) < NEAR_FOR_CONSTANTS)
                .min(Comparator.comparingDouble(r -> Math.abs(Math.log(ratio / r.ratio()))));
        return basis.isPresent() ? basis : named(ratio, NEAR_FOR_CONSTANTS, polePairs);
    }

    private static RatioReading swapped(ConstantBasis meant, ConstantBasis stated, StatedConstant constant) {
        double ratio = stated.perFlux() / meant.perFlux();
        return new RatioReading(
                ratio,
                name(ratio) + ", " + meant.words() + " against " + stated.words() + " in the "
                        + constant.kind().words());
    }

    /** A winding figure whose hook-up was another than stated. */
    static Optional<RatioReading> ofHookUp(double ratio, HookUp stated) {
        return Arrays.stream(HookUp.values())
                .filter(h -> h != stated)
                .map(h -> {
                    double r = stated.perPhase() / h.perPhase();
                    return new RatioReading(r, name(r) + ", " + h.words() + " stated as " + stated.words());
                })
                .filter(r -> Math.abs(ratio / r.ratio() - 1) < NEAR_FOR_WINDINGS)
                .min(Comparator.comparingDouble(r -> Math.abs(Math.log(ratio / r.ratio()))))
                .or(() -> named(ratio, NEAR_FOR_WINDINGS, 1));
    }

    /** Pole pairs: a factor 2 is magnets against pairs. */
    static Optional<RatioReading> ofPolePairs(double ratio) {
        boolean twice = Math.abs(Math.abs(Math.log(ratio)) - Math.log(2)) < 1e-9;
        return twice
                ? Optional.of(new RatioReading(ratio, name(ratio) + ", magnets against pole pairs"))
                : Optional.empty();
    }

    /** A ratio by the common names. */
    static Optional<RatioReading> named(double ratio, double near, int polePairs) {
        return RatioName.fitting(ratio, near, List.of(RatioName.polePairs(Math.max(1, polePairs)))).stream()
                .filter(m -> m.name().value() > 1)
                .findFirst()
                .map(m -> new RatioReading(
                        m.inverted() ? 1 / m.name().value() : m.name().value(),
                        m.words() + ", " + m.name().meaning()));
    }

    private static String name(double ratio) {
        return RatioName.nearest(ratio, 1e-6, List.of())
                .map(RatioName.Match::words)
                .orElse(String.format(java.util.Locale.ROOT, "%.3f", ratio));
    }
}
