package servowright.app.input;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.app.input.tree.Problems;
import servowright.engine.bench.SignalScale;
import servowright.engine.capture.Frame;
import servowright.engine.capture.FrameSink;
import servowright.engine.capture.Signal;
import servowright.engine.capture.SignalTrace;
import servowright.engine.capture.Traffic;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;
import servowright.engine.machine.BusCapture;
import servowright.engine.machine.BusSignal;
import servowright.engine.machine.SignalFigure;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.ParsedQuantity;
import servowright.engine.quantity.QuantityText;
import servowright.engine.quantity.Spelling;
import servowright.engine.quantity.Stated;

/** The signals that a capture was declared to hold, and how they go with each other. */
final class Signals {
    private static final int BYTE = 8;

    private final Problems problems;
    private final Map<String, SignalTrace> traces = new LinkedHashMap<>();
    private final Map<String, Dimension> dimensions = new LinkedHashMap<>();
    private final Map<String, String> rates = new LinkedHashMap<>();

    private Signals(Problems problems) {
        this.problems = problems;
    }

    static Signals of(BusCapture capture, Problems problems) {
        Signals all = new Signals(problems);
        capture.signals().forEach(all::add);
        capture.signals().forEach(all::rate);
        return all;
    }

    private void add(BusSignal s) {
        Optional<Stated> scale = quantity(s.scale(), s.place(), "scale");
        Optional<Stated> offset = s.offset().flatMap(o -> quantity(o, s.place(), "offset"));
        if (scale.isEmpty() || (s.offset().isPresent() && offset.isEmpty())) {
            return;
        }
        traces.put(
                s.name(),
                new SignalTrace(new Signal(
                        s.name(),
                        s.id(),
                        number(s, SignalFigure.START, 0),
                        number(s, SignalFigure.BITS, BYTE),
                        s.order() == BusSignal.ByteOrder.HIGH_FIRST,
                        s.sign() == BusSignal.Sign.SIGNED,
                        scale.get().nominal().si() - scale.get().unit().offset(),
                        offset.map(o -> o.nominal().si())
                                .orElse(scale.get().unit().offset()))));
        dimensions.put(s.name(), scale.get().dimension());
    }

    private static int number(BusSignal s, SignalFigure key, int otherwise) {
        return s.figures().known(key).map(k -> (int) k.si()).orElse(otherwise);
    }

    private Optional<Stated> quantity(String text, Place place, String key) {
        ParsedQuantity read = QuantityText.parse(text);
        if (read instanceof ParsedQuantity.Malformed bad) {
            problems.add(Problem.Kind.NOT_A_QUANTITY, below(place, key), text, bad.reason(), "", bad.remedy());
            return Optional.empty();
        }
        return Optional.of((Stated) read);
    }

    private static Place below(Place place, String key) {
        return new Place(place.file(), place.line(), place.path() + " / " + key);
    }

    private void rate(BusSignal s) {
        Optional<String> of = s.rateOf();
        if (of.isEmpty() || !dimensions.containsKey(s.name())) {
            return;
        }
        Place place = below(s.place(), "rate_of");
        Dimension position = dimensions.get(of.get());
        if (position == null) {
            String remedy = Spelling.nearest(of.get(), List.copyOf(dimensions.keySet()))
                    .map(n -> "Nearest: " + n + ".")
                    .orElse("Name one of the signals of this capture.");
            problems.add(
                    Problem.Kind.UNKNOWN_NAME,
                    place,
                    of.get(),
                    "there is no signal " + Problems.quoted(of.get()),
                    "",
                    remedy);
        } else if (!position.over(Dimension.TIME).equals(dimensions.get(s.name()))) {
            problems.add(
                    Problem.Kind.CONTRADICTION,
                    place,
                    of.get(),
                    s.name() + " cannot be the rate of " + of.get() + ": their units do not go together",
                    "deg and deg/s, turns and rpm, m and m/s",
                    "Correct the unit in scale.");
        } else {
            rates.put(s.name(), of.get());
        }
    }

    /** Follows the signals while {@code traffic} follows the bus. */
    FrameSink beside(Traffic traffic) {
        if (traces.isEmpty()) {
            return traffic;
        }
        List<FrameSink> all = new ArrayList<>(traces.values());
        all.add(traffic);
        return new Both(List.copyOf(all));
    }

    /** Speeds against their positions, after the capture has gone by. */
    List<SignalScale> scales() {
        List<SignalScale> all = new ArrayList<>();
        rates.forEach((speed, position) -> {
            SignalTrace v = traces.get(speed);
            SignalTrace x = traces.get(position);
            if (v != null && x != null) {
                SignalScale.of(x, v).ifPresent(all::add);
            }
        });
        return all;
    }

    /** Hands each frame to several sinks. */
    private record Both(List<FrameSink> sinks) implements FrameSink {
        @Override
        public void frame(Frame frame) {
            for (FrameSink sink : sinks) {
                sink.frame(frame);
            }
        }

        @Override
        public void lost(long frames) {
            for (FrameSink sink : sinks) {
                sink.lost(frames);
            }
        }
    }
}
