package servowright.app.view;

/** Draws the harmonics of an angle error: a row for each order, filled for what the mount gives, open for what was measured. */
public final class HarmonicsSvg {
    private static final int WIDTH = 420;
    private static final int ROW = 44;
    private static final int BAR = 9;
    private static final int RIGHT = WIDTH - 6;

    private final HarmonicsView harmonics;
    private final Markup svg = new Markup();

    private HarmonicsSvg(HarmonicsView harmonics) {
        this.harmonics = harmonics;
    }

    /** The picture as one SVG element. */
    public static Markup of(HarmonicsView harmonics) {
        return new HarmonicsSvg(harmonics).draw();
    }

    private Markup draw() {
        int height = ROW * harmonics.bars().size() + 4;
        svg.open(
                "svg",
                "xmlns",
                "http://www.w3.org/2000/svg",
                "viewBox",
                "0 0 " + WIDTH + " " + height,
                "class",
                "harmonics",
                "role",
                "img",
                "font-size",
                "12");
        svg.leaf("title", "harmonics of the angle error").leaf("desc", harmonics.description());
        for (int i = 0; i < harmonics.bars().size(); i++) {
            row(harmonics.bars().get(i), ROW * i);
        }
        return svg.close();
    }

    private void row(HarmonicsView.Bar bar, int top) {
        text(bar.words(), 1, top + 13, "start");
        text(bar.text(), RIGHT, top + 13, "end");
        PlotSvg.rule(svg, 1, top + 18, 1, top + 38, "0.8");
        bar.expected().ifPresent(f -> bar(f, top + 19, "0.75"));
        bar.measured().ifPresent(f -> bar(f, top + 20 + BAR, "0"));
    }

    private void bar(FigureText figure, int top, String shade) {
        double most = harmonics.most();
        double width = most > 0 ? figure.known().si() / most * (RIGHT - 2) : 0;
        svg.empty(
                "rect",
                "x",
                "1",
                "y",
                String.valueOf(top),
                "width",
                PlotSvg.number(Math.max(0, width)),
                "height",
                String.valueOf(BAR - 1),
                "fill",
                "currentColor",
                "fill-opacity",
                shade,
                "stroke",
                "currentColor",
                "stroke-width",
                "0.8");
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
                "fill",
                "currentColor");
    }
}
