package servowright.engine.encoder;

import servowright.engine.numeric.Interval;
import servowright.engine.quantity.Require;

/**
 * Remanence of a magnet material with its spread from lot to lot and its reversible change with temperature.
 *
 * <p><b>Formula.</b> Br(T) = Br (1 + α (T − T0)). <b>Validity.</b> Below the temperature at which the grade loses
 * magnetisation for good; α is itself a mean over some range.
 *
 * @param leastTesla weakest magnet of the grade at the reference temperature
 * @param mostTesla strongest
 * @param perKelvin α, about −0.0012 for NdFeB, −0.0003 to −0.0004 for SmCo, −0.002 for ferrite (trade tables)
 * @param referenceCelsius T0, usually 20
 */
public record Remanence(double leastTesla, double mostTesla, double perKelvin, double referenceCelsius) {

    public Remanence {
        Require.positive("least remanence", leastTesla, "T");
        Require.within("most remanence", leastTesla, Double.MAX_VALUE, mostTesla, "T");
        Require.finite("temperature coefficient", perKelvin, "1/K");
        Require.finite("reference temperature", referenceCelsius, "degC");
    }

    /** Spread at one temperature. */
    public Interval atCelsius(double celsius) {
        double factor = factor(celsius);
        return new Interval(leastTesla * factor, mostTesla * factor);
    }

    /** Spread over a range of temperature: the weakest magnet where it is weakest to the strongest where strongest. */
    public Interval overCelsius(double coldest, double hottest) {
        Require.within("highest temperature", coldest, Double.MAX_VALUE, hottest, "degC");
        double first = factor(coldest);
        double second = factor(hottest);
        return new Interval(leastTesla * Math.min(first, second), mostTesla * Math.max(first, second));
    }

    private double factor(double celsius) {
        Require.finite("temperature", celsius, "degC");
        return Require.positive("share of the remanence left", 1 + perKelvin * (celsius - referenceCelsius), "");
    }

    /**
     * About the share of the field that a recoil permeability above 1 takes away: χ N, with χ = μ_rec − 1 and N the
     * demagnetising factor across the axis at the centre, N = 1 − b with b = B/Br there.
     *
     * <p>First order in χ; use it as the uncertainty of a field computed with permeability 1. About 1 % for a disc of 6 mm
     * by 2.5 mm with 1.05.
     */
    public static double recoilLoss(RoundMagnet magnet, double recoilPermeability) {
        Require.within("recoil permeability", 1, 10, recoilPermeability, "");
        // In the bore of a ring there is no material; its mean radius stands for the centre.
        double place = magnet.boreRadiusMetre() > 0 ? (magnet.boreRadiusMetre() + magnet.radiusMetre()) / 2 : 0;
        Vector along = magnet.fieldTesla(new Vector(1, 0, 0), new Vector(place, 0, 0));
        Vector across = magnet.fieldTesla(new Vector(1, 0, 0), new Vector(0, place, 0));
        return (recoilPermeability - 1) * (1 - (along.x() + across.x()) / 2);
    }
}
