package servowright.engine.motor;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class StarOfSlotsTest {

    static List<String> rows() throws IOException {
        try (InputStream in = Objects.requireNonNull(
                StarOfSlotsTest.class.getResourceAsStream("winding-factors.csv"), "winding-factors.csv")) {
            return new String(in.readAllBytes(), UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#") && !line.startsWith("slots"))
                    .toList();
        }
    }

    /** Every row of the table in test resources, recomputed by star of slots with another program. */
    @ParameterizedTest
    @MethodSource("rows")
    void agrees_with_the_table_of_winding_factors(String row) {
        String[] cells = row.split(",", -1);
        int slots = Integer.parseInt(cells[0]);
        int poles = Integer.parseInt(cells[1]);
        StarOfSlots.Result result = StarOfSlots.of(slots, poles);
        if (cells[2].isEmpty()) {
            assertThat(result).isEqualTo(new StarOfSlots.Impossible(StarOfSlots.Reason.ODD_POLES));
            return;
        }
        assertThat(result).isInstanceOfSatisfying(StarOfSlots.Balanced.class, winding -> {
            assertThat(winding.slotsPerPolePerPhase()).isCloseTo(Double.parseDouble(cells[3]), within(5.1e-6));
            assertThat(winding.pitchFactor()).isCloseTo(Double.parseDouble(cells[4]), within(5.1e-6));
            assertThat(winding.distributionFactor()).isCloseTo(Double.parseDouble(cells[5]), within(5.1e-6));
            assertThat(winding.windingFactor()).isCloseTo(Double.parseDouble(cells[6]), within(5.1e-6));
        });
        Cogging cogging = Cogging.of(slots, poles);
        assertThat(cogging.periodsPerTurn()).isEqualTo(Integer.parseInt(cells[7]));
        assertThat(Math.toDegrees(cogging.periodMechRad())).isCloseTo(Double.parseDouble(cells[8]), within(5.1e-6));
        assertThat(cogging.symmetry()).isEqualTo(Integer.parseInt(cells[9]));
        assertThat(cogging.radialPullPossible()).isEqualTo(cells[10].contains("pull"));
    }

    @Test
    void reads_all_rows() throws IOException {
        assertThat(rows()).hasSize(49);
    }

    @ParameterizedTest
    @CsvSource({"12, 11, ODD_POLES", "9, 9, ODD_POLES", "10, 8, UNBALANCED", "9, 18, NO_VOLTAGE", "12, 18, UNBALANCED"})
    void says_why_a_combination_makes_no_winding(int slots, int poles, StarOfSlots.Reason reason) {
        assertThat(StarOfSlots.of(slots, poles)).isEqualTo(new StarOfSlots.Impossible(reason));
        assertThat(reason.words()).isNotEmpty();
    }

    /** Poles 2p and 2(Q − p) see the same coils, only the other way round (symmetry of the star). */
    @Test
    void gives_mirrored_pole_counts_the_same_factor() {
        for (int[] pair : new int[][] {{9, 8, 10}, {12, 10, 14}, {15, 14, 16}, {36, 30, 42}}) {
            double fewer = ((StarOfSlots.Balanced) StarOfSlots.of(pair[0], pair[1])).windingFactor();
            double more = ((StarOfSlots.Balanced) StarOfSlots.of(pair[0], pair[2])).windingFactor();
            assertThat(more).isCloseTo(fewer, within(1e-12));
        }
    }

    /** Detents do not say which motor it is: 12/8 and 6/8 both have 24, 36/42 and 36/28 both 252 (recomputed). */
    @Test
    void names_all_combinations_for_a_count_of_detents() {
        assertThat(names(Cogging.forDetents(24, 36, 48, 0.86))).contains("12/8", "6/8");
        assertThat(names(Cogging.forDetents(252, 36, 48, 0.86))).contains("36/42", "36/28");
        assertThat(names(Cogging.forDetents(84, 24, 28, 0.9)).get(0)).isEqualTo("12/14");
        assertThat(Cogging.forDetents(11, 36, 48, 0)).isEmpty();
    }

    /** Published recording: order 72 with 24 poles belongs to 18 slots (evaluated here). */
    @Test
    void fits_order_72_of_a_published_hold_map() {
        assertThat(Cogging.of(18, 24).periodsPerTurn()).isEqualTo(72);
        assertThat(names(Cogging.forDetents(72, 36, 48, 0.86))).contains("18/24");
    }

    @Test
    void refuses_counts_that_are_no_motor() {
        assertThatThrownBy(() -> StarOfSlots.of(2, 2)).hasMessageContaining("slots");
        assertThatThrownBy(() -> Cogging.of(3, 1)).hasMessageContaining("poles");
        assertThatThrownBy(() -> Cogging.forDetents(12, 12, 12, Double.NaN)).hasMessageContaining("winding factor");
    }

    private static List<String> names(List<Cogging.Candidate> candidates) {
        return candidates.stream()
                .map(c -> c.cogging().slots() + "/" + c.cogging().poles())
                .toList();
    }
}
