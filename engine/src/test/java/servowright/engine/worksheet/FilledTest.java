package servowright.engine.worksheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Problem;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

class FilledTest {
    private static final Declaration SHEET = new Declaration(
            "sample",
            "Sample",
            "For tests.",
            List.of(
                    Input.quantity("resistance", Dimension.RESISTANCE, "winding resistance", "0.2 ohm [two terminals]")
                            .statedAs(Basis.HOOK_UP),
                    Input.quantity("torque_constant", Dimension.TORQUE_CONSTANT, "torque constant", "0.1 N m/A")
                            .statedAs(Basis.both(Basis.CURRENT, Basis.SIDE)),
                    Input.quantity("supply", Dimension.VOLTAGE, "supply voltage", "24 V")
                            .within(Quantity.of(1, "V"), Quantity.of(100, "V")),
                    Input.count("slots", "slots", 3, 200, "12"),
                    Input.choice("material", "conductor", "copper", "aluminium"),
                    Input.quantity("reserve", Dimension.NUMBER, "share kept free", "10 %")
                            .orElse("10 %")),
            List.of(new Result("half", "half the resistance", "ohm")),
            List.of("none"));

    private static List<String> problems(String input, String... texts) {
        Filled filled = Filled.of(SHEET, Map.of(input, List.of(texts)));
        return filled instanceof Filled.Refused refused
                ? refused.problems().stream().map(Problem::text).toList()
                : List.of();
    }

    @Test
    void takes_the_bases_an_input_declares_and_refuses_others() {
        assertThat(problems("resistance", "0.2 ohm [two terminals, 20 degC, label]"))
                .isEmpty();
        assertThat(problems("torque_constant", "0.1 N m/A [q axis, load side]")).isEmpty();
        assertThat(problems("resistance", "0.2 ohm [line peak]"))
                .containsExactly("resistance: [line peak] is no basis of this figure."
                        + " Known here: two terminals, one against two, phase.");
        assertThat(problems("supply", "24 V [line peak]"))
                .containsExactly("supply: [line peak] is no basis of this figure. This figure has no basis.");
        assertThat(problems("resistance", "0.2 ohm [two terminal]"))
                .containsExactly("resistance: [two terminal] is not known. Nearest: two terminals.");
    }

    @Test
    void refuses_two_bases_of_one_kind() {
        assertThat(problems("torque_constant", "0.1 N m/A [q axis, six-step]"))
                .containsExactly("torque_constant: it has two bases, q axis and six-step. Keep one of them.");
    }

    @Test
    void gives_every_problem_at_once() {
        Filled filled = Filled.of(
                SHEET,
                Map.of(
                        "suply", List.of("24 V"),
                        "resistance", List.of("0.2 V"),
                        "supply", List.of("24000 V", "24 V"),
                        "slots", List.of("12.5"),
                        "material", List.of("coper"),
                        "torque_constant", List.of("much")));
        assertThat(((Filled.Refused) filled).problems())
                .extracting(Problem::kind)
                .containsExactlyInAnyOrder(
                        Problem.Kind.UNKNOWN_KEY,
                        Problem.Kind.WRONG_UNIT,
                        Problem.Kind.CONTRADICTION,
                        Problem.Kind.OUT_OF_RANGE,
                        Problem.Kind.OUT_OF_RANGE,
                        Problem.Kind.UNKNOWN_NAME,
                        Problem.Kind.NOT_A_QUANTITY);
        assertThat(problems("supply", "24000 V"))
                .containsExactly("supply: \"24000 V\" lies outside 1 V to 100 V. Check the unit.");
    }

    @Test
    void keeps_who_says_so_and_marks_what_was_taken_without_being_given() {
        Inputs inputs = ((Filled.Ready) Filled.of(
                        SHEET, Map.of("resistance", List.of("0.2 ohm [label]"), "supply", List.of("24 V [measured]"))))
                .inputs();
        assertThat(inputs.known("resistance").map(Known::origin)).contains(Origin.DATA_SHEET);
        assertThat(inputs.known("supply").map(Known::origin)).contains(Origin.MEASURED);
        assertThat(inputs.known("reserve").map(Known::origin)).contains(Origin.ASSUMED);
        Outcome<Results> outcome = Calculation.of(SHEET, inputs)
                .needs("resistance")
                .work(c -> c.result("half", "{half} = {R} / 2", "a test", x -> x[0] / 2, c.given("R", "resistance")));
        Outcome.Answer<Results> answer = (Outcome.Answer<Results>) outcome;
        assertThat(answer.assumptions()).hasSize(1);
        assertThat(answer.assumptions().get(0).template()).isEqualTo("reserve not given: {value} taken");
        assertThat(answer.working().steps().get(0).result().value().si()).isEqualTo(0.1);
    }

    @Test
    void a_tolerance_travels_into_the_result() {
        Inputs inputs = ((Filled.Ready) Filled.of(SHEET, Map.of("resistance", List.of("0.2 ohm ± 3 %")))).inputs();
        Results results = Calculation.of(SHEET, inputs)
                .work(c -> c.result("half", "{half} = {R} / 2", "a test", x -> x[0] / 2, c.given("R", "resistance")))
                .found()
                .orElseThrow();
        // Limits as a rectangular distribution: a / sqrt 3, JCGM 100:2008, 4.3.7.
        assertThat(results.figure("half").orElseThrow().standardUncertainty())
                .isCloseTo(0.003 / Math.sqrt(3), org.assertj.core.api.Assertions.within(1e-9));
    }

    @Test
    void names_what_is_missing_with_an_example() {
        Outcome<Results> outcome = Calculation.of(SHEET, new Inputs(Map.of()))
                .needs("resistance", "supply")
                .work(c -> {
                    throw new IllegalStateException("not reached");
                });
        assertThat(((Outcome.Missing<Results>) outcome).needs())
                .containsExactly(
                        new Outcome.Need("winding resistance", "give resistance, for example 0.2 ohm [two terminals]"),
                        new Outcome.Need("supply voltage", "give supply, for example 24 V"));
    }
}
