package servowright.engine.encoder;

import java.util.function.DoubleFunction;
import servowright.engine.quantity.Require;

/**
 * What a sensor reads while the shaft makes one turn.
 *
 * @param error of the angle; without meaning unless {@code netTurns} is 1
 * @param leastSignal length of the two channels taken together where it is smallest, in their unit
 * @param mostSignal the same where it is largest
 * @param netTurns turns of the reading for one turn of the shaft: 1 when all is well, 0 for a field that stands still, 2
 *     for a sensor that repeats every half turn
 */
public record FullTurn(AngleError error, double leastSignal, double mostSignal, int netTurns) {

    private static final int ORDERS = 8;

    /**
     * Goes round in even steps.
     *
     * <p><b>Formula.</b> ε(θ) = arg(z e^(−iθ)), with z = X + iY; taken about the direction of the mean of z e^(−iθ), so that
     * a constant part near half a turn does not wrap. Harmonics 1 to 8.
     *
     * @param channels the two channels of the sensor at a shaft angle, ideal when they are cos θ and sin θ
     * @param angles number of steps, at least 17
     */
    public static FullTurn of(DoubleFunction<Planar> channels, int angles) {
        Require.atLeast("number of angles", 2 * ORDERS + 1, angles);
        Planar[] still = new Planar[angles];
        double least = Double.POSITIVE_INFINITY;
        double most = 0;
        Planar sum = Planar.ZERO;
        for (int i = 0; i < angles; i++) {
            double shaft = 2 * Math.PI * i / angles;
            still[i] = channels.apply(shaft).times(Planar.along(1, -shaft));
            sum = sum.plus(still[i]);
            least = Math.min(least, still[i].length());
            most = Math.max(most, still[i].length());
        }
        Planar back = Planar.along(1, -sum.directionRad());
        double[] error = new double[angles];
        double slipped = 0;
        for (int i = 0; i < angles; i++) {
            error[i] = sum.directionRad() + still[i].times(back).directionRad();
            Planar next = still[(i + 1) % angles];
            slipped += next.times(still[i].mirrored()).directionRad();
        }
        int netTurns = 1 + (int) Math.round(slipped / (2 * Math.PI));
        return new FullTurn(AngleError.ofSamples(error, ORDERS), least, most, netTurns);
    }

    /** Swing of the signal, (most − least)/(most + least); above about 0.05 something is wrong with the mount. */
    public double signalSwing() {
        return (mostSignal - leastSignal) / (mostSignal + leastSignal);
    }
}
