package servowright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CorrectionVerbTest {
    @Test
    void writes_the_harmonics_of_an_axis() {
        Typed typed = Typed.type("bench", "--correction", "lift");
        assertThat(typed.code()).isEqualTo(ExitCode.FINE);
        assertThat(typed.out()).startsWith("order,cosine_deg,sine_deg\n1,").contains(",0.50000");
        assertThat(typed.err()).isEmpty();
    }

    @Test
    void writes_a_table_of_the_length_asked_for_and_says_beside_it_what_it_leaves() {
        Typed typed = Typed.type("bench", "--correction", "lift", "--entries", "12");
        assertThat(typed.code()).isEqualTo(ExitCode.FINE);
        assertThat(typed.out().lines()).hasSize(13);
        assertThat(typed.out()).startsWith("reading_deg,correction_deg\n0.000000,");
        assertThat(typed.err()).contains("A table of 12 entries leaves");
    }

    @ParameterizedTest
    @ValueSource(strings = {"3", "65537", "many", "-8"})
    void refuses_a_table_that_is_none(String entries) {
        Typed typed = Typed.type("bench", "--correction", "lift", "--entries=" + entries);
        assertThat(typed.code()).isEqualTo(ExitCode.REFUSED);
        assertThat(typed.out()).isEmpty();
    }

    @Test
    void names_the_axes_that_have_a_correction() {
        Typed typed = Typed.type("bench", "--correction", "pan");
        assertThat(typed.code()).isEqualTo(ExitCode.REFUSED);
        assertThat(typed.err())
                .contains("no correction of the angle of \"pan\"")
                .contains("There is one of lift.");
    }
}
