package servowright.app.view;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import servowright.engine.bench.Curve;
import servowright.engine.quantity.Unit;
import servowright.engine.quantity.Units;

/**
 * Curves over one abscissa, in the units they are shown in.
 *
 * @param title  what is plotted
 * @param x      label of the abscissa with its unit
 * @param y      label of the ordinate with its unit
 * @param series measured and fitted lines
 * @param strip  what is left over, drawn below on an axis of its own; may be empty
 */
public record Plot(String title, String x, String y, List<Series> series, List<Series> strip) {
    /** A line of a plot; {@code x} and {@code y} are as long as each other. */
    public record Series(String name, double[] x, double[] y, Curve.Role role) {}

    public Plot {
        series = List.copyOf(series);
        strip = List.copyOf(strip);
    }

    /** One plot for each pair of units. */
    static List<Plot> of(String title, List<Curve> curves) {
        Map<String, List<Curve>> groups = new LinkedHashMap<>();
        for (Curve curve : curves) {
            groups.computeIfAbsent(curve.xUnit() + " | " + curve.yUnit(), k -> new ArrayList<>())
                    .add(curve);
        }
        return groups.values().stream().map(group -> plot(title, group)).toList();
    }

    private static Plot plot(String title, List<Curve> group) {
        List<Series> series = new ArrayList<>();
        List<Series> strip = new ArrayList<>();
        for (Curve curve : group) {
            double[] x = counted(curve.x(), curve.xUnit());
            if (curve.role() == Curve.Role.RESIDUAL) {
                strip.add(new Series(leftOver(curve), x, differences(curve.y(), curve.yUnit()), curve.role()));
            } else {
                series.add(new Series(curve.name(), x, counted(curve.y(), curve.yUnit()), curve.role()));
            }
        }
        Curve first = group.get(0);
        return new Plot(title, AxisLabel.of(first.xUnit()), AxisLabel.of(first.yUnit()), series, strip);
    }

    private static double[] counted(double[] si, String unit) {
        Unit u = Units.named(unit);
        return Arrays.stream(si).map(u::fromSi).toArray();
    }

    /** Differences of temperatures have no zero of a scale in them. */
    private static double[] differences(double[] si, String unit) {
        double one = Units.named(unit).difference(1).si();
        return Arrays.stream(si).map(v -> v / one).toArray();
    }

    private static String leftOver(Curve curve) {
        return curve.yUnit().equals("degC") ? curve.name() + " in K" : curve.name();
    }

    /** What it shows, for those who cannot see it. */
    public String description() {
        List<String> names = new ArrayList<>();
        series.forEach(s -> names.add(s.name()));
        strip.forEach(s -> names.add(s.name() + " in a strip below"));
        return y + " over " + x + ": " + String.join(", ", names) + ".";
    }
}
