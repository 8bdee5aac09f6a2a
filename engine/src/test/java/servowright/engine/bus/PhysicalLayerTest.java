package servowright.engine.bus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
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

    /** At the largest wire resistance the far end has just the level asked: the two formulas are each other's inverse. */
    @Test
    void the_far_end_has_the_level_the_limit_was_made_for() {
        double ohm = TrunkCable.mostWireOhm(1.5, 1.0, 1.0 / 3, 118, 64, 20_000);
        assertThat(TrunkCable.farEndVolt(1.5, ohm, 118, 64, 20_000)).isCloseTo(1.0 + 0.5 / 3, within(1e-9));
    }

    /** 0.25 mm2 at 20 degC: 69 mohm/m, the table's 70 for up to 40 m (seen); 8 % more at 40 degC. */
    @Test
    void a_wire_has_the_resistance_of_its_copper() {
        assertThat(TrunkCable.wireOhm(1, 0.25, 20)).isCloseTo(0.069, within(5e-5));
        assertThat(TrunkCable.wireOhm(100, 0.25, 40)).isCloseTo(6.896 * 1.0786, within(1e-3));
    }

    /** Both ends: 60 everywhere but for the wire; both at one end: 60 there and 60 plus the loop at the other (computed). */
    @Test
    void a_reading_depends_on_where_the_terminators_sit() {
        List<Terminators.Placed> ends = List.of(new Terminators.Placed(0, 120), new Terminators.Placed(40, 120));
        assertThat(Terminators.readingOhm(ends, 0, 7)).isCloseTo(60, within(1e-9));
        assertThat(Terminators.readingOhm(ends, 0.14, 20)).isCloseTo(122.8 / 2, within(1e-9));
        assertThat(Terminators.readingOhm(ends, 0.14, 0)).isCloseTo(120 * 125.6 / 245.6, within(1e-9));
        List<Terminators.Placed> oneEnd = List.of(new Terminators.Placed(0, 120), new Terminators.Placed(0, 120));
        assertThat(Terminators.readingOhm(oneEnd, 0.14, 40)).isCloseTo(65.6, within(1e-9));
        assertThat(Terminators.readingOhm(List.of(new Terminators.Placed(30, 120)), 0.1, 10))
                .isCloseTo(122, within(1e-9));
        assertThat(Terminators.readingOhm(List.of(), 0.1, 10)).isInfinite();
    }

    /** Dominant 3.5 + 2 V stays below 7 V (common practice); the range leaves 3.5 V of shift, the wide one 8.5 V. */
    @Test
    void a_ground_shift_eats_the_common_mode_range() {
        CommonMode two = CommonMode.of(2, CommonMode.Range.ORDINARY);
        assertThat(two.highest()).isEqualTo(5.5);
        assertThat(two.room()).isEqualTo(1.5);
        assertThat(CommonMode.of(4, CommonMode.Range.ORDINARY).room()).isNegative();
        assertThat(CommonMode.mostShift(CommonMode.Range.ORDINARY)).isEqualTo(3.5);
        assertThat(CommonMode.mostShift(CommonMode.Range.WIDE)).isEqualTo(8.5);
    }

    /**
     * Six units of 2.7 A chained over hops of 0.25 m AWG 24 with 10 mohm at each contact: 0.0621 ohm a hop, 3.52 V on both conductors
     * (question thread, recomputed). Half of it shifts the last ground: a dominant line comes at 5.26 V, 1.74 V inside the range.
     */
    @Test
    void a_chained_supply_shifts_the_ground_of_the_last_node() {
        double hopOhm = 2 * (0.25 * 0.08421 + 0.010);
        double dropVolt = hopOhm * 2.7 * (6 + 5 + 4 + 3 + 2 + 1);
        assertThat(dropVolt).isCloseTo(3.52, within(0.005));
        CommonMode last = CommonMode.of(dropVolt / 2, CommonMode.Range.ORDINARY);
        assertThat(last.highest()).isCloseTo(5.26, within(0.005));
        assertThat(last.room()).isCloseTo(1.74, within(0.005));
        assertThat(CommonMode.of(dropVolt * 2, CommonMode.Range.ORDINARY).room())
                .isNegative();
    }

    /** Rows of public reprints (seen): 1 Mbit/s 25 m, stubs 1.5 and 7.5 m; 500 kbit/s 100 m, 5.5 and 27.5 m; 50 kbit/s 1 km, 55 and 275 m. */
    @ParameterizedTest
    @CsvSource({
        "1e6,25,1.5,7.5",
        "800e3,50,2.5,12.5",
        "500e3,100,5.5,27.5",
        "400e3,100,5.5,27.5",
        "250e3,250,11,55",
        "125e3,500,22,110",
        "20e3,1000,55,275"
    })
    void usage_has_lengths_for_each_rate(double rate, double trunk, double stub, double stubs) {
        BusPractice row = BusPractice.at(rate);
        assertThat(row.trunkMetre()).isEqualTo(trunk);
        assertThat(row.stubMetre()).isEqualTo(stub);
        assertThat(row.stubsMetre()).isEqualTo(stubs);
        assertThatThrownBy(() -> BusPractice.at(2e6)).hasMessageContaining("bit rate");
    }
}
