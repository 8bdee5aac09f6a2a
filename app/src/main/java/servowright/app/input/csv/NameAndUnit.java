package servowright.app.input.csv;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import servowright.engine.quantity.Unit;
import servowright.engine.quantity.Units;

/**
 * A column heading taken apart: {@code CH 1 (V)}, {@code a1 torque [N m]}, {@code C1 in V}, {@code U / V}, {@code time_s}.
 *
 * @param name may be empty
 * @param unit if the heading names one
 */
record NameAndUnit(String name, Optional<Unit> unit) {
    private static final Pattern BRACKETS = Pattern.compile("(.*?)\\s*[(\\[]\\s*([^()\\[\\]]+?)\\s*[)\\]]");
    private static final Pattern IN = Pattern.compile("(?:(.*)\\s)?in\\s(\\S+)");
    private static final Pattern OVER = Pattern.compile("(.*\\S)\\s+/\\s+(\\S.*)");
    private static final Pattern TIME_SUFFIX = Pattern.compile("((?i:t|time|timestamp))_([munp]?s)");

    /** Takes a heading apart; what names no known unit stays part of the name. */
    static NameAndUnit of(String heading) {
        String text = Cells.bare(heading);
        for (Pattern pattern : new Pattern[] {BRACKETS, IN, OVER, TIME_SUFFIX}) {
            Matcher m = pattern.matcher(text);
            if (m.matches()) {
                String name = m.group(1) == null ? "" : m.group(1).strip();
                Optional<Unit> unit = temperature(name, m.group(2)).or(() -> UnitWords.find(m.group(2)));
                if (unit.isPresent()) {
                    return new NameAndUnit(name, unit);
                }
            }
        }
        return new NameAndUnit(text, Optional.empty());
    }

    /** A bare C behind a temperature is not a charge. */
    private static Optional<Unit> temperature(String name, String unit) {
        boolean celsius = unit.equals("C") && name.toLowerCase(Locale.ROOT).contains("temp");
        return celsius ? Units.find("degC") : Optional.empty();
    }
}
