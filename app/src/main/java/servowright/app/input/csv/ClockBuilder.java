package servowright.app.input.csv;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import servowright.engine.recording.Clock;
import servowright.engine.recording.CounterWrap;
import servowright.engine.recording.Remark;
import servowright.engine.recording.RowOrder;
import servowright.engine.recording.StampedClock;
import servowright.engine.recording.Stamps;
import servowright.engine.recording.UniformClock;

/** Makes the clock of a recording out of the stamps that were read, and says what it made of them. */
final class ClockBuilder {
    private final ClockPlan plan;
    private final ReadingHints hints;
    private final List<Remark> remarks = new ArrayList<>();

    ClockBuilder(ClockPlan plan, ReadingHints hints) {
        this.plan = plan;
        this.hints = hints;
    }

    List<Remark> remarks() {
        return remarks;
    }

    /** The clock of rows that have no stamps. */
    Clock counted(double firstRow, int count) {
        if (plan.kind() == ClockPlan.Kind.ORDER) {
            return new RowOrder(count);
        }
        return new UniformClock(plan.seconds(firstRow), plan.tickS() * hints.every(), count, Optional.empty());
    }

    /**
     * The clock of rows with stamps.
     *
     * @param ticks as read, one per row; written to
     * @param base what the parser took off all of them
     */
    Clock stamped(double[] ticks, long base) {
        double[] whole = unwrapped(ticks);
        double[] seconds = new double[whole.length];
        for (int i = 0; i < whole.length; i++) {
            seconds[i] = plan.seconds(whole[i]);
        }
        Optional<Instant> began = plan.epoch().map(e -> moment(e, base));
        List<Integer> starts = Stamps.segmentStarts(seconds);
        if (starts.size() > 1) {
            remarks.add(Remark.found(
                            Remark.Kind.SEGMENTS,
                            "clock",
                            "the time starts anew",
                            starts.size() - 1L,
                            starts.get(1) + 1L)
                    .handledBy("read as " + starts.size() + " segments"));
            return new StampedClock(seconds, starts, began);
        }
        Optional<Stamps.Even> even = even(seconds);
        if (even.isPresent()) {
            return even(even.get(), seconds.length, began);
        }
        uneven(seconds);
        return new StampedClock(seconds, List.of(0), began);
    }

    private Instant moment(Instant epoch, long base) {
        long perSecond = Math.round(1 / plan.tickS());
        long nanosPerTick = 1_000_000_000L / perSecond;
        return epoch.plusSeconds(Math.floorDiv(base, perSecond))
                .plusNanos(Math.floorMod(base, perSecond) * nanosPerTick);
    }

    private double[] unwrapped(double[] ticks) {
        if (plan.kind() != ClockPlan.Kind.STAMPS || plan.modulus().isPresent() || hints.every() > 1) {
            return ticks;
        }
        Optional<CounterWrap> wrap = CounterWrap.find(ticks);
        if (wrap.isEmpty()) {
            return ticks;
        }
        wrapped(wrap.get().modulus(), wrap.get().count(), wrap.get().first() + 1L);
        return CounterWrap.unwrapped(ticks, wrap.get().modulus());
    }

    /** Says that the clock's counter was taken as one with more bits. */
    void wrapped(double modulus, long count, long firstRow) {
        String text = String.format(Locale.ROOT, "the clock's counter starts anew at %.0f", modulus);
        remarks.add(Remark.found(Remark.Kind.COUNTER_WRAPPED, "clock", text, count, firstRow)
                .handledBy("counted on"));
    }

    /** Stamps with too few digits may hide the stated interval; where they bear it out it is the better one. */
    private Optional<Stamps.Even> even(double[] seconds) {
        double resolution = plan.resolution() * plan.tickS();
        double stated = plan.statedS().orElse(Double.NaN) * hints.every();
        Optional<Stamps.Even> known =
                resolution > 0.5 * stated ? Stamps.at(seconds, stated, resolution) : Optional.empty();
        return known.isPresent() ? known : Stamps.even(seconds, resolution);
    }

    private Clock even(Stamps.Even even, int count, Optional<Instant> began) {
        double interval = even.interval();
        double stated = plan.statedS().orElse(Double.NaN) * hints.every();
        if (even.rowsPerStamp() > 1) {
            String how = interval == stated ? "the stated interval of " : "row count and span: interval ";
            String text = "the time column has too few digits: about " + even.rowsPerStamp() + " rows share a stamp";
            remarks.add(Remark.found(Remark.Kind.CLOCK_ROUNDED, "clock", text, count, 1)
                    .handledBy("rebuilt from " + how + Shown.seconds(interval)));
        } else {
            String text = "the times are even within the digits printed: interval " + Shown.seconds(interval);
            remarks.add(Remark.concluded(Remark.Kind.LAYOUT, "clock", text));
        }
        disagreement(interval, stated);
        return new UniformClock(even.start(), interval, count, began);
    }

    private void uneven(double[] seconds) {
        Stamps.Steps back = Stamps.backward(seconds);
        if (back.count() > 0) {
            String text = "the time runs backward, by up to " + Shown.seconds(back.largest());
            remarks.add(Remark.found(Remark.Kind.CLOCK_BACKWARD, "clock", text, back.count(), back.first() + 1L));
        }
        Stamps.Steps repeats = Stamps.repeats(seconds);
        if (repeats.count() > 0) {
            String text = "rows with the time of the row before";
            remarks.add(Remark.found(Remark.Kind.CLOCK_REPEATS, "clock", text, repeats.count(), repeats.first() + 1L));
        }
        Stamps.Steps gaps = Stamps.gaps(seconds);
        if (gaps.count() > 0) {
            String text = "gaps of up to " + Shown.seconds(gaps.largest()) + ", the usual step is "
                    + Shown.seconds(Stamps.typicalStep(seconds));
            remarks.add(Remark.found(Remark.Kind.GAP, "clock", text, gaps.count(), gaps.first() + 1L));
        }
        disagreement(Stamps.typicalStep(seconds), plan.statedS().orElse(Double.NaN) * hints.every());
    }

    /** A stated interval that the stamps do not bear out; a power of a thousand is a unit that was not stated. */
    private void disagreement(double interval, double stated) {
        if (!(stated > 0) || Math.abs(stated - interval) <= 1e-4 * interval) {
            return;
        }
        for (double unit : new double[] {1e-3, 1e-6, 1e-9}) {
            if (Math.abs(stated * unit - interval) <= 1e-4 * interval) {
                return;
            }
        }
        String text = "the file states an interval of " + Shown.seconds(stated) + ", its times show "
                + Shown.seconds(interval);
        remarks.add(
                Remark.concluded(Remark.Kind.INTERVAL_DISAGREES, "clock", text).handledBy("the times are used"));
    }
}
