package servowright.engine.worksheet.bus;

import java.util.ArrayList;
import java.util.List;
import servowright.engine.bus.ClassicalFrame;
import servowright.engine.bus.FdFrame;
import servowright.engine.bus.FrameBits;
import servowright.engine.known.Outcome;
import servowright.engine.known.Problem;
import servowright.engine.known.Term;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Contradictions;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.Worksheet;

/** How many bits a frame takes, at least and at most, and how long. */
public final class FrameLengthSheet implements Worksheet {
    private static final String CLASSICAL =
            "Davis, Burns, Bril, Lukkien, Real-Time Systems 35 (2007) 239-272, equation (1)"
                    + " (recalled); fields seen in public kernel sources";
    private static final String FD =
            "fields of ISO 11898-1:2015 as a public kernel header lists them (seen); most stuff bits"
                    + " counted exactly with the fixed bits held (computed)";
    private static final String REAL = "checksum and stuffing of Bosch CAN Specification 2.0, 1991, part A (recalled)";
    private static final String TIME = "bits over bit rate";

    private static final Declaration DECLARATION = new Declaration(
            "frame-length",
            "Length of a CAN frame",
            "Bits of a frame from its start to the end of the intermission, without stuff bits and with the most there can be,"
                    + " and how long it holds the bus. With identifier and payload also the very frame. Error frames and"
                    + " retransmission are not in it.",
            inputs(),
            List.of(
                    new Result("sent_bytes", "bytes that are really sent", ""),
                    new Result("least_bits", "bits without any stuff bit", "bit"),
                    new Result("most_bits", "bits with the most stuff bits", "bit"),
                    new Result("least_nominal", "of these at the nominal rate, least", "bit"),
                    new Result("least_data", "at the data rate, least", "bit"),
                    new Result("most_nominal", "at the nominal rate, most", "bit"),
                    new Result("most_data", "at the data rate, most", "bit"),
                    new Result("exact_bits", "bits of this very frame", "bit"),
                    new Result("least_time", "shortest time it holds the bus", "us"),
                    new Result("most_time", "longest time it holds the bus", "us"),
                    new Result("exact_time", "time this very frame holds the bus", "us"),
                    new Result("frames_per_second", "frames that fit into a second at their longest", "Hz")),
            List.of(CLASSICAL, FD, REAL));

