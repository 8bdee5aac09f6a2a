package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static servowright.engine.machine.ReadingFigure.CURRENT;
import static servowright.engine.machine.ReadingFigure.VOLTAGE;

import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Source;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Motor;
import servowright.engine.machine.TestFigure;
import servowright.engine.numeric.Quantile;
import servowright.engine.quantity.Quantity;

/**
 * Do 95 % intervals hold the truth in 95 % of cases? Synthetic readings with every disturbance a bench has, each drawn
 * from the limits that the test states. With 300 draws an honest interval scores 92 to 98 %.
 */
class CoverageTest {
    private static final int DRAWS = 300;
    private static final Motor MOTOR = Given.motor();

    /** Share of draws whose interval holds the truth; {@code draw} gives (value - truth) over the half-width. */
    private static double coverage(long seed, ToDoubleFunction<Random> draw) {
        int held = 0;
        for (int k = 0; k < DRAWS; k++) {
            held += Math.abs(draw.applyAsDouble(new Random(seed + k))) <= 1 ? 1 : 0;
        }
        System.out.printf(Locale.ROOT, "seed %d: 95 %% intervals hold the truth in %d of %d%n", seed, held, DRAWS);
        return (double) held / DRAWS;
    }

    private static double departure(Known found, double truth) {
        double k = Quantile.coverageFactor(0.95, found.degreesOfFreedom());
        return (found.si() - truth) / (k * found.standardUncertainty());
    }

    private static double within(Random random, double halfWidth) {
        return halfWidth * (2 * random.nextDouble() - 1);
    }

    /** One spin with 8 bits, hum, drift, harmonics and noise. */
    private static double spin(Random random, double gainLimit, double kelvinLimit) {
        double flux = 1e-3 * Math.exp(3 * random.nextDouble());
        double hertz = 35 + 200 * random.nextDouble();
        double periods = 2 + 12 * random.nextDouble();
        double kelvin = within(random, kelvinLimit);
        double peak = Math.sqrt(3) * flux * (1 - 0.0011 * kelvin) * 2 * Math.PI * hertz;
        double gain = 1 + within(random, gainLimit);
        double base = 1 + within(random, 50e-6);
        int count = 2500;
        double interval = periods / hertz / count;
        double phase = 6.28 * random.nextDouble();
        double hum = 0.004 * random.nextDouble();
        double fifth = 0.05 * random.nextDouble();
        double drift = within(random, 0.01) / (count * interval);
        double mains = 50 + within(random, 0.05);
        double[] v = Given.sampled(count, interval, t -> {
            double a = 2 * Math.PI * hertz * t * base + phase;
            return gain
                    * peak
                    * (Math.sin(a)
                            + fifth * Math.sin(5 * a + 2)
                            + 0.01 * Math.sin(7 * a)
                            + 0.003
                            + drift * t
                            + hum * Math.sin(2 * Math.PI * mains * t + 2 * phase));
        });
        double noise = peak * (0.005 + 0.02 * random.nextDouble());
        double[] coarse = Given.eightBit(Given.noisy(v, noise, random), 1.4 * peak);
        BenchTest test = Given.spin("spin hub 1")
                .recorded("a.csv")
                .channel("CH1", "A to B")
                .with(TestFigure.MAGNETS_AT, "20 degC ± " + kelvinLimit + " K")
                .limits("voltage", "± " + 100 * gainLimit + " %")
                .done();
        return departure(
                SpinTest.of(test, MOTOR, Given.recording("a.csv", interval, Given.channel("CH1", "V", coarse)))
                        .result()
                        .outcome(MotorParameter.FLUX_LINKAGE)
                        .found()
                        .orElseThrow()
                        .value(),
                flux);
    }

    @Test
    void spins_with_exact_instruments_cover_by_statistics_alone() {
        assertThat(coverage(1000, r -> spin(r, 1e-7, 1e-4))).as("seed 1000").isBetween(0.92, 0.98);
    }

    @Test
    void spins_with_gain_and_temperature_errors_cover() {
        assertThat(coverage(2000, r -> spin(r, 0.002, 2))).as("seed 2000").isBetween(0.92, 0.98);
    }

