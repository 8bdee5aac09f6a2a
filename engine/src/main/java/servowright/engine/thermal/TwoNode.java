package servowright.engine.thermal;

import servowright.engine.quantity.Require;

/**
 * Winding and housing as two heat stores.
 *
 * <p><b>Formula.</b> C_w dT_w/dt = P − (T_w − T_h)/R_wh, C_h dT_h/dt = (T_w − T_h)/R_wh − (T_h − T_a)/R_ha. The answer to a
 * constant loss is a sum of two exponentials; their time constants are the eigenvalues of the pair, not R_wh C_w and
 * R_ha C_h, which are typically off by 10 %. <b>Valid for</b> a constant loss within one call; copper whose resistance
 * grows is followed by short calls in a row. <b>Source.</b> Linear differential equations, solved in closed form.
 *
 * @param windingHousingKelvinPerWatt R_wh
 * @param windingJoulePerKelvin       C_w
 * @param housingAmbientKelvinPerWatt R_ha
 * @param housingJoulePerKelvin       C_h
 */
public record TwoNode(
        double windingHousingKelvinPerWatt,
        double windingJoulePerKelvin,
        double housingAmbientKelvinPerWatt,
        double housingJoulePerKelvin) {

    /** Refuses figures no motor can have. */
    public TwoNode {
        Require.positive("thermal resistance winding to housing", windingHousingKelvinPerWatt, "K/W");
        Require.positive("heat capacity of the winding", windingJoulePerKelvin, "J/K");
        Require.positive("thermal resistance housing to ambient", housingAmbientKelvinPerWatt, "K/W");
        Require.positive("heat capacity of the housing", housingJoulePerKelvin, "J/K");
    }

    /** Temperatures above ambient, in kelvin. */
    public record Rise(double windingKelvin, double housingKelvin) {
        /** Everything at ambient temperature. */
        public static final Rise COLD = new Rise(0, 0);
    }

    /** Settled rise under a constant loss. */
    public Rise settled(double watt) {
        double housing = Require.finite("loss", watt, "W") * housingAmbientKelvinPerWatt;
        return new Rise(housing + watt * windingHousingKelvinPerWatt, housing);
    }

    /** The shorter of the two time constants, s. */
    public double shortTimeConstantSecond() {
        return -1 / fastRate();
    }

    /** The longer of the two time constants, s. */
    public double longTimeConstantSecond() {
        return -1 / slowRate();
    }

    /**
     * Rise after a time under constant loss.
     *
     * @param start  rise at the beginning
     * @param watt   loss, constant over the time
     * @param second time, not negative
     */
    public Rise after(Rise start, double watt, double second) {
        Require.notNegative("time", second, "s");
        double fast = fastRate();
        double slow = slowRate();
        double settled = settled(watt).windingKelvin();
        double between = (start.windingKelvin - start.housingKelvin) / windingHousingKelvinPerWatt;
        double slope = (watt - between) / windingJoulePerKelvin;
        // w(t) = settled + a exp(fast t) + b exp(slow t), with w(0) and w'(0) given.
        double departure = start.windingKelvin - settled;
        double a = (slope - slow * departure) / (fast - slow);
        double b = departure - a;
        double fading = a * Math.exp(fast * second);
        double lasting = b * Math.exp(slow * second);
        double winding = settled + fading + lasting;
        double rate = fast * fading + slow * lasting;
        double housing = winding - windingHousingKelvinPerWatt * (watt - windingJoulePerKelvin * rate);
        return new Rise(winding, housing);
    }

    private double fastRate() {
        return (trace() - root()) / 2;
    }

    private double slowRate() {
        // Product of the eigenvalues over the fast one: no cancellation.
        return determinant() / fastRate();
    }

    private double trace() {
        return -1 / (windingJoulePerKelvin * windingHousingKelvinPerWatt)
                - (1 / windingHousingKelvinPerWatt + 1 / housingAmbientKelvinPerWatt) / housingJoulePerKelvin;
    }

    private double determinant() {
        return 1
                / (windingJoulePerKelvin
                        * windingHousingKelvinPerWatt
                        * housingJoulePerKelvin
                        * housingAmbientKelvinPerWatt);
    }

    private double root() {
        return Math.sqrt(trace() * trace() - 4 * determinant());
    }
}
