package servowright.engine.motor;

import java.util.Arrays;
import java.util.Optional;
import servowright.engine.numeric.BlockJackknife;
import servowright.engine.numeric.Design;
import servowright.engine.quantity.Require;

/**
 * Resistance and back-EMF of a running motor from its own voltage, current and speed.
 *
 * <p><b>Formula.</b> u_q = R i_q + p λ ω + U_d s + U₀, amplitude-invariant; U_d stands for dead time and device drops, with s the
 * sense of the current or, where the drive corrects by its speed, of the speed; U₀ is an offset. Linear least squares over means of short stretches. <b>Valid for</b> i_d = 0 and means over stretches that are
 * long against L/R, so that L di/dt averages out; the speed must change, and the current as well. <b>Source.</b> Voltage
 * equation of the q axis, Krause, Wasynczuk, Sudhoff, Pekarek, Analysis of Electric Machinery and Drive Systems, 3rd ed. 2013,
 * ch. 4 (recalled).
 *
 * @param fit R ohm, p λ V s/rad, U_d V, U₀ V
 */
public record RunningFit(BlockJackknife fit) {
    private static final int STRETCHES = 16;

    /**
     * Fits stretches of a run; empty when they do not determine the terms.
     *
     * @param senses mean of s in each stretch, −1 to 1
     */
    public static Optional<RunningFit> of(double[] qVolts, double[] qAmps, double[] mechRadPerS, double[] senses) {
        Require.atLeast("stretches", 1, qVolts.length);
        double[] ones = new double[qVolts.length];
        Arrays.fill(ones, 1);
        return BlockJackknife.of(Design.ofColumns(qAmps, mechRadPerS, senses, ones), qVolts, STRETCHES)
                .map(RunningFit::new);
    }

    /** R, per phase, as warm as it was. */
    public double phaseOhm() {
        return fit.parameter(0);
    }

    /** p λ, phase peak, V s/rad. */
    public double emfVoltSecondPerRad() {
        return fit.parameter(1);
    }

    /** U_d, V. */
    public double deadZoneVolt() {
        return fit.parameter(2);
    }

    /** U₀, V. */
    public double offsetVolt() {
        return fit.parameter(3);
    }
}
