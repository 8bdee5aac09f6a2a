package servowright.engine.worksheet.bus;

import java.util.List;
import servowright.engine.bus.Polling;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Problem;
import servowright.engine.known.Term;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Contradictions;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.UsualInputs;
import servowright.engine.worksheet.Worksheet;

/** A cycle in which a host asks its axes in turn, against one in which all are asked at once. */
public final class PollingCycleSheet implements Worksheet {
    private static final String SUM =
            "sum of what happens one after another; frames as in frame-length, most stuff bits";

    private static final Declaration DECLARATION = new Declaration(
            "polling-cycle",
            "Asking axes in turn, or all at once",
            "Longest cycle when each axis is asked only after the one before has answered, when one that is dead costs its"
                    + " time-out, and when all are asked first. Other traffic comes on top.",
            List.of(
                    Input.count("axes", "axes that are asked", 1, 200, "8"),
                    Input.count("command", "bytes of a request", 0, 64, "8"),
                    Input.count("reply", "bytes of an answer", 0, 64, "8"),
                    BusInputs.format(),
                    BusInputs.identifier(),
                    BusInputs.rate(),
                    BusInputs.dataRate(),
                    BusInputs.span("axis_delay", "from the request to the queued answer", "0.3 ms")
                            .orElse("0 ms"),
                    BusInputs.span("host_delay", "from the answer to the next request, adapter and program", "1 ms")
                            .orElse("0 ms"),
                    Input.count("dead", "axes that do not answer", 0, 200, "1").orElse("0"),
                    UsualInputs.time("time_out", "how long the host waits for an axis that does not answer", "10 ms")),
            List.of(
                    new Result("round_trip", "one axis, from its request to the next one", "us"),
                    new Result("cycle", "all axes asked in turn", "ms"),
                    new Result("cycle_rate", "cycles in a second", "Hz"),
                    new Result("cycle_with_dead", "the same when some do not answer", "ms"),
                    new Result("cycle_at_once", "all axes asked first, then all answers", "ms"),
                    new Result("rate_at_once", "cycles in a second when all are asked at once", "Hz")),
            List.of(SUM));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public List<Problem> contradictions(Inputs in) {
        boolean tooManyDead = in.known("dead").isPresent()
                && in.known("axes").filter(n -> dead(in) > n.si()).isPresent();
        return BusInputs.frames(new Contradictions(DECLARATION), in, "command", "reply")
                .when(tooManyDead, "dead", "more axes do not answer than there are", "")
                .problems();
    }

    private static double dead(Inputs in) {
        return in.known("dead").map(d -> d.si()).orElse(0.0);
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return BusInputs.withRates(Calculation.of(DECLARATION, inputs))
                .needs("axes", "command", "reply", "rate")
                .needs(
                        dead(inputs) == 0 || inputs.has("time_out"),
                        "time-out of an axis that does not answer",
                        "give time_out, for example 10 ms")
                .work(PollingCycleSheet::fill);
    }

    private static void fill(Calculation c) {
        int axes = c.count("axes");
        Term n = c.given("n", "axes");
        Term rate = c.given("rate", "rate");
        Term axis = c.given("t axis", "axis_delay");
        Term host = c.given("t host", "host_delay");
        Polling polling = new Polling(frame(c, "command"), frame(c, "reply"), whole(axis), whole(host));
        Term round = c.result(
                "round_trip",
                "{t} = C request + {t axis} + C answer + {t host}, at {rate}",
                SUM,
                x -> 1e-9 * polling.roundTripNs(),
                axis,
                host,
                rate);
        Term cycle = c.result("cycle", "{T} = {n} {t}", SUM, x -> x[0] * x[1], n, round);
        c.result("cycle_rate", "{f} = 1 / {T}", SUM, x -> 1 / x[0], cycle);
        Term together = c.result(
                "cycle_at_once",
                "{T at once} = {n} (C request + C answer) + {t axis} + {t host}",
                SUM,
                x -> 1e-9 * polling.streamingNs(axes),
                n,
                axis,
                host);
        c.result("rate_at_once", "{f at once} = 1 / {T at once}", SUM, x -> 1 / x[0], together);
        if (c.count("dead") > 0) {
            withDead(c, polling, round);
        }
    }

    private static void withDead(Calculation c, Polling polling, Term round) {
        int axes = c.count("axes");
        int dead = c.count("dead");
        Term wait = c.given("t out", "time_out");
        c.result(
                "cycle_with_dead",
                "{T dead} = (n − {dead}) {t} + {dead} (C request + {t out})",
                SUM,
                x -> 1e-9 * polling.cycleNs(axes, dead, whole(wait)),
                c.given("dead", "dead"),
                round,
                wait);
        c.remark(Phrase.of("one axis that is dead slows all others: ask all at once, or leave it out after a few"
                + " time-outs and say so"));
    }

    private static long whole(Term time) {
        return Math.round(1e9 * time.value().si());
    }

    /** The longest frame with that many bytes, ns. */
    private static long frame(Calculation c, String bytes) {
        long bitNs = BusInputs.bitNs(c.given("", "rate").value().si());
        long dataNs = c.term("", "data_rate")
                .map(d -> BusInputs.bitNs(d.value().si()))
                .orElse(bitNs);
        return BusInputs.longestNs(c.inputs(), c.count(bytes), bitNs, dataNs);
    }
}