    /** Voltage against current at three currents, with contact voltage, digits, gains and temperature. */
    private static double resistance(Random random, double gainLimit) {
        double ohm = 0.02 * Math.exp(4 * random.nextDouble());
        double kelvin = within(random, 1);
        double warm = 2 * ohm * (254.5 + kelvin) / 254.5;
        double gainV = 1 + within(random, gainLimit);
        double gainI = 1 + within(random, gainLimit);
        double contact = within(random, 1e-3);
        Given.Test test = Given.resistance("resistance hub 1")
                .with(TestFigure.WINDING_AT, "20 degC ± 1 K")
                .limits("voltage", "± " + 100 * gainLimit + " %")
                .limits("current", "± " + 100 * gainLimit + " %");
        for (int k = 1; k <= 3; k++) {
            double amp = 0.5 * k * (1 + within(random, 0.02));
            double volt = (amp * warm + contact) * gainV;
            test.reading(
                    "A to B",
                    CURRENT,
                    String.format(Locale.ROOT, "%.3f A", amp * gainI),
                    VOLTAGE,
                    String.format(Locale.ROOT, "%.4f V", volt));
        }
        return departure(
                ResistanceTest.of(test.done())
                        .outcome(MotorParameter.PHASE_RESISTANCE)
                        .found()
                        .orElseThrow()
                        .value(),
                ohm);
    }

    @Test
    void resistances_cover() {
        assertThat(coverage(3000, r -> resistance(r, 0.003))).as("seed 3000").isBetween(0.92, 0.98);
    }

    /** Shunt voltage after a step, 8 bits, hum and noise; the loop from a known winding and shunt. */
    private static double step(Random random, double ohmLimit) {
        double phaseOhm = 0.05 * Math.exp(3 * random.nextDouble());
        double shuntOhm = 0.2 * phaseOhm;
        double tau = 300e-6 * Math.exp(2 * random.nextDouble());
        double knownOhm = phaseOhm * (1 + ohmLimit * random.nextGaussian());
        double shuntTrue = shuntOhm * (1 + within(random, 0.01));
        double kelvin = within(random, 1);
        double loop = 2 * phaseOhm * (254.5 + kelvin) / 254.5 + shuntTrue;
        double henry = tau * loop / 2;
        double interval = tau / (25 + 40 * random.nextDouble());
        int count = 2000;
        double onset = (150.3 + random.nextDouble()) * interval;
        double mains = 6.28 * random.nextDouble();
        double hum = 0.001 * random.nextDouble();
        double[] v = Given.sampled(
                count,
                interval,
                t -> (t < onset ? 0 : -Math.expm1(-(t - onset) / tau)) + hum * Math.sin(2 * Math.PI * 50 * t + mains));
        double[] coarse = Given.eightBit(Given.noisy(v, 0.004 + 0.008 * random.nextDouble(), random), 1.3);
        BenchTest test = Given.step("inductance step hub 1")
                .recorded("a.csv")
                .channel("CH1", "shunt, A to B")
                .with(TestFigure.WINDING_AT, "20 degC ± 1 K")
                .with(TestFigure.SHUNT, String.format(Locale.ROOT, "%.9f ohm ± 1 %%", shuntOhm))
                .done();
        Known known = Known.of(
                Quantity.of(knownOhm, "ohm"), ohmLimit * knownOhm, Source.of("R"), Origin.MEASURED, "resistance");
        return departure(
                InductanceStepTest.of(
                                test,
                                MOTOR,
                                Given.recording("a.csv", interval, Given.channel("CH1", "V", coarse)),
                                Optional.of(known))
                        .result()
                        .outcome(MotorParameter.PHASE_INDUCTANCE)
                        .found()
                        .orElseThrow()
                        .value(),
                henry);
    }

    @Test
    void steps_with_exact_resistance_cover_by_statistics_alone() {
        assertThat(coverage(4000, r -> step(r, 1e-7))).as("seed 4000").isBetween(0.92, 0.98);
    }

    @Test
    void steps_with_a_measured_resistance_cover() {
        assertThat(coverage(5000, r -> step(r, 0.002))).as("seed 5000").isBetween(0.92, 0.98);
    }
}
