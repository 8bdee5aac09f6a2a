package servowright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ProgramTest {
    private static String words(String text) {
        return text.replaceAll("\\s+", " ").strip();
    }

    @Test
    void shows_help_with_an_example_for_each_verb() {
        Typed all = Typed.type("--help");
        assertThat(all.code()).isEqualTo(ExitCode.FINE);
        for (String verb : new String[] {"assess", "bench", "explain", "dossier", "sheet", "cases"}) {
            assertThat(all.out()).contains("  " + verb);
            Typed help = Typed.type(verb, "--help");
            assertThat(help.code()).isEqualTo(ExitCode.FINE);
            assertThat(help.out()).contains("Example").contains("servowright " + verb);
        }
    }

    @Test
    void prints_a_completion_script_that_knows_the_verbs() {
        Typed typed = Typed.type("completion");
        assertThat(typed.code()).isEqualTo(ExitCode.FINE);
        assertThat(typed.out())
                .startsWith("#!")
                .contains("servowright")
                .contains("assess")
                .contains("--only");
    }

    @Test
    void suggests_the_verb_and_the_option_that_were_meant() {
        Typed verb = Typed.type("asess");
        assertThat(verb.code()).isEqualTo(ExitCode.REFUSED);
        assertThat(words(verb.err())).isEqualTo("There is no verb \"asess\". Did you mean assess?");
        Typed option = Typed.type("assess", "--jsn");
        assertThat(option.code()).isEqualTo(ExitCode.REFUSED);
        assertThat(words(option.err())).endsWith("Did you mean --json?");
        assertThat(Typed.type("assess", "a", "b").code()).isEqualTo(ExitCode.REFUSED);
        assertThat(Typed.type("assess", "--junit").code()).isEqualTo(ExitCode.REFUSED);
        assertThat(Typed.type().code()).isEqualTo(ExitCode.REFUSED);
    }

    @Test
    void says_in_one_line_that_it_is_broken_and_traces_only_when_asked() {
        Typed typed = Typed.type("assess", "broken");
        assertThat(typed.code()).isEqualTo(ExitCode.BROKEN);
        assertThat(typed.err())
                .startsWith("servowright stopped: IllegalStateException, a")
                .doesNotContain("\tat ")
                .doesNotContain("\u001b");
        assertThat(Typed.at(Map.of("SERVOWRIGHT_TRACE", "1"), false, "assess", "broken")
                        .err())
                .contains("\tat ");
    }

    @Test
    void answers_with_its_version() {
        assertThat(Typed.type("--version").out()).isEqualTo("servowright 0.1.0" + System.lineSeparator());
    }

    @Test
    void writes_junit_xml_with_a_case_for_each_finding(@TempDir Path dir) throws IOException {
        Path file = dir.resolve("findings.xml");
        assertThat(Typed.type("assess", "--junit", file.toString()).code()).isEqualTo(ExitCode.FAILS);
        String xml = Files.readString(file);
        assertThat(xml)
                .contains("tests=\"4\" failures=\"1\" errors=\"0\" skipped=\"1\"")
                .contains("<testcase classname=\"lift\" name=\"speed-reach\"><failure message=\"asks 3200 rpm,")
                .contains("<testcase classname=\"tilt\" name=\"heat\"><skipped");
    }

    @Test
    void says_when_a_file_cannot_be_written(@TempDir Path dir) {
        Path file = dir.resolve("absent").resolve("dossier.html");
        Typed typed = Typed.type("dossier", "-o", file.toString());
        assertThat(typed.code()).isEqualTo(ExitCode.REFUSED);
        assertThat(words(typed.err())).contains("could not be written");
    }

    @Test
    void writes_the_dossier_where_it_is_told(@TempDir Path dir) throws IOException {
        Path file = dir.resolve("cart.html");
        Typed typed = Typed.type("dossier", "somewhere", "-o", file.toString());
        assertThat(typed.code()).isEqualTo(ExitCode.FAILS);
        assertThat(Files.readString(file)).isEqualTo("<html>Frost cart</html>");
        assertThat(typed.out()).contains("cart.html written: 1 fails");
    }

    @Test
    void takes_the_width_from_the_environment_within_reason() {
        assertThat(Console.screen(Map.of(), false, System.out, System.err).width())
                .isEqualTo(80);
        assertThat(Console.screen(Map.of("COLUMNS", "5"), false, System.out, System.err)
                        .width())
                .isEqualTo(30);
        assertThat(Console.screen(Map.of("COLUMNS", "nonsense"), false, System.out, System.err)
                        .width())
                .isEqualTo(80);
    }
}
