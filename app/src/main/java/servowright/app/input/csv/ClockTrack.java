package servowright.app.input.csv;

import java.util.OptionalDouble;
import servowright.engine.recording.Spread;

/** Follows the clock while rows go by: numbers them, unwraps counters, keeps the rows of a window, notes what it saw. */
final class ClockTrack implements RowSink {
    private final ClockPlan plan;
    private final double fromS;
    private final double toS;
    private final RowSink next;
    private final Spread.Gathering steps = new Spread.Gathering();
    private long rows;
    private long kept;
    private long untimed;
    private long repeats;
    private long backward;
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
            steps.add(step);
            repeats += step == 0 ? 1 : 0;
            backward += step < 0 ? 1 : 0;
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
        Spread step = steps.spread();
        double mean = plan.hasColumn()
                ? plan.tickS() * step.mean()
                : plan.kind() == ClockPlan.Kind.ROWS ? plan.tickS() : Double.NaN;
        return new RecordingSummary.Times(
                plan.seconds(first), plan.seconds(last), mean, plan.tickS() * step.most(), repeats, backward);
    }
}