    private static List<Input> inputs() {
        return List.of(
                Input.count("bytes", "bytes of data", 0, 64, "8"),
                BusInputs.format(),
                BusInputs.identifier(),
                Input.choice("remote", "whether it is a remote frame", "no", "yes")
                        .orElse("no"),
                Input.choice("rate_switch", "whether an FD frame switches to the data rate", "yes", "no")
                        .orElse("yes"),
                BusInputs.rate(),
                BusInputs.dataRate(),
                Input.text("number", "the identifier itself, hexadecimal", "181"),
                Input.text("payload", "the data itself, hexadecimal", "DE AD BE EF"));
    }

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public List<Problem> contradictions(Inputs in) {
        boolean fd = BusInputs.isFd(in);
        boolean remote = BusInputs.yes(in, "remote");
        int bytes = (int) in.known("bytes").map(b -> b.si()).orElse(0.0).doubleValue();
        Hexadecimal payload = Hexadecimal.of(in, "payload");
        Hexadecimal number = Hexadecimal.of(in, "number");
        return new Contradictions(DECLARATION)
                .when(!fd && bytes > 8, "bytes", "a classical frame carries at most 8 bytes", "Give format=fd.")
                .when(fd && remote, "remote", "there is no remote frame of the FD format", "Leave one of them out.")
                .when(!fd && in.has("data_rate"), "data_rate", "classical frames have one rate", "Give format=fd.")
                .when(fd && in.has("payload"), "payload", "the very bits are worked out for classical frames only", "")
                .when(!payload.readable(), "payload", "it is not hexadecimal bytes", "Write it like DE AD BE EF.")
                .when(payload.bytes().length > 8, "payload", "a classical frame carries at most 8 bytes", "")
                .when(!number.readable(), "number", "it is not a hexadecimal number", "Write it like 181.")
                .when(
                        number.value() > (1L << BusInputs.id(in).bits()) - 1,
                        "number",
                        "it is longer than the identifier",
                        "Give identifier=\"29 bit\".")
                .problems();
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs)
                .needs(
                        inputs.has("bytes") || inputs.has("payload") || BusInputs.yes(inputs, "remote"),
                        "bytes of data",
                        "give bytes, for example 8")
                .work(c -> {
                    if (BusInputs.isFd(inputs)) {
                        fd(c);
                    } else {
                        classical(c);
                    }
                });
    }

    private static void classical(Calculation c) {
        Inputs in = c.inputs();
        var id = BusInputs.id(in);
        boolean remote = BusInputs.yes(in, "remote");
        byte[] payload = Hexadecimal.of(in, "payload").bytes();
        int bytes = remote ? 0 : in.has("bytes") ? c.count("bytes") : payload.length;
        String region = id.bits() == 11 ? "34" : "54";
        Term s = c.result("sent_bytes", "{s} = bytes of data, none in a remote frame", CLASSICAL, x -> bytes);
        Term least = c.result(
                "least_bits",
                "{n least} = " + region + " + 8·{s} + 13",
                CLASSICAL,
                x -> ClassicalFrame.leastBits(id, bytes),
                s);
        Term most = c.result(
                "most_bits",
                "{n most} = {n least} + ⌊(" + region + " + 8·{s} − 1) / 4⌋",
                CLASSICAL,
                x -> remote ? ClassicalFrame.mostRemoteBits(id) : ClassicalFrame.mostBits(id, bytes),
                least,
                s);
        List<Term> exact = exact(c, remote, payload);
        c.term("rate", "rate").ifPresent(rate -> {
            time(c, "least_time", "t least", least, rate);
            Term longest = time(c, "most_time", "t most", most, rate);
            exact.forEach(bits -> time(c, "exact_time", "t", bits, rate));
            perSecond(c, longest);
        });
    }

    private static List<Term> exact(Calculation c, boolean remote, byte[] payload) {
        Inputs in = c.inputs();
        if (!in.has("number") || !(remote || in.has("payload"))) {
            return List.of();
        }
        var id = BusInputs.id(in);
        int number = (int) Hexadecimal.of(in, "number").value();
        int code = in.has("bytes") ? Math.min(8, c.count("bytes")) : 0;
        return List.of(c.result(
                "exact_bits",
                "{n} = bits of the frame with checksum, a bit put in after each five equal ones",
                REAL,
                x -> remote ? FrameBits.ofRemote(id, number, code) : FrameBits.ofData(id, number, payload)));
    }

    private static Term time(Calculation c, String result, String symbol, Term bits, Term rate) {
        String formula = "{" + symbol + "} = {" + bits.symbol() + "} / {rate}";
        return c.result(result, formula, TIME, x -> x[0] / x[1], bits, rate);
    }

    private static void perSecond(Calculation c, Term longest) {
        c.result("frames_per_second", "{f} = 1 / {t most}", TIME, x -> 1 / x[0], longest);
    }

    private static void fd(Calculation c) {
        Inputs in = c.inputs();
        var id = BusInputs.id(in);
        boolean fast = BusInputs.yes(in, "rate_switch");
        int code = FdFrame.codeFor(c.count("bytes"));
        FdFrame least = FdFrame.least(id, code, fast);
        FdFrame most = FdFrame.most(id, code, fast);
        Term p = c.result("sent_bytes", "{p} = next length that FD has", FD, x -> FdFrame.bytesOf(code));
        String counted = fast ? " up to and from the rate switch" : ", all of them, since the rate stays";
        Term a = c.result("least_nominal", "{a least} = bits" + counted, FD, x -> least.nominalBits(), p);
        Term b = c.result("least_data", "{b least} = bits of the data phase", FD, x -> least.dataBits(), p);
        Term aMost = c.result("most_nominal", "{a most} = the same with stuff bits", FD, x -> most.nominalBits(), p);
        Term bMost = c.result("most_data", "{b most} = the same with stuff bits", FD, x -> most.dataBits(), p);
        c.result("least_bits", "{n least} = {a least} + {b least}", FD, x -> x[0] + x[1], a, b);
        c.result("most_bits", "{n most} = {a most} + {b most}", FD, x -> x[0] + x[1], aMost, bMost);
        boolean timed = in.has("rate") && (!fast || in.has("data_rate"));
        if (timed) {
            Term rate = c.given("rate", "rate");
            Term data = fast ? c.given("data rate", "data_rate") : rate;
            phases(c, "least_time", "t least", List.of(a, b), rate, data);
            perSecond(c, phases(c, "most_time", "t most", List.of(aMost, bMost), rate, data));
        }
    }

    private static Term phases(Calculation c, String result, String symbol, List<Term> bits, Term rate, Term data) {
        List<Term> terms = new ArrayList<>(bits);
        terms.add(rate);
        terms.add(data);
        String formula = "{" + symbol + "} = {" + bits.get(0).symbol() + "} / {rate} + {"
                + bits.get(1).symbol() + "} / {" + data.symbol() + "}";
        return c.result(result, formula, TIME, x -> x[0] / x[2] + x[1] / x[3], terms.toArray(Term[]::new));
    }
}
