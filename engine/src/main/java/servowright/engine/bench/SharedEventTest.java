package servowright.engine.bench;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.numeric.Interval;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.Unit;
import servowright.engine.recording.Channel;
import servowright.engine.recording.ClockOffset;
import servowright.engine.recording.Recording;

/** Shared event: one event in the recordings of several recorders. The first test gives the clock that the others are held against. */
final class SharedEventTest {
    private static final int MOST = 20_000;

    /** Signals that agree less than this show two events. */
    private static final double LEAST_CORRELATION = 0.7;

    /** A second shift that is nearly as good: the signals repeat themselves. */
    private static final double RIVAL = 0.97;

    private final BenchTest test;
    private final ResultSheet sheet;
    private final Optional<Trace> trace;

    /** In which the event was recorded. */
    private String unit = "";

    private SharedEventTest(BenchTest test, Optional<Recording> recording) {
        this.test = test;
        this.sheet = new ResultSheet(test);
        this.trace = recording.flatMap(this::event);
        if (recording.isEmpty()) {
            missing("a recording of " + test.id(), RecorderParameter.CLOCK_OFFSET.settle());
        }
    }

    /** The event of each test, held against that of the first. */
    static List<TestResult> of(List<BenchTest> tests, Function<BenchTest, Optional<Recording>> recordings) {
        List<SharedEventTest> all = tests.stream()
                .map(t -> new SharedEventTest(t, recordings.apply(t)))
                .toList();
        for (SharedEventTest one : all.subList(Math.min(1, all.size()), all.size())) {
            one.against(all.get(0));
        }
        if (all.size() > 1 && all.get(0).trace.isPresent()) {
            all.get(0).first();
        }
        if (all.size() == 1 && all.get(0).trace.isPresent()) {
            all.get(0)
                    .missing(
                            "a second recording of what " + tests.get(0).id() + " shows", "state another shared event");
        }
        return all.stream().map(s -> s.sheet.end()).toList();
    }

    /** Its own clock is that of the others. */
    private void first() {
        Known zero = Known.exact(Quantity.of(0, "s"), Origin.DERIVED, test.id());
        Working.Sheet working = Working.begin();
        working.note("the clock that the others are held against", "{δ}", "ms", "definition", zero);
        sheet.value(RecorderParameter.CLOCK_OFFSET, new Candidate(zero, test.id(), working.end()));
    }

    private void missing(String need, String settle) {
        sheet.missing(RecorderParameter.CLOCK_OFFSET, need, settle);
    }

    private Optional<Trace> event(Recording recording) {
        Optional<Channel> shown = recording.channels().stream()
                .filter(c -> test.channels().getOrDefault(c.name(), "").contains("event"))
                .findFirst();
        if (shown.isEmpty()) {
            missing("the event in " + recording.name(), "state channels: {..: event}");
            return Optional.empty();
        }
        Outcome<Trace> read = Trace.of(test, recording, shown.get());
        if (read instanceof Missing<Trace> why) {
            sheet.missing(RecorderParameter.CLOCK_OFFSET, why);
            return Optional.empty();
        }
        unit = shown.get().unit().map(Unit::symbol).orElse("");
        Trace found = read.found().orElseThrow();
        sheet.remarks(found.remarks());
        AtLimit.remark(found.channel(), found.values()).ifPresent(sheet::remark);
        return Optional.of(found.thinned(MOST));
    }

    private void against(SharedEventTest first) {
        if (trace.isEmpty()) {
            return;
        }
        if (first.trace.isEmpty()) {
            missing("the event of " + first.test.id(), "repair that test first");
            return;
        }
        Trace a = first.trace.get();
        Trace b = trace.get();
        Optional<ClockOffset> found = ClockOffset.of(a.seconds(), a.values(), b.seconds(), b.values());
        if (found.isEmpty() || Math.abs(found.get().correlation()) < LEAST_CORRELATION) {
            missing(
                    "an event that " + first.test.id() + " and " + test.id() + " both show",
                    RecorderParameter.CLOCK_OFFSET.settle());
        } else if (found.get().rival() > RIVAL * Math.abs(found.get().correlation())) {
            missing(
                    "an event in " + test.id() + " that does not repeat itself: another shift fits nearly as well",
                    "record one sharp event that happens once");
        } else {
            searched(ClockOffset.shifts(a.seconds(), b.seconds()));
            value(found.get(), first);
        }
    }

    private void searched(Interval shifts) {
        sheet.detail(
                Phrase.of("offsets from {from} to {to} were looked at: at least half of the shorter recording overlaps")
                        .with("from", Quantity.of(shifts.low(), "s"), "ms")
                        .with("to", Quantity.of(shifts.high(), "s"), "ms"));
    }

    private void value(ClockOffset offset, SharedEventTest first) {
        sheet.detail(Phrase.of("correlation {r} over {t} that both cover; the next best shift has {rival}")
                .with("r", offset.correlation())
                .with("t", Quantity.of(offset.overlapSecond(), "s"), "ms")
                .with("rival", offset.rival()));
        if (offset.correlation() < 0) {
            sheet.remark("one signal falls where the other rises: they are counted in opposite senses");
        }
        sheet.remark(
                "clocks counted from the first sample of each recording; what delays one of the signals counts as offset");
        ClockOffset.Overlap both = offset.residuals();
        sheet.curves(
                PointCurves.of("event", "first recorder", both.seconds(), both.observed(), both.rest(), "s", unit));
        Known known = Known.of(
                Quantity.of(offset.laterSecond(), "s"),
                offset.standardSecond(),
                Source.of(test.id() + " clock", offset.freedom()),
                Origin.MEASURED,
                test.id());
        Working.Sheet working = Working.begin();
        working.note(
                "an event at t here is at t + δ in " + first.test.id(),
                "{δ}",
                "ms",
                "largest correlation of both signals, least squares",
                known);
        sheet.value(RecorderParameter.CLOCK_OFFSET, new Candidate(known, test.id(), working.end()));
    }
}
