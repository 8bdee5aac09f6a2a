package servowright.engine.thermal;

import java.util.stream.IntStream;
import servowright.engine.quantity.Require;

/**
 * Readings of a motor that warms up, and cools if it was followed further.
 *
 * @param seconds         time of each reading, or middle of its stretch, from the start of the run, rising
 * @param means           whether readings are means over stretches of time that follow each other
 * @param watt            heat put into the winding, over a stretch its mean
 * @param ohm             resistance of the winding; NaN where no current read it
 * @param sigma           size of the scatter of each resistance over that of the best
 * @param housing         temperature of the housing in kelvin; empty when it was not read
 * @param riseStandard    standard uncertainty of the share of the housing's rise that its thermometer shows, above 0
 * @param airKelvin       temperature of the air
 * @param startKelvin     winding and housing at the start
 * @param vanishingKelvin temperature at which the straight line of the conductor's resistance meets zero
 */
@SuppressWarnings("ArrayRecordComponent") // read, never written to
public record HeatingRun(
        double[] seconds,
        boolean means,
        double[] watt,
        double[] ohm,
        double[] sigma,
        double[] housing,
        double riseStandard,
        double airKelvin,
        double startKelvin,
        double vanishingKelvin) {

    public HeatingRun {
        Require.positive("temperature at the start above that of zero resistance", startKelvin - vanishingKelvin, "K");
        Require.positive("uncertainty of the thermometer's rise", riseStandard, "");
        for (int k = 0; k < seconds.length; k++) {
            Require.positive("step of time", seconds[k] - (k == 0 ? -1 : seconds[k - 1]), "s");
            Require.finite("heat put in", watt[k], "W");
        }
    }

    int count() {
        return seconds.length;
    }

    /** Stretches whose resistance was read. */
    int[] read() {
        return IntStream.range(0, count()).filter(k -> Double.isFinite(ohm[k])).toArray();
    }

    double spanSecond() {
        return seconds[count() - 1];
    }

    /** Temperatures of winding and housing in kelvin along the run, by a pair. */
    record Course(double[] winding, double[] housing) {}

    /**
     * What a pair makes of the heat that was put in: constant in each stretch, stretches meeting half-way between their
     * middles. Means over a stretch are those of its start, middle and end by Simpson's rule.
     */
    Course through(TwoNode pair) {
        double[] winding = new double[count()];
        double[] housing = new double[count()];
        double step = Double.NaN;
        TwoNode.Lapse half = pair.lapse(0);
        TwoNode.Rise middle = new TwoNode.Rise(startKelvin - airKelvin, startKelvin - airKelvin);
        for (int k = 0; k < count(); k++) {
            double second = (seconds[k] - (k == 0 ? 0 : seconds[k - 1])) / 2;
            if (!(Math.abs(second - step) <= 1e-9 * second)) {
                step = second;
                half = pair.lapse(second);
            }
            TwoNode.Rise begin = half.of(middle, watt[Math.max(0, k - 1)]);
            middle = half.of(begin, watt[k]);
            TwoNode.Rise end = half.of(middle, watt[k]);
            winding[k] = airKelvin + shown(begin.windingKelvin(), middle.windingKelvin(), end.windingKelvin());
            housing[k] = airKelvin + shown(begin.housingKelvin(), middle.housingKelvin(), end.housingKelvin());
        }
        return new Course(winding, housing);
    }

    private double shown(double begin, double middle, double end) {
        return means ? (begin + 4 * middle + end) / 6 : middle;
    }
}
