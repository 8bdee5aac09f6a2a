package servowright.engine.quantity;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import servowright.engine.quantity.ParsedQuantity.Malformed;
import servowright.engine.quantity.Stated.Spread;

/**
 * Reads the one grammar for quantities: a number, a unit, an optional tolerance, and in square brackets how it was
 * stated.
 *
 * <pre>
 * 24 V          0.24 ohm ± 2 %          1.4 mm +0.1/-0.2 mm          1.0 mm (+0.1/-0.2)
 * 19.5..29.2 V  42 rpm/V [line peak, label]      0,9 mNm      AWG 20
 * </pre>
 *
 * A decimal comma is taken. {@code 1,200} could mean two things and is refused with the question.
 */
public final class QuantityText {
    private static final String NUMBER = "[+-]?(?:\\d+(?:[.,]\\d+)?|[.,]\\d+)(?:[eE][+-]?\\d+)?";
    private static final Pattern BRACKETS = Pattern.compile("^(.*?)\\s*\\[([^\\[\\]]*)\\]$");
    private static final Pattern RANGE =
            Pattern.compile("^(" + NUMBER + ")\\s*([^\\d+.,\\-±]*?)\\s*\\.\\.\\s*(" + NUMBER + ")\\s*(.*)$");
    private static final Pattern PLUS_MINUS =
            Pattern.compile("^(" + NUMBER + ")\\s*((?:[^±(+]|\\([^±()+]*\\))*?)\\s*±\\s*(" + NUMBER + ")\\s*(.*)$");
    private static final Pattern TWO_SIDED = Pattern.compile("^(" + NUMBER + ")\\s*([^±(+]*?)\\s*\\(?\\s*\\+\\s*("
            + NUMBER + ")\\s*/\\s*-\\s*(" + NUMBER + ")\\s*\\)?\\s*([^)]*)\\)?$");
    private static final Pattern PLAIN = Pattern.compile("^(" + NUMBER + ")\\s*(.*)$");
    private static final Pattern GAUGE =
            Pattern.compile("^AWG\\s*(\\d{1,2}|0{1,4}|[1-4]/0)$", Pattern.CASE_INSENSITIVE);
    private static final Pattern THOUSANDS = Pattern.compile("[+-]?[1-9]\\d{0,2},\\d{3}");

    private QuantityText() {}

