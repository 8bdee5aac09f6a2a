package servowright.engine.motor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import servowright.engine.motor.Saliency.TerminalPair;

class SaliencyFitTest {

    private static final Saliency ROTOR = new Saliency(60e-6, 75e-6, 0);

    @Test
    void finds_both_axes_from_readings_over_the_angle() {
        double[] angles = {0, 0.4, 0.9, 1.7, 2.2, 2.9};
        SaliencyFit fit = SaliencyFit.of(angles, readings(angles, 0, 1)).orElseThrow();
        assertThat(fit.dHenry()).isCloseTo(60e-6, within(1e-15));
        assertThat(fit.qHenry()).isCloseTo(75e-6, within(1e-15));
        assertThat(ROTOR.betweenTerminalsHenry(TerminalPair.AB, fit.leastElectricalRad()))
                .isCloseTo(2 * 60e-6, within(1e-12));
        assertThat(fit.scatterHenry()).isLessThan(1e-15);
    }

    /** The stated standard deviation against the spread of 400 repeated fits. */
    @Test
    void states_the_standard_deviation_that_repetition_shows() {
        long seed = 20_260_101;
        Random random = new Random(seed);
        double[] angles = new double[24];
        for (int i = 0; i < angles.length; i++) {
            angles[i] = 2 * Math.PI * i / angles.length;
        }
        int runs = 400;
        double square = 0;
        double stated = 0;
        for (int run = 0; run < runs; run++) {
            SaliencyFit fit = SaliencyFit.of(angles, readings(angles, 0.5e-6, random.nextLong()))
                    .orElseThrow();
            square += Math.pow(fit.dHenry() - 60e-6, 2) / runs;
            stated += Math.pow(fit.dStandardHenry(), 2) / runs;
            assertThat(fit.qStandardHenry()).isPositive();
        }
        assertThat(Math.sqrt(square / stated)).as("seed %d", seed).isBetween(0.9, 1.1);
    }

    @Test
    void gives_nothing_when_the_angles_do_not_tell_the_axes_apart() {
        double[] angles = {0, Math.PI, 0, Math.PI, 0};
        assertThat(SaliencyFit.of(angles, readings(angles, 0, 1))).isEmpty();
        double[] quarters = {0, Math.PI / 2, Math.PI, 3 * Math.PI / 2, 2 * Math.PI};
        assertThat(SaliencyFit.of(quarters, readings(quarters, 0, 1))).isEmpty();
        double[] spread = {0, 0.5, 1, 1.5, 2};
        assertThat(SaliencyFit.of(spread, new double[] {1e-6, -5e-6, 1e-6, 4e-6, 2e-6}))
                .isEmpty();
        assertThatThrownBy(() -> SaliencyFit.of(new double[3], new double[3])).hasMessageContaining("readings");
    }

    private static double[] readings(double[] angles, double noise, long seed) {
        Random random = new Random(seed);
        double[] henry = new double[angles.length];
        for (int i = 0; i < henry.length; i++) {
            henry[i] = ROTOR.betweenTerminalsHenry(TerminalPair.AB, angles[i]) + noise * random.nextGaussian();
        }
        return henry;
    }
}
