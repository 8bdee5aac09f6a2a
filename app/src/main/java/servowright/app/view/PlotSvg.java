package servowright.app.view;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import servowright.engine.bench.Curve;

/**
 * Draws a plot as SVG. What was measured is a thin line, or dots where there are few; what was fitted is a bolder line,
 * dashed from the second one on; what is left over has a strip of its own below. Lines differ in more than colour, so
 * that print and every eye can tell them apart.
 */
public final class PlotSvg {
    private static final int WIDTH = 420;
    private static final int LEFT = 52;
    private static final int RIGHT = WIDTH - 8;
    private static final int HEIGHT = 190;
    private static final int STRIP = 62;
    private static final int GAP = 22;
    private static final int LEGEND_ROW = 17;
    private static final int FEW = 60;
    private static final String[] DASHES = {"", "7 3", "2 3", "9 3 2 3", "4 2", "12 4"};

    private final Plot plot;
    private final Markup svg = new Markup();
    private final Ticks x;
    private final int top;

    private PlotSvg(Plot plot) {
        this.plot = plot;
        this.x = range(plot, true);
        this.top = 26 + LEGEND_ROW * ((explained().size() + 1) / 2);
    }

    /** Lines of the legend: a single one in the strip is named there. */
    private List<Plot.Series> explained() {
        List<Plot.Series> all = new ArrayList<>(plot.series());
        if (plot.strip().size() > 1 || all.isEmpty()) {
            all.addAll(plot.strip());
        }
        return all;
    }

    /** The plot as one SVG element. */
    public static Markup of(Plot plot) {
        return new PlotSvg(plot).draw();
    }

    private Markup draw() {
        boolean strip = !plot.strip().isEmpty();
        int bottom = top + HEIGHT;
        int height = bottom + (strip ? GAP + STRIP : 0) + 38;
        svg.open(
                "svg",
                "xmlns",
                "http://www.w3.org/2000/svg",
                "viewBox",
                "0 0 " + WIDTH + " " + height,
                "class",
                "plot",
                "role",
                "img",
                "font-size",
                "12");
        svg.leaf("title", plot.title()).leaf("desc", plot.description());
        legend();
        Ticks y = range(plot, false);
        panel(top, bottom, y, 5, !strip);
        for (int i = 0; i < plot.series().size(); i++) {
            line(plot.series().get(i), i, top, bottom, y);
        }
        if (strip) {
            int from = bottom + GAP;
            Ticks rest = stripRange();
            panel(from, from + STRIP, rest, 2, true);
            for (int i = 0; i < plot.strip().size(); i++) {
                line(plot.strip().get(i), i, from, from + STRIP, rest);
            }
            if (!explained().contains(plot.strip().get(0))) {
                text(plot.strip().get(0).name(), LEFT + 4, from - 4, "start", "leg");
            }
        }
        text(plot.y(), LEFT - 46, top - 9, "start", "lab");
        text(plot.x(), RIGHT, height - 4, "end", "lab");
        return svg.close();
    }

    private void legend() {
        List<Plot.Series> all = explained();
        for (int i = 0; i < all.size(); i++) {
            int column = i % 2 == 0 ? LEFT : LEFT + (RIGHT - LEFT) / 2;
            int row = 11 + LEGEND_ROW * (i / 2);
            int number = i < plot.series().size() ? i : i - plot.series().size();
            Plot.Series series = all.get(i);
            if (dotted(series)) {
                dots(List.of(new Thinning.Point(column + 11, row - 4)), number);
            } else {
                path(
                        List.of(new Thinning.Point(column, row - 4), new Thinning.Point(column + 22, row - 4)),
                        series,
                        number);
            }
            text(series.name(), column + 28, row, "start", "leg");
        }
    }

    private void panel(int from, int to, Ticks y, int wanted, boolean labelled) {
        for (Ticks.Tick tick : Ticks.over(y.from(), y.to(), wanted).labels()) {
            double at = scale(tick.at(), y, to, from);
            rule(LEFT, at, RIGHT, at, "grid");
            text(tick.label(), LEFT - 5, at + 4, "end", "num");
        }
        for (Ticks.Tick tick : x.labels()) {
            double at = scale(tick.at(), x, LEFT, RIGHT);
            rule(at, to, at, to + 4, "axis");
            if (labelled) {
                text(tick.label(), at, to + 17, "middle", "num");
            }
        }
        rule(LEFT, to, RIGHT, to, "axis");
        rule(LEFT, from, LEFT, to, "axis");
    }

