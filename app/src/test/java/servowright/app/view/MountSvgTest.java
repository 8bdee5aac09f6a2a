package servowright.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class MountSvgTest {
    private static final MountView.Gap GAP = new MountView.Gap(1.7, 1.9, 2.1);

    @Test
    void says_magnet_gap_tolerance_and_depth() {
        String drawing =
                MountSvg.of(new MountView("arm", 8, 3, GAP, Optional.of(0.35))).end();
        assertThat(drawing)
                .startsWith("<svg")
                .contains("magnet 8 by 3 mm", "gap 1.9 mm, 1.7 to 2.1 mm", "element 0.35 mm deep");
    }

    @Test
    void says_that_the_depth_is_not_stated() {
        MountView.Gap exact = new MountView.Gap(1, 1, 1);
        String drawing = MountSvg.of(new MountView("arm", 6, 2.5, exact, Optional.empty()))
                .end();
        assertThat(drawing).contains("depth not stated", "gap 1 mm<").doesNotContain("shims");
    }

    /** A sans-serif letter is at most 0.6 of its size wide on average (common practice, no source). */
    @Test
    void no_label_runs_out_of_the_drawing() {
        MountView wide = new MountView("arm", 12.75, 12.25, new MountView.Gap(1.25, 1.75, 2.25), Optional.of(0.35));
        String drawing = MountSvg.of(wide).end();
        Matcher text = Pattern.compile("<text x=\"([0-9.]+)\"[^>]*>([^<]*)<").matcher(drawing);
        int labels = 0;
        while (text.find()) {
            labels++;
            double end =
                    Double.parseDouble(text.group(1)) + 0.6 * 12 * text.group(2).length();
            assertThat(end).as(text.group(2)).isLessThan(420);
        }
        assertThat(labels).isEqualTo(6);
    }
}
