package servowright.engine.encoder;

import java.util.List;
import servowright.engine.quantity.Require;

/**
 * An angle error as a series over the true angle of the shaft, ε(θ) = c0 + Σ (c_k cos kθ + s_k sin kθ): what a sensor reads
 * less where the shaft is.
 */
public record HarmonicError(double meanRad, List<Ripple> ripples) {

    private static final int ROUNDS = 5;

    public HarmonicError {
        Require.finite("mean error", meanRad, "rad");
        ripples = List.copyOf(ripples);
    }

    /** The error at a true angle. */
    public double atRad(double shaftRad) {
        return meanRad + rippleAt(shaftRad);
    }

    private double rippleAt(double shaftRad) {
        double sum = 0;
        for (Ripple ripple : ripples) {
            sum += ripple.atRad(shaftRad);
        }
        return sum;
    }

    /**
     * The true angle for a reading.
     *
     * <p>Solves θ + ε(θ) = θ_read by putting in the error of the last guess; each round takes the residue down by about
     * Σ k A_k. Taking ε at the reading instead would leave Σ k A²: 0.0075° for ripples of 0.5° and 0.25°.
     */
    public double trueRad(double readRad) {
        double shaft = readRad - meanRad;
        for (int i = 0; i < ROUNDS; i++) {
            shaft = readRad - atRad(shaft);
        }
        return shaft;
    }

    /**
     * Most by which the error can change per radian of shaft, Σ k A_k. Below 1 every reading belongs to one angle; the
     * largest part of a speed that is not there.
     */
    public double steepest() {
        return ripples.stream().mapToDouble(r -> r.order() * r.amplitudeRad()).sum();
    }

    /** Whether every reading belongs to one angle. */
    public boolean canBeCorrected() {
        return steepest() < 1;
    }
}