    /** Reads {@code text}; never throws. */
    public static ParsedQuantity parse(String text) {
        String body = normal(text);
        List<String> qualifiers = new ArrayList<>();
        Matcher b = BRACKETS.matcher(body);
        if (b.matches()) {
            body = b.group(1).strip();
            for (String q : b.group(2).split(",")) {
                if (!q.isBlank()) {
                    qualifiers.add(q.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " "));
                }
            }
        }
        if (body.length() > 200) {
            return new Malformed(text.substring(0, 40) + "...", "too long for a quantity", "write a number and a unit");
        }
        return new Body(text.strip(), body, qualifiers).read();
    }

    /** A number and unit without tolerance or brackets, if {@code text} is one. */
    static Optional<Stated> plain(String text) {
        Matcher m = PLAIN.matcher(normal(text));
        if (!m.matches() || m.group(2).isBlank()) {
            return Optional.empty();
        }
        return Units.find(qualifierUnit(m.group(2))).map(u -> {
            Quantity q = u.quantity(number(m.group(1)));
            return new Stated(text, Spread.VALUE, q, q, q, u, List.of());
        });
    }

    /** Qualifiers are lower case; the one unit that may stand there is a temperature. */
    private static String qualifierUnit(String unit) {
        return switch (unit.strip()) {
            case "degc", "°c", "c" -> "degC";
            case "k" -> "K";
            default -> unit;
        };
    }

    private static String normal(String text) {
        return text.strip()
                .replace('\u2212', '-')
                .replace('\u2013', '-')
                .replace('\u00a0', ' ')
                .replace('\u202f', ' ')
                .replace("+/-", "±")
                .replace("\u2026", "..");
    }

    static double number(String text) {
        return Double.parseDouble(text.replace(',', '.'));
    }

    /** One body of a quantity while it is read. */
    private record Body(String text, String body, List<String> qualifiers) {
        ParsedQuantity read() {
            Matcher gauge = GAUGE.matcher(body);
            if (gauge.matches()) {
                return value(WireGauge.crossSection(WireGauge.number(gauge.group(1))), Units.named("mm2"));
            }
            if (THOUSANDS.matcher(body.split("[^\\d.,+-]", 2)[0]).matches()) {
                return bad("a comma before three digits can mean a thousand or a decimal", "write 1200 or 1.200");
            }
            Matcher m = RANGE.matcher(body);
            if (m.matches()) {
                return range(m);
            }
            m = PLUS_MINUS.matcher(body);
            if (m.matches()) {
                return tolerance(m.group(1), m.group(2), m.group(3), m.group(3), m.group(4));
            }
            m = TWO_SIDED.matcher(body);
            if (m.matches()) {
                return tolerance(m.group(1), m.group(2), m.group(3), m.group(4), m.group(5));
            }
            m = PLAIN.matcher(body);
            if (m.matches()) {
                String unit = m.group(2);
                String number = m.group(1);
                return Units.find(unit)
                        .map(u -> finite(u.toSi(number(number))) ? value(u.toSi(number(number)), u) : tooLarge())
                        .orElseGet(() -> badUnit(unit));
            }
            return bad("no number at its start", "write a number and a unit, for example 24 V");
        }

        private ParsedQuantity value(double si, Unit unit) {
            Quantity q = new Quantity(si, unit.dimension());
            return new Stated(text, Spread.VALUE, q, q, q, unit, qualifiers);
        }

        private ParsedQuantity range(Matcher m) {
            String unitText = m.group(4).isBlank() ? m.group(2) : m.group(4);
            Optional<Unit> unit = Units.find(unitText);
            Optional<Unit> first = m.group(2).isBlank() ? unit : Units.find(m.group(2));
            if (unit.isEmpty() || first.isEmpty()) {
                return badUnit(unit.isEmpty() ? unitText : m.group(2));
            }
            double low = first.get().toSi(number(m.group(1)));
            double high = unit.get().toSi(number(m.group(3)));
            if (!finite(low) || !finite(high) || !finite(low + high)) {
                return tooLarge();
            }
            if (!first.get().dimension().equals(unit.get().dimension()) || low > high) {
                return bad("a range runs from the lower to the upper value in one unit", "write it like 19.5..29.2 V");
            }
            Dimension d = unit.get().dimension();
            return new Stated(
                    text,
                    Spread.RANGE,
                    new Quantity((low + high) / 2, d),
                    new Quantity(low, d),
                    new Quantity(high, d),
                    unit.get(),
                    qualifiers);
        }

        private ParsedQuantity tolerance(String n, String unitText, String plus, String minus, String toleranceUnit) {
            boolean relative =
                    toleranceUnit.strip().equals("%") && !unitText.strip().equals("%");
            String own = unitText.isBlank() && !relative ? toleranceUnit : unitText;
            Optional<Unit> unit = Units.find(own);
            Optional<Unit> spread = toleranceUnit.isBlank() ? unit : Units.find(toleranceUnit);
            if (unit.isEmpty() || spread.isEmpty()) {
                return badUnit(unit.isEmpty() ? own : toleranceUnit);
            }
            double si = unit.get().toSi(number(n));
            double scale = relative ? Math.abs(si) * 0.01 : spread.get().factor();
            double up = Math.abs(number(plus)) * scale;
            double down = Math.abs(number(minus)) * scale;
            if (!finite(si + up) || !finite(si - down)) {
                return tooLarge();
            }
            Dimension d = unit.get().dimension();
            if (!relative && !spread.get().dimension().equals(d)) {
                return bad("the tolerance is in another unit than the value", "write it like 0.24 ohm ± 2 %");
            }
            return new Stated(
                    text,
                    Spread.TOLERANCE,
                    new Quantity(si, d),
                    new Quantity(si - down, d),
                    new Quantity(si + up, d),
                    unit.get(),
                    qualifiers);
        }

        private ParsedQuantity badUnit(String unit) {
            String remedy = Units.nearest(unit)
                    .map(n -> "did you mean " + n + "?")
                    .orElse("write a unit like V, rpm/V, mN m, kg cm2");
            return bad("the unit \"" + unit.strip() + "\" is not known", remedy);
        }

        private ParsedQuantity tooLarge() {
            return bad("the number is too large to be held", "check the exponent");
        }

        private Malformed bad(String reason, String remedy) {
            return new Malformed(text, reason, remedy);
        }

        private static boolean finite(double v) {
            return Double.isFinite(v);
        }
    }
}
