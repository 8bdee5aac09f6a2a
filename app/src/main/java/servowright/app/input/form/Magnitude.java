package servowright.app.input.form;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.Unit;
import servowright.engine.quantity.Units;

/** Writes the limits of a key as a person would: {@code 0.1 mm}, {@code 10 kohm}. */
final class Magnitude {
    private static final List<String> PREFIXES = List.of("p", "n", "u", "m", "k", "M", "G");

    /** Digits that are shown of a limit. */
    private static final MathContext SHOWN = new MathContext(4, RoundingMode.HALF_EVEN);

    private Magnitude() {}

    /** The quantity in the relative of {@code like} that needs the fewest digits. */
    static String text(Quantity q, Unit like) {
        Unit best = like;
        for (Unit unit : relatives(like)) {
            if (strangeness(q.in(unit)) < strangeness(q.in(best))) {
                best = unit;
            }
        }
        return (digits(q.in(best)) + " " + best.symbol()).strip();
    }

    /** The same unit with every prefix it takes, itself first. */
    static List<Unit> relatives(Unit unit) {
        String base = base(unit);
        List<Unit> all = new ArrayList<>(List.of(unit));
        find(base, unit).ifPresent(all::add);
        for (String prefix : PREFIXES) {
            find(prefix + base, unit).ifPresent(all::add);
        }
        return all;
    }

    private static String base(Unit unit) {
        String symbol = unit.symbol();
        if (symbol.length() > 1 && PREFIXES.contains(symbol.substring(0, 1))) {
            String rest = symbol.substring(1);
            if (find(rest, unit).isPresent()) {
                return rest;
            }
        }
        return symbol;
    }

    private static Optional<Unit> find(String symbol, Unit like) {
        return Units.find(symbol).filter(u -> u.dimension().equals(like.dimension()) && u.offset() == like.offset());
    }

    private static double strangeness(double number) {
        double size = new BigDecimal(Math.abs(number)).round(SHOWN).doubleValue();
        if (size == 0 || (size >= 0.1 && size < 1000)) {
            return 0;
        }
        return Math.abs(Math.log10(size));
    }

    private static String digits(double number) {
        BigDecimal rounded = new BigDecimal(number).round(SHOWN);
        if (rounded.signum() == 0) {
            return "0";
        }
        BigDecimal shortest = rounded.stripTrailingZeros();
        boolean plain = Math.abs(number) < 1e6 && Math.abs(number) >= 1e-4;
        return plain
                ? shortest.toPlainString()
                : shortest.toString().replace("E+", "e").replace("E", "e");
    }
}
