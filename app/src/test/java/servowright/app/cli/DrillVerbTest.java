package servowright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class DrillVerbTest {
    @Test
    void says_how_to_get_a_template_where_there_is_none() {
        Typed typed = Typed.type("dossier", "--drill", "nowhere");
        assertThat(typed.code()).isEqualTo(ExitCode.REFUSED);
        assertThat(typed.out()).isEmpty();
        assertThat(typed.err()).contains("no drill template of \"nowhere\"");
    }
}
