package servowright.app.input.csv;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import servowright.engine.known.Problem;
import servowright.engine.quantity.Unit;
import servowright.engine.recording.CounterWrap;
import servowright.engine.recording.Remark;
import servowright.engine.recording.Stamps;

/** Finds the clock of a file, or the question whose answer would give it one. */
final class ClockFinder {
    private final String file;
    private final DataBlock block;
    private final Headings headings;
    private final ReadingHints hints;
    private final Dialect dialect;
    private final Optional<StatedInterval> stated;
    private final OptionalDouble start;
    private final List<Remark> remarks = new ArrayList<>();

    ClockFinder(
            String file, DataBlock block, Headings headings, Preamble preamble, Dialect dialect, ReadingHints hints) {
        this.file = file;
        this.block = block;
        this.headings = headings;
        this.dialect = dialect;
        this.hints = hints;
        this.stated = StatedInterval.find(preamble);
        this.start = StatedInterval.start(preamble);
    }

    /** A plan, or a problem. */
    sealed interface Found {
        record Plan(ClockPlan clock, List<Remark> remarks) implements Found {}

        record Question(Problem problem) implements Found {}
    }

    Found find() {
        if (hints.orderOnly()) {
            return plan(ClockPlan.order());
        }
        if (hints.sampleIntervalS().isPresent()) {
            return plan(ClockPlan.rows(0, hints.sampleIntervalS().getAsDouble()));
        }
        if (hints.timeColumn().isPresent()) {
            return declared(hints.timeColumn().get());
        }
        for (int k = 0; k < block.width(); k++) {
            if (block.kinds().get(k) != ColumnKind.NUMBER) {
                return clockCells(k);
            }
        }
        if (headings.indexed() && stated.isPresent()) {
            return index();
        }
        for (int k = 0; k < block.width(); k++) {
            if (unitOf(k).isPresent() || saysTime(k)) {
                return named(k);
            }
        }
        return unnamed();
    }

    private Found plan(ClockPlan clock) {
        return new Found.Plan(clock, remarks);
    }

    private void concluded(Remark.Kind kind, String text) {
        remarks.add(Remark.concluded(kind, "clock", text));
    }

    private Found declared(String wanted) {
        for (int k = 0; k < block.width(); k++) {
            int column = k;
            boolean number = wanted.equals(Integer.toString(block.columns().get(k) + 1));
            if (number || wanted.equals(headings.names().get(k))) {
                Optional<Unit> unit = hints.timeUnit().or(() -> unitOf(column));
                if (block.kinds().get(k) != ColumnKind.NUMBER) {
                    return clockCells(k);
                }
                return unit.isEmpty() ? ask(k) : plan(stamps(k, unit.get().factor()));
            }
        }
        String known = String.join(
                ", ", headings.names().stream().filter(n -> !n.isEmpty()).toList());
        String columns =
                "columns 1 to " + (block.columns().get(block.width() - 1) + 1) + (known.isEmpty() ? "" : ", " + known);
        return new Found.Question(Ask.unknownName(
                file, "time_column", wanted, "there is no column \"" + wanted + "\" with numbers", columns));
    }

    private Optional<Unit> unitOf(int k) {
        return headings.units().get(k).filter(UnitWords::time);
    }

    private ClockPlan stamps(int k, double tickS) {
        OptionalDouble interval =
                stated.map(s -> OptionalDouble.of(s.seconds())).orElse(OptionalDouble.empty());
        ClockPlan clock = ClockPlan.stamps(k, tickS, interval, resolution(k));
        Double declared = hints.wrapsAt().get("time");
        if (declared != null) {
            return clock.wrappingAt(declared);
        }
        Optional<CounterWrap> wrap = CounterWrap.find(block.sample(k, dialect.decimal()));
        return wrap.map(w -> clock.wrappingAt(w.modulus())).orElse(clock);
    }

