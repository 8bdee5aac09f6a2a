package servowright.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TrialStartTest {
    @Test
    void is_shown_every_view_it_asks_for(@TempDir Path folder) throws IOException {
        OpenPage.copyDemo(folder);
        assertThat(TrialStart.run(folder)).startsWith("/").containsAll(TrialStart.VIEWS);
    }
}
