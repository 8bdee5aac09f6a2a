package servowright.engine.thermal;

import servowright.engine.quantity.Require;

/**
 * Winding and housing as two heat stores.
 *
 * <p><b>Formula.</b> C_w dT_w/dt = P − (T_w − T_h)/R_wh, C_h dT_h/dt = (T_w − T_h)/R_wh − (T_h − T_a)/R_ha. The answer to a
 * constant loss is a sum of two exponentials; their time constants are the eigenvalues of the pair, not R_wh C_w and
 * R_ha C_h, which are typically off by 10 %. <b>Valid for</b> a constant loss within one call; a loss that grows with the
 * temperature of the copper is {@link TwoNodeCurrent}. <b>Source.</b> Linear differential equations, solved in closed form.
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

    /** Thermal resistance winding to ambient, R_wh + R_ha, K/W. */
    public double kelvinPerWatt() {
        return windingHousingKelvinPerWatt + housingAmbientKelvinPerWatt;
    }

    /** Settled rise under a constant loss. */
    public Rise settled(double watt) {
        double housing = Require.finite("loss", watt, "W") * housingAmbientKelvinPerWatt;
        return new Rise(housing + watt * windingHousingKelvinPerWatt, housing);
    }

    /** The shorter of the two time constants, s. */
    public double shortTimeConstantSecond() {
        return -1 / steady(0).fastRate();
    }

    /** The longer of the two time constants, s. */
    public double longTimeConstantSecond() {
        return -1 / steady(0).slowRate();
    }

    /**
     * Rise after a time under constant loss.
     *
     * @param start  rise at the beginning
     * @param watt   loss, constant over the time
     * @param second time, not negative
     */
    public Rise after(Rise start, double watt, double second) {
        return steady(watt).after(start, second);
    }

    /** What a time under a constant loss does to any rise: the same map for every start and every loss. */
    public Lapse lapse(double second) {
        return new Lapse(
                after(new Rise(1, 0), 0, second), after(new Rise(0, 1), 0, second), after(Rise.COLD, 1, second));
    }

    /**
     * A time that passes: what is left of a kelvin of the winding and of the housing, and what a watt adds.
     *
     * @param ofWinding left of one kelvin of the winding
     * @param ofHousing left of one kelvin of the housing
     * @param ofWatt    added by one watt
     */
    public record Lapse(Rise ofWinding, Rise ofHousing, Rise ofWatt) {
        /** Rise at the end. */
        public Rise of(Rise start, double watt) {
            double w = start.windingKelvin;
            double h = start.housingKelvin;
            return new Rise(
                    w * ofWinding.windingKelvin + h * ofHousing.windingKelvin + watt * ofWatt.windingKelvin,
                    w * ofWinding.housingKelvin + h * ofHousing.housingKelvin + watt * ofWatt.housingKelvin);
        }
    }

    private TwoNodeCurrent steady(double watt) {
        return new TwoNodeCurrent(this, watt, 0);
    }
}
