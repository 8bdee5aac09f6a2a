package servowright.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The drill template of the demo, as the program writes it. */
class DrillTemplateTest {
    private static final String CART = Path.of(System.getProperty("servowright.root", "."))
            .resolve("examples/frost-cart")
            .toString();

    @TempDir
    Path scratch;

    @Test
    void is_a_drawing_of_its_own() throws Exception {
        Started run = Started.with(scratch, "dossier", CART, "--drill", "left wheel");
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.out()).startsWith("<svg").endsWith("</svg>\n").contains("4 holes of 2.2 mm");
        assertThat(run.err()).contains("measure the bar with a caliper").doesNotContain("does not fit");
    }

    @Test
    void names_the_axes_that_have_one() throws Exception {
        Started run = Started.with(scratch, "dossier", CART, "--drill", "lift");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("There is one of left wheel.");
    }
}
