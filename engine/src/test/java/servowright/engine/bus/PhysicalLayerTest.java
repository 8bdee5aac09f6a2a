package servowright.engine.bus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PhysicalLayerTest {
    /** Two terminators of 120 ohm read 60, three 40, four 30 (common practice); six nodes of 30 kohm make it 59.3 (computed). */
    @ParameterizedTest
    @CsvSource({"1,0,120", "2,0,60", "3,0,40", "4,0,30", "2,6,59.289"})
    void an_ohmmeter_counts_the_terminators(int count, int nodes, double ohm) {
        double reading = Terminators.readingOhm(120, count, nodes, 30_000);
        assertThat(reading).isCloseTo(ohm, within(1e-3));
        assertThat(Terminators.countFor(reading, 120, nodes, 30_000)).isEqualTo(count);
    }

    @Test
    void an_open_bus_shows_the_nodes_alone() {
        assertThat(Terminators.readingOhm(120, 0, 4, 30_000)).isCloseTo(7500, within(1e-9));
        assertThat(Terminators.countFor(7200, 120, 4, 30_000)).isZero();
        assertThat(Terminators.countFor(1e6, 120, 0, 30_000)).isZero();
        assertThatThrownBy(() -> Terminators.readingOhm(0, 2, 0, 30_000)).hasMessageContaining("terminator");
    }

    /**
     * Formula with k = 0.2 for 32, 64, 100 nodes: 18.14, 15.64, 13.54 ohm, in the ratios 0.862 and 0.747 of the reprinted CiA 303-1
     * table (seen); with k = 1/3 it gives 14.25, 12.29, 10.64 ohm, as the table's lengths do (computed).
     */
    @ParameterizedTest
    @CsvSource({
        "32,0.2,18.14",
        "64,0.2,15.64",
        "100,0.2,13.54",
        "32,0.333333,14.25",
        "64,0.333333,12.29",
        "100,0.333333,10.64"
    })
    void the_far_end_limits_the_wire(int nodes, double margin, double ohm) {
        assertThat(TrunkCable.mostWireOhm(1.5, 1.0, margin, 118, nodes, 20_000)).isCloseTo(ohm, within(0.02));
    }

    /** Glossary of a space standard (seen): 50 ns, 10 ns/m, 5/3 m. */
    @Test
    void a_stub_stays_within_a_third_of_the_critical_length() {
        assertThat(TrunkCable.longestStubMetre(50, 10)).isCloseTo(5.0 / 3, within(1e-12));
        assertThatThrownBy(() -> TrunkCable.mostWireOhm(1.5, 1, 2, 120, 2, 1e4)).hasMessageContaining("margin");
    }
}
