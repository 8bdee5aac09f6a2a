package servowright.engine.thermal;

import java.util.Optional;
import servowright.engine.quantity.Require;
import servowright.engine.thermal.TwoNode.Rise;

/**
 * Winding and housing under a current that is held: the copper loss grows as the winding warms.
 *
 * <p><b>Formula.</b> As {@link TwoNode}, with P = P₀ (1 + α ΔT_w), ΔT_w above ambient and P₀ the loss with the winding at
 * ambient temperature. That stays linear: settled ΔT_w = P₀ R / (1 − α P₀ R) with R = R_wh + R_ha; between, two
 * exponentials with the rates of the pair in which α P₀ is taken off the winding's conductance. From α P₀ R = 1 on nothing
 * settles: the slower rate is no longer negative and the winding runs away. <b>Valid for</b> copper between −40 and 200 °C,
 * where its resistance is a straight line. <b>Source.</b> Linear differential equations, solved in closed form.
 *
 * @param pair      winding and housing
 * @param coldWatt  P₀, not negative
 * @param perKelvin α at ambient temperature, 1/K; 0 for a loss that stays as it is
 */
public record TwoNodeCurrent(TwoNode pair, double coldWatt, double perKelvin) {

    public TwoNodeCurrent {
        Require.finite("loss", coldWatt, "W");
        Require.notNegative("growth of resistance", perKelvin, "1/K");
    }

    /** Where the temperatures end; empty when the winding runs away. */
    public Optional<Rise> settled() {
        double left = 1 - growth() * pair.kelvinPerWatt();
        if (!(left > 0)) {
            return Optional.empty();
        }
        double watt = coldWatt / left;
        return Optional.of(pair.settled(watt));
    }

    /**
     * Rise after a time.
     *
     * @param start  rise at the beginning
     * @param second time, not negative
     */
    public Rise after(Rise start, double second) {
        Rise change = change(start, second);
        return new Rise(start.windingKelvin() + change.windingKelvin(), start.housingKelvin() + change.housingKelvin());
    }

    /** By how much both warm in a time, exact also where that is next to nothing. */
    Rise change(Rise start, double second) {
        Require.notNegative("time", second, "s");
        double winding = windingRate(start.windingKelvin(), start.housingKelvin());
        double housing = housingRate(start.windingKelvin(), start.housingKelvin());
        return new Rise(
                integrated(winding, windingRate(winding, housing) - windingRate(0, 0), second),
                integrated(housing, housingRate(winding, housing), second));
    }

    /** Integral of a rate a exp(fast t) + b exp(slow t) that begins with a value and a slope; regular at runaway. */
    private double integrated(double begin, double slope, double second) {
        double fast = fastRate();
        double slow = slowRate();
        double a = (slope - slow * begin) / (fast - slow);
        return a * passed(fast, second) + (begin - a) * passed(slow, second);
    }

    /** Integral of exp(rate t) from 0. */
    private static double passed(double rate, double second) {
        return rate == 0 ? second : Math.expm1(rate * second) / rate;
    }

    /** The faster of the two rates, 1/s, always negative. */
    double fastRate() {
        double trace = trace();
        return (trace - Math.sqrt(trace * trace - 4 * determinant())) / 2;
    }

    /** The slower one, positive when the winding runs away. */
    double slowRate() {
        // Product of the eigenvalues over the fast one: no cancellation.
        return determinant() / fastRate();
    }

    private double windingRate(double winding, double housing) {
        double away = (winding - housing) / pair.windingHousingKelvinPerWatt();
        return (coldWatt + growth() * winding - away) / pair.windingJoulePerKelvin();
    }

    private double housingRate(double winding, double housing) {
        double in = (winding - housing) / pair.windingHousingKelvinPerWatt();
        return (in - housing / pair.housingAmbientKelvinPerWatt()) / pair.housingJoulePerKelvin();
    }

    /** Loss gained per kelvin, W/K. */
    private double growth() {
        return perKelvin * coldWatt;
    }

    private double trace() {
        double inner = 1 / pair.windingHousingKelvinPerWatt();
        double outer = 1 / pair.housingAmbientKelvinPerWatt();
        return -(inner - growth()) / pair.windingJoulePerKelvin() - (inner + outer) / pair.housingJoulePerKelvin();
    }

    private double determinant() {
        double capacities = pair.windingJoulePerKelvin() * pair.housingJoulePerKelvin();
        double resistances = pair.windingHousingKelvinPerWatt() * pair.housingAmbientKelvinPerWatt();
        return (1 - growth() * pair.kelvinPerWatt()) / (capacities * resistances);
    }
}
