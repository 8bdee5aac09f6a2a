package servowright.engine.worksheet.bus;

import java.util.ArrayList;
import java.util.List;
import servowright.engine.bus.FdTolerance;
import servowright.engine.known.Outcome;
import servowright.engine.known.Problem;
import servowright.engine.known.Term;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.Worksheet;

/** What the clocks of a bus with two rates may deviate. */
public final class FdClockToleranceSheet implements Worksheet {
    private static final String SOURCE =
            "Mutter, Robustness of a CAN FD bus system, iCC 2013 (recalled, text not opened)";
    private static final List<String> FORMULAS = List.of(
            "{df1} = sjw / (20 N), nominal",
            "{df2} = min(ps1, ps2) / (2 (13 N − ps2)), nominal",
            "{df3} = sjw / (20 N), data phase",
            "{df4} = min(ps1, ps2) / (2 ((6 N_d − ps2_d) m_d / {m} + 7 N)), ps1 and ps2 nominal",
            "{df5} = (sjw_d − max(0, {m} / m_d − 1)) / (2 ((2 N − ps2) {m} / m_d + ps2_d + 4 N_d))");
    private static final List<String> NAMES =
            List.of("between_edges", "after_error", "data_between_edges", "data_after_error", "at_rate_switch");

    private static final Declaration DECLARATION = new Declaration(
            "fd-clock-tolerance",
            "Clock tolerance with two bit rates",
            "Five conditions on the clock of each node of an FD bus; the smallest counts. Classical frames on the same bus"
                    + " still need the first two.",
            inputs(),
            List.of(
                    new Result("bit_rate", "nominal bit rate", "bit/s"),
                    new Result("data_rate", "bit rate of the data phase", "bit/s"),
                    new Result("sample_point", "nominal sample point", "%"),
                    new Result("data_sample_point", "sample point of the data phase", "%"),
                    new Result("between_edges", "ten nominal bits without an edge", "%"),
                    new Result("after_error", "after an error in the nominal phase", "%"),
                    new Result("data_between_edges", "ten data bits without an edge", "%"),
                    new Result("data_after_error", "after an error in the data phase", "%"),
                    new Result("at_rate_switch", "from the nominal into the data phase", "%"),
                    new Result("clock_tolerance", "what each clock may deviate", "%")),
            List.of(SOURCE));

    private static List<Input> inputs() {
        List<Input> inputs = new ArrayList<>(List.of(BusInputs.clock()));
        inputs.addAll(TimingInputs.NOMINAL.inputs());
        inputs.addAll(TimingInputs.DATA.inputs());
        return inputs;
    }

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public List<Problem> contradictions(Inputs inputs) {
        List<Problem> problems =
                new ArrayList<>(TimingInputs.NOMINAL.check(DECLARATION, inputs).problems());
        problems.addAll(TimingInputs.DATA.check(DECLARATION, inputs).problems());
        return problems;
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs)
                .needs("clock")
                .needs(TimingInputs.NOMINAL.names())
                .needs(TimingInputs.DATA.names())
                .work(FdClockToleranceSheet::fill);
    }

    private static void fill(Calculation c) {
        var nominal = TimingInputs.NOMINAL.timing(c);
        var data = TimingInputs.DATA.timing(c);
        Term clock = c.given("f", "clock");
        Term m = c.given("m", "prescaler");
        c.result("bit_rate", "{rate} = {f} / ({m} N)", SOURCE, x -> nominal.bitsPerSecond(), clock, m);
        c.result("data_rate", "{rate d} = {f} / (m_d N_d)", SOURCE, x -> data.bitsPerSecond(), clock);
        c.result("sample_point", "{SP} = (1 + prop + ps1) / N", SOURCE, x -> nominal.samplePoint());
        c.result("data_sample_point", "{SP d} = (1 + prop_d + ps1_d) / N_d", SOURCE, x -> data.samplePoint());
        FdTolerance tolerance = FdTolerance.of(nominal, data);
        List<Term> all = new ArrayList<>();
        for (int i = 0; i < NAMES.size(); i++) {
            double condition = tolerance.conditions()[i];
            all.add(c.result(NAMES.get(i), FORMULAS.get(i), SOURCE, x -> condition, m));
        }
        c.result(
                "clock_tolerance",
                "{df} = smallest of {df1}, {df2}, {df3}, {df4}, {df5}",
                SOURCE,
                x -> tolerance.least(),
                all.toArray(Term[]::new));
    }
}
