package servowright.engine.worksheet.bus;

import java.util.List;
import java.util.Optional;
import servowright.engine.bus.FaultModel;
import servowright.engine.bus.FifoQueue;
import servowright.engine.bus.Message;
import servowright.engine.bus.ResponseTime;
import servowright.engine.bus.ResponseTime.Schedule;
import servowright.engine.bus.TransmitBuffers;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Problem;
import servowright.engine.known.Term;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Contradictions;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.Worksheet;

/** Guaranteed response times of the messages of a bus. */
public final class ResponseTimesSheet implements Worksheet {
    private static final String PRIORITY =
            "Davis, Burns, Bril, Lukkien, Real-Time Systems 35 (2007) 239-272 (abstract seen," + " equations recalled)";
    private static final String QUEUE =
            "Davis, Kollmann, Pollex, Slomka, ECRTS 2011, 45-56 (abstract seen, equation recalled)";

    private static final String FEW =
            "after Khan, Bril, Navet, WFCS 2010 (abstract seen); the bound is derived here and coarser";

    /** How a node sends what it has. */
    private enum Way {
        PRIORITIES(
                PRIORITY, "{R} = largest over q of {J} + w − q {T} + {C}, w = E + B + q {C} + Σ ⌈(w + J + {τ}) / T⌉ C"),
        QUEUES(QUEUE, "{R} = w + {C}, w = max(B, C most) + Σ C of the queue − {C} + Σ ⌈(w + J + f + {τ}) / T⌉ C"),
        BUFFERS(
                FEW,
                "{R} = late + largest over q of {J} + w − q {T} + {C}, late = w + C of the first lower message to leave the"
                        + " buffers, in J of all");

        private final String source;
        private final String formula;

        Way(String source, String formula) {
            this.source = source;
            this.formula = formula;
        }

        static Way of(Inputs inputs, MessageSet set) {
            if (!set.queued()) {
                return PRIORITIES;
            }
            return inputs.has("buffers") ? BUFFERS : QUEUES;
        }
    }

    private static final Declaration DECLARATION = new Declaration(
            "response-times",
            "Guaranteed response times on the bus",
            "Longest time from the event to the last bit of each message, every instance of the busy period looked at, with"
                    + " the most stuff bits, jitter and errors. A frame counts to the end of its intermission of 3 bits.",
            inputs(),
            List.of(
                    new Result("verdict", "whether every message makes its deadline", ""),
                    new Result("utilisation", "share of the bus taken at the most", "%"),
                    new Result("late", "messages that miss their deadline or have no bound", ""),
                    new Result("send_time", "longest time the message asked for holds the bus", "us"),
                    new Result("response", "longest response time of the message asked for", "ms"),
                    new Result("response_to_end", "the same to the end of the frame, without intermission", "ms"),
                    new Result("busy_period", "length of its busy period", "ms"),
                    new Result("instances", "instances of it in the busy period", ""),
                    new Result("slack", "deadline less response time", "ms"),
                    new Result("schedule", "whether it makes its deadline", "")),
            List.of(PRIORITY, QUEUE, FEW));

    private static List<Input> inputs() {
        return List.of(
                MessageSet.input(),
                BusInputs.rate(),
                BusInputs.dataRate(),
                BusInputs.format(),
                BusInputs.identifier(),
                Input.count(
                        "buffers",
                        "transmit buffers of each node under queue, the first by priority out of them and none taken back;"
                                + " without it a queue is first in, first out",
                        1,
                        64,
                        "3"),
                Input.text("asked", "name of the message asked for; without it the last one", "steer"),
                BusInputs.bits("foreign", "longest frame that an unknown node may send", "135 bit")
                        .orElse("0 bit"),
                Input.count("errors", "errors at the worst instant", 0, 1000, "1")
                        .orElse("0"),
                BusInputs.span("error_interval", "time after which another error comes", "10 ms"),
                BusInputs.bits("recovery", "bits that signalling and recovery of an error take", "31 bit")
                        .orElse("31 bit"));
    }

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public List<Problem> contradictions(Inputs in) {
        boolean fd = BusInputs.isFd(in);
        boolean incomplete =
                in.all("message").stream().anyMatch(m -> m.cell("period").isEmpty());
        boolean large = in.all("message").stream()
                .flatMap(m -> m.cell("bytes").stream())
                .anyMatch(b -> b.known().orElseThrow().si() > 8);
        boolean errors = in.known("errors").filter(e -> e.si() > 0).isPresent() || in.has("error_interval");
        boolean queued =
                in.all("message").stream().anyMatch(m -> m.cell("queue").isPresent());
        boolean unknown = in.first("asked")
                .filter(a -> in.all("message").stream()
                        .noneMatch(m -> MessageSet.text(m, "name").equals(a.text())))
                .isPresent();
        return new Contradictions(DECLARATION)
                .when(incomplete, "message", "a message needs its name, bytes and period", "")
                .when(!fd && large, "message", "a classical frame carries at most 8 bytes", "Give format=fd.")
                .when(!fd && in.has("data_rate"), "data_rate", "classical frames have one rate", "Give format=fd.")
                .when(queued && errors, "errors", "errors are not worked out with queues", "Leave one of them out.")
                .when(!queued && in.has("buffers"), "buffers", "no message says by its queue which node it is of", "")
                .when(unknown, "asked", "no message has this name", "")
                .problems();
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return BusInputs.withRates(Calculation.of(DECLARATION, inputs))
                .needs("message", "rate")
                .work(ResponseTimesSheet::fill);
    }

