package servowright.engine.quantity;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Limits of an instrument: {@code ± 0.1 %}, {@code ± 50 ppm}, {@code ± 2 mV}, or both as {@code ± 0.1 % ± 2 mV}.
 *
 * @param relative share of the reading
 * @param absolute fixed part; its dimension is a pure number when only a share was given
 */
public record Accuracy(double relative, Quantity absolute) {
    private static final Pattern TERM =
            Pattern.compile("(?:±|\\+/-|\\+)?\\s*(\\d+(?:[.,]\\d+)?(?:[eE][+-]?\\d+)?)\\s*([^±\\d+]*)");

    /** An instrument that is taken as exact. */
    public static final Accuracy EXACT = new Accuracy(0, Quantity.number(0));

    public Accuracy {
        Require.notNegative("relative accuracy", relative, "");
        Require.notNegative("absolute accuracy", absolute.si(), "");
    }

    /** Half-width of the limits around {@code reading}, SI. */
    public double halfWidth(double reading) {
        return relative * Math.abs(reading) + absolute.si();
    }

    /** Standard uncertainty of {@code reading}, SI: the limits as a rectangular distribution, JCGM 100:2008, 4.3.7. */
    public double standardUncertainty(double reading) {
        return halfWidth(reading) / Math.sqrt(3);
    }

    /** Reads the text, if it is one. */
    public static Optional<Accuracy> parse(String text) {
        Matcher m = TERM.matcher(text.strip().replace("(", "").replace(")", ""));
        double relative = 0;
        Quantity absolute = Quantity.number(0);
        int at = 0;
        boolean any = false;
        while (m.find() && m.start() == at && m.end() > m.start()) {
            double number = QuantityText.number(m.group(1));
            String unit = m.group(2).strip();
            at = m.end();
            any = true;
            Optional<Unit> known = Units.find(unit).filter(u -> !unit.isEmpty() && Double.isFinite(u.toSi(number)));
            if (known.isEmpty()) {
                return Optional.empty();
            }
            if (known.get().dimension().equals(Dimension.NUMBER)) {
                relative += known.get().toSi(number);
                continue;
            }
            if (absolute.si() > 0) {
                return Optional.empty();
            }
            absolute = known.get().difference(number);
        }
        boolean all = at == m.regionEnd() && Double.isFinite(relative);
        return any && all ? Optional.of(new Accuracy(relative, absolute)) : Optional.empty();
    }
}
