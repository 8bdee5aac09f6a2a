package servowright.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

class WorkingTextTest {
    private static WorkingText line(String formula, Term... terms) {
        Working.Sheet sheet = Working.begin();
        sheet.note("what", formula, "V", "source", Known.exact(Quantity.of(5, "V"), Origin.DERIVED, ""), terms);
        return WorkingText.of(sheet.end()).get(0);
    }

    private static Term term(String symbol, double value, String unit) {
        return Term.of(symbol, Known.exact(Quantity.of(value, unit), Origin.DECLARED, "machine.yaml:9"), unit);
    }

    @Test
    void shows_the_formula_and_the_same_with_the_figures_put_in() {
        WorkingText text = line("{V} = (1 - {r}) · {U} / sqrt 3", term("r", 0.1, ""), term("U", 20, "V"));
        assertThat(text.formula()).isEqualTo("V = (1 - r) · U / sqrt 3");
        assertThat(text.numbers()).isEqualTo("(1 - 0.1) · 20 V / sqrt 3");
        assertThat(text.symbol()).isEqualTo("V");
        assertThat(text.result().text()).isEqualTo("5 V");
        assertThat(text.terms().get(1).from()).isEqualTo("declared, machine.yaml:9");
    }

    @Test
    void brackets_what_is_negative_or_raised_to_a_power() {
        WorkingText text = line("{V} = {a}² + {b}", term("a", 3, "V"), term("b", -4, "V"));
        assertThat(text.numbers()).isEqualTo("(3 V)² + (-4 V)");
    }

    @Test
    void keeps_a_symbol_that_no_figure_was_given_for() {
        assertThat(line("{V} = {a} · {x}", term("a", 3, "V")).numbers()).isEqualTo("3 V · x");
    }

    @Test
    void keeps_six_digits_in_the_working_of_a_worksheet() {
        Working.Sheet sheet = Working.begin();
        sheet.line("third", "{t} = {a} / 3", "", Dimension.NUMBER, "", x -> x[0] / 3, term("a", 1, ""));
        assertThat(WorkingText.of(sheet.end(), true).get(0).result().text()).isEqualTo("0.333333");
        assertThat(WorkingText.of(sheet.end()).get(0).result().text()).isEqualTo("0.3333");
    }
}
