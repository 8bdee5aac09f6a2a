package servowright.engine.bus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class TimingCheckTest {
    private static final BitTiming FD_NOMINAL = new BitTiming(80_000_000, 1, 95, 32, 32, 32);
    private static final BitTiming FD_DATA = new BitTiming(80_000_000, 1, 23, 8, 8, 8);

    /**
     * A controller manual's FD example (seen): 40 m, delays 255 ns, 910 ns there and back, 95 quanta of 12.5 ns where 72.8 are needed; it
     * reaches 67.75 m (recomputed).
     */
    @Test
    void agrees_with_the_fd_propagation_example() {
        PropagationBudget budget = new PropagationBudget(40, 5, 255, 0, 0);
        assertThat(budget.roundTripNs()).isCloseTo(910, within(1e-9));
        assertThat(budget.neededProp(FD_NOMINAL)).isEqualTo(73);
        assertThat(budget.longestMetre(FD_NOMINAL)).isCloseTo(67.75, within(1e-9));
        assertThat(budget.roomNs(FD_NOMINAL)).isCloseTo(277.5, within(1e-9));
    }

    /** Bosch TTCAN manual rev 1.6 (seen): 50 + 30 ns drivers, 220 ns line at 40 m, one way 300 ns: 600 ns, 6 quanta of 100 ns. */
    @Test
    void agrees_with_the_classical_propagation_example() {
        PropagationBudget budget = new PropagationBudget(40, 5.5, 80, 0, 0);
        BitTiming timing = new BitTiming(10_000_000, 1, 6, 1, 2, 1);
        assertThat(budget.neededProp(timing)).isEqualTo(6);
        assertThat(budget.roomNs(timing)).isCloseTo(0, within(1e-9));
        assertThat(new PropagationBudget(40, 5.5, 80, 40, 0).roomNs(timing)).isCloseTo(-160, within(1e-9));
    }

    /** Loop delay 150 and 255 ns at 80 %: 5.33 and 3.14 Mbit/s at most; at 5 Mbit/s 10 ns are left or 95 ns missing (practitioner case). */
    @Test
    void a_slow_transceiver_needs_compensation() {
        assertThat(DelayCompensation.highestRateWithout(150, 0.8)).isCloseTo(5.333e6, within(1e3));
        assertThat(DelayCompensation.highestRateWithout(255, 0.8)).isCloseTo(3.137e6, within(1e3));
        BitTiming five = new BitTiming(80_000_000, 1, 8, 4, 3, 3);
        assertThat(five.bitsPerSecond()).isEqualTo(5e6);
        DelayCompensation quick = DelayCompensation.of(new BitTiming(50_000_000, 1, 5, 2, 2, 2), 150);
        assertThat(quick.roomNs()).isCloseTo(10, within(1e-9));
        assertThat(quick.needed()).isFalse();
        assertThat(DelayCompensation.of(five, 255).needed()).isTrue();
        assertThat(DelayCompensation.of(five, 255).offsetClocks()).isEqualTo(13);
        assertThat(DelayCompensation.of(FD_DATA, 255).needed()).isFalse();
        assertThat(DelayCompensation.of(new BitTiming(80_000_000, 4, 2, 4, 3, 3), 100)
                        .possible())
                .isFalse();
    }

    /** A sample point of 75 % against 87.5 %, and a 0.5 % resonator with a jump width of 1 quantum in 40 (practitioner cases). */
    @Test
    void two_nodes_are_checked_against_each_other() {
        BitTiming late = new BitTiming(16_000_000, 1, 11, 2, 2, 2);
        BitTiming early = new BitTiming(16_000_000, 1, 7, 4, 4, 4);
        TimingPair apart = TimingPair.of(late, 50e-6, early, 50e-6);
        assertThat(apart.sampleDifference()).isCloseTo(0.125, within(1e-12));
        assertThat(apart.samplesAgree()).isFalse();
        assertThat(apart.clocksHold()).isTrue();
        BitTiming narrow = new BitTiming(40_000_000, 1, 14, 15, 10, 1);
        BitTiming wide = new BitTiming(40_000_000, 1, 14, 15, 10, 4);
        assertThat(TimingPair.of(narrow, 0.005, narrow, 50e-6).clocksHold()).isFalse();
        assertThat(TimingPair.of(wide, 0.005, wide, 50e-6).clocksHold()).isTrue();
        BitTiming off = new BitTiming(16_000_000, 1, 13, 2, 2, 2);
        assertThat(TimingPair.of(late, 0, off, 0).clocksHold()).isFalse();
    }

    /** 500 kbit/s from an 8 MHz clock is exact; 1 Mbit/s from 20 MHz at 75 % too; 800 kbit/s from 18 MHz comes out 2.3 % or so off. */
    @Test
    void a_controller_rounds_what_it_is_asked() {
        TimingSearch.Limits limits = TimingSearch.Limits.CLASSICAL;
        AchievedTiming exact =
                AchievedTiming.nearest(16_000_000, 500_000, limits, 0.875).orElseThrow();
        assertThat(exact.rateError()).isZero();
        assertThat(exact.sampleError()).isCloseTo(0, within(1e-12));
        AchievedTiming off =
                AchievedTiming.nearest(18_000_000, 800_000, limits, 0.8).orElseThrow();
        assertThat(off.timing().quanta()).isIn(22, 23);
        assertThat(Math.abs(off.rateError())).isBetween(0.02, 0.025);
        assertThat(AchievedTiming.nearest(1_000_000, 700_000, limits, 0.8)).isEmpty();
    }

    @Test
    void refuses_negative_delays() {
        assertThatThrownBy(() -> new PropagationBudget(-1, 5, 0, 0, 0)).hasMessageContaining("length");
        assertThatThrownBy(() -> DelayCompensation.of(FD_DATA, Double.NaN)).hasMessageContaining("loop delay");
    }
}
