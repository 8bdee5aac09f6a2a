package servowright.engine.worksheet.bus;

import java.util.List;
import servowright.engine.bus.DelayCompensation;
import servowright.engine.known.Outcome;
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

/** The highest data rate without delay compensation. */
public final class LoopDelaySheet implements Worksheet {
    private static final String SOURCE =
            "a sender must see its own bit before it samples (derived); delay compensation as in"
                    + " ISO 11898-1, 11.3.3 (seen as cited in a public kernel source)";

    private static final Declaration DECLARATION = new Declaration(
            "loop-delay",
            "Data rate without delay compensation",
            "Highest bit rate of the data phase that the delay through the transceiver and back allows when delay"
                    + " compensation is off. With it on the limit is another.",
            List.of(
                    Input.quantity(
                                    "loop_delay",
                                    Dimension.TIME,
                                    "delay from the sender's output to its input",
                                    "150 ns")
                            .within(Quantity.of(1, "ns"), Quantity.of(1, "ms")),
                    Input.quantity("sample_point", Dimension.NUMBER, "sample point of the data phase", "80 %")
                            .within(Quantity.number(0.3), Quantity.number(0.95)),
                    BusInputs.dataRate()),
            List.of(
                    new Result("highest_rate", "highest data rate", "Mbit/s"),
                    new Result("sample_time", "time from the start of the bit to its sample", "ns"),
                    new Result("margin", "what is left between the bit and its sample", "ns"),
                    new Result("verdict", "whether the data rate is possible", "")),
            List.of(SOURCE));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs)
                .needs("loop_delay", "sample_point")
                .work(LoopDelaySheet::fill);
    }

    private static void fill(Calculation c) {
        Term loop = c.given("t loop", "loop_delay");
        Term point = c.given("SP", "sample_point");
        c.result(
                "highest_rate",
                "{rate most} = {SP} / {t loop}",
                SOURCE,
                x -> DelayCompensation.highestRateWithout(x[1] * 1e9, x[0]),
                point,
                loop);
        c.term("rate", "data_rate").ifPresent(rate -> {
            c.result("sample_time", "{t} = {SP} / {rate}", SOURCE, x -> x[0] / x[1], point, rate);
            Term left = c.result(
                    "margin",
                    "{margin} = {SP} / {rate} − {t loop}",
                    SOURCE,
                    x -> x[0] / x[1] - x[2],
                    point,
                    rate,
                    loop);
            c.word("verdict", left.value().si() >= 0 ? "possible" : "not without delay compensation");
        });
    }
}
