package servowright.app.view;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import servowright.app.view.Plot.Series;

/** Plots as JSON, for a picture that can be zoomed. */
public final class PlotJson {
    private PlotJson() {}

    public static String of(List<Plot> plots) {
        return JsonText.of(plots.stream().map(PlotJson::plot).toList());
    }

    private static Object plot(Plot plot) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("title", plot.title());
        json.put("x", plot.x());
        json.put("y", plot.y());
        json.put("description", plot.description());
        json.put("series", plot.series().stream().map(PlotJson::series).toList());
        json.put("strip", plot.strip().stream().map(PlotJson::series).toList());
        return json;
    }

    private static Object series(Series series) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("name", series.name());
        json.put("role", series.role().name().toLowerCase(Locale.ROOT));
        json.put("x", numbers(series.x()));
        json.put("y", numbers(series.y()));
        return json;
    }

    private static List<Double> numbers(double[] values) {
        return Arrays.stream(values).boxed().toList();
    }
}
