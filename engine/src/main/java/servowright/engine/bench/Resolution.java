package servowright.engine.bench;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import servowright.engine.known.Known;
import servowright.engine.known.Source;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Reading;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.quantity.Stated;

/**
 * What the last digit of a reading leaves open: half a digit to either side, rectangular (JCGM 100:2008, F.2.2.1). It is
 * each reading's own, unlike the error of the instrument.
 */
final class Resolution {
    private static final Pattern NUMBER =
            Pattern.compile("^\\s*[+\\-\u2212]?(\\d*)(?:[.,](\\d+))?(?:[eE]([+-]?\\d+))?");

    private Resolution() {}

    /** The reading with the part that its last digit leaves open. */
    static Known of(Reading reading, ReadingFigure figure, Known value) {
        return reading.figures()
                .get(figure)
                .map(d -> value.withPart(
                        Source.of(d.place().text() + " " + d.place().path() + " " + figure + " last digit"),
                        halfDigit(d) / Math.sqrt(3)))
                .orElse(value);
    }

    /** Half of the last digit written, SI. */
    static double halfDigit(Declared declared) {
        Stated stated = declared.stated();
        Matcher m = NUMBER.matcher(stated.text());
        if (!m.find()) {
            return 0;
        }
        int decimals = m.group(2) == null ? 0 : m.group(2).length();
        int exponent = m.group(3) == null ? 0 : Integer.parseInt(m.group(3));
        return 0.5 * Math.pow(10, exponent - decimals) * stated.unit().factor();
    }
}
