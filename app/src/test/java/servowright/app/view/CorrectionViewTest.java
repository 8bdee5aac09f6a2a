package servowright.app.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import servowright.engine.bench.AngleCorrection;
import servowright.engine.encoder.HarmonicError;
import servowright.engine.encoder.Ripple;

class CorrectionViewTest {
    private static final HarmonicError ERROR = new HarmonicError(
            0,
            List.of(new Ripple(1, Math.toRadians(0.3), Math.toRadians(0.4)), new Ripple(2, 0, Math.toRadians(0.25))));

    private static CorrectionView view(boolean reversed) {
        return new CorrectionView(new AngleCorrection("left wheel", "slow drag left wheel 1", reversed, ERROR));
    }

    @Test
    void harmonics_are_written_in_degrees() {
        assertThat(view(false).harmonicsCsv())
                .isEqualTo("order,cosine_deg,sine_deg\n1,0.300000,0.400000\n2,0.000000,0.250000\n");
        assertThat(view(false).rows().get(0)).isEqualTo(new CorrectionView.Row("1", "0.5000 deg", "36.9 deg"));
    }

    @Test
    void a_table_of_any_length_takes_the_error_off_at_its_entries() {
        String[] lines = view(false).tableCsv(7).split("\n");
        assertThat(lines).hasSize(8);
        assertThat(lines[0]).isEqualTo("reading_deg,correction_deg");
        String[] third = lines[3].split(",");
        double read = Math.toRadians(Double.parseDouble(third[0]));
        double shaft = read - Math.toRadians(Double.parseDouble(third[1]));
        assertThat(shaft + ERROR.atRad(shaft)).isCloseTo(read, within(1e-7));
    }

    @Test
    void says_what_a_table_leaves() {
        // One order of 0.5 and one of 0.25 degrees: pi²/(2 N²) of each order squared (derived): 0.0018 degrees.
        assertThat(view(false).residueText(64)).contains("64 entries leaves 0.0018 deg read along straight lines");
        assertThat(view(false).residues()).hasSize(3);
    }

    @Test
    void says_when_the_sign_of_the_reading_is_turned_first() {
        assertThat(view(true).from()).contains("slow drag left wheel 1", "turned first");
        assertThat(view(false).from()).doesNotContain("turned");
    }
}
