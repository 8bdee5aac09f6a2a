package servowright.app.input.csv;

import java.util.OptionalDouble;

/** Follows the clock while rows go by: numbers them, unwraps counters, keeps the rows of a window, notes what it saw. */
final class ClockTrack implements RowSink {
    private final ClockPlan plan;
    private final double fromS;
    private final double toS;
    private final RowSink next;
    private long rows;
    private long kept;
    private long untimed;
    private long repeats;
    private long backward;
    private double forward;
    private double largest;
    private double turns;
    private double lastRaw = Double.NaN;
    private double last = Double.NaN;
    private double first = Double.NaN;

    ClockTrack(ClockPlan plan, OptionalDouble fromS, OptionalDouble toS, RowSink next) {
        this.plan = plan;
        this.fromS = fromS.orElse(Double.NEGATIVE_INFINITY);
        this.toS = toS.orElse(Double.POSITIVE_INFINITY);
        this.next = next;
    }

    @Override
    public void row(double[] values) {
        double ticks = plan.hasColumn() ? unwrapped(values[0]) : rows;
        rows++;
        if (!Double.isFinite(ticks)) {
            untimed++;
            return;
        }
        double seconds = plan.seconds(ticks);
        if (seconds >= fromS && seconds <= toS) {
            note(ticks);
            values[0] = ticks;
            next.row(values);
        }
    }

    private void note(double ticks) {
        first = kept == 0 ? ticks : first;
        double step = ticks - last;
        if (kept > 0 && plan.hasColumn()) {
            repeats += step == 0 ? 1 : 0;
            backward += step < 0 ? 1 : 0;
            forward += step > 0 ? step : 0;
            largest = step > largest ? step : largest;
        }
        last = ticks;
        kept++;
    }

    private double unwrapped(double raw) {
        if (plan.modulus().isEmpty()) {
            return raw;
        }
        double modulus = plan.modulus().getAsDouble();
        turns += raw - lastRaw < -modulus / 2 ? 1 : 0;
        lastRaw = Double.isNaN(raw) ? lastRaw : raw;
        return raw + turns * modulus;
    }

    long rows() {
        return rows;
    }

    long kept() {
        return kept;
    }

    long untimed() {
        return untimed;
    }

    double wraps() {
        return turns;
    }

    /** What a summary says about the clock. */
    RecordingSummary.Times times() {
        double mean = plan.hasColumn() ? forward / (kept - 1 - backward) : 1;
        double tickS = plan.kind() == ClockPlan.Kind.ORDER ? Double.NaN : plan.tickS();
        double most = plan.hasColumn() ? largest : 1;
        return new RecordingSummary.Times(
                plan.seconds(first), plan.seconds(last), tickS * mean, tickS * most, repeats, backward);
    }
}
