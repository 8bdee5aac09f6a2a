package servowright.engine.motor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import servowright.engine.quantity.HookUp;

class WindingInductanceTest {

    private static final double OHM = 0.1;
    private static final double HENRY = 120e-6;

    /** 0.1 Ω and 120 µH at 1 kHz: 0.760585 Ω at 82.445 degrees (recomputed). */
    @Test
    void makes_and_undoes_an_impedance() {
        WindingInductance.Impedance expected = WindingInductance.expectedImpedance(HENRY, OHM, 1000);
        assertThat(expected.impedanceOhm()).isCloseTo(0.760585, within(5e-7));
        assertThat(Math.toDegrees(expected.angleRad())).isCloseTo(82.445, within(5e-4));
        WindingInductance.Impedance found =
                WindingInductance.fromAlternatingCurrent(expected.impedanceOhm() * 2, 2, OHM * 4, 1000);
        assertThat(found.loopHenry()).isCloseTo(HENRY, within(1e-12));
        assertThat(found.seriesOhm()).isCloseTo(OHM, within(1e-12));
        assertThat(found.angleRad()).isCloseTo(expected.angleRad(), within(1e-12));
        assertThatThrownBy(() -> WindingInductance.fromAlternatingCurrent(1, 10, 11, 1000))
                .hasMessageContaining("impedance squared");
    }

    /** Exact exponentials of a locked rotor, d axis 60 µH and 50 mΩ at 1 V (two independent solvers, recomputed). */
    @ParameterizedTest
    @CsvSource({
        "0.2e-3, 3.07036550",
        "0.5e-3, 6.81518740",
        "1e-3, 11.30803583",
        "2e-3, 16.22248794",
        "5e-3, 19.68992293"
    })
    void rises_like_the_locked_rotor(double second, double amp) {
        assertThat(WindingInductance.riseAmp(second, 1, 0.05, 60e-6)).isCloseTo(amp, within(5e-9));
    }

    @Test
    void finds_inductance_from_a_full_and_from_a_cut_rise() {
        for (double end : new double[] {12e-3, 1e-3}) {
            double[] time = times(end, 400);
            double[] amps = new double[time.length];
            for (int i = 0; i < time.length; i++) {
                amps[i] = WindingInductance.riseAmp(time[i], 1.5, OHM, HENRY);
            }
            WindingInductance.Step step = WindingInductance.fromRise(time, amps, 1.5, OHM);
            // Trapezoid rule: (h/τ)²/12 of error at most.
            double share = Math.pow(end / 399 / (HENRY / OHM), 2) / 12;
            assertThat(step.loopHenry()).isCloseTo(HENRY, withinPercentage(100 * share + 1e-9));
            assertThat(step.linkedWeber()).isCloseTo(step.loopHenry() * step.currentAmp(), within(1e-15));
        }
    }

    @Test
    void finds_inductance_from_a_decay_only_with_the_diode_drop() {
        double[] time = times(1e-3, 500);
        double[] amps = new double[time.length];
        for (int i = 0; i < time.length; i++) {
            amps[i] = WindingInductance.decayAmp(time[i], 15, OHM, HENRY, 0.8);
        }
        assertThat(amps[amps.length - 1]).isGreaterThan(0);
        assertThat(WindingInductance.fromDecay(time, amps, OHM, 0.8).loopHenry())
                .isCloseTo(HENRY, withinPercentage(1e-3));
        double blind = WindingInductance.fromDecay(time, amps, OHM, 0).loopHenry();
        double change = amps[0] - amps[amps.length - 1];
        assertThat(HENRY - blind).isCloseTo(0.8 * 1e-3 / change, withinPercentage(1e-2));
    }

    @Test
    void stops_the_decay_when_the_diode_blocks() {
        assertThat(WindingInductance.decayAmp(1, 15, OHM, HENRY, 0.8)).isZero();
    }

    /** Gimbal motor 12N14P: 600 and 1000 µs with 17 Ω and a 1 Ω shunt (published note, seen; recomputed). */
    @ParameterizedTest
    @CsvSource({"600e-6, 5.4e-3", "1000e-6, 9.0e-3"})
    void counts_the_shunt_into_the_time_constant(double tau, double phaseHenry) {
        double loop = WindingInductance.fromTimeConstant(tau, 17 + 1);
        assertThat(WindingInductance.phaseHenry(loop, HookUp.TWO_TERMINALS)).isCloseTo(phaseHenry, within(1e-9));
        assertThat(WindingInductance.fromTimeConstant(tau, 17) / loop - 1).isCloseTo(-0.056, within(5e-4));
    }

    /** Motors of the same note: R, L_d, L_q per phase (seen), corner frequency and saliency recomputed. */
    @ParameterizedTest
    @CsvSource({
        "1.13, 0.57e-3, 0.82e-3, 315.5, 219.3, 1.44",
        "0.070, 15e-6, 22e-6, 742.7, 506.4, 1.47",
        "0.65, 0.14e-3, 0.21e-3, 738.9, 492.6, 1.50",
        "0.357, 81e-6, 162e-6, 701.5, 350.7, 2.00",
        "0.006, 42e-6, 65e-6, 22.7, 14.7, 1.55"
    })
    void gives_corner_frequencies_and_saliency_of_published_motors(
            double ohm, double dHenry, double qHenry, double dHertz, double qHertz, double ratio) {
        assertThat(WindingInductance.cornerHertz(ohm, dHenry)).isCloseTo(dHertz, within(0.06));
        assertThat(WindingInductance.cornerHertz(ohm, qHenry)).isCloseTo(qHertz, within(0.06));
        assertThat(new Saliency(dHenry, qHenry, 0).ratio()).isCloseTo(ratio, within(5e-3));
    }

    @Test
    void refuses_records_that_hold_no_step() {
        assertThatThrownBy(() -> WindingInductance.fromRise(new double[] {0}, new double[] {0}, 1, 1))
                .hasMessageContaining("samples");
        assertThatThrownBy(() -> WindingInductance.fromRise(new double[] {0, 1}, new double[] {0}, 1, 1))
                .hasMessageContaining("as many currents");
        assertThatThrownBy(() -> WindingInductance.fromRise(new double[] {0, 1, 1}, new double[] {0, 1, 2}, 5, 1))
                .hasMessageContaining("time step");
        assertThatThrownBy(() -> WindingInductance.fromRise(new double[] {0, 1}, new double[] {1, 1}, 5, 1))
                .hasMessageContaining("current change");
        assertThatThrownBy(() -> WindingInductance.fromRise(new double[] {0, 1}, new double[] {0, Double.NaN}, 5, 1))
                .hasMessageContaining("flux linkage change");
    }

    private static double[] times(double end, int count) {
        double[] time = new double[count];
        for (int i = 0; i < count; i++) {
            time[i] = end * i / (count - 1);
        }
        return time;
    }
}
