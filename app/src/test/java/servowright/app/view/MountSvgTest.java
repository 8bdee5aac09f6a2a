package servowright.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class MountSvgTest {
    private static final MountView.Gap GAP = new MountView.Gap(1.7, 1.9, 2.1);

    @Test
    void says_magnet_gap_tolerance_and_depth() {
        String drawing =
                MountSvg.of(new MountView("arm", 8, 3, GAP, Optional.of(0.35))).end();
        assertThat(drawing)
                .startsWith("<svg")
                .contains("magnet 8 by 3 mm", "gap 1.9 mm, 1.7 to 2.1 mm", "sensing element 0.35 mm below");
    }

    @Test
    void says_that_the_depth_is_not_stated() {
        MountView.Gap exact = new MountView.Gap(1, 1, 1);
        String drawing = MountSvg.of(new MountView("arm", 6, 2.5, exact, Optional.empty()))
                .end();
        assertThat(drawing).contains("depth not stated", "gap 1 mm<").doesNotContain("shims");
    }
}
