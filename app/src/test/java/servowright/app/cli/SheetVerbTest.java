package servowright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import servowright.engine.worksheet.Worksheet;
import servowright.engine.worksheet.Worksheets;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class SheetVerbTest {
    private static Typed sheet(String... words) {
        return Typed.type(
                Stream.concat(Stream.of("sheet"), Arrays.stream(words)).toArray(String[]::new));
    }

    /** 8.269933 / 150, 11.695452 / 150 and 9.118907 / 150 N m/A: products of torque and speed constant, recomputed. */
    @Test
    void gives_the_torque_constants_of_a_speed_constant_as_json() {
        Typed typed = sheet("motor-constants", "speed_constant=150 rpm/V [line peak]", "--json");
        assertThat(typed.code()).isEqualTo(ExitCode.FINE);
        JsonNode json = JsonMapper.builder().build().readTree(typed.out());
        assertThat(json.get("format").asInt()).isEqualTo(1);
        assertThat(json.get("sheet").asString()).isEqualTo("motor-constants");
        JsonNode results = json.get("results");
        assertThat(si(results, "torque_constant_q_axis")).isEqualTo("0.05513289");
        assertThat(si(results, "torque_constant_phase_rms")).isEqualTo("0.07796968");
        assertThat(si(results, "torque_constant_six_step")).isEqualTo("0.06079271");
        assertThat(results.get("torque_constant_q_axis").get("text").asString()).isEqualTo("0.0551329 N m/A");
        assertThat(json.get("working").size()).isPositive();
    }

    private static String si(JsonNode results, String name) {
        return String.format(
                java.util.Locale.ROOT, "%.8f", results.get(name).get("si").asDouble());
    }

    @Test
    void shows_the_same_texts_on_the_screen_and_in_json() {
        String screen =
                sheet("motor-constants", "speed_constant=150 rpm/V [line peak]").out();
        JsonNode json = JsonMapper.builder()
                .build()
                .readTree(sheet("motor-constants", "speed_constant=150 rpm/V [line peak]", "--json")
                        .out());
        json.get("results")
                .forEachEntry((name, result) ->
                        assertThat(screen).contains(result.get("text").asString()));
    }

    @Test
    void shows_the_working_when_asked() {
        assertThat(sheet("motor-constants", "speed_constant=150 rpm/V [line peak]", "--working")
                        .out())
                .contains("Working")
                .contains("Kt = 3/2 · pλ")
                .contains("= 3/2 · 0.0367553 V s/rad = 0.0551329 N m/A");
    }

    @Test
    void describes_every_worksheet_with_an_example_that_can_be_typed() {
        assertThat(Worksheets.all()).isNotEmpty();
        for (Worksheet worksheet : Worksheets.all()) {
            String name = worksheet.declaration().name();
            Typed help = sheet(name, "--help");
            assertThat(help.code()).isEqualTo(ExitCode.FINE);
            assertThat(help.out())
                    .contains("Inputs")
                    .contains("Results")
                    .contains("servowright sheet " + name + " ")
                    .contains("Sources");
            assertThat(sheet("--list").out()).contains(name);
        }
    }

    @Test
    void refuses_what_it_does_not_know_and_suggests() {
        Typed name = sheet("motor-constant");
        assertThat(name.code()).isEqualTo(ExitCode.REFUSED);
        assertThat(name.err()).contains("Nearest: motor-constants.");
        Typed input = sheet("motor-constants", "sped_constant=150 rpm/V", "150");
        assertThat(input.code()).isEqualTo(ExitCode.REFUSED);
        assertThat(input.err())
                .contains("motor-constants was not accepted, 2 problems:")
                .contains("Nearest: speed_constant.")
                .contains("\"150\" is no input with a value");
    }

    @Test
    void says_what_is_missing() {
        Typed typed = sheet("motor-constants");
        assertThat(typed.code()).isEqualTo(ExitCode.REFUSED);
        assertThat(typed.err()).contains("Missing: ");
    }
}