    private static void fill(Calculation c) {
        Term rate = c.given("rate", "rate");
        long bitNs = BusInputs.bitNs(rate.value().si());
        long dataNs = c.term("data rate", "data_rate")
                .map(d -> BusInputs.bitNs(d.value().si()))
                .orElse(bitNs);
        MessageSet set = MessageSet.of(c.inputs(), bitNs, dataNs);
        long foreignNs = Math.round(c.given("", "foreign").value().si()) * bitNs;
        Way way = Way.of(c.inputs(), set);
        List<ResponseTime> all = switch (way) {
            case PRIORITIES -> ResponseTime.of(set.messages(), bitNs, faults(c, bitNs), foreignNs);
            case QUEUES -> FifoQueue.of(set.messages(), set.groups(), bitNs);
            case BUFFERS -> TransmitBuffers.of(set.messages(), set.nodes(), set.buffers(c.count("buffers")), bitNs);
        };
        long late = all.stream()
                .filter(r -> r.schedule() != Schedule.MEETS_DEADLINE)
                .count();
        c.word("verdict", late == 0 ? "every message makes its deadline" : "not every message makes its deadline");
        c.result("utilisation", "{U} = Σ C / T", PRIORITY, x -> ResponseTime.utilisation(set.messages()), rate);
        c.result("late", "{late} = messages with R above D", PRIORITY, x -> late, rate);
        int asked = c.inputs().first("asked").map(a -> set.place(a.text())).orElse(all.size() - 1);
        one(c, all.get(asked), bitNs, way);
        if (!c.inputs().has("asked")) {
            all.forEach(r -> c.remark(line(r)));
        }
    }

    private static void one(Calculation c, ResponseTime found, long bitNs, Way way) {
        Message message = found.message();
        String source = way.source;
        Term tau = time("τ", bitNs, "bit time");
        Term send = c.result(
                "send_time", "{C} = bits of the longest frame · {τ}", source, x -> message.sendNs() * 1e-9, tau);
        c.word("schedule", words(found.schedule()));
        if (found.schedule() == Schedule.NO_BOUND) {
            c.remark(Phrase.of("the load at this priority and above reaches all there is: no bound"));
            return;
        }
        Term period = time("T", message.periodNs(), "period of the message");
        Term deadline = time("D", message.deadlineNs(), "deadline of the message");
        Term jitter = time("J", message.jitterNs(), "jitter of the message");
        Term worst = c.result("response", way.formula, source, x -> found.worstNs() * 1e-9, send, tau, period, jitter);
        c.result("response_to_end", "{R end} = {R} − 3 · {τ}", source, x -> x[0] - 3 * x[1], worst, tau);
        c.result("slack", "{slack} = {D} − {R}", source, x -> x[0] - x[1], deadline, worst);
        if (way == Way.PRIORITIES) {
            c.result("busy_period", "{t} = E + B + Σ ⌈(t + J) / T⌉ C", source, x -> found.busyNs() * 1e-9, send);
            int instances = found.instances().size();
            c.result("instances", "{Q} = ⌈(t + {J}) / {T}⌉", source, x -> instances, jitter, period);
        }
    }

    private static FaultModel faults(Calculation c, long bitNs) {
        int errors = c.count("errors");
        int recovery = (int) Math.round(c.given("", "recovery").value().si());
        Optional<Term> interval = c.term("", "error_interval");
        if (interval.isEmpty()) {
            return FaultModel.burst(errors, recovery, bitNs);
        }
        long every = Math.round(1e9 * interval.get().value().si());
        return FaultModel.burstAndInterval(Math.max(1, errors), every, recovery, bitNs);
    }

    private static Term time(String symbol, long ns, String what) {
        return Term.of(symbol, Known.exact(new Quantity(ns * 1e-9, Dimension.TIME), Origin.DECLARED, what), "us");
    }

    private static String words(Schedule schedule) {
        return switch (schedule) {
            case MEETS_DEADLINE -> "makes its deadline";
            case LATE -> "late";
            case NO_BOUND -> "no bound";
        };
    }

    private static Phrase line(ResponseTime r) {
        Phrase phrase = r.schedule() == Schedule.NO_BOUND
                ? Phrase.of("{name}: no bound")
                : Phrase.of("{name}: {response} of {deadline}, " + words(r.schedule()))
                        .with("response", new Quantity(r.worstNs() * 1e-9, Dimension.TIME), "ms")
                        .with("deadline", new Quantity(r.message().deadlineNs() * 1e-9, Dimension.TIME), "ms");
        return phrase.with("name", r.message().name());
    }
}
