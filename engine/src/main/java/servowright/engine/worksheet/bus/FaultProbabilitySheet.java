package servowright.engine.worksheet.bus;

import java.util.List;
import servowright.engine.bus.FaultProbability;
import servowright.engine.known.Known;
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

/** How probable a response time is when faults come at random. */
public final class FaultProbabilitySheet implements Worksheet {
    private static final String SOURCE =
            "Broster, Burns, Rodríguez-Navas, Probabilistic analysis of CAN with faults, RTSS 2002"
                    + " (figures seen as published test values; the recurrence is derived and gives them)";

    private static final Declaration DECLARATION = new Declaration(
            "fault-probability",
            "Probability of a response time under random faults",
            "From the response times with 0, 1, 2 and more faults, as response-times gives them, the probability of the last"
                    + " of them. Faults are independent, each costs the longest retransmission.",
            List.of(
                    Input.quantity("response", Dimension.TIME, "response time with 0, 1, 2 ... faults", "1.028 ms")
                            .within(Quantity.of(1, "ns"), Quantity.of(1e4, "s"))
                            .repeatable(),
                    Input.quantity("fault_rate", Dimension.FREQUENCY, "faults in a second on average", "30 Hz")
                            .within(Quantity.of(0, "Hz"), Quantity.of(1e6, "Hz"))),
            List.of(
                    new Result("probability", "of just this response time", ""),
                    new Result("beyond", "of a longer one", "")),
            List.of(SOURCE));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs)
                .needs("response", "fault_rate")
                .work(FaultProbabilitySheet::fill);
    }

    private static void fill(Calculation c) {
        List<Double> responses = c.inputs().all("response").stream()
                .map(v -> v.known().map(Known::si).orElse(0.0))
                .toList();
        int last = responses.size() - 1;
        Term rate = c.given("λ", "fault_rate");
        Term worst = c.given("R", "response", last);
        c.result(
                "probability",
                "{P} = p(K, {R}) − Σ P_j p(K − j, {R} − R_j), p(n, t) = exp(−{λ} t) ({λ} t)^n / n!",
                SOURCE,
                x -> FaultProbability.of(responses, x[0]).get(last),
                rate,
                worst);
        c.result(
                "beyond",
                "{P more} = 1 − Σ P up to {R}",
                SOURCE,
                x -> 1
                        - FaultProbability.of(responses, x[0]).stream()
                                .mapToDouble(Double::doubleValue)
                                .sum(),
                rate,
                worst);
    }
}
