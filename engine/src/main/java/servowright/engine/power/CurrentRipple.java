package servowright.engine.power;

import java.util.Arrays;
import servowright.engine.quantity.Require;

/**
 * Ripple of the phase current that switching leaves, with space-vector modulation and a triangular carrier.
 *
 * <p><b>Formula.</b> Within one switching period the phase sees the difference between its switched and its mean voltage;
 * the integral of it over L is the ripple. At each angle of the fundamental it is computed exactly from the three duty
 * cycles (the voltage is constant between edges); peak to peak is the largest over a turn, RMS that over a turn. For
 * m ≥ 0.5 the peak to peak value is m V / (6 L f) exactly.
 *
 * <p><b>Valid for</b> a star load of inductance alone (R T ≪ L), back-EMF constant within a period, no dead time, m from
 * 0 to 1. The rules of thumb V/(4 L f) (half bridge) and V/(8 L f) (two phases) overestimate. <b>Source.</b> Derived.
 *
 * @param peakToPeak peak to peak, in units of V_bus / (L f)
 * @param rms        RMS over a turn of the fundamental, in the same unit
 */
public record CurrentRipple(double peakToPeak, double rms) {

    /** Angles of the fundamental tried over a turn; their mesh contains 0 and 30 degrees, where the extremes lie. */
    private static final int ANGLES = 720;

    /**
     * Ripple at a depth of modulation.
     *
     * @param depth phase peak over the largest of space-vector modulation, V_bus/√3; from 0 to 1
     */
    public static CurrentRipple ofSpaceVector(double depth) {
        Require.within("depth of modulation", 0, 1, depth, "");
        double most = 0;
        double square = 0;
        for (int i = 0; i < ANGLES; i++) {
            double[] edges = edges(depth, 2 * Math.PI * i / ANGLES);
            double[] point = halfPeriod(edges);
            most = Math.max(most, point[0]);
            square += point[1] / ANGLES;
        }
        return new CurrentRipple(2 * most, Math.sqrt(square));
    }

    /** Peak to peak ripple in ampere. */
    public double peakToPeakAmp(double busVolt, double phaseHenry, double switchingHertz) {
        return peakToPeak * unitAmp(busVolt, phaseHenry, switchingHertz);
    }

    /** RMS ripple in ampere. */
    public double rmsAmp(double busVolt, double phaseHenry, double switchingHertz) {
        return rms * unitAmp(busVolt, phaseHenry, switchingHertz);
    }

    private static double unitAmp(double busVolt, double phaseHenry, double switchingHertz) {
        Require.positive("bus voltage", busVolt, "V");
        Require.positive("phase inductance", phaseHenry, "H");
        Require.positive("switching frequency", switchingHertz, "Hz");
        return busVolt / (phaseHenry * switchingHertz);
    }

    /** Instants in the first half of the period (0 to 0.5) at which phases a, b, c switch on. */
    private static double[] edges(double depth, double angle) {
        double[] reference = new double[3];
        for (int phase = 0; phase < 3; phase++) {
            reference[phase] = depth / Math.sqrt(3) * Math.cos(angle - phase * 2 * Math.PI / 3);
        }
        double middle = (Arrays.stream(reference).max().orElseThrow()
                        + Arrays.stream(reference).min().orElseThrow())
                / 2;
        double[] edges = new double[3];
        for (int phase = 0; phase < 3; phase++) {
            edges[phase] = (0.5 - (reference[phase] - middle)) / 2;
        }
        return edges;
    }

    /**
     * Largest departure of the flux and mean square of it over the first half period. The second half mirrors the first
     * with the other sign, so the peak to peak value is twice the first figure.
     */
    private static double[] halfPeriod(double[] edges) {
        double meanVolt = 0;
        for (int phase = 0; phase < 3; phase++) {
            double duty = 1 - 2 * edges[phase];
            meanVolt += (phase == 0 ? 2.0 / 3 : -1.0 / 3) * duty;
        }
        double[] stops = {0, edges[0], edges[1], edges[2], 0.5};
        Arrays.sort(stops);
        double flux = 0;
        double most = 0;
        double square = 0;
        for (int i = 1; i < stops.length; i++) {
            double middle = (stops[i - 1] + stops[i]) / 2;
            double volt = 0;
            for (int phase = 0; phase < 3; phase++) {
                volt += middle > edges[phase] ? (phase == 0 ? 2.0 / 3 : -1.0 / 3) : 0;
            }
            double width = stops[i] - stops[i - 1];
            double next = flux + (volt - meanVolt) * width;
            square += 2 * width * (flux * flux + flux * next + next * next) / 3;
            flux = next;
            most = Math.max(most, Math.abs(flux));
        }
        return new double[] {most, square};
    }
}
