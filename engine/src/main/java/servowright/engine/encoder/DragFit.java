package servowright.engine.encoder;

import java.util.Arrays;
import java.util.stream.IntStream;
import servowright.engine.quantity.Require;

/**
 * Angle error from a rotor that is dragged slowly by a turning current, once forwards and once back.
 *
 * <p><b>Formula.</b> The rotor trails the current by asin(T_f/T_m)/p, forwards and back alike, and
 *
 * <pre>θ_read = θ_cmd/p + c0 − d λ + Σ (c_k cos kθ + s_k sin kθ)      θ = θ_cmd/p − d λ</pre>
 *
 * with d = ±1 the direction and λ the lag. The mean of both directions is free of friction; half of the difference is the
 * friction. Cogging stays, at orders of slots and poles far above the first four. <b>Validity.</b> More than four pole pairs
 * (fewer: run free instead), whole turns each way, slow against √(p T_m/J), lag below half a pole pitch. <b>Source.</b>
 * Torque balance of a rotor at a fixed current, derived.
 */
public final class DragFit {
    private static final int ROUNDS = 3;

    private DragFit() {}

    /**
     * Fits offset, lag and harmonics.
     *
     * @param direction above 0 forwards, below 0 back, one for each sample
     * @param commandElectricalRad angle of the current
     * @param readRad what the sensor read
     * @param polePairs p
     * @param orders highest order tried
     */
    public static Calibration of(
            double[] direction, double[] commandElectricalRad, double[] readRad, int polePairs, int orders) {
        Require.atLeast("pole pairs", 1, polePairs);
        Require.atLeast("highest order", 1, orders);
        double[] sign = Arrays.stream(direction).map(Math::signum).toArray();
        if (Arrays.stream(sign).distinct().count() < 2) {
            return new Calibration.Refused(Calibration.Reason.ONE_DIRECTION, sign.length == 0 ? 0 : sign[0]);
        }
        double[] command =
                Arrays.stream(commandElectricalRad).map(a -> a / polePairs).toArray();
        if (readRad.length < 3 * (2 * orders + 2)) {
            return new Calibration.Refused(Calibration.Reason.TOO_FEW_SAMPLES, readRad.length);
        }
        double followed = followed(command, readRad);
        if (Math.abs(followed - 1) > PolePairs.TOLERANCE) {
            Calibration.Reason reason = Math.abs(followed + 1) <= PolePairs.TOLERANCE
                    ? Calibration.Reason.REVERSED
                    : Calibration.Reason.DOES_NOT_FOLLOW;
            return new Calibration.Refused(reason, followed);
        }
        return fit(sign, command, readRad, orders);
    }

    private static Calibration fit(double[] sign, double[] command, double[] read, int orders) {
        int n = command.length;
        double[] difference =
                IntStream.range(0, n).mapToDouble(i -> read[i] - command[i]).toArray();
        double middle = Angles.mean(difference);
        double[] error = Arrays.stream(difference)
                .map(d -> middle + Angles.wrapped(d - middle))
                .toArray();
        HarmonicRegression regression =
                new HarmonicRegression(new double[][] {ReferencedFit.ones(n), sign}, error, ReferencedFit.ones(n));
        double[] shaft = command;
        HarmonicRegression.Found found = regression.with(ReferencedFit.upTo(orders), shaft);
        for (int round = 0; round < ROUNDS && found.fit().status().converged(); round++) {
            double lag = -found.fit().parameter(1);
            shaft = IntStream.range(0, n)
                    .mapToDouble(i -> command[i] - sign[i] * lag)
                    .toArray();
            found = regression.with(ReferencedFit.upTo(orders), shaft);
        }
        double condition = found.fit().conditionNumber();
        if (!(condition < ReferencedFit.MOST_CONDITION)) {
            return new Calibration.Refused(Calibration.Reason.TRAVEL_TOO_SMALL, condition);
        }
        HarmonicRegression.Found kept = regression.pruned(found, shaft);
        return ReferencedFit.fitted(
                kept, condition, 0, -kept.fit().parameter(1), kept.fit().parameter(0));
    }

    /** Turns read per turn commanded: slope of the one over the other, both unwrapped as they were run. */
    private static double followed(double[] command, double[] read) {
        double[] unwrapped = Angles.unwrapped(read);
        double commanded = 0;
        double followed = 0;
        for (int i = 1; i < command.length; i++) {
            double step = command[i] - command[i - 1];
            // A jump of the command between two runs is not motion.
            if (Math.abs(step) < Math.PI / 2) {
                commanded += Math.abs(step);
                followed += Math.signum(step) * (unwrapped[i] - unwrapped[i - 1]);
            }
        }
        return followed / commanded;
    }

    /**
     * Highest speed of the drag, rad/s, at which an order of the cogging stays below three tenths of the resonance
     * √(p T_m/J) of the rotor in the field.
     *
     * @param holdingTorqueNewtonMetre T_m, 3/2 p λ i
     * @param order of the cogging, per turn of the shaft
     */
    public static double fastestRadPerSecond(
            int polePairs, double holdingTorqueNewtonMetre, double inertiaKilogramSquareMetre, int order) {
        Require.atLeast("order of the cogging", 1, order);
        double resonance = Math.sqrt(Require.atLeast("pole pairs", 1, polePairs)
                * Require.positive("holding torque", holdingTorqueNewtonMetre, "N m")
                / Require.positive("inertia", inertiaKilogramSquareMetre, "kg m2"));
        return 0.3 * resonance / order;
    }
}
