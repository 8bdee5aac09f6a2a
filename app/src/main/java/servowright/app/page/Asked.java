package servowright.app.page;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import servowright.app.view.AxisView;
import servowright.app.view.View;

/**
 * What a request wants to see: an assessment, and perhaps one axis of it.
 *
 * @param view of the machine
 * @param axis that is looked at; empty for all
 */
public record Asked(View view, Optional<AxisView> axis) {
    /** Whether something about {@code subject} belongs to what is looked at. */
    public boolean concerns(String subject) {
        return axis.map(a -> a.concerns(subject)).orElse(true);
    }

    /** A path with one query parameter. */
    public static String address(String path, String name, String value) {
        return path + "?" + name + "=" + encoded(value);
    }

    public static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
    }

    /** An id within a page, made from any name. */
    public static String id(String name) {
        return name.toLowerCase(java.util.Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "-");
    }
}
