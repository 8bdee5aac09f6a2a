package servowright.engine.encoder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Synthetic coast-down and drag counts with known truth: 0.5, 0.25, 0.02 and 0.05 degrees at orders 1 to 4. */
class CalibrationFieldTest {
    private static final double[] TRUTH_DEGREE = {0.5, 0.25, 0.02, 0.05};
    private static final double[] TRUTH_PHASE = {0.30, 1.10, 2.00, -0.70};

    private static double[] angles(List<Map<String, String>> rows) {
        int[] counts = Arrays.stream(ReferenceData.column(rows, "counts"))
                .mapToInt(c -> (int) c)
                .toArray();
        return Angles.ofCounts(counts, 16384);
    }

    private static Calibration.Fitted fitted(Calibration calibration) {
        assertThat(calibration).isInstanceOf(Calibration.Fitted.class);
        return (Calibration.Fitted) calibration;
    }

    private static void assertAmplitudes(Calibration.Fitted fitted) {
        assertThat(fitted.error().ripples()).hasSize(4);
        for (Ripple ripple : fitted.error().ripples()) {
            int k = ripple.order() - 1;
            assertThat(Math.toDegrees(ripple.amplitudeRad())).isCloseTo(TRUTH_DEGREE[k], within(0.002));
            double phase = Math.atan2(ripple.cosineRad(), ripple.sineRad());
            assertThat(Angles.wrapped(phase - TRUTH_PHASE[k])).isCloseTo(0, within(0.0012 / TRUTH_DEGREE[k]));
        }
    }

    @Test
    void coast_down_needs_the_fourth_order_in_time_and_then_gives_every_amplitude() {
        List<Map<String, String>> rows = ReferenceData.rows("encoder-coast-synthetic.csv");
        double[] second = ReferenceData.column(rows, "t_s");
        Calibration.Fitted found = fitted(FreeRunFit.of(second, angles(rows), 4));
        assertThat(found.polynomialOrder()).isEqualTo(4);
        assertThat(Math.toDegrees(found.residualSdRad())).isCloseTo(0.0209, within(3e-4));
        assertThat(found.ordersMissing()).isFalse();
        assertAmplitudes(found);
    }

    @Test
    void coast_down_with_too_low_an_order_is_told_by_its_residue() {
        List<Map<String, String>> rows = ReferenceData.rows("encoder-coast-synthetic.csv");
        double[] second = ReferenceData.column(rows, "t_s");
        double[] read = angles(rows);
        Calibration.Fitted second2 = fitted(FreeRunFit.of(second, read, 4, 2));
        assertThat(Math.toDegrees(second2.residualSdRad())).isCloseTo(6.3, within(0.1));
        assertThat(second2.ordersMissing()).isTrue();
        Calibration.Fitted third = fitted(FreeRunFit.of(second, read, 4, 3));
        assertThat(Math.toDegrees(third.residualSdRad())).isCloseTo(0.097, within(0.01));
        assertThat(third.ordersMissing()).isTrue();
    }

    @Test
    void drag_both_ways_gives_offset_lag_and_amplitudes() {
        List<Map<String, String>> rows = ReferenceData.rows("encoder-drag-synthetic.csv");
        Calibration.Fitted found = fitted(DragFit.of(
                ReferenceData.column(rows, "direction"),
                ReferenceData.column(rows, "theta_el_cmd_rad"),
                angles(rows),
                7,
                4));
        assertThat(Math.toDegrees(found.lagRad())).isCloseTo(0.820, within(0.01));
        assertThat(Math.toDegrees(found.error().meanRad() - 1.234)).isCloseTo(0, within(0.01));
        for (Ripple ripple : found.error().ripples()) {
            assertThat(Math.toDegrees(ripple.amplitudeRad()))
                    .isCloseTo(TRUTH_DEGREE[ripple.order() - 1], within(0.002));
        }
    }

    @Test
    void correction_from_the_drag_leaves_little_of_the_true_error() {
        List<Map<String, String>> rows = ReferenceData.rows("encoder-drag-synthetic.csv");
        double[] read = angles(rows);
        double[] truth = ReferenceData.column(rows, "theta_true_rad");
        Calibration.Fitted found = fitted(DragFit.of(
                ReferenceData.column(rows, "direction"), ReferenceData.column(rows, "theta_el_cmd_rad"), read, 7, 4));
        double sum = 0;
        for (int i = 0; i < read.length; i++) {
            double left = Angles.wrapped(found.error().trueRad(read[i]) - truth[i]);
            sum += left * left;
        }
        // Noise of 0.02 degrees and half a count of 0.022 degrees cut off remain.
        assertThat(Math.toDegrees(Math.sqrt(sum / read.length))).isLessThan(0.027);
        assertThatCode(() -> CorrectionTable.of(found.error(), 64)).doesNotThrowAnyException();
    }
}
