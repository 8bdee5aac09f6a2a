package servowright.app.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import servowright.engine.known.Problem;
import servowright.engine.worksheet.Case;
import servowright.engine.worksheet.CaseCheck;

class CaseTextTest {
    private final List<Case> cases = new ArrayList<>();
    private final List<Problem> problems = new ArrayList<>();

    private void read(String text) {
        CaseText.read("a.yaml", text, cases::add, problems::add);
    }

    @Test
    void reads_one_case_a_list_and_a_shared_head_alike() {
        String one = """
                case: a
                sheet: motor-constants
                given: {speed_constant: "150 rpm/V [line peak]"}
                expect: {torque_constant_q_axis: 0.0551 N m/A ± 1 %}
                kind: practice
                source: common practice, no source
                """;
        read(one + "---\n- " + one.strip().replace("\n", "\n  "));
        read("""
                sheet: motor-constants
                kind: derived
                source: here
                cases:
                  - case: a
                    given: {speed_constant: "150 rpm/V [line peak]"}
                    expect: {torque_constant_q_axis: 0.0551 N m/A ± 1 %}
                """);
        assertThat(problems).isEmpty();
        assertThat(cases)
                .hasSize(3)
                .allSatisfy(c -> assertThat(CaseCheck.of(c).within()).isTrue());
        assertThat(cases.get(1).place().line()).isEqualTo(8);
    }

    @Test
    void names_every_mistake_with_its_line() {
        read("""
                case: a
                shet: motor-constants
                given: {speed_constant: 150 rpm/V}
                expect: {torque_constant_q_axis: 0.0551 N m/A}
                kind: guess
                source: here
                ---
                case: b
                sheet: motor-constant
                given: nothing
                kind: derived
                source: here
                """);
        assertThat(problems)
                .extracting(Problem::text)
                .contains(
                        "line 2, shet: this key is not known. Nearest: sheet.",
                        "line 1, sheet: it is not given. Every case needs it.",
                        "line 5, kind: \"guess\" is no kind of case. Known: published, practice, derived, memory.",
                        "line 4, expect / torque_constant_q_axis: \"0.0551 N m/A\" has no tolerance."
                                + " Write it like 7 ± 0 or 0.24 ohm ± 1 %.",
                        "line 9, sheet: there is no worksheet \"motor-constant\". Nearest: motor-constants.",
                        "line 10, given: named values are expected, found \"nothing\". Write it like {name: value}.",
                        "line 8, expect: the case expects nothing. Give at least one result.");
        assertThat(cases).isEmpty();
    }

    @Test
    void names_the_nearest_result() {
        read("""
                case: a
                sheet: motor-constants
                given: {speed_constant: 150 rpm/V}
                expect: {torque_constant_qaxis: 0.0551 N m/A ± 1 %, flux_linkage: 12 mWg ± 1 %}
                kind: derived
                source: here
                """);
        assertThat(problems)
                .extracting(Problem::text)
                .anyMatch(t -> t.endsWith("no such result. Nearest: torque_constant_q_axis."))
                .anyMatch(t -> t.contains("the unit \"mWg\" is not known"));
    }

    @Test
    void says_what_differs_in_a_case_that_does_not_hold() {
        read("""
                case: a
                sheet: motor-constants
                given: {speed_constant: "150 rpm/V [line peak]"}
                expect: {torque_constant_q_axis: 0.0636 N m/A ± 1 %, reading: none, motor_constant: 1 N m/sqrt(W) ± 1 %}
                says: nothing of the kind
                kind: derived
                source: here
                ---
                case: b
                sheet: motor-constants
                given: {speed_constant: 150 V}
                expect: {torque_constant_q_axis: 0.0636 N m/A ± 1 %}
                kind: derived
                source: here
                """);
        CaseCheck first = CaseCheck.of(cases.get(0));
        assertThat(first.within()).isFalse();
        assertThat(first.lines()).hasSize(4).noneMatch(CaseCheck.Line::within);
        assertThat(((CaseCheck.Figure) first.lines().get(0)).difference()).isBetween(-0.0085, -0.0084);
        assertThat(first.lines().get(1).toString()).contains("no such result");
        CaseCheck second = CaseCheck.of(cases.get(1));
        assertThat(second.within()).isFalse();
        assertThat(second.lines().toString()).contains("measures something else");
    }

    @Test
    void refuses_what_is_no_yaml_without_throwing() {
        read("case: [a, b\nsheet: {");
        assertThat(problems).hasSize(1).allMatch(p -> p.kind() == Problem.Kind.UNREADABLE);
        problems.clear();
        read("[".repeat(5000));
        assertThat(problems).hasSize(1).allMatch(p -> p.kind() == Problem.Kind.UNREADABLE);
        problems.clear();
        read("a: &x [1]\nb: *x\ncase: a\ncase: b\n");
        assertThat(problems)
                .extracting(Problem::text)
                .anyMatch(t -> t.contains("an alias (*) is not taken"))
                .anyMatch(t -> t.contains("stands here twice, first on line 3"));
        problems.clear();
        read("");
        read("just words");
        assertThat(problems).extracting(Problem::text).anyMatch(t -> t.contains("a case is expected"));
    }

    @Test
    void a_folder_gives_its_files_in_order_and_a_missing_one_a_problem(@TempDir Path folder) throws IOException {
        String text =
                "case: %s\nsheet: motor-constants\ngiven: {pole_pairs: 7}\nmissing: a speed\nkind: derived\nsource: s\n";
        Files.writeString(folder.resolve("b.yaml"), text.formatted("two"));
        Files.writeString(folder.resolve("a.yaml"), "\ufeff" + text.formatted("one"));
        Files.write(folder.resolve("c.yaml"), new byte[] {(byte) 0xc3, 0x28});
        CaseFolder read = CaseFolder.read(folder);
        assertThat(read.cases()).extracting(Case::name).containsExactly("one", "two");
        assertThat(read.problems())
                .extracting(Problem::text)
                .containsExactly("it is not UTF-8 text. Save it as UTF-8.");
        assertThat(CaseFolder.read(folder.resolve("a.yaml")).cases()).hasSize(1);
        assertThat(CaseFolder.read(folder.resolve("none")).problems()).hasSize(1);
    }
}
