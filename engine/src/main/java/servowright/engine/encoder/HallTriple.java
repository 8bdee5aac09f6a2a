package servowright.engine.encoder;

import java.util.List;
import java.util.OptionalInt;
import servowright.engine.quantity.Require;

/** Three switches a third of an electrical turn apart: six states, 60 electrical degrees each. */
public final class HallTriple {
    /** States in the order of a turning rotor, bits of the three switches; all alike never happens. */
    private static final List<Integer> SEQUENCE = List.of(0b101, 0b100, 0b110, 0b010, 0b011, 0b001);

    /** Torque of square currents in six states over that of sinusoidal ones of the same peak, mean of cos over ±30°. */
    public static final double BLOCK_TORQUE = 3 / Math.PI;

    private HallTriple() {}

    /** Root mean square of the angle error when a state stands for its middle, electrical: 60°/√12. */
    public static double stateErrorElectricalRad() {
        return Math.PI / 3 / Math.sqrt(12);
    }

    /**
     * Largest relative error of a speed from the time of one state, when switches sit off their places by up to d: p d/60°.
     * The length of a state errs by up to twice that. Times between the same edge, a turn apart, have none of it.
     *
     * @param placementRad d, mechanical
     */
    public static double speedErrorShare(int polePairs, double placementRad) {
        Require.atLeast("pole pairs", 1, polePairs);
        return polePairs * Require.notNegative("placement error", placementRad, "rad") / (Math.PI / 3);
    }

    /**
     * Step from one state to the next: +1, −1 or 0; empty if a state is none or one was left out, which is a wire, a magnet
     * or a speed fault.
     */
    public static OptionalInt step(int from, int to) {
        int before = SEQUENCE.indexOf(from);
        int after = SEQUENCE.indexOf(to);
        if (before < 0 || after < 0) {
            return OptionalInt.empty();
        }
        return switch (Math.floorMod(after - before, SEQUENCE.size())) {
            case 0 -> OptionalInt.of(0);
            case 1 -> OptionalInt.of(1);
            case 5 -> OptionalInt.of(-1);
            default -> OptionalInt.empty();
        };
    }

    /**
     * Mean and ripple of the electrical error when two analogue switches are off quadrature by δ: δ/2 (1 − cos 2α), mean δ/2
     * and amplitude δ/2 at twice the electrical angle.
     */
    public static double quadratureRippleElectricalRad(double quadratureRad) {
        return Math.abs(Require.within("quadrature error", -1, 1, quadratureRad, "rad")) / 2;
    }

    /**
     * Cosine of the angle from one switch that reads sin α and one that leads it by δ more than a quarter, cos(α + δ):
     * cos α = (cos(α + δ) + sin α sin δ)/cos δ.
     *
     * @param shifted what the second one reads, over its amplitude
     * @param sine    what the first one reads, over its amplitude
     */
    public static double squaredCosine(double shifted, double sine, double quadratureRad) {
        Require.within("quadrature error", -1, 1, quadratureRad, "rad");
        return (Require.finite("reading", shifted, "") + Require.finite("reading", sine, "") * Math.sin(quadratureRad))
                / Math.cos(quadratureRad);
    }
}
