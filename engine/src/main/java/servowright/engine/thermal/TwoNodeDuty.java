package servowright.engine.thermal;

import java.util.OptionalDouble;
import servowright.engine.numeric.Roots;
import servowright.engine.quantity.Require;
import servowright.engine.thermal.TwoNode.Rise;

/**
 * How much more than its continuous current a motor may carry for part of the time, by winding and housing and with copper
 * that warms.
 *
 * <p><b>Formula.</b> Continuous (S1): the loss whose settled winding rise is the limit L, P₁ = L / [R (1 + α L)] counted at
 * ambient temperature. Short time (S2): the P₀ whose {@link TwoNodeCurrent} brings the winding from ambient to L in the time
 * on. Periodic (S3): the P₀ with which the winding stands at L at the end of each time on, the rise at the start of a cycle
 * being the fixed point of the cycle's map. The factor is √(P₀/P₁) in current; in torque too as long as torque follows
 * current. <b>Valid for</b> loss in the copper alone, even over the phases. <b>Source.</b> Duty types as in IEC 60034-1
 * (definitions seen); heat balance, derived.
 *
 * @param pair        winding and housing
 * @param perKelvin   growth of the resistance α at ambient temperature, 1/K; 0 leaves the loss as it is
 * @param limitKelvin L, highest rise of the winding above ambient
 */
public record TwoNodeDuty(TwoNode pair, double perKelvin, double limitKelvin) {
    private static final double ACCURACY = 1e-12;

    public TwoNodeDuty {
        Require.notNegative("growth of resistance", perKelvin, "1/K");
        Require.positive("limit of the winding's rise", limitKelvin, "K");
    }

    /** Loss that the winding may have for good, counted at ambient temperature, W. */
    public double continuousWatt() {
        return limitKelvin / (pair.kelvinPerWatt() * (1 + perKelvin * limitKelvin));
    }

    /**
     * Current over continuous current for one run from ambient temperature.
     *
     * @param onSecond time on
     */
    public double shortTimeFactor(double onSecond) {
        Require.positive("time on", onSecond, "s");
        return factor(watt -> held(watt).after(Rise.COLD, onSecond).windingKelvin());
    }

    /**
     * Current over continuous current for a cycle that repeats, the pause without loss.
     *
     * @param cycleSecond whole cycle
     * @param share       part of it on, above 0, at most 1
     */
    public double periodicFactor(double cycleSecond, double share) {
        Require.positive("cycle", cycleSecond, "s");
        Require.positive("share of time on", share, "");
        Require.within("share of time on", 0, 1, share, "");
        return factor(watt -> atTheEnd(held(watt), cycleSecond * share, cycleSecond * (1 - share)));
    }

    /** Rise of the winding at the end of each time on; infinite where the cycles do not settle. */
    private double atTheEnd(TwoNodeCurrent on, double onSecond, double offSecond) {
        Rise none = cycle(on, Rise.COLD, onSecond, offSecond);
        Rise ofWinding = cycle(on, new Rise(1, 0), onSecond, offSecond);
        Rise ofHousing = cycle(on, new Rise(0, 1), onSecond, offSecond);
        double ww = none.windingKelvin() - ofWinding.windingKelvin();
        double hw = ofWinding.housingKelvin() - none.housingKelvin();
        double wh = ofHousing.windingKelvin() - none.windingKelvin();
        double hh = none.housingKelvin() - ofHousing.housingKelvin();
        double determinant = ww * hh - wh * hw;
        boolean settles = determinant > 0 && ww + hh > 0;
        if (!settles) {
            return Double.MAX_VALUE;
        }
        double winding = (hh * none.windingKelvin() + wh * none.housingKelvin()) / determinant;
        double housing = (hw * none.windingKelvin() + ww * none.housingKelvin()) / determinant;
        return on.after(new Rise(winding, housing), onSecond).windingKelvin();
    }

    /** What one cycle changes. */
    private Rise cycle(TwoNodeCurrent on, Rise start, double onSecond, double offSecond) {
        Rise warmed = on.change(start, onSecond);
        Rise cooled = held(0).change(on.after(start, onSecond), offSecond);
        return new Rise(
                warmed.windingKelvin() + cooled.windingKelvin(), warmed.housingKelvin() + cooled.housingKelvin());
    }

    private TwoNodeCurrent held(double watt) {
        return new TwoNodeCurrent(pair, watt, perKelvin);
    }

    private interface Peak {
        double of(double watt);
    }

    /** Root of the loss over the continuous one; the peak grows with the loss. */
    private double factor(Peak peak) {
        double low = continuousWatt();
        double high = low;
        while (peak.of(high) < limitKelvin) {
            low = high;
            high *= 2;
        }
        if (high == low) {
            return 1;
        }
        OptionalDouble found = Roots.between(
                watt -> Math.min(peak.of(watt), 10 * limitKelvin) - limitKelvin, low, high, ACCURACY * low);
        return Math.sqrt(found.orElseThrow() / continuousWatt());
    }
}
