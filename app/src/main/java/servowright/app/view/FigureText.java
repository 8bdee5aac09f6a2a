package servowright.app.view;

import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.Unit;

/**
 * A figure as it is shown everywhere.
 *
 * @param number      its digits
 * @param uncertainty expanded 95 % uncertainty in the same places; empty where there is none
 * @param power       power of ten that both are counted in, {@code e-7}; nearly always empty
 * @param unit        as it is written; empty for a pure number
 * @param known       the figure itself
 */
public record FigureText(String number, String uncertainty, String power, Unit unit, Known known) {
    /** In the unit asked for where that is readable; empty for the usual one. */
    public static FigureText of(Known known, String unit) {
        return of(known, unit, known.origin() == Origin.DERIVED ? Digits.PROSE : Digits.FULL);
    }

    /** With the digits of a worksheet: a computed figure without uncertainty keeps six. */
    public static FigureText full(Known known, String unit) {
        return of(known, unit, Digits.FULL);
    }

    /** Something stated exactly. */
    static FigureText full(Quantity value) {
        return full(Known.exact(value, Origin.DECLARED, ""), "");
    }

    /** To nine digits: for telling it from another one. */
    static FigureText nine(Known known, Unit unit) {
        return of(Known.exact(known.value(), known.origin(), known.from()), unit, new Digits(9));
    }

    /** A figure without uncertainty. */
    public static FigureText of(Quantity value, String unit) {
        return of(Known.exact(value, Origin.DERIVED, ""), unit);
    }

    /** In exactly this unit. */
    static FigureText in(Known known, Unit unit) {
        return of(known, unit, known.origin() == Origin.DERIVED ? Digits.PROSE : Digits.FULL);
    }

    private static FigureText of(Known known, String asked, Digits digits) {
        return of(known, UsualUnit.of(known.si(), known.dimension(), asked), digits);
    }

    private static FigureText of(Known known, Unit unit, Digits digits) {
        double expanded = known.expandedUncertainty() / unit.factor();
        Digits.Rounded rounded = digits.round(unit.fromSi(known.si()), expanded);
        return new FigureText(rounded.number(), rounded.uncertainty(), rounded.power(), unit, known);
    }

    /** {@code 5.161 ± 0.027 mWb}. */
    public String text() {
        if (uncertainty.isEmpty()) {
            return valueText();
        }
        String both = number + " ± " + uncertainty;
        return withUnit(power.isEmpty() ? both : "(" + both + ")" + power);
    }

    /** Without its uncertainty: {@code 5.161 mWb}. */
    public String valueText() {
        return withUnit(number + power);
    }

    /** The uncertainty alone: {@code ± 0.027 mWb}; empty where there is none. */
    public String uncertaintyText() {
        return uncertainty.isEmpty() ? "" : "± " + withUnit(uncertainty + power);
    }

    /** The number counted in the unit, unrounded. */
    public double inUnit() {
        return unit.fromSi(known.si());
    }

    /** The expanded uncertainty counted in the unit, unrounded. */
    public double expandedInUnit() {
        return known.expandedUncertainty() / unit.factor();
    }

    private String withUnit(String digits) {
        String symbol = unit.symbol();
        return symbol.isEmpty() || symbol.equals("1") ? digits : digits + " " + symbol;
    }
}
