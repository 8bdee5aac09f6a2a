package servowright.app.view;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.engine.bench.Curve;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Unit;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Clock;
import servowright.engine.recording.Recording;

/**
 * A stretch of a recording to be looked at. A long one is thinned so that the picture stays the same: of the rows that
 * fall into one column of pixels the least and the greatest number of every channel remain.
 *
 * @param first first row
 * @param end   row behind the last one
 */
public record RecordingWindow(Recording recording, int first, int end) {
    /** Everything. */
    public static RecordingWindow whole(Recording recording) {
        return new RecordingWindow(recording, 0, recording.count());
    }

    /** The rows from one time to another, both counted in the unit that the plots have; a row of a list counts from 0. */
    public static RecordingWindow of(Recording recording, double from, double to) {
        RecordingWindow whole = whole(recording);
        Unit unit = whole.timeUnit();
        boolean timed = recording.clock().timed();
        double least = timed ? unit.toSi(from) : from;
        double most = timed ? unit.toSi(to) : to;
        int first = 0;
        while (first < recording.count() && whole.si(first) < least) {
            first++;
        }
        int end = first;
        while (end < recording.count() && whole.si(end) <= most) {
            end++;
        }
        return end - first < 2 ? whole : new RecordingWindow(recording, first, end);
    }

    private double si(int row) {
        Clock clock = recording.clock();
        return clock.timed() ? clock.timeS(row) : row;
    }

    /** The unit of the whole recording's time, so that a closer look keeps it. */
    private Unit timeUnit() {
        int last = recording.count() - 1;
        double span = last > 0 && recording.clock().timed() ? Math.abs(si(last) - si(0)) : 1;
        return UsualUnit.of(span > 0 ? span : 1, Dimension.TIME, "");
    }

    /** One plot for every unit among the channels, with at most {@code columns} columns of pixels. */
    public List<Plot> plots(int columns) {
        Map<String, List<Channel>> groups = new LinkedHashMap<>();
        for (Channel channel : recording.channels()) {
            String dimension = channel.unit().map(u -> u.dimension().symbol()).orElse("");
            groups.computeIfAbsent(dimension, k -> new ArrayList<>()).add(channel);
        }
        return groups.values().stream().map(g -> plot(g, columns)).toList();
    }

    private Plot plot(List<Channel> channels, int columns) {
        Optional<Unit> unit = channels.get(0).unit().map(u -> usual(channels, u));
        int rows = end - first;
        int bins = Math.min(Math.max(1, columns), Math.max(1, rows / 2));
        boolean thin = rows > 2 * columns;
        int points = thin ? 2 * bins : rows;
        double[] x = new double[points];
        List<double[]> ys = new ArrayList<>();
        channels.forEach(c -> ys.add(new double[points]));
        Unit time = timeUnit();
        for (int i = 0; i < points; i++) {
            double si = si(thin ? row(0.5 * i, bins) : first + i);
            x[i] = recording.clock().timed() ? time.fromSi(si) : si;
        }
        for (int c = 0; c < ys.size(); c++) {
            double[] samples = channels.get(c).samples();
            if (thin) {
                extremes(samples, bins, ys.get(c));
            } else {
                System.arraycopy(samples, first, ys.get(c), 0, rows);
            }
            count(ys.get(c), unit);
        }
        List<Plot.Series> series = new ArrayList<>();
        for (int c = 0; c < ys.size(); c++) {
            series.add(new Plot.Series(channels.get(c).name(), x, ys.get(c), Curve.Role.MEASURED));
        }
        String across = recording.clock().timed() ? AxisLabel.of(time.symbol()) : "row";
        String up = unit.map(u -> AxisLabel.of(u.symbol())).orElse("as recorded, unit not stated");
        return new Plot(recording.name(), across, up, series, List.of());
    }

    private static Unit usual(List<Channel> channels, Unit stated) {
        double most = channels.stream()
                .map(Channel::spread)
                .mapToDouble(s -> Math.max(Math.abs(s.least()), Math.abs(s.most())))
                .filter(Double::isFinite)
                .max()
                .orElse(1);
        return stated.offset() != 0 ? stated : UsualUnit.of(most, stated.dimension(), "");
    }

    private int row(double bin, int bins) {
        return Math.min(end - 1, first + (int) Math.round(bin * (end - first) / bins));
    }

    /** Of each bin the least and the greatest number, in the order in which they came. */
    private void extremes(double[] samples, int bins, double[] into) {
        for (int b = 0; b < bins; b++) {
            int from = row(b, bins);
            int to = b + 1 == bins ? end : row(b + 1, bins);
            int least = from;
            int most = from;
            for (int i = from + 1; i < to; i++) {
                least = samples[i] < samples[least] || Double.isNaN(samples[least]) ? i : least;
                most = samples[i] > samples[most] || Double.isNaN(samples[most]) ? i : most;
            }
            into[2 * b] = samples[Math.min(least, most)];
            into[2 * b + 1] = samples[Math.max(least, most)];
        }
    }

    private static void count(double[] values, Optional<Unit> unit) {
        if (unit.isPresent()) {
            for (int i = 0; i < values.length; i++) {
                values[i] = unit.get().fromSi(values[i]);
            }
        }
    }

    /** Every row of the stretch as CSV, in the units of the file. */
    public void csv(Appendable out) throws IOException {
        boolean timed = recording.clock().timed();
        out.append(timed ? "time in s" : "row");
        for (Channel channel : recording.channels()) {
            String unit = channel.unit().map(u -> " in " + u.symbol()).orElse("");
            out.append(",\"")
                    .append((channel.name() + unit).replace("\"", "\"\""))
                    .append('"');
        }
        out.append('\n');
        for (int row = first; row < end; row++) {
            out.append(timed ? String.valueOf(si(row)) : String.valueOf(row));
            for (Channel channel : recording.channels()) {
                double si = channel.samples()[row];
                out.append(',');
                out.append(
                        Double.isNaN(si)
                                ? ""
                                : String.valueOf(
                                        channel.unit().map(u -> u.fromSi(si)).orElse(si)));
            }
            out.append('\n');
        }
    }
}
