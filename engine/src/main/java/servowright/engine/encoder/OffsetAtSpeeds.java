package servowright.engine.encoder;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import servowright.engine.numeric.LinearFit;
import servowright.engine.quantity.Require;

/**
 * The one true commutation offset and the delay of the angle, from the offsets that served best at several speeds.
 *
 * <p><b>Formula.</b> offset(ω) = offset0 + p ω τ, a line through the offsets against the speed. Two speeds, or one speed both
 * ways, suffice. <b>Validity.</b> Offsets of neighbouring speeds less than half an electrical turn apart; a voltage-driven
 * motor adds the angle of its own inductance to the delay. <b>Source.</b> Definition of a constant delay.
 *
 * @param offsetElectricalRad at standstill, −π to π
 * @param delaySecond τ, above 0 when the angle is late
 * @param residualElectricalRad largest departure from the line; 0 for two speeds
 */
public record OffsetAtSpeeds(double offsetElectricalRad, double delaySecond, double residualElectricalRad) {

    /**
     * From mechanical speeds, below 0 backwards, rising, and the best offset at each.
     *
     * <p>Empty if the speeds are all the same.
     */
    public static Optional<OffsetAtSpeeds> of(double[] radPerSecond, double[] offsetElectricalRad, int polePairs) {
        Require.atLeast("number of speeds", 2, radPerSecond.length);
        Require.atLeast("pole pairs", 1, polePairs);
        LinearFit fit = HarmonicRegression.line(radPerSecond, Angles.unwrapped(offsetElectricalRad));
        if (!fit.status().converged()) {
            return Optional.empty();
        }
        return Optional.of(new OffsetAtSpeeds(
                Angles.wrapped(fit.parameter(0)),
                fit.parameter(1) / polePairs,
                fit.residuals().stream().map(Math::abs).max().orElse(0)));
    }

    /**
     * What a difference between turning forwards and back can be: a sensor that is late, or one with play. One speed cannot
     * tell them apart.
     *
     * @param staticRad mean of both directions, free of either
     * @param halfDifferenceRad half of forwards less back, mechanical
     */
    public record Direction(double staticRad, double halfDifferenceRad) {

        /** From the mean errors, sensor less reference, of the two directions. */
        public static Direction of(double forwardsRad, double backRad) {
            double half = Angles.wrapped(forwardsRad - backRad) / 2;
            return new Direction(Angles.wrapped(backRad + half), half);
        }

        /** The delay, if all of it is delay: −half difference over speed, seconds. */
        public double asDelaySecond(double radPerSecond) {
            return -halfDifferenceRad / Require.positive("speed", radPerSecond, "rad/s");
        }
    }

    /**
     * Delay and play told apart.
     *
     * @param delaySecond the part that grows with speed
     * @param playRad half of the play, the part that does not
     */
    public record DelayAndPlay(double delaySecond, double playRad) {}

    /**
     * Tells delay from play by the half differences at two or more speeds; empty if the speeds are one, for then nothing can
     * tell them apart.
     */
    public static Optional<DelayAndPlay> delayAndPlay(double[] radPerSecond, Direction... directions) {
        Require.atLeast("number of speeds", 1, directions.length);
        if (Arrays.stream(radPerSecond).distinct().count() < 2) {
            return Optional.empty();
        }
        double[] halves = IntStream.range(0, directions.length)
                .mapToDouble(i -> -directions[i].halfDifferenceRad())
                .toArray();
        LinearFit fit = HarmonicRegression.line(radPerSecond, halves);
        return Optional.of(new DelayAndPlay(fit.parameter(1), fit.parameter(0)));
    }

    /** Largest distance of offsets found after taking the mount apart and together from their circular mean, radians. */
    public static double reseatingSpreadRad(double... offsetRad) {
        Require.atLeast("number of seatings", 2, offsetRad.length);
        double middle = Angles.mean(offsetRad);
        return Arrays.stream(offsetRad)
                .map(o -> Math.abs(Angles.wrapped(o - middle)))
                .max()
                .orElseThrow();
    }
}
