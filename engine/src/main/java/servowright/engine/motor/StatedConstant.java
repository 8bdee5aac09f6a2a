package servowright.engine.motor;

import java.util.List;
import java.util.stream.Stream;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Require;
import servowright.engine.quantity.VoltageBasis;

/**
 * One motor constant as somebody stated it, with the bases it may have: one if the basis was said, all if not.
 *
 * @param kind                what kind of constant
 * @param value               the figure in SI: rad/s/V, V s/rad, N m/A or Wb
 * @param polePairs           pole pairs that turn a flux linkage into a back-EMF constant; 1 for the other kinds
 * @param candidates          the bases it may have, the commonest first
 * @param relativeUncertainty relative standard uncertainty, for example 0.03
 */
public record StatedConstant(
        Kind kind, double value, int polePairs, List<ConstantBasis> candidates, double relativeUncertainty) {

    /** Voltage bases, in the order in which data sheets use them when they say nothing (common practice, no source). */
    private static final List<ConstantBasis> VOLTAGE = Stream.of(
                    VoltageBasis.LINE_PEAK,
                    VoltageBasis.LINE_RMS,
                    VoltageBasis.SIX_STEP,
                    VoltageBasis.PHASE_PEAK,
                    VoltageBasis.PHASE_RMS)
            .map(ConstantBasis::of)
            .toList();

    /** Current bases, in the order in which data sheets use them when they say nothing (common practice, no source). */
    private static final List<ConstantBasis> CURRENT = Stream.of(
                    CurrentBasis.PHASE_RMS, CurrentBasis.Q_AXIS, CurrentBasis.SIX_STEP)
            .map(ConstantBasis::of)
            .toList();

    /** Bases a flux linkage can have; line RMS is the same number as the power-invariant scaling. */
    private static final List<ConstantBasis> FLUX = Stream.of(
                    VoltageBasis.PHASE_PEAK, VoltageBasis.PHASE_RMS, VoltageBasis.LINE_RMS, VoltageBasis.LINE_PEAK)
            .map(ConstantBasis::of)
            .toList();

    /** The kinds of motor constant. */
    public enum Kind {
        SPEED_CONSTANT("speed constant"),
        EMF_CONSTANT("back-EMF constant"),
        TORQUE_CONSTANT("torque constant"),
        FLUX_LINKAGE("flux linkage");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** The name in running text. */
        public String words() {
            return words;
        }

        private List<ConstantBasis> bases() {
            return switch (this) {
                case SPEED_CONSTANT, EMF_CONSTANT -> VOLTAGE;
                case TORQUE_CONSTANT -> CURRENT;
                case FLUX_LINKAGE -> FLUX;
            };
        }
    }

    /** Refuses figures that cannot be a motor constant. */
    public StatedConstant {
        Require.positive(kind.words(), value, "");
        Require.atLeast("pole pairs", 1, polePairs);
        Require.atLeast("number of candidate bases", 1, candidates.size());
        Require.positive("relative uncertainty", relativeUncertainty, "");
        candidates = List.copyOf(candidates);
    }

    /** A speed constant in rad/s per volt, basis stated. */
    public static StatedConstant speedConstant(double radPerSecondPerVolt, VoltageBasis basis, double relative) {
        return stated(Kind.SPEED_CONSTANT, radPerSecondPerVolt, 1, ConstantBasis.of(basis), relative);
    }

    /** A speed constant in rad/s per volt, basis not stated. */
    public static StatedConstant speedConstant(double radPerSecondPerVolt, double relative) {
        return open(Kind.SPEED_CONSTANT, radPerSecondPerVolt, 1, relative);
    }

    /** A back-EMF constant in V s/rad, basis stated. */
    public static StatedConstant emfConstant(double voltSecondPerRad, VoltageBasis basis, double relative) {
        return stated(Kind.EMF_CONSTANT, voltSecondPerRad, 1, ConstantBasis.of(basis), relative);
    }

    /** A back-EMF constant in V s/rad, basis not stated. */
    public static StatedConstant emfConstant(double voltSecondPerRad, double relative) {
        return open(Kind.EMF_CONSTANT, voltSecondPerRad, 1, relative);
    }

    /** A torque constant in N m/A at the motor shaft, basis stated. */
    public static StatedConstant torqueConstant(double newtonMetrePerAmp, CurrentBasis basis, double relative) {
        return stated(Kind.TORQUE_CONSTANT, newtonMetrePerAmp, 1, ConstantBasis.of(basis), relative);
    }

    /** A torque constant in N m/A at the motor shaft, basis not stated. */
    public static StatedConstant torqueConstant(double newtonMetrePerAmp, double relative) {
        return open(Kind.TORQUE_CONSTANT, newtonMetrePerAmp, 1, relative);
    }

    /** A flux linkage in weber, basis stated (line RMS for the power-invariant scaling). */
    public static StatedConstant fluxLinkage(double weber, int polePairs, VoltageBasis basis, double relative) {
        return stated(Kind.FLUX_LINKAGE, weber, polePairs, ConstantBasis.of(basis), relative);
    }

    /** A flux linkage in weber, basis not stated. */
    public static StatedConstant fluxLinkage(double weber, int polePairs, double relative) {
        return open(Kind.FLUX_LINKAGE, weber, polePairs, relative);
    }

    /** True if exactly one basis is possible. */
    public boolean basisStated() {
        return candidates.size() == 1;
    }

    /** The same figure with its basis forgotten: every basis of its kind is a candidate. */
    public StatedConstant withBasisOpen() {
        return open(kind, value, polePairs, relativeUncertainty);
    }

    /** The motor that this figure describes if it is meant on {@code basis}. */
    public MotorConstants on(ConstantBasis basis) {
        double perFlux = basis.perFlux();
        return new MotorConstants(
                switch (kind) {
                    case SPEED_CONSTANT -> 1 / (value * perFlux);
                    case EMF_CONSTANT, TORQUE_CONSTANT -> value / perFlux;
                    case FLUX_LINKAGE -> polePairs * value / perFlux;
                });
    }

    private static StatedConstant stated(Kind kind, double value, int polePairs, ConstantBasis basis, double relative) {
        return new StatedConstant(kind, value, polePairs, List.of(basis), relative);
    }

    private static StatedConstant open(Kind kind, double value, int polePairs, double relative) {
        return new StatedConstant(kind, value, polePairs, kind.bases(), relative);
    }
}
