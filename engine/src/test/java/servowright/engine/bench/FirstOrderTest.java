package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import servowright.engine.motor.Conductor;
import servowright.engine.motor.ShortCircuitFit;
import servowright.engine.motor.WindingResistance;
import servowright.engine.numeric.Derivative;
import servowright.engine.numeric.Distribution;
import servowright.engine.numeric.MonteCarlo;

/**
 * Where reductions carry uncertainties through in first order although their formula bends: a Monte Carlo run with the same inputs
 * (JCGM 101:2008, 5.11 and 7.7) gives the same standard uncertainty to a twentieth, and ends of the interval to a tenth of its half-width.
 */
class FirstOrderTest {
    private static final int DRAWS = 20_000;
    private static final double ENOUGH = 0.05;

    private static void agree(ToDoubleFunction<double[]> f, double[] at, double[] standard, Distribution... inputs) {
        double[] slopes = Derivative.gradient(f, at);
        double u = 0;
        for (int i = 0; i < at.length; i++) {
            u = Math.hypot(u, slopes[i] * standard[i]);
        }
        MonteCarlo drawn = MonteCarlo.propagate(f, List.of(inputs), DRAWS, 0.95, new SplittableRandom(31));
        double half = 1.96 * u;
        assertThat(drawn.standardUncertainty() / u).isBetween(1 - ENOUGH, 1 + ENOUGH);
        assertThat((drawn.symmetric().low() - f.applyAsDouble(at) + half) / half)
                .isBetween(-2 * ENOUGH, 2 * ENOUGH);
        assertThat((drawn.symmetric().high() - f.applyAsDouble(at) - half) / half)
                .isBetween(-2 * ENOUGH, 2 * ENOUGH);
    }

    /**
     * Speeds up to which it was turned, in rpm, standard uncertainties of flux and resistance, limits of current and speed; 10 pole pairs,
     * 13.1 mWb, 119 mohm, 158 uH: from R four times ω L to a third of it.
     */
    @ParameterizedTest
    @CsvSource({"400, 0.007, 0.0046, 0.01, 0.003", "500, 0.02, 0.01, 0.02, 0.005", "2000, 0.007, 0.0046, 0.01, 0.003"})
    void first_order_is_enough_for_the_inductance_of_a_short_circuit(
            double fastest, double ofFlux, double ofOhm, double ofAmp, double ofSpeed) {
        double[] speed = {0.4, 0.6, 0.8, 1};
        Arrays.setAll(speed, k -> speed[k] * fastest * 2 * Math.PI / 60);
        double[] amp = Arrays.stream(speed)
                .map(w -> 10 * w * 13.1e-3 / Math.hypot(0.119, 10 * w * 158e-6))
                .toArray();
        ToDoubleFunction<double[]> henry =
                v -> ShortCircuitFit.of(scaled(speed, v[3]), scaled(amp, v[2]), v[1], v[0], 10)
                        .orElseThrow()
                        .henry();
        double[] at = {13.1e-3, 0.119, 1, 1};
        double[] standard = {ofFlux * at[0], ofOhm * at[1], ofAmp / Math.sqrt(3), ofSpeed / Math.sqrt(3)};
        agree(
                henry,
                at,
                standard,
                Distribution.normal(at[0], standard[0]),
                Distribution.normal(at[1], standard[1]),
                Distribution.rectangular(1 - ofAmp, 1 + ofAmp),
                Distribution.rectangular(1 - ofSpeed, 1 + ofSpeed));
    }

    private static double[] scaled(double[] values, double factor) {
        return Arrays.stream(values).map(v -> factor * v).toArray();
    }

    /** 36 K on 8 A: resistance by 0.3 %, thermometers by 0.5 K, current by 1 %, all as limits; the warm resistance by its scatter. */
    @Test
    void first_order_is_enough_for_the_thermal_resistance_of_a_heating_run() {
        ToDoubleFunction<double[]> kelvinPerWatt = v -> {
            double winding = WindingResistance.temperature(v[1], v[2], v[0], 300, Conductor.COPPER_IEC)
                    .windingKelvin();
            return (winding - v[3]) / (v[4] * v[4] * v[0]);
        };
        double[] at = {0.2731, 0.2396, 294.15, 294.15, 8};
        double third = 1 / Math.sqrt(3);
        double[] standard = {3e-4, 0.003 * at[1] * third, 0.5 * third, 0.5 * third, 0.08 * third};
        agree(
                kelvinPerWatt,
                at,
                standard,
                Distribution.normal(at[0], standard[0]),
                Distribution.rectangular(0.997 * at[1], 1.003 * at[1]),
                Distribution.rectangular(at[2] - 0.5, at[2] + 0.5),
                Distribution.rectangular(at[3] - 0.5, at[3] + 0.5),
                Distribution.rectangular(7.92, 8.08));
    }
}
