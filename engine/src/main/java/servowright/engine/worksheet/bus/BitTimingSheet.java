package servowright.engine.worksheet.bus;

import java.util.ArrayList;
import java.util.List;
import servowright.engine.bus.BitTiming;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Problem;
import servowright.engine.known.Term;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.Worksheet;

/** What a bit timing gives: rate, sample point, clock tolerance and length of the bus. */
public final class BitTimingSheet implements Worksheet {
    private static final String BIT =
            "a bit is 1 + prop + ps1 + ps2 quanta, sampled after ps1 (ISO 11898-1, recalled; seen"
                    + " in controller manuals)";
    private static final String CLOCK =
            "Hartwich and Bassemir, The configuration of the CAN bit timing, 6th iCC (seen as"
                    + " quoted in controller manuals)";
    private static final String PROP =
            "the propagation segment covers the way there and back (seen in controller manuals)";

    private static final Declaration DECLARATION = new Declaration(
            "bit-timing",
            "What a bit timing gives",
            "Rate, sample point, what each node's clock may deviate, and the length of bus that the propagation segment"
                    + " covers. One rate; for two see fd-clock-tolerance.",
            inputs(),
            List.of(
                    new Result("bit_rate", "bit rate that is really achieved", "bit/s"),
                    new Result("quanta", "quanta in a bit", ""),
                    new Result("quantum", "length of a quantum", "ns"),
                    new Result("sample_point", "where in the bit it is sampled", "%"),
                    new Result("after_error", "clock deviation that resynchronisation after an error bears", "%"),
                    new Result("between_edges", "clock deviation that ten bits without an edge bear", "%"),
                    new Result("clock_tolerance", "what each clock may deviate", "%"),
                    new Result("clock", "whether the clocks are good enough", ""),
                    new Result("needed_prop", "propagation segment that the bus needs, quanta", ""),
                    new Result(
                            "short_of", "quanta missing before the sample point; negative when there are enough", ""),
                    new Result("longest_bus", "longest bus that the propagation segment covers", "m")),
            List.of(BIT, CLOCK, PROP));

    private static List<Input> inputs() {
        List<Input> inputs = new ArrayList<>(List.of(BusInputs.clock()));
        inputs.addAll(TimingInputs.NOMINAL.inputs());
        inputs.add(Input.quantity("deviation", Dimension.NUMBER, "what the clocks deviate at the most", "0.5 %")
                .within(Quantity.number(0), Quantity.number(0.2)));
        inputs.add(Input.quantity("bus_length", Dimension.LENGTH, "length of the bus", "40 m")
                .within(Quantity.of(0, "m"), Quantity.of(1e5, "m")));
        inputs.add(BusInputs.span("node_delay", "one-way delay of a node's parts, sending and receiving", "210 ns"));
        inputs.add(Input.quantity("cable_delay", Dimension.TIME.over(Dimension.LENGTH), "delay of the cable", "5 ns/m")
                .within(Quantity.of(3, "ns/m"), Quantity.of(20, "ns/m"))
                .orElse("5 ns/m"));
        return inputs;
    }

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public List<Problem> contradictions(Inputs inputs) {
        return TimingInputs.NOMINAL.check(DECLARATION, inputs).problems();
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs)
                .needs("clock")
                .needs(TimingInputs.NOMINAL.names())
                .work(BitTimingSheet::fill);
    }

    private static void fill(Calculation c) {
        BitTiming timing = TimingInputs.NOMINAL.timing(c);
        Term clock = c.given("f", "clock");
        Term m = c.given("m", "prescaler");
        Term prop = c.given("prop", "prop");
        Term ps1 = c.given("ps1", "ps1");
        Term ps2 = c.given("ps2", "ps2");
        Term n = c.result("quanta", "{N} = 1 + {prop} + {ps1} + {ps2}", BIT, x -> timing.quanta(), prop, ps1, ps2);
        Term tq = c.result("quantum", "{tq} = {m} / {f}", BIT, x -> timing.quantumNs() * 1e-9, m, clock);
        c.result("bit_rate", "{rate} = {f} / ({m} · {N})", BIT, x -> timing.bitsPerSecond(), clock, m, n);
        c.result("sample_point", "{SP} = (1 + {prop} + {ps1}) / {N}", BIT, x -> timing.samplePoint(), prop, ps1, n);
        Term one = c.result(
                "after_error",
                "{df1} = min({ps1}, {ps2}) / (2 (13 {N} − {ps2}))",
                CLOCK,
                x -> timing.toleranceAfterError(),
                ps1,
                ps2,
                n);
        Term two = c.result(
                "between_edges",
                "{df2} = {sjw} / (20 {N})",
                CLOCK,
                x -> timing.toleranceBetweenEdges(),
                c.given("sjw", "sjw"),
                n);
        Term both =
                c.result("clock_tolerance", "{df} = min({df1}, {df2})", CLOCK, x -> timing.clockTolerance(), one, two);
        c.term("deviation", "deviation").ifPresent(d -> clocks(c, d, both));
        c.term("d", "node_delay").ifPresent(delay -> length(c, timing, List.of(prop, tq, delay)));
    }

    private static void clocks(Calculation c, Term deviation, Term tolerance) {
        boolean good = deviation.value().si() <= tolerance.value().si();
        c.word("clock", good ? "good enough" : "not good enough");
        if (!good) {
            c.remark(Phrase.of(
                            "each clock may deviate by {tolerance}, these do by {deviation}: a wider jump width helps as"
                                    + " long as the phase segments allow it, a better clock always")
                    .with("tolerance", tolerance.value(), "%")
                    .with("deviation", deviation.value(), "%"));
        }
    }

    private static void length(Calculation c, BitTiming timing, List<Term> terms) {
        Term prop = terms.get(0);
        Term tq = terms.get(1);
        Term delay = terms.get(2);
        Term cable = c.given("t'", "cable_delay");
        c.result(
                "longest_bus",
                "{L} = ({prop} · {tq} / 2 − {d}) / {t'}",
                PROP,
                x -> timing.longestBusMetre(x[2] * 1e9, x[3] * 1e9),
                prop,
                tq,
                delay,
                cable);
        c.term("L", "bus_length").ifPresent(bus -> {
            Term needed = c.result(
                    "needed_prop",
                    "{prop needed} = 2 ({L} · {t'} + {d}) / {tq}",
                    PROP,
                    x -> timing.neededProp(x[0], x[2] * 1e9, x[1] * 1e9),
                    bus,
                    cable,
                    delay,
                    tq);
            c.result(
                    "short_of",
                    "{short} = {prop needed} − ({prop} + {ps1})",
                    PROP,
                    x -> x[0] - x[1] - x[2],
                    needed,
                    prop,
                    c.given("ps1", "ps1"));
        });
    }
}
