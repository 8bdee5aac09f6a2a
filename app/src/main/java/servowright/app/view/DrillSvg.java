package servowright.app.view;

import java.util.Locale;
import java.util.Optional;

/** A template to drill by, in millimetres on paper, with a bar to check it by. */
public final class DrillSvg {
    private static final double EDGE = 8;
    private static final double BELOW = 24;
    private static final double BAR = 50;
    private static final double MARK = 3;

    /** Between the margins of a sheet of A4. */
    private static final double PAGE = 180;

    /** What holds of every template. */
    public static final String CHECK =
            "Print at 100 %. Paper and printer stretch: measure the bar with a caliper before drilling.";

    private final DrillView drill;
    private final double width;
    private final double middleX;
    private final double middleY;
    private final Markup svg = new Markup();

    private DrillSvg(DrillView drill) {
        this.drill = drill;
        this.width = Math.max(2 * (drill.reach() + EDGE), BAR + 2 * EDGE);
        this.middleX = width / 2;
        this.middleY = drill.reach() + EDGE;
    }

    /** The template as one SVG element, 1:1 when printed at 100 %. */
    public static Markup of(DrillView drill) {
        return new DrillSvg(drill).draw();
    }

    /** What to say of a template that no sheet of A4 takes at 1:1. */
    public static Optional<String> tooLarge(DrillView drill) {
        double width = new DrillSvg(drill).width;
        return width <= PAGE
                ? Optional.empty()
                : Optional.of(
                        "The template is " + plain(Math.ceil(width)) + " mm wide and does not fit on A4, which takes "
                                + plain(PAGE)
                                + " mm: a printer that shrinks it to the page spoils it. Print it on larger paper,"
                                + " or measure the holes out.");
    }

    private Markup draw() {
        double height = 2 * middleY + BELOW;
        String style = "width:" + plain(width) + "mm;height:" + plain(height) + "mm;max-width:none";
        svg.open(
                "svg",
                "xmlns",
                "http://www.w3.org/2000/svg",
                "width",
                plain(width) + "mm",
                "height",
                plain(height) + "mm",
                "viewBox",
                "0 0 " + plain(width) + " " + plain(height),
                "style",
                style,
                "role",
                "img",
                "font-size",
                "3");
        svg.leaf("title", "drill template of " + drill.axis() + ", 1:1");
        cross(middleX, middleY, drill.reach() + MARK);
        drill.bore().ifPresent(d -> circle(middleX, middleY, d, ""));
        drill.magnet().ifPresent(d -> circle(middleX, middleY, d, "1 1"));
        for (DrillView.Hole hole : drill.holes()) {
            circle(middleX + hole.x(), middleY - hole.y(), drill.size(), "");
            cross(middleX + hole.x(), middleY - hole.y(), drill.size() / 2 + MARK);
        }
        bar(2 * middleY + 4);
        return svg.close();
    }

    /** Bar with a mark every ten millimetres, and the words that go with it. */
    private void bar(double y) {
        double left = (width - BAR) / 2;
        line(left, y, left + BAR, y);
        for (double x = 0; x <= BAR; x += 10) {
            line(left + x, y - 1.5, left + x, y + 1.5);
        }
        words(y + 6, plain(BAR) + " mm: measure it with a caliper before drilling");
        words(y + 10.5, drill.axis() + ", " + drill.holes().size() + " holes of " + plain(drill.size()) + " mm");
        words(y + 15, "seen from the board, print at 100 %" + (width > PAGE ? ", larger than A4" : ""));
    }

    private void words(double y, String text) {
        svg.leaf("text", text, "x", plain(middleX), "y", plain(y), "text-anchor", "middle", "fill", "currentColor");
    }

    private void cross(double x, double y, double reach) {
        line(x - reach, y, x + reach, y);
        line(x, y - reach, x, y + reach);
    }

    private void line(double x1, double y1, double x2, double y2) {
        svg.empty(
                "line",
                "x1",
                plain(x1),
                "y1",
                plain(y1),
                "x2",
                plain(x2),
                "y2",
                plain(y2),
                "stroke",
                "currentColor",
                "stroke-width",
                "0.15");
    }

    private void circle(double x, double y, double diameter, String dashes) {
        svg.empty(
                "circle",
                "cx",
                plain(x),
                "cy",
                plain(y),
                "r",
                plain(diameter / 2),
                "fill",
                "none",
                "stroke",
                "currentColor",
                "stroke-width",
                "0.2",
                "stroke-dasharray",
                dashes.isEmpty() ? "none" : dashes);
    }

    private static String plain(double value) {
        return String.format(Locale.ROOT, "%.3f", value).replaceAll("0+$", "").replaceAll("\\.$", "");
    }
}
