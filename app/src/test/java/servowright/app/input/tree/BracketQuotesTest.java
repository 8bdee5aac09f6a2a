package servowright.app.input.tree;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class BracketQuotesTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "a: {b: 6 A [q axis], c: 7}|a: {b: '6 A [q axis]', c: 7}",
                "a: {b: 6 A [q axis, label]}|a: {b: '6 A [q axis, label]'}",
                "a: {b: 1,9 mm, c: 2,5 V}|a: {b: '1,9 mm', c: '2,5 V'}",
                "a: [42 rpm/V [line peak], 43 rpm/V]|a: ['42 rpm/V [line peak]', 43 rpm/V]",
                "- {b: 0.24 ohm [two terminals]}|- {b: '0.24 ohm [two terminals]'}",
                "{a: 6 A [q axis]}|{a: '6 A [q axis]'}",
                "a: {b: {c: 6 A [q axis]}}  # d [e]|a: {b: {c: '6 A [q axis]'}}  # d [e]",
                "a: {b: it's 6 A [q axis]}|a: {b: 'it''s 6 A [q axis]'}",
            })
    void quotes_a_value_in_braces_that_yaml_would_cut(String written, String quoted) {
        assertThat(BracketQuotes.put(written)).isEqualTo(quoted);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "a: 6 A [q axis]",
                "a: 1,9 mm",
                "a: {b: \"6 A [q axis]\", c: '1,9 mm'}",
                "a: {b: [1, 2], c: {d: 3}}",
                "a: {b: 1, c: 2}",
                "a: about {b: 6 A [q axis]} and more",
                "a: |\n  {b: 6 A [q axis]}\nc: 1",
                "a: >\n  - {b: 6 A [q axis]}\n\n  {x: 1,9}\nc: 1",
                "# {b: 6 A [q axis]}",
                "a: 'x\n {b: 6 A [q axis]}'",
                "a: {b: 6 A [q axis",
                "a: {b: *x [y]}",
                "a: {b: \"open",
                "a: {b: 1 # c [d]\n}",
                "",
                "\n\n",
                "a:",
                "- - - x",
            })
    void leaves_everything_else_alone(String text) {
        assertThat(BracketQuotes.put(text)).isEqualTo(text);
    }

    @Test
    void keeps_every_line_in_its_place() {
        String text =
                "a: {b: 6 A [q axis],\n  c: 1,9 mm,   # d [e]\n  f: [x [y], z]}\ng: |\n  {b: 6 A [q]}\nh: {i: 1 [j]}";
        assertThat(BracketQuotes.put(text))
                .isEqualTo(
                        "a: {b: '6 A [q axis]',\n  c: '1,9 mm',   # d [e]\n  f: ['x [y]', z]}\ng: |\n  {b: 6 A [q]}\n"
                                + "h: {i: '1 [j]'}");
    }
}
