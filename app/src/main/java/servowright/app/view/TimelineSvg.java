package servowright.app.view;

/** Draws the frames of a window over time, a row for each identifier. */
public final class TimelineSvg {
    private static final int WIDTH = 860;
    private static final int LEFT = 84;
    private static final int RIGHT = WIDTH - 10;
    private static final int ROW = 14;
    private static final int TOP = 6;

    private final TimelineView timeline;
    private final Markup svg = new Markup();

    private TimelineSvg(TimelineView timeline) {
        this.timeline = timeline;
    }

    /** The timeline as one SVG element. */
    public static Markup of(TimelineView timeline) {
        return new TimelineSvg(timeline).draw();
    }

    private Markup draw() {
        int bottom = TOP + ROW * timeline.rows().size();
        svg.open(
                "svg",
                "xmlns",
                "http://www.w3.org/2000/svg",
                "viewBox",
                "0 0 " + WIDTH + " " + (bottom + 36),
                "class",
                "plot timeline",
                "role",
                "img",
                "font-size",
                "11");
        svg.leaf("title", "frames over time").leaf("desc", timeline.description());
        for (Ticks.Tick tick : Ticks.over(0, timeline.ms(), 10).labels()) {
            PlotSvg.rule(svg, at(tick.at()), TOP, at(tick.at()), bottom + 4, "0.3");
            text(tick.label(), at(tick.at()), bottom + 16, "middle");
        }
        text("ms", RIGHT, bottom + 31, "end");
        for (int k = 0; k < timeline.rows().size(); k++) {
            row(timeline.rows().get(k), TOP + ROW * k);
        }
        PlotSvg.rule(svg, LEFT, bottom, RIGHT, bottom, "0.8");
        return svg.close();
    }

    private void row(TimelineView.Row row, int top) {
        text(row.label(), LEFT - 6, top + 11, "end");
        StringBuilder bars = new StringBuilder();
        for (TimelineView.Span span : row.spans()) {
            double width = Math.max(0.6, at(span.to()) - at(span.from()));
            bars.append('M').append(PlotSvg.number(at(span.from()))).append(' ').append(top + 2);
            bars.append('h')
                    .append(PlotSvg.number(width))
                    .append("v10h-")
                    .append(PlotSvg.number(width))
                    .append('z');
        }
        svg.empty("path", "d", bars.toString(), "class", "held", "fill", "currentColor", "stroke", "none");
    }

    private static double clipped(double share) {
        return Math.max(0, Math.min(1, share));
    }

    private double at(double ms) {
        return LEFT + clipped(ms / timeline.ms()) * (RIGHT - LEFT);
    }

    private void text(String text, double x, double y, String anchor) {
        svg.leaf(
                "text",
                text,
                "x",
                PlotSvg.number(x),
                "y",
                PlotSvg.number(y),
                "text-anchor",
                anchor,
                "class",
                "num",
                "fill",
                "currentColor");
    }
}
