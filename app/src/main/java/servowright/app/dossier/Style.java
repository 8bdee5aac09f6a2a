package servowright.app.dossier;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The style sheet that every dossier carries within itself. */
final class Style {
    private Style() {}

    /** With the machine's name and page numbers at the foot of each printed page. */
    static String of(String machine) {
        String foot = "@page { size: A4; margin: 16mm 15mm 18mm;"
                + " @bottom-left { content: \"" + escaped(machine) + "\"; font: 8pt sans-serif; }"
                + " @bottom-right { content: counter(page) \" / \" counter(pages); font: 8pt sans-serif; } }\n";
        return foot + sheet("/servowright/app/view/verdicts.css") + sheet("dossier.css");
    }

    private static String sheet(String name) {
        try (InputStream css = Style.class.getResourceAsStream(name)) {
            if (css == null) {
                throw new IllegalStateException(name + " is not in the program");
            }
            return new String(css.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** As a string of CSS: everything but letters and digits by its number. */
    private static String escaped(String text) {
        StringBuilder css = new StringBuilder();
        text.codePoints()
                .forEach(c -> css.append(
                        c == ' ' || (c < 128 && Character.isLetterOrDigit(c))
                                ? Character.toString(c)
                                : "\\" + Integer.toHexString(Math.max(c, 0x20)) + " "));
        return css.toString();
    }
}
