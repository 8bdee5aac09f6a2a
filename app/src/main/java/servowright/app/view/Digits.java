package servowright.app.view;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * How many digits a number is shown with: by its expanded uncertainty where it has one, otherwise by what a reader can
 * use.
 *
 * @param figures significant digits of a number without uncertainty; digits before the point are always kept
 */
public record Digits(int figures) {
    /** For figures in sentences, tables and workings. */
    public static final Digits PROSE = new Digits(4);

    /** For what somebody wrote down or a worksheet computed: as exact as it is, without noise. */
    public static final Digits FULL = new Digits(6);

    /** An uncertainty smaller than this share of the value is not worth showing. */
    private static final double NEGLIGIBLE = 1e-6;

    /** From here on a power of ten is split off. */
    private static final double TOO_LARGE = 1e7;

    private static final double TOO_SMALL = 1e-4;

    /** A number and its uncertainty, in the same decimal places; the uncertainty is empty where there is none. */
    record Rounded(String number, String uncertainty, String power) {}

    Rounded round(double number, double expanded) {
        if (!Double.isFinite(number)) {
            return new Rounded(Double.isNaN(number) ? "no number" : number > 0 ? "infinite" : "-infinite", "", "");
        }
        boolean shown = Double.isFinite(expanded) && expanded > NEGLIGIBLE * Math.abs(number);
        double size = Math.max(Math.abs(number), shown ? expanded : 0);
        int power = size >= TOO_LARGE || (size > 0 && size < TOO_SMALL) ? exponent(size) : 0;
        BigDecimal scaled = exact(number).movePointLeft(power);
        String tail = power == 0 ? "" : "e" + power;
        if (!shown) {
            return new Rounded(plain(scaled), "", tail);
        }
        BigDecimal uncertainty = twoFigures(exact(expanded).movePointLeft(power));
        BigDecimal value = scaled.setScale(uncertainty.scale(), RoundingMode.HALF_UP);
        return new Rounded(text(value), text(uncertainty), tail);
    }

    /** A number without uncertainty: no trailing zeros, digits before the point kept. */
    private String plain(BigDecimal value) {
        if (value.signum() == 0) {
            return "0";
        }
        int places = Math.max(0, figures - 1 - exponent(value.abs().doubleValue()));
        BigDecimal rounded = value.setScale(places, RoundingMode.HALF_UP).stripTrailingZeros();
        return text(rounded);
    }

    private static BigDecimal twoFigures(BigDecimal uncertainty) {
        int places = 1 - exponent(uncertainty.doubleValue());
        BigDecimal rounded = uncertainty.setScale(places, RoundingMode.HALF_UP);
        // 0.0996 becomes 0.100 with two places too many: 0.10.
        return exponent(rounded.doubleValue()) > exponent(uncertainty.doubleValue())
                ? rounded.setScale(places - 1, RoundingMode.HALF_UP)
                : rounded;
    }

    private static String text(BigDecimal value) {
        return value.signum() == 0 && value.scale() <= 0 ? "0" : value.toPlainString();
    }

    /** The shortest decimal that stands for the double: 0.3, not 0.299999999999999988. */
    private static BigDecimal exact(double number) {
        return new BigDecimal(Double.toString(number));
    }

    private static int exponent(double size) {
        return size == 0 ? 0 : exact(size).precision() - exact(size).scale() - 1;
    }
}
