package servowright.engine.motor;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** 18 slots with 24 magnets: lcm 72, one and two per electrical turn 12 and 24 (symmetry, recomputed). */
class TurnOrderTest {
    private static final OptionalInt TWELVE = OptionalInt.of(12);
    private static final OptionalInt SLOTS = OptionalInt.of(18);

    @Test
    void names_what_repeats_as_often() {
        assertThat(TurnOrder.of(72, TWELVE, SLOTS)).containsExactly(TurnOrder.COGGING, TurnOrder.SIX_ELECTRICAL);
        assertThat(TurnOrder.of(144, TWELVE, SLOTS)).containsExactly(TurnOrder.COGGING_AGAIN);
        assertThat(TurnOrder.of(18, TWELVE, SLOTS)).containsExactly(TurnOrder.SLOTS);
        assertThat(TurnOrder.of(12, TWELVE, SLOTS)).containsExactly(TurnOrder.ELECTRICAL);
        assertThat(TurnOrder.of(24, TWELVE, SLOTS)).containsExactly(TurnOrder.TWICE_ELECTRICAL);
        assertThat(TurnOrder.of(1, TWELVE, SLOTS)).containsExactly(TurnOrder.ONCE);
        assertThat(TurnOrder.of(2, TWELVE, SLOTS)).containsExactly(TurnOrder.TWICE);
        assertThat(TurnOrder.of(5, TWELVE, SLOTS)).isEmpty();
        assertThat(TurnOrder.of(72, OptionalInt.empty(), OptionalInt.empty())).isEmpty();
        assertThat(TurnOrder.ONCE.words()).contains("eccentric");
    }

    @Test
    void expects_what_slots_and_magnets_make() {
        assertThat(TurnOrder.expected(TWELVE, SLOTS)).containsExactlyInAnyOrder(72, 144, 216, 18, 12, 24);
        assertThat(TurnOrder.expected(OptionalInt.empty(), SLOTS)).containsExactly(18);
        assertThat(TurnOrder.expected(OptionalInt.empty(), OptionalInt.empty())).isEmpty();
    }

    /** Without noise the fit returns what was put in. */
    @Test
    void takes_position_and_friction_apart() {
        double[] rad = new double[4000];
        double[] amp = new double[rad.length];
        int[] senses = new int[rad.length];
        for (int i = 0; i < rad.length; i++) {
            senses[i] = i < 2000 ? 1 : -1;
            rad[i] = 2 * Math.PI * (i < 2000 ? i + 0.3 : 4000 - i - 0.3) / 2000;
            amp[i] = 0.1 + senses[i] * 0.05 + 0.3 * Math.cos(24 * rad[i]);
        }
        CoggingFit fit = CoggingFit.of(rad, amp, senses, 24).orElseThrow();
        assertThat(fit.frictionAmp())
                .isEqualTo(OptionalDouble.of(fit.frictionAmp().orElseThrow()));
        assertThat(fit.frictionAmp().orElseThrow()).isBetween(0.0499, 0.0501);
        assertThat(fit.rangeAmp()).isBetween(0.5999, 0.6001);
        assertThat(fit.amplitude(24)).isBetween(0.29999, 0.30001);
        assertThat(fit.amplitude(25)).isZero();
        int[] oneWay = senses.clone();
        Arrays.fill(oneWay, 1);
        assertThat(CoggingFit.of(rad, amp, oneWay).orElseThrow().frictionAmp()).isEmpty();
        assertThat(CoggingFit.of(Arrays.copyOf(rad, 500), Arrays.copyOf(amp, 500), Arrays.copyOf(senses, 500)))
                .isEmpty();
    }
}
