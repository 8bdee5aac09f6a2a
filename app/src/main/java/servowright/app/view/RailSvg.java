package servowright.app.view;

import servowright.app.view.FindingView.MarginView;

/**
 * Draws a judged figure on a rail: one horizontal line, the allowed span hatched, the figure with the bar of its
 * uncertainty, and a tick at the limit.
 */
public final class RailSvg {
    private static final int WIDTH = 420;
    private static final int LEFT = 6;
    private static final int RIGHT = WIDTH - 6;
    private static final int RAIL = 34;
    private static final int HATCH = 7;

    private final MarginView margin;
    private final Markup svg = new Markup();
    private final double from;
    private final double to;

    private RailSvg(MarginView margin) {
        this.margin = margin;
        double value = margin.value().inUnit();
        double limit = margin.limit().inUnit();
        double low = Math.min(value - spread(margin.value()), limit - spread(margin.limit()));
        double high = Math.max(value + spread(margin.value()), limit + spread(margin.limit()));
        // Zero belongs to the picture where the figures are not far from it: lengths on the rail then compare.
        double start = low > 0 && low < 0.6 * high ? 0 : low;
        double pad = Math.max(high - start, 1e-9 * Math.max(1e-3, Math.abs(high))) * 0.12;
        this.from = start == 0 ? 0 : start - pad;
        this.to = high + pad;
    }

    /** The rail as one SVG element. */
    public static Markup of(MarginView margin) {
        return new RailSvg(margin).draw();
    }

    private static double spread(FigureText figure) {
        return figure.uncertainty().isEmpty() ? 0 : figure.expandedInUnit();
    }

    private Markup draw() {
        String words = margin.value().text() + " against " + margin.limitText();
        svg.open(
                "svg",
                "xmlns",
                "http://www.w3.org/2000/svg",
                "viewBox",
                "0 0 " + WIDTH + " 66",
                "class",
                "rail",
                "role",
                "img",
                "font-size",
                "12");
        svg.leaf("title", words);
        double limit = at(margin.limit().inUnit());
        allowed(margin.atLeast() ? limit : LEFT, margin.atLeast() ? RIGHT : limit);
        PlotSvg.rule(svg, LEFT, RAIL, RIGHT, RAIL, "1");
        PlotSvg.rule(svg, limit, RAIL - 13, limit, RAIL + 9, "2");
        label(margin.limitText(), limit, RAIL - 19);
        bar(margin.limit(), RAIL - 10, "1");
        bar(margin.value(), RAIL, "4");
        double value = at(margin.value().inUnit());
        String v = PlotSvg.number(value);
        svg.empty(
                "path",
                "class",
                "value",
                "fill",
                "currentColor",
                "stroke",
                "none",
                "d",
                "M" + v + " " + (RAIL - 7) + "l6 7l-6 7l-6 -7z");
        label(margin.value().text(), value, RAIL + 26);
        return svg.close();
    }

    private void allowed(double left, double right) {
        StringBuilder hatch = new StringBuilder();
        for (double x = left + 3; x + HATCH <= right; x += 6) {
            hatch.append('M').append(PlotSvg.number(x)).append(' ').append(RAIL + HATCH);
            hatch.append('l').append(HATCH).append(" -").append(2 * HATCH);
        }
        if (!hatch.isEmpty()) {
            svg.empty(
                    "path",
                    "class",
                    "allowed",
                    "fill",
                    "none",
                    "stroke",
                    "currentColor",
                    "stroke-width",
                    "0.8",
                    "d",
                    hatch.toString());
        }
    }

    private void bar(FigureText figure, double y, String width) {
        double half = spread(figure);
        if (half > 0) {
            PlotSvg.rule(svg, at(figure.inUnit() - half), y, at(figure.inUnit() + half), y, width);
        }
    }

    private void label(String text, double x, double y) {
        boolean left = x < LEFT + WIDTH / 3.0;
        boolean right = x > RIGHT - WIDTH / 3.0;
        double at = left ? Math.max(LEFT, x - 4) : right ? Math.min(RIGHT, x + 4) : x;
        svg.leaf(
                "text",
                text,
                "x",
                PlotSvg.number(at),
                "y",
                PlotSvg.number(y),
                "text-anchor",
                left ? "start" : right ? "end" : "middle",
                "fill",
                "currentColor");
    }

    private double at(double number) {
        double clipped = Math.max(from, Math.min(to, number));
        return LEFT + (clipped - from) / (to - from) * (RIGHT - LEFT);
    }
}