    private void line(Plot.Series series, int number, int from, int to, Ticks y) {
        List<Thinning.Point> points = new ArrayList<>();
        for (int i = 0; i < series.x().length; i++) {
            points.add(new Thinning.Point(scale(series.x()[i], x, LEFT, RIGHT), scale(series.y()[i], y, to, from)));
        }
        List<Thinning.Point> kept = Thinning.of(points);
        if (dotted(series)) {
            dots(kept, number);
        } else if (!kept.isEmpty()) {
            path(kept, series, number);
        }
    }

    private static boolean dotted(Plot.Series series) {
        return series.role() != Curve.Role.FITTED && series.x().length <= FEW;
    }

    private void path(List<Thinning.Point> points, Plot.Series series, int number) {
        StringBuilder d = new StringBuilder();
        for (Thinning.Point p : points) {
            d.append(d.isEmpty() ? 'M' : 'L').append(number(p.x())).append(' ').append(number(p.y()));
        }
        boolean fit = series.role() == Curve.Role.FITTED;
        String name = switch (series.role()) {
            case MEASURED -> "measured";
            case FITTED -> "fitted";
            case RESIDUAL -> "residual";
        };
        svg.empty(
                "path",
                "d",
                d.toString(),
                "class",
                name,
                "fill",
                "none",
                "stroke",
                "currentColor",
                "stroke-width",
                fit ? "1.8" : "0.9",
                "stroke-dasharray",
                fit ? dash(number + 1) : dash(number),
                "stroke-linejoin",
                "round");
    }

    private static String dash(int number) {
        String dash = DASHES[number % DASHES.length];
        return dash.isEmpty() ? "none" : dash;
    }

    private void dots(List<Thinning.Point> points, int number) {
        for (Thinning.Point p : points) {
            if (number % 2 == 0) {
                svg.empty(
                        "circle",
                        "cx",
                        number(p.x()),
                        "cy",
                        number(p.y()),
                        "r",
                        "2.4",
                        "class",
                        "dot",
                        "fill",
                        "currentColor");
            } else {
                svg.empty(
                        "rect",
                        "x",
                        number(p.x() - 2.2),
                        "y",
                        number(p.y() - 2.2),
                        "width",
                        "4.4",
                        "height",
                        "4.4",
                        "class",
                        "dot",
                        "fill",
                        "none",
                        "stroke",
                        "currentColor");
            }
        }
    }

    private void rule(double x1, double y1, double x2, double y2, String name) {
        rule(svg, x1, y1, x2, y2, name.equals("grid") ? "0.3" : "0.8", "class", name);
    }

    private void text(String text, double x, double y, String anchor, String name) {
        svg.leaf(
                "text",
                text,
                "x",
                number(x),
                "y",
                number(y),
                "text-anchor",
                anchor,
                "class",
                name,
                "fill",
                "currentColor");
    }

    private static Ticks range(Plot plot, boolean abscissa) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Plot.Series series : plot.series().isEmpty() ? plot.strip() : plot.series()) {
            for (double v : abscissa ? series.x() : series.y()) {
                if (Double.isFinite(v)) {
                    low = Math.min(low, v);
                    high = Math.max(high, v);
                }
            }
        }
        return abscissa ? Ticks.over(low, high, 6) : Ticks.rounded(low, high, 5);
    }

    /** Symmetric about zero: what is left over should be. */
    private Ticks stripRange() {
        double most = 0;
        for (Plot.Series series : plot.strip()) {
            for (double v : series.y()) {
                most = Double.isFinite(v) ? Math.max(most, Math.abs(v)) : most;
            }
        }
        return Ticks.rounded(-most, most, 2);
    }

    private static double scale(double v, Ticks axis, double from, double to) {
        return from + (v - axis.from()) / (axis.to() - axis.from()) * (to - from);
    }

    /** A straight line in the colour of the text, with further attributes if there are any. */
    static void rule(Markup svg, double x1, double y1, double x2, double y2, String width, String... more) {
        List<String> attributes = new ArrayList<>(List.of(
                "x1", number(x1), "y1", number(y1), "x2", number(x2), "y2", number(y2), "stroke", "currentColor"));
        attributes.addAll(List.of("stroke-width", width));
        attributes.addAll(List.of(more));
        svg.empty("line", attributes.toArray(String[]::new));
    }

    static String number(double v) {
        return BigDecimal.valueOf(v)
                .setScale(1, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }
}
