package servowright.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import servowright.app.input.csv.ReadingHints;
import servowright.engine.bench.TestResult;
import servowright.engine.known.Phrase;
import servowright.engine.machine.Figures;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Recording;

/**
 * Phase currents of a small inverter, healthy and with one switch open or shorted, logged ten times a second in counts: 5 V
 * over 1023 counts, 2.5 V at no current, 0.1 V per ampere. Shares of signs were counted outside from the same files.
 */
class SensingFieldTest {
    private static TestResult reduced(String file) {
        ReadingHints.Scale ampere = new ReadingHints.Scale(
                5.0 / 1023 / 0.1, 511.5, FieldReduction.in("A").unit());
        Recording recording = FieldReduction.read(
                FieldData.bench("f01-inverter-faults-serial-log").resolve(file),
                ReadingHints.declare()
                        .scale("column 2", ampere)
                        .scale("column 3", ampere)
                        .build());
        return FieldReduction.reduced(
                TestKind.CURRENT_SENSING,
                FieldReduction.unknownMotor(),
                recording,
                Map.of("column 2", "current A", "column 3", "current B"),
                Figures.none());
    }

    private static double share(TestResult result, char phase, String name) {
        return result.details().stream()
                .filter(p -> p.template().startsWith("current " + phase))
                .map(p -> ((Phrase.Figure) Objects.requireNonNull(p.figures().get(name)))
                        .value()
                        .si())
                .findFirst()
                .orElseThrow();
    }

    @Test
    void finds_both_signs_in_the_healthy_run() {
        TestResult result = reduced("normal.txt");
        assertThat(share(result, 'A', "above")).isCloseTo(0.58, within(0.03));
        assertThat(share(result, 'A', "below")).isCloseTo(0.35, within(0.03));
        assertThat(share(result, 'B', "above")).isCloseTo(0.33, within(0.03));
        assertThat(share(result, 'B', "below")).isCloseTo(0.61, within(0.03));
        assertThat(share(result, 'C', "above")).isCloseTo(0.58, within(0.03));
        assertThat(share(result, 'C', "below")).isCloseTo(0.25, within(0.03));
        assertThat(FieldReduction.says(result, "switch of leg")).isFalse();
    }

    @Test
    void names_the_open_and_the_shorted_switch_among_the_suspects() {
        assertThat(FieldReduction.says(
                        reduced("open_hb2_high.txt"),
                        "B is never positive, C is never negative: upper switch of leg B stays open"))
                .isTrue();
        assertThat(FieldReduction.says(
                        reduced("short_hb3_high.txt"),
                        "A is never positive, B is never positive, C is never negative: upper switch of leg C shorted"))
                .isTrue();
    }

    /** A is never positive, B never negative, C about nothing: two switches would explain it, and an offset of B hides which. */
    @Test
    void names_both_switches_that_a_small_current_leaves_open() {
        TestResult result = reduced("short_hb2_high.txt");
        assertThat(FieldReduction.says(result, "A is never positive, B is never negative"))
                .isTrue();
        assertThat(FieldReduction.says(result, "upper switch of leg B shorted")).isTrue();
        assertThat(share(result, 'A', "above")).isLessThan(0.03);
        assertThat(share(result, 'B', "below")).isLessThan(0.03);
    }
}
