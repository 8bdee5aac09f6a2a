package servowright.app.view;

/** Draws shaft end, magnet, gap and sensor to scale, from the side, with their sizes. */
public final class MountSvg {
    private static final double LEFT = 12;
    private static final double TOP = 14;
    private static final double PACKAGE_MM = 1;
    private static final double BOARD_MM = 1.6;
    private static final double SHAFT_MM = 3;
    private static final double LINE = 14;

    private final MountView mount;
    private final double scale;
    private final Markup svg = new Markup();

    private MountSvg(MountView mount) {
        this.mount = mount;
        this.scale = Math.min(24, 190 / (mount.diameter() + 4));
    }

    /** The drawing as one SVG element; it is to scale but not 1:1. */
    public static Markup of(MountView mount) {
        return new MountSvg(mount).draw();
    }

    private Markup draw() {
        double sensor = TOP + scale * (BOARD_MM + PACKAGE_MM);
        double face = sensor + scale * mount.gap().nominal();
        double end = face + scale * mount.length();
        double middle = LEFT + scale * (mount.diameter() / 2 + 2);
        double height = end + scale * SHAFT_MM + 8;
        svg.open(
                "svg",
                "xmlns",
                "http://www.w3.org/2000/svg",
                "viewBox",
                "0 0 420 " + PlotSvg.number(height),
                "class",
                "mount",
                "role",
                "img",
                "font-size",
                "12");
        svg.leaf("title", "mount of " + mount.axis() + ", to scale");
        box(middle, TOP, scale * (mount.diameter() + 4), scale * BOARD_MM, "0.15");
        box(middle, TOP + scale * BOARD_MM, scale * 4, scale * PACKAGE_MM, "0.5");
        box(middle, face, scale * mount.diameter(), scale * mount.length(), "0.3");
        box(middle, end, scale * mount.diameter() * 0.6, scale * SHAFT_MM, "0.1");
        // The band within which the face of the magnet can lie.
        double near = sensor + scale * mount.gap().least();
        double far = sensor + scale * mount.gap().most();
        box(middle, near, scale * (mount.diameter() + 1), Math.max(0.5, far - near), "0.2");
        labels(sensor, face, end);
        return svg.close();
    }

    private void labels(double sensor, double face, double end) {
        label(TOP + scale * BOARD_MM / 2 + 4, "board");
        String depth =
                mount.depth().map(d -> "element " + millimetre(d) + " deep").orElse("element: depth not stated");
        label(TOP + scale * BOARD_MM + scale * PACKAGE_MM / 2 + 4, depth);
        MountView.Gap gap = mount.gap();
        String spread = gap.most() > gap.least() ? ", " + plain(gap.least()) + " to " + millimetre(gap.most()) : "";
        label((sensor + face) / 2 + 4, "gap " + millimetre(gap.nominal()) + spread);
        double magnet = (face + end) / 2 + 4;
        label(magnet - LINE / 2, "magnet " + plain(mount.diameter()) + " by " + millimetre(mount.length()));
        label(magnet + LINE / 2, "magnetised across");
        label(end + scale * SHAFT_MM / 2 + 4, "shaft");
    }

    private void box(double middle, double top, double width, double height, String shade) {
        svg.empty(
                "rect",
                "x",
                PlotSvg.number(middle - width / 2),
                "y",
                PlotSvg.number(top),
                "width",
                PlotSvg.number(width),
                "height",
                PlotSvg.number(height),
                "fill",
                "currentColor",
                "fill-opacity",
                shade,
                "stroke",
                "currentColor",
                "stroke-width",
                "0.8");
    }

    private void label(double y, String words) {
        double x = LEFT + scale * (mount.diameter() + 4) + 8;
        svg.leaf("text", words, "x", PlotSvg.number(x), "y", PlotSvg.number(y), "fill", "currentColor");
    }

    private static String millimetre(double value) {
        return plain(value) + " mm";
    }

    private static String plain(double value) {
        return MountView.plain(value);
    }
}
