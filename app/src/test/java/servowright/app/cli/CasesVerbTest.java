package servowright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CasesVerbTest {
    private static final String CASE = """
            case: torque from speed constant
            sheet: motor-constants
            given: {speed_constant: "150 rpm/V [line peak]"}
            expect: {torque_constant_q_axis: %s}
            kind: practice
            source: common practice
            """;

    private static Typed run(Path dir, String expected) throws IOException {
        Files.writeString(dir.resolve("one.yaml"), CASE.formatted(expected));
        return Typed.type("cases", dir.toString());
    }

    @Test
    void answers_with_nothing_wrong_when_all_agree(@TempDir Path dir) throws IOException {
        Typed typed = run(dir, "0.05513 N m/A ± 0.1 %");
        assertThat(typed.code()).isEqualTo(ExitCode.FINE);
        assertThat(typed.out().strip()).isEqualTo("1 case · 0 differ");
    }

    @Test
    void says_what_differs_and_by_how_much(@TempDir Path dir) throws IOException {
        Typed typed = run(dir, "0.0561 N m/A ± 0.1 %");
        assertThat(typed.code()).isEqualTo(ExitCode.FAILS);
        assertThat(typed.out().replaceAll("\\s+", " "))
                .contains("torque from speed constant · motor-constants · one.yaml:1")
                .contains("differs torque_constant_q_axis expected 0.0561 N m/A ± 0.1 % found 0.0551328895 N m/A"
                        + " apart -0.0009671 N m/A")
                .contains("1 case · 1 differs");
    }

    @Test
    void refuses_a_folder_that_is_not_there() {
        assertThat(Typed.type("cases", "no such folder").code()).isEqualTo(ExitCode.REFUSED);
    }
}
