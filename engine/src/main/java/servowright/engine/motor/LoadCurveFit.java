package servowright.engine.motor;

import java.util.Arrays;
import java.util.Optional;
import servowright.engine.numeric.BlockJackknife;
import servowright.engine.numeric.Design;
import servowright.engine.quantity.Require;

/**
 * What current and torque over speed at one constant voltage say of a motor.
 *
 * <p><b>Formula.</b> U = R I + Ke ω gives the straight line I = U/R − (Ke/R) ω; torque on the shaft is the straight line
 * T = Kt I − T₀, T₀ the drag. R is the sum of motor, leads and bridge between the terminals of the supply. <b>Valid for</b> a current
 * of the motor's circuit, a settled speed at each point, temperature that stays. <b>Source.</b> Steady state of a direct-current machine, which a six-step
 * motor resembles; any textbook of electrical machines.
 *
 * @param volt    U
 * @param current line of current over speed: U/R and −Ke/R
 * @param torque  line of torque over current: −T₀ and Kt
 */
public record LoadCurveFit(double volt, BlockJackknife current, BlockJackknife torque) {
    private static final int STRETCHES = 16;

    /** Fits points in the order they were taken; empty when they do not determine the lines. */
    public static Optional<LoadCurveFit> of(double volt, double[] radPerS, double[] amp, double[] newtonMetre) {
        Require.positive("voltage", volt, "V");
        Optional<BlockJackknife> current = line(radPerS, amp);
        Optional<BlockJackknife> torque = line(amp, newtonMetre);
        return current.filter(c -> c.parameter(0) > 0).flatMap(c -> torque.map(t -> new LoadCurveFit(volt, c, t)));
    }

    private static Optional<BlockJackknife> line(double[] x, double[] y) {
        double[] ones = new double[x.length];
        Arrays.fill(ones, 1);
        return BlockJackknife.of(Design.ofColumns(ones, x), y, STRETCHES);
    }

    /** R, motor, leads and bridge together, ohm. */
    public double ohm() {
        return volt / current.parameter(0);
    }

    /** Ke, V s/rad between the terminals. */
    public double emfVoltSecondPerRad() {
        return -current.parameter(1) * ohm();
    }

    /** Kt, N m/A of the current of that circuit. */
    public double newtonMetrePerAmp() {
        return torque.parameter(1);
    }

    /** Drag that the torque on the shaft lacks, N m. */
    public double dragNewtonMetre() {
        return -torque.parameter(0);
    }
}