    /**
     * The value of the last digit printed. Plain decimals may drop trailing zeros, so the finest counts; with powers of ten the
     * coarsest does.
     */
    private double resolution(int k) {
        double finest = Double.POSITIVE_INFINITY;
        double coarsest = 0;
        int column = block.columns().get(k);
        for (List<String> row : block.rows()) {
            double digit = column < row.size() ? Cells.resolution(row.get(column), dialect.decimal()) : 0;
            boolean power =
                    digit > 0 && row.get(column).toLowerCase(Locale.ROOT).indexOf('e') >= 0;
            coarsest = power ? Math.max(coarsest, digit) : coarsest;
            finest = digit > 0 && !power ? Math.min(finest, digit) : finest;
        }
        return coarsest > 0 ? coarsest : Double.isInfinite(finest) ? 0 : finest;
    }

    /** Times of day, dates and long counts are clocks by their form. */
    private Found clockCells(int k) {
        return switch (block.kinds().get(k)) {
            case TIME_OF_DAY -> {
                concluded(Remark.Kind.LAYOUT, "column " + position(k) + " holds the time of day; time 0 is midnight");
                yield plan(ClockPlan.stamps(k, 1, OptionalDouble.empty(), 0).wrappingAt(86_400));
            }
            case CALENDAR -> {
                concluded(
                        Remark.Kind.LAYOUT, "column " + position(k) + " holds date and time; time 0 is the first row");
                yield plan(ClockPlan.stamps(k, 1e-9, OptionalDouble.empty(), 0).since(Instant.EPOCH));
            }
            case LONG_COUNT -> longCount(k);
            case NUMBER -> throw new IllegalStateException("a number column is no clock by its form");
        };
    }

    /** Counts of a size that only one clock has between 1990 and 2050. */
    private Found longCount(int k) {
        String cell = block.rows().get(0).get(block.columns().get(k));
        double count = Cells.value(cell, '.');
        if (count > 1.22e17 && count < 1.42e17) {
            concluded(
                    Remark.Kind.LAYOUT, "column " + position(k) + " counts 100 ns since 1601; time 0 is the first row");
            return plan(longStamps(k, 1e-7).since(Instant.parse("1601-01-01T00:00:00Z")));
        }
        if (count > 6.3e17 && count < 2.6e18) {
            concluded(Remark.Kind.LAYOUT, "column " + position(k) + " counts ns since 1970; time 0 is the first row");
            return plan(longStamps(k, 1e-9).since(Instant.EPOCH));
        }
        if ((count > 6.3e14 && count < 2.6e15) || (count > 6.3e15 && count < 2.6e16)) {
            boolean micro = count < 3e15;
            concluded(
                    Remark.Kind.LAYOUT,
                    "column " + position(k) + " counts " + (micro ? "us" : "100 ns")
                            + " since 1970; time 0 is the first row");
            return plan(longStamps(k, micro ? 1e-6 : 1e-7).since(Instant.EPOCH));
        }
        return hints.timeUnit().isPresent()
                ? plan(longStamps(k, hints.timeUnit().get().factor()))
                : ask(k);
    }

    private ClockPlan longStamps(int k, double tickS) {
        OptionalDouble interval =
                stated.map(s -> OptionalDouble.of(s.seconds())).orElse(OptionalDouble.empty());
        return ClockPlan.stamps(k, tickS, interval, 1);
    }

    private Found index() {
        StatedInterval interval = stated.orElseThrow();
        concluded(
                Remark.Kind.LAYOUT,
                "column " + position(0) + " counts the samples; time = " + Shown.seconds(start.orElse(0))
                        + " + count times " + Shown.seconds(interval.seconds()));
        return plan(ClockPlan.index(0, start.orElse(0), interval.seconds()));
    }

    /** A column called time; one that is only called x or t must rise as well. */
    private boolean saysTime(int k) {
        String name = Preamble.plain(headings.names().get(k));
        boolean vague = name.equals("x") || name.equals("t");
        return headings.units().get(k).isEmpty() && Headings.timeName(name) && (!vague || rises(k));
    }

