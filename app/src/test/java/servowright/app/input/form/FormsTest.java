package servowright.app.input.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import servowright.app.input.tree.Problems;
import servowright.app.input.tree.SourceText;
import servowright.app.input.tree.TreeReader;

class FormsTest {
    static Stream<Field> fields() {
        List<Field> fields = new ArrayList<>();
        gather(Forms.machine(), fields);
        gather(Forms.bench(), fields);
        return fields.stream();
    }

    private static void gather(Shape shape, List<Field> fields) {
        if (shape instanceof Shape.Group group) {
            for (Field field : group.fields()) {
                fields.add(field);
                gather(field.shape(), fields);
            }
        } else if (shape instanceof Shape.Named named) {
            gather(named.each(), fields);
        } else if (shape instanceof Shape.Listed listed) {
            gather(listed.each(), fields);
        }
    }

    @ParameterizedTest
    @MethodSource("fields")
    void every_key_takes_its_own_example(Field field) {
        if (field.example().isEmpty()) {
            assertThat(field.shape())
                    .matches(s -> s instanceof Shape.Group || s instanceof Shape.Named || s instanceof Shape.Listed);
            return;
        }
        Problems problems = new Problems();
        String text = field.key() + ": " + field.example() + "\nflow: {" + field.key() + ": " + field.example() + "}";
        Shape.Group form = new Shape.Group(List.of(field, Field.group("flow", "", new Shape.Group(List.of(field)))));
        var part = new Check(Map.of(), problems)
                .part(
                        TreeReader.keys(new SourceText("a.yaml", text, ""), problems)
                                .orElseThrow(),
                        form);
        assertThat(problems.sorted()).isEmpty();
        assertThat(part.at(field.key())).isPresent();
        assertThat(part.at("flow." + field.key())).isPresent();
    }

    @ParameterizedTest
    @MethodSource("fields")
    void every_key_is_lower_case_with_underscores_and_says_what_it_is(Field field) {
        assertThat(field.key()).matches("[a-z][a-z_]*");
        assertThat(field.meaning()).isNotBlank().doesNotEndWith(".").doesNotContain("|");
    }
}
