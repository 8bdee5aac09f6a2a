package servowright.app.input.tree;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import servowright.app.input.tree.Node.Group;
import servowright.app.input.tree.Node.Items;
import servowright.app.input.tree.Node.Scalar;
import servowright.engine.known.Problem;

class TreeReaderTest {
    private final Problems problems = new Problems();

    private Optional<Group> keys(String text) {
        return TreeReader.keys(new SourceText("a.yaml", text, ""), problems);
    }

    private List<String> lines() {
        return problems.sorted().stream().map(Problem::text).toList();
    }

    @Test
    void keeps_scalars_as_written() {
        Group group = keys("""
                        a: 010
                        b: no
                        c: 1_000
                        d: 12..34 V
                        e: 1.4 mm +0.1/-0.2 mm
                        f: 42 rpm/V [line peak, label]
                        g: 1.20
                        h: {i: 6 A [q axis], k: 1,9 mm}
                        l: ± 0.1 %
                        m: 0x1F
                        n: true
                        o: ~
                        p:
                        """).orElseThrow();
        List<String> texts = new ArrayList<>();
        group.entries().values().forEach(e -> collect(e.value(), texts));
        assertThat(texts)
                .containsExactly(
                        "010",
                        "no",
                        "1_000",
                        "12..34 V",
                        "1.4 mm +0.1/-0.2 mm",
                        "42 rpm/V [line peak, label]",
                        "1.20",
                        "6 A [q axis]",
                        "1,9 mm",
                        "± 0.1 %",
                        "0x1F",
                        "true",
                        "~",
                        "");
        assertThat(problems.isEmpty()).isTrue();
    }

    private static void collect(Node node, List<String> texts) {
        if (node instanceof Scalar s) {
            texts.add(s.text());
        } else if (node instanceof Group g) {
            g.entries().values().forEach(e -> collect(e.value(), texts));
        } else if (node instanceof Items items) {
            items.items().forEach(n -> collect(n, texts));
        }
    }

    @Test
    void every_part_knows_its_line_and_path() {
        Group group = keys("a:\n  b: {c: 1,\n     d: 2}\ne:\n  - 1\n  - f: 2\n").orElseThrow();
        List<String> places = new ArrayList<>();
        places(group, places);
        assertThat(places)
                .containsExactly(
                        "2 a", "2 a / b", "2 a / b / c", "3 a / b / d", "5 e", "5 e / 1", "6 e / 2", "6 e / 2 / f");
    }

    private static void places(Node node, List<String> places) {
        if (!node.place().path().isEmpty()) {
            places.add(node.place().line() + " " + node.place().path());
        }
        if (node instanceof Group g) {
            g.entries().values().forEach(e -> places(e.value(), places));
        } else if (node instanceof Items items) {
            items.items().forEach(n -> places(n, places));
        }
    }

    @Test
    void names_every_key_given_twice() {
        assertThat(keys("a: 1\nb: {c: 1, c: 2}\na: 2\na: 3\n")).isPresent();
        assertThat(lines())
                .containsExactly(
                        "line 2, b / c: this key is given twice, first in line 2. Keep one of them.",
                        "line 3, a: this key is given twice, first in line 1. Keep one of them.",
                        "line 4, a: this key is given twice, first in line 1. Keep one of them.");
    }

    @Test
    void follows_no_reference() {
        StringBuilder bomb = new StringBuilder("a0: &a0 [x, x]\n");
        for (int i = 1; i < 40; i++) {
            bomb.append("a%d: &a%d [*a%d, *a%d]\n".formatted(i, i, i - 1, i - 1));
        }
        assertThat(keys(bomb.toString())).isPresent();
        assertThat(lines())
                .hasSize(78)
                .first()
                .asString()
                .isEqualTo("line 2, a1 / 1: *a0 refers to another part of the file. Write the value out here.");
    }

    @Test
    void stops_where_nesting_is_too_deep() {
        assertThat(keys("a:\n b: " + "[".repeat(100_000))).isEmpty();
        assertThat(lines())
                .containsExactly(
                        "line 2: this is nested deeper than 20 levels. Check the indentation and the brackets.");
        StringBuilder stairs = new StringBuilder();
        for (int i = 0; i < 1000; i++) {
            stairs.append(" ".repeat(i)).append("a:\n");
        }
        assertThat(keys(stairs.toString())).isEmpty();
        assertThat(lines())
                .hasSize(2)
                .last()
                .isEqualTo("line 21: this is nested deeper than 20 levels. Check the indentation and the brackets.");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "a: b: c|line 1: a second colon stands here, or the indentation does not fit the line above."
                        + " Indent like the neighbours, or put text with a colon in quotes.",
                "a: 1\\n b: 2|line 2: a second colon stands here, or the indentation does not fit the line above."
                        + " Indent like the neighbours, or put text with a colon in quotes.",
                "a: 1\\nb\\nc: 2|line 2: a key stands here without its colon."
                        + " Write key: value, with a blank behind the colon.",
                "a: {b: 1\\nc: 2|line 2: the bracket or brace that opens in line 1 is not closed before this line."
                        + " Close it, put commas between its values, and put values that hold brackets or braces in quotes.",
                "a: {b: 1 [c}|line 1: a bracket or brace is not closed here."
                        + " Close it, put commas between its values, and put values that hold brackets or braces in quotes.",
                "a:\\n   b: 1\\n  c: 2|line 3: this line does not fit the lines above it."
                        + " Indent it like its neighbours, and let each value stand alone behind its key.",
                "a: 1\\nb: \"x\\nc: 1|line 2: a quotation mark opens here and is never closed. Close it.",
                "a: %x|line 1: no value begins with %. Put the value in quotes.",
                "a: \"\\q\"|line 1: a backslash stands in double quotation marks. Use single quotation marks.",
                "a: 1\\n\\tb: 2\\n\\tc: 3|line 2: a tab stands where blanks indent, and in 1 further line. Indent with blanks.",
                "|line 1: the file is empty. Write keys and values into it.",
                "# only this|line 1: the file is empty. Write keys and values into it.",
                "- a|line 1: the file holds no keys. Write key: value, with a blank behind the colon.",
                "a:1|line 1: the file holds no keys. Write key: value, with a blank behind the colon.",
                "a: 1\\n---\\nb: 2|line 3: a second document begins here. Remove the line --- or keep it in a file of its own.",
            })
    void says_where_and_why_a_file_cannot_be_read(String text, String problem) {
        keys(Optional.ofNullable(text).orElse("").replace("\\n", "\n").replace("\\t", "\t"));
        assertThat(lines()).containsExactly(problem);
    }

    @Test
    void names_a_hundred_problems_and_counts_the_rest() {
        keys("a: 1\n".repeat(151));
        assertThat(lines()).hasSize(101).last().isEqualTo("there are 50 further problems. Mend these first.");
    }
}
