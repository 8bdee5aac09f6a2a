package servowright.app.view;

import java.util.ArrayList;
import java.util.List;

/** Fewer points for the same picture: of all points in one column of pixels the first, least, most and last remain. */
final class Thinning {
    private Thinning() {}

    /** A point in the picture's own coordinates. */
    record Point(double x, double y) {}

    /** Points that are no numbers are left out. Columns are one unit of x wide. */
    static List<Point> of(List<Point> points) {
        List<Point> kept = new ArrayList<>();
        List<Point> column = new ArrayList<>();
        for (Point point : points) {
            if (!Double.isFinite(point.x()) || !Double.isFinite(point.y())) {
                continue;
            }
            if (!column.isEmpty()
                    && Math.floor(point.x()) != Math.floor(column.get(0).x())) {
                keep(column, kept);
                column.clear();
            }
            column.add(point);
        }
        keep(column, kept);
        return kept;
    }

    private static void keep(List<Point> column, List<Point> kept) {
        if (column.size() <= 4) {
            kept.addAll(column);
            return;
        }
        int least = 0;
        int most = 0;
        for (int i = 1; i < column.size(); i++) {
            least = column.get(i).y() < column.get(least).y() ? i : least;
            most = column.get(i).y() > column.get(most).y() ? i : most;
        }
        int last = column.size() - 1;
        int[] wanted = {0, Math.min(least, most), Math.max(least, most), last};
        int before = -1;
        for (int i : wanted) {
            if (i > before) {
                kept.add(column.get(i));
                before = i;
            }
        }
    }
}
