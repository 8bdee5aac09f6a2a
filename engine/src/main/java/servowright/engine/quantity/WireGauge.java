package servowright.engine.quantity;

/**
 * American wire gauge as a unit of cross-section.
 *
 * <p>d = 0.127 mm x 92^((36 - n)/39); 0000 is n = -3. <b>Source:</b> ASTM B258, defining ratio 92^(1/39) and No. 36 =
 * 0.0050 in.
 */
final class WireGauge {
    private WireGauge() {}

    /** The gauge number of its spelling: {@code 20}, {@code 00}, {@code 2/0}. */
    static int number(String text) {
        if (text.endsWith("/0")) {
            return 1 - Integer.parseInt(text.substring(0, 1));
        }
        return text.matches("0+") ? 1 - text.length() : Integer.parseInt(text);
    }

    /** Cross-section of the solid wire, m2. */
    static double crossSection(int gauge) {
        double diameter = 0.127e-3 * Math.pow(92, (36 - gauge) / 39.0);
        return Math.PI / 4 * diameter * diameter;
    }
}
