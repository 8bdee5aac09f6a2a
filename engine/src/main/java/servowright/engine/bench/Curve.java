package servowright.engine.bench;

/**
 * A line of a plot: what was measured, what was fitted, or what is left over.
 *
 * @param name  as its legend says
 * @param x     abscissa, SI
 * @param y     ordinate, SI; as long as {@code x}
 * @param xUnit unit to show the abscissa in
 * @param yUnit unit to show the ordinate in
 * @param role  what the line is
 */
public record Curve(String name, double[] x, double[] y, String xUnit, String yUnit, Role role) {
    public enum Role {
        MEASURED,
        FITTED,
        RESIDUAL
    }

    public Curve {
        if (x.length != y.length) {
            throw new IllegalArgumentException("a curve needs as many x as y, was " + x.length + " and " + y.length);
        }
    }
}
