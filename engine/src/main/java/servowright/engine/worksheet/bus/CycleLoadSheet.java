package servowright.engine.worksheet.bus;

import java.util.List;
import java.util.Optional;
import servowright.engine.bus.ClassicalFrame;
import servowright.engine.bus.CycleLoad;
import servowright.engine.bus.FdFrame;
import servowright.engine.bus.IdLength;
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

/** How many axes a bus carries at a cycle rate. */
public final class CycleLoadSheet implements Worksheet {
    private static final String SUM = "sum of the frames of a cycle";
    private static final String BITS = "lengths as in frame-length";

    private static final Declaration DECLARATION = new Declaration(
            "cycle-load",
            "Axes on one bus",
            "Load of a bus on which each axis gets one command and sends one reply in every cycle, with as few and as many"
                    + " stuff bits as there can be. Other traffic, errors and pauses of the nodes come on top.",
            List.of(
                    Input.count("axes", "axes on the bus", 1, 200, "8"),
                    Input.count("command", "bytes of a command", 0, 64, "8"),
                    Input.count("reply", "bytes of a reply", 0, 64, "8"),
                    Input.choice("sync", "whether an empty frame starts each cycle", "no", "yes")
                            .orElse("no"),
                    BusInputs.format(),
                    BusInputs.identifier(),
                    BusInputs.rate(),
                    BusInputs.dataRate(),
                    UsualInputs.frequency("cycle_rate", "cycles in a second", "500 Hz")),
            List.of(
                    new Result("shortest_cycle", "time of a cycle without stuff bits", "us"),
                    new Result("longest_cycle", "time of a cycle with the most stuff bits", "us"),
                    new Result("highest_rate", "highest cycle rate without stuff bits", "Hz"),
                    new Result("safe_rate", "highest cycle rate with the most stuff bits", "Hz"),
                    new Result("least_load", "share of the bus without stuff bits", "%"),
                    new Result("most_load", "share of the bus with the most stuff bits", "%"),
                    new Result("axes_that_fit", "axes that fit without stuff bits", ""),
                    new Result("axes_safe", "axes that fit with the most stuff bits", ""),
                    new Result("bits_left", "bits that the cycle rate leaves for a frame", "bit"),
                    new Result("verdict", "whether the bus carries it", "")),
            List.of(SUM, BITS));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public List<Problem> contradictions(Inputs in) {
        return BusInputs.frames(new Contradictions(DECLARATION), in, "command", "reply")
                .problems();
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return BusInputs.withRates(Calculation.of(DECLARATION, inputs))
                .needs("axes", "command", "reply", "rate")
                .work(CycleLoadSheet::fill);
    }

    private static void fill(Calculation c) {
        int axes = c.count("axes");
        Term n = c.given("n", "axes");
        Term rate = c.given("rate", "rate");
        CycleLoad least = load(c, false);
        CycleLoad most = load(c, true);
        Term shortest = c.result(
                "shortest_cycle", "{t} = {n} (command + reply) + sync", BITS, x -> least.cycleSecond(axes), n, rate);
        Term longest = c.result(
                "longest_cycle", "{t most} = {n} (command + reply) + sync", BITS, x -> most.cycleSecond(axes), n, rate);
        c.result("highest_rate", "{f} = 1 / {t}", SUM, x -> 1 / x[0], shortest);
        c.result("safe_rate", "{f safe} = 1 / {t most}", SUM, x -> 1 / x[0], longest);
        Optional<Term> cycle = c.term("f", "cycle_rate");
        if (cycle.isPresent()) {
            Term f = cycle.get();
            double hertz = f.value().si();
            c.result("least_load", "{load} = {t} · {f}", SUM, x -> least.load(axes, x[1]), shortest, f);
            c.result("most_load", "{load most} = {t most} · {f}", SUM, x -> most.load(axes, x[1]), longest, f);
            c.result(
                    "axes_that_fit",
                    "{n fit} = ⌊(1/{f} − sync) / (command + reply)⌋",
                    SUM,
                    x -> least.mostAxes(x[0]),
                    f);
            c.result("axes_safe", "{n safe} = the same with the most stuff bits", SUM, x -> most.mostAxes(x[0]), f);
            c.result("bits_left", "{bits} = {rate} / ({f} · 2 · {n})", SUM, x -> x[0] / (x[1] * 2 * x[2]), rate, f, n);
            verdict(c, least.load(axes, hertz), most.load(axes, hertz));
        }
    }

    private static void verdict(Calculation c, double least, double most) {
        if (most <= 1) {
            c.word("verdict", "carries it");
        } else if (least <= 1) {
            c.word("verdict", "only with few stuff bits");
            c.remark(Phrase.of("what the frames happen to hold decides whether they fit: do not build on it"));
        } else {
            c.word("verdict", "cannot carry it");
            c.remark(Phrase.of(
                    "not even frames without a single stuff bit fit: fewer bytes, a slower cycle, FD frames or a"
                            + " second bus"));
        }
    }

    private static CycleLoad load(Calculation c, boolean most) {
        double command = seconds(c, c.count("command"), most);
        double reply = seconds(c, c.count("reply"), most);
        return new CycleLoad(command, reply, BusInputs.yes(c.inputs(), "sync") ? seconds(c, 0, most) : 0);
    }

    private static double seconds(Calculation c, int bytes, boolean most) {
        IdLength id = BusInputs.id(c.inputs());
        double rate = c.given("", "rate").value().si();
        if (!BusInputs.isFd(c.inputs())) {
            return (most ? ClassicalFrame.mostBits(id, bytes) : ClassicalFrame.leastBits(id, bytes)) / rate;
        }
        int code = FdFrame.codeFor(bytes);
        FdFrame frame = most ? FdFrame.most(id, code, true) : FdFrame.least(id, code, true);
        return frame.nominalBits() / rate
                + frame.dataBits() / c.given("", "data_rate").value().si();
    }
}