    /** A column called time, or one whose unit is a time. */
    private Found named(int k) {
        Optional<Unit> unit = unitOf(k);
        if (unit.isPresent()) {
            return plan(stamps(k, unit.get().factor()));
        }
        double[] sample = block.sample(k, dialect.decimal());
        double step = Stamps.typicalStep(sample);
        if (keepsStatedInterval(k)) {
            concluded(Remark.Kind.LAYOUT, "column " + position(k) + " is the time in s: it keeps the stated interval");
            return plan(stamps(k, 1));
        }
        boolean whole = step >= 1 && Arrays.stream(sample).allMatch(v -> v == Math.rint(v));
        if (whole) {
            return ask(k);
        }
        concluded(
                Remark.Kind.UNIT_NOT_STATED,
                "column " + position(k) + " is read as time in s; the file states no unit");
        return plan(stamps(k, 1));
    }

    /** No heading says time: the stated interval decides, or a question. */
    private Found unnamed() {
        for (int k = 0; k < block.width() && block.width() > 1; k++) {
            if (keepsStatedInterval(k)) {
                concluded(
                        Remark.Kind.LAYOUT,
                        "column " + position(k) + " is the time in s: it keeps the stated interval");
                return plan(stamps(k, 1));
            }
        }
        if (stated.isPresent()) {
            concluded(
                    Remark.Kind.LAYOUT,
                    "no time column; rows follow the stated interval of "
                            + Shown.seconds(stated.get().seconds()));
            if (!stated.get().unitStated()) {
                concluded(Remark.Kind.UNIT_NOT_STATED, "the stated interval is read in s");
            }
            return plan(ClockPlan.rows(start.orElse(0), stated.get().seconds()));
        }
        for (int k = 0; k < block.width(); k++) {
            if (headings.units().get(k).isEmpty() && rises(k)) {
                return ask(k);
            }
        }
        return new Found.Question(Ask.sampleInterval(file));
    }

    /** Whether a column never falls and rises by the stated interval in s on average, give or take its last digit. */
    private boolean keepsStatedInterval(int k) {
        double[] sample = block.sample(k, dialect.decimal());
        int steps = sample.length - 1;
        if (stated.isEmpty() || steps < 8 || Stamps.backward(sample).count() > 0) {
            return false;
        }
        double mean = (sample[steps] - sample[0]) / steps;
        double interval = stated.get().seconds();
        return Math.abs(mean - interval) <= Math.min(0.2 * interval, 1e-3 * interval + resolution(k) / steps);
    }

    /** Whether a column rises from row to row at a fairly even step, wraps of a counter aside. */
    private boolean rises(int k) {
        double[] sample = block.sample(k, dialect.decimal());
        double[] whole = CounterWrap.find(sample)
                .map(w -> CounterWrap.unwrapped(sample, w.modulus()))
                .orElse(sample);
        double typical = Stamps.typicalStep(whole);
        int even = 0;
        for (int i = 1; i < whole.length; i++) {
            double step = whole[i] - whole[i - 1];
            even += step > 0.2 * typical && step < 5 * typical ? 1 : 0;
        }
        return whole.length >= 8 && even >= 0.95 * (whole.length - 1);
    }

    private Found ask(int k) {
        double[] sample = block.sample(k, dialect.decimal());
        String evidence = "rises by " + Shown.number(Stamps.typicalStep(sample)) + " from row to row ("
                + block.rows().get(0).get(block.columns().get(k)) + " in the first)"
                + CounterWrap.find(sample)
                        .map(w -> " and starts anew at " + Shown.whole(w.modulus()))
                        .orElse("");
        return new Found.Question(Ask.timeColumn(file, block.columns().get(k) + 1, evidence));
    }

    private int position(int k) {
        return block.columns().get(k) + 1;
    }
}
