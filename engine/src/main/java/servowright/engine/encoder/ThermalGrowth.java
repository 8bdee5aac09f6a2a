package servowright.engine.encoder;

import servowright.engine.quantity.Require;

/** How heat moves the parts of a mount. */
public final class ThermalGrowth {
    private ThermalGrowth() {}

    /**
     * Expansion of materials of a mount, 1e-6 per kelvin, near room temperature. Metals: W. D. Callister, Fundamentals of
     * Materials Science and Engineering, table B.6 (seen in a trade copy); plastics: trade tables, which differ by a factor
     * of two; board across its plane, recalled.
     */
    public enum Material {
        ALUMINIUM(23.6),
        STEEL(11.7),
        STAINLESS_STEEL(17.2),
        BRASS(19.9),
        NYLON(144),
        ACETAL(85),
        BOARD_ACROSS(60);

        private final double micro;

        Material(double micro) {
            this.micro = micro;
        }

        public double perKelvin() {
            return 1e-6 * micro;
        }
    }

    /**
     * Change of the gap, metres: L (α_housing − α_shaft) ΔT, above 0 when it widens.
     *
     * <p><b>Validity.</b> Housing and shaft over the same length L and equally warm.
     */
    public static double gapMetre(double lengthMetre, Material housing, Material shaft, double kelvin) {
        Require.notNegative("length", lengthMetre, "m");
        Require.finite("change of temperature", kelvin, "K");
        return lengthMetre * (housing.perKelvin() - shaft.perKelvin()) * kelvin;
    }

    /**
     * Play of a ball bearing along its axis without preload, metres: √(4 A G − G²) with A = (f_i + f_o − 1) D.
     *
     * <p><b>Source.</b> T. A. Harris, Rolling Bearing Analysis (recalled).
     *
     * @param radialClearanceMetre G, diametral clearance as the bearing tables give it
     * @param ballMetre D
     * @param grooveSum f_i + f_o, groove radii over ball diameter, about 1.05
     */
    public static double bearingEndPlayMetre(double radialClearanceMetre, double ballMetre, double grooveSum) {
        Require.within("sum of the groove factors", 1.0001, 2, grooveSum, "");
        double a = (grooveSum - 1) * Require.positive("ball diameter", ballMetre, "m");
        Require.within("radial clearance", 0, 4 * a, radialClearanceMetre, "m");
        return Math.sqrt(4 * a * radialClearanceMetre - radialClearanceMetre * radialClearanceMetre);
    }
}
