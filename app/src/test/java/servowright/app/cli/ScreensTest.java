package servowright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ScreensTest {
    private static String words(String text) {
        return text.replaceAll("\\s+", " ");
    }

    @Test
    void says_the_worst_first_and_answers_with_one() {
        Typed typed = Typed.type("assess");
        assertThat(typed.code()).isEqualTo(ExitCode.FAILS);
        assertThat(words(typed.out()))
                .contains("Frost cart · 1 axis, 1 motor, 1 bench test")
                .contains("1 fails · 1 tight · 1 holds · 1 not shown")
                .containsSubsequence("Fails", "asks 3200 rpm, gets 2690 ± 39 rpm", "Tight", "1.180 ± 0.088 N m")
                .containsSubsequence("Not shown", "thermal resistance of hub", "There is no bench.yaml", "Motors turn")
                .contains("`servowright explain lift/speed-reach` shows the working.")
                .doesNotContain("battery stays within");
        assertThat(typed.err()).isEmpty();
    }

    @Test
    void lists_what_holds_when_asked() {
        assertThat(Typed.type("assess", "--all").out()).contains("Holds").contains("battery stays within");
    }

    @Test
    void shows_one_part_or_subject_only() {
        assertThat(Typed.type("assess", "--only", "tilt").out())
                .contains("0 fail · 0 tight · 0 hold · 1 not shown")
                .doesNotContain("speed-reach");
        assertThat(Typed.type("assess", "--only", "heat").code()).isEqualTo(ExitCode.FINE);
        assertThat(Typed.type("assess", "--only", "fit").code()).isEqualTo(ExitCode.FAILS);
        Typed wrong = Typed.type("assess", "--only", "tild");
        assertThat(wrong.code()).isEqualTo(ExitCode.REFUSED);
        assertThat(words(wrong.err())).contains("There is no part or subject \"tild\". Nearest: tilt.");
    }

    @ParameterizedTest
    @ValueSource(ints = {40, 50, 80, 120})
    void fills_the_width_and_never_leaves_it(int columns) {
        for (List<String> verb : List.of(
                List.of("assess"), List.of("bench"), List.of("explain", "lift/speed-reach"), List.of("explain"))) {
            String out = Typed.wide(columns, verb.toArray(String[]::new)).out();
            assertThat(out.lines().filter(l -> l.length() > columns).toList())
                    .as("%s at %d columns", verb, columns)
                    .isEmpty();
            assertThat(words(out)).doesNotContain("null");
        }
    }

    @Test
    void never_breaks_a_figure_over_two_lines() {
        for (int columns = 34; columns < 90; columns++) {
            assertThat(Typed.wide(columns, "assess").out())
                    .contains("2690 ± 39 rpm")
                    .contains("1.180 ± 0.088 N m");
        }
    }

    @Test
    void colours_only_for_a_terminal_that_wants_it() {
        String escape = "\u001b[";
        assertThat(Typed.type("assess").out()).doesNotContain(escape);
        assertThat(Typed.at(Map.of(), true, "assess").out()).contains(escape);
        assertThat(Typed.at(Map.of("NO_COLOR", "1"), true, "assess").out()).doesNotContain(escape);
        assertThat(Typed.at(Map.of(), true, "assess", "--plain").out()).doesNotContain(escape);
        assertThat(Typed.at(Map.of(), true, "--plain", "assess").out()).doesNotContain(escape);
    }

    @Test
    void explains_a_finding_down_to_its_sources() {
        Typed typed = Typed.type("explain", "lift/speed-reach");
        assertThat(typed.code()).isEqualTo(ExitCode.FINE);
        assertThat(words(typed.out()))
                .contains("lift · speed-reach · fails")
                .contains("V = (1 - r) · U / sqrt 3 = (1 - 10 %) · 20 V / sqrt 3 = 10.39 V")
                .contains("U = 20 V declared, machine.yaml:9")
                .contains("λ = 5.161 ± 0.026 mWb measured, recordings/lift-spin-2.csv")
                .contains("limit at least 3200 rpm")
                .contains("assumed reserve of 10 %")
                .contains("source steady-state dq voltage equations");
    }

    @Test
    void lists_the_findings_and_knows_the_nearest() {
        assertThat(Typed.type("explain").out()).contains("not shown tilt/heat");
        Typed wrong = Typed.type("explain", "lift/sped-reach");
        assertThat(wrong.code()).isEqualTo(ExitCode.REFUSED);
        assertThat(words(wrong.err())).contains("Nearest: lift/speed-reach.");
    }

    @Test
    void tells_what_the_bench_knows_and_what_would_narrow_it() {
        assertThat(words(Typed.type("bench", "--working").out()))
                .contains("flux linkage 13.100 ± 0.069 mWb measured, spin hub 1")
                .contains("label 13.12 mWb measured")
                .contains("uncertainty from 100 % spin hub 1")
                .contains("d inductance not known; an inductance step on the locked rotor")
                .contains("pole pairs: label says 12, spin hub 1 says 11; ratio 0.9167 = 11/12")
                .contains("fifth harmonic 2.13 % of the fundamental");
    }

    @Test
    void puts_what_the_bench_knows_on_one_screen() {
        String shown = Typed.type("bench").out();
        assertThat(words(shown))
                .contains("flux linkage 13.100 ± 0.069 mWb measured, spin hub 1")
                .contains("not known d inductance")
                .contains("pole pairs: label says 12, spin hub 1 says 11; ratio 0.9167 = 11/12")
                .contains("What to measure next")
                .contains("`servowright bench --working` shows every test")
                .doesNotContain("fifth harmonic");
        assertThat(shown.lines().count()).isLessThan(45);
    }

    @Test
    void shows_every_problem_of_refused_input_at_once() {
        Typed typed = Typed.type("assess", "refused");
        assertThat(typed.code()).isEqualTo(ExitCode.REFUSED);
        assertThat(typed.out()).isEmpty();
        assertThat(words(typed.err()))
                .contains("machine.yaml was not accepted, 2 problems:")
                .contains("line 41, axes / tilt / mount / gap: 1.4 m is far outside 0.1 mm to 10 mm."
                        + " Did you mean 1.4 mm?")
                .contains("line 33, motors / hub / resistence: this key is not known. Nearest: resistance.");
    }
}
