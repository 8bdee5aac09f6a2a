package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static servowright.engine.machine.ReadingFigure.ANGLE;
import static servowright.engine.machine.ReadingFigure.FIELD_ANGLE;
import static servowright.engine.machine.ReadingFigure.INDUCTANCE;

import java.util.Random;
import org.junit.jupiter.api.Test;
import servowright.engine.known.Known;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.machine.TestKind;

/** L(θ) = (Ld + Lq) + (Ld − Lq) cos(2θ + φ) between two terminals; Ld 60 uH, Lq 75 uH swing from 120 to 150 uH (recomputed). */
class InductanceByAngleTest {
    private static final Motor MOTOR = Given.motor(MotorFigure.POLE_PAIRS, "7");
    private static final double[] PHASE = {Math.PI / 3, Math.PI, -Math.PI / 3};
    private static final String[] PAIR = {"A to B", "B to C", "C to A"};

    private static double loop(double d, double q, int pair, double electricalRad) {
        return d + q + (d - q) * Math.cos(2 * electricalRad + PHASE[pair]);
    }

    private static Given.Test meter() {
        return Given.test(TestKind.INDUCTANCE_STEP).limits("inductance", "± 0.5 %");
    }

    private static void add(Given.Test test, ReadingFigure angle, int pair, double deg, double henry) {
        test.reading(PAIR[pair], angle, Given.text(deg, 3, "deg"), INDUCTANCE, Given.text(henry * 1e6, 2, "uH"));
    }

    private static TestResult reduced(Given.Test test) {
        return Given.reduced(MOTOR, test.done());
    }

    @Test
    void finds_d_and_q_from_one_pair_over_the_angle() {
        Given.Test test = meter();
        for (int k = 0; k < 12; k++) {
            add(test, ANGLE, 0, 2.5 * k, loop(60e-6, 75e-6, 0, Math.toRadians(7 * 2.5 * k) + 0.4));
        }
        TestResult result = reduced(test);
        assertThat(Given.value(result, MotorParameter.D_INDUCTANCE).si()).isCloseTo(60e-6, within(1e-8));
        assertThat(Given.value(result, MotorParameter.Q_INDUCTANCE).si()).isCloseTo(75e-6, within(1e-8));
        // The meter's 0.5 % as limits is 0.29 %, and stays however many readings there are.
        assertThat(Given.value(result, MotorParameter.Q_INDUCTANCE).relativeUncertainty())
                .isBetween(0.0028, 0.0035);
        assertThat(result.curves()).hasSize(3);
    }

    @Test
    void takes_several_pairs_and_electrical_angles_together() {
        Given.Test test = meter();
        for (int k = 0; k < 12; k++) {
            add(test, FIELD_ANGLE, k % 3, 25 * k, loop(60e-6, 75e-6, k % 3, Math.toRadians(25 * k) + 0.2));
        }
        TestResult result = Given.reduced(Given.motor(), test.done());
        assertThat(Given.value(result, MotorParameter.D_INDUCTANCE).si()).isCloseTo(60e-6, within(1e-8));
        assertThat(Given.value(result, MotorParameter.Q_INDUCTANCE).si()).isCloseTo(75e-6, within(1e-8));
    }

    @Test
    void tells_no_axes_apart_where_scatter_hides_the_swing() {
        Random random = new Random(3);
        Given.Test test = meter();
        for (int k = 0; k < 12; k++) {
            add(test, FIELD_ANGLE, 0, 15 * k, 135e-6 + 1e-6 * random.nextGaussian());
        }
        TestResult result = reduced(test);
        assertThat(result.values()).doesNotContainKey(MotorParameter.D_INDUCTANCE);
        assertThat(Given.value(result, MotorParameter.PHASE_INDUCTANCE).si()).isCloseTo(67.5e-6, within(0.5e-6));
        assertThat(Given.says(result, "not told apart")).isTrue();
    }

    @Test
    void refuses_angles_that_say_nothing_and_flags_readings_off_the_curve() {
        Given.Test same = meter();
        Given.Test odd = meter();
        for (int k = 0; k < 6; k++) {
            add(same, FIELD_ANGLE, 0, 180 * k, 130e-6);
            add(odd, FIELD_ANGLE, 0, 30 * k, loop(60e-6, 75e-6, 0, Math.toRadians(30 * k)) + (k == 3 ? 25e-6 : 0));
        }
        assertThat(Given.need(reduced(same).outcome(MotorParameter.D_INDUCTANCE)))
                .contains("tell d and q apart");
        assertThat(Given.says(reduced(odd), "do not follow two waves")).isTrue();
        Given.Test shaft = meter();
        for (int k = 0; k < 6; k++) {
            add(shaft, ANGLE, 0, 5 * k, loop(60e-6, 75e-6, 0, Math.toRadians(35 * k)));
        }
        assertThat(Given.need(Given.reduced(Given.motor(), shaft.done()).outcome(MotorParameter.D_INDUCTANCE)))
                .contains("pole pairs");
    }

    /** Meter gain, last digits, angles set by hand, scatter of the contacts. */
    private static boolean[] holds(Random random) {
        double d = 20e-6 * Math.exp(2 * random.nextDouble());
        double q = d * (1.15 + 0.8 * random.nextDouble());
        double gain = 1 + Given.within(random, 0.005);
        double start = 6.28 * random.nextDouble();
        Given.Test test = meter();
        for (int k = 0; k < 12; k++) {
            double seen = loop(d, q, 0, start + Math.toRadians(16 * k + random.nextGaussian()));
            add(test, FIELD_ANGLE, 0, 16 * k, gain * seen * (1 + 0.006 * random.nextGaussian()));
        }
        TestResult result = reduced(test);
        Known foundD = Given.value(result, MotorParameter.D_INDUCTANCE);
        Known foundQ = Given.value(result, MotorParameter.Q_INDUCTANCE);
        return new boolean[] {Given.holds(foundD, d), Given.holds(foundQ, q)};
    }

    @Test
    void intervals_cover() {
        assertThat(Given.share("d inductance over the angle", 8100, r -> holds(r)[0]))
                .isBetween(0.92, 0.98);
        assertThat(Given.share("q inductance over the angle", 8100, r -> holds(r)[1]))
                .isBetween(0.92, 0.98);
    }
}
