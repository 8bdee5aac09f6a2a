package servowright.app.input.tree;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** A change is what was asked and nothing besides. */
class TreeEditTest {
    private static final Path DEMO = Path.of(System.getProperty("servowright.root", ".."), "examples", "frost-cart");
    private static final String TEXT = """
            # a cart
            motors:
              hub:                # both wheels
                magnets: 20       # counted
                slots: 20
                resistance: '0.24 ohm'
                speed_constant:
            axes:
              tilt: {motor: hub, mount: {gap: 1,9 mm ± 0.2 mm, tilt: 1 deg}, load: {friction: 0.2 N m [motor side]}}
            tests:
              - test: spin        # driven
                speed: 411 rpm
                readings:
                  - {pair: A to B, voltage: 1 V}   # first
              - test: resistance
            """;

    private static TreeEdit edit(String text) {
        return TreeEdit.of(new SourceText("machine.yaml", text, "")).orElseThrow();
    }

    @Test
    void changes_the_value_of_the_key_and_not_an_equal_one_beside_it() {
        assertThat(edit(TEXT).replaced("motors / hub / slots", "24")).hasValue(TEXT.replace("slots: 20", "slots: 24"));
        assertThat(edit(TEXT).replaced("motors / hub / magnets", "22"))
                .hasValue(TEXT.replace("magnets: 20 ", "magnets: 22 "));
        assertThat(edit(TEXT).replaced("axes / tilt / mount / tilt", "2 deg"))
                .hasValue(TEXT.replace("tilt: 1 deg", "tilt: 2 deg"));
    }

    @Test
    void keeps_quotation_marks_and_brackets_as_people_write_them() {
        assertThat(edit(TEXT).replaced("motors / hub / resistance", "0.25 ohm [label]"))
                .hasValue(TEXT.replace("0.24 ohm", "0.25 ohm [label]"));
        assertThat(edit(TEXT).replaced("axes / tilt / mount / gap", "2,1 mm ± 0.1 mm"))
                .hasValue(TEXT.replace("1,9 mm ± 0.2 mm", "2,1 mm ± 0.1 mm"));
        assertThat(edit(TEXT).replaced("axes / tilt / load / friction", "0.3 N m [motor side, label]"))
                .hasValue(TEXT.replace("0.2 N m [motor side]", "0.3 N m [motor side, label]"));
    }

    @Test
    void fills_a_key_that_said_nothing() {
        assertThat(edit(TEXT).replaced("motors / hub / speed_constant", "42 rpm/V [line peak]"))
                .hasValue(TEXT.replace("speed_constant:", "speed_constant: 42 rpm/V [line peak]"));
    }

    @Test
    void lets_no_value_become_anything_else() {
        for (String value : List.of(
                "1 mm}, motor: {x: y", "1 mm # gone", "a: b", "- x", "&a 1", "*a", "|", "{", "'", "\"", "it's")) {
            edit(TEXT).replaced("axes / tilt / mount / gap", value).ifPresent(text -> {
                assertThat(edit(text).value("axes / tilt / mount / gap")).hasValue(value);
                assertThat(edit(text).value("axes / tilt / motor")).hasValue("hub");
                assertThat(edit(text).value("axes / tilt / mount / tilt")).hasValue("1 deg");
            });
        }
        assertThat(edit(TEXT).replaced("motors / hub / slots", "1\n  evil: 2")).isEmpty();
        assertThat(edit(TEXT).replaced("motors / hub / nothing", "1")).isEmpty();
        assertThat(edit(TEXT).replaced("motors / hub", "1")).isEmpty();
    }

    @Test
    void adds_an_item_below_the_last_one() {
        assertThat(edit(TEXT).appended("tests / 1 / readings", List.of("{pair: B to C, voltage: 2 V}")))
                .hasValue(TEXT.replace("# first\n", "# first\n      - {pair: B to C, voltage: 2 V}\n"));
        assertThat(edit(TEXT).appended("tests", List.of("test: spin", "motor: hub")))
                .hasValue(TEXT + "  - test: spin\n    motor: hub\n");
    }

    @Test
    void begins_a_list_where_there_was_none() {
        assertThat(edit(TEXT).withList("tests / 2", "readings", List.of("{current: 1 A}")))
                .hasValue(TEXT + "    readings:\n      - {current: 1 A}\n");
        assertThat(edit(TEXT).withList("tests / 1", "readings", List.of("{current: 1 A}")))
                .isEmpty();
    }

    @Test
    void changes_any_value_of_the_demo_and_nothing_else() throws IOException {
        long seed = 20_260_301;
        Random random = new Random(seed);
        for (String file : List.of("machine.yaml", "bench.yaml")) {
            String text = Files.readString(DEMO.resolve(file));
            List<Node.Scalar> scalars = new ArrayList<>();
            gather(
                    TreeReader.documents(new SourceText(file, text, ""), new Problems())
                            .get(0),
                    scalars);
            assertThat(scalars).hasSizeGreaterThan(50);
            for (Node.Scalar scalar : scalars) {
                String fresh = random.nextInt(1000) + "." + random.nextInt(10) + " mV";
                String path = scalar.place().path();
                String changed = edit(text).replaced(path, fresh).orElseThrow(() -> new AssertionError(path));
                assertThat(edit(changed).value(path)).as("seed " + seed).hasValue(fresh);
                assertThat(edit(changed).replaced(path, scalar.text()))
                        .hasValueSatisfying(
                                back -> assertThat(back.replace("'", "")).isEqualTo(text.replace("'", "")));
                assertThat(different(text, changed)).as(path).isEqualTo(1);
            }
        }
    }

    private static void gather(Node node, List<Node.Scalar> into) {
        if (node instanceof Node.Scalar scalar) {
            into.add(scalar);
        } else if (node instanceof Node.Group group) {
            group.entries().values().forEach(e -> gather(e.value(), into));
        } else if (node instanceof Node.Items items) {
            items.items().forEach(i -> gather(i, into));
        }
    }

    private static long different(String one, String other) {
        List<String> a = one.lines().toList();
        List<String> b = other.lines().toList();
        long count = Math.abs(a.size() - b.size());
        for (int i = 0; i < Math.min(a.size(), b.size()); i++) {
            count += a.get(i).equals(b.get(i)) ? 0 : 1;
        }
        return count;
    }
}
