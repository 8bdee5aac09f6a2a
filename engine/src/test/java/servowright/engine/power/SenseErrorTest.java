package servowright.engine.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Against the space vector of sampled readings, turned into rotor axes sample by sample (derived, another way round). */
class SenseErrorTest {
    /** Amplitude at {@code order} per electrical turn of the q current that readings of 1 A show. */
    private static double ripple(int order, double[] offset, double[] gain, boolean two) {
        int n = 3600;
        double cosine = 0;
        double sine = 0;
        for (int i = 0; i < n; i++) {
            double theta = 2 * Math.PI * i / n;
            double[] read = new double[3];
            for (int k = 0; k < 3; k++) {
                read[k] = offset[k] + gain[k] * Math.cos(theta - 2 * Math.PI * k / 3);
            }
            read[2] = two ? -read[0] - read[1] : read[2];
            double q = 0;
            for (int k = 0; k < 3; k++) {
                q += 2.0 / 3 * read[k] * Math.cos(theta - 2 * Math.PI * k / 3);
            }
            cosine += 2 * q * Math.cos(order * theta) / n;
            sine += 2 * q * Math.sin(order * theta) / n;
        }
        return Math.hypot(cosine, sine);
    }

    @Test
    void agrees_with_sampled_space_vectors() {
        double[] none = new double[3];
        double[] equal = {1, 1, 1};
        double[] offset = {0.12, -0.08, 0.05};
        double[] gain = {1, 1.03, 0.98};
        assertThat(SenseError.onceAmp(0.12, -0.08, 0.05)).isCloseTo(ripple(1, offset, equal, false), within(1e-9));
        assertThat(SenseError.onceAmp(0.12, -0.08, -0.04)).isCloseTo(ripple(1, offset, equal, true), within(1e-9));
        assertThat(SenseError.twiceShare(1, 1.03, 0.98)).isCloseTo(ripple(2, none, gain, false), within(1e-9));
        assertThat(SenseError.twiceShareOfTwo(1, 1.03)).isCloseTo(ripple(2, none, gain, true), within(1e-9));
        assertThat(SenseError.twiceShare(1, 1, 1)).isZero();
        assertThatThrownBy(() -> SenseError.twiceShare(1, 0, 1)).hasMessageContaining("gain b");
    }

    @Test
    void counts_signs_and_fits_sensors_only_where_it_can() {
        double[] both = {1, -1, 1, -1, 0.01, 2, -2, 1, -1, 1};
        BridgeSigns signs = BridgeSigns.of(0.1, both, both, both);
        assertThat(signs.healthy()).isTrue();
        assertThat(signs.suspects()).isEmpty();
        assertThat(signs.above()[0]).isCloseTo(0.5, within(1e-12));
        assertThat(SensorFit.of(new double[0], both, both)).isEmpty();
        Random random = new Random(1);
        double[] noise = random.doubles(500).toArray();
        double[] same = noise.clone();
        assertThat(SensorFit.of(new double[0], noise, same, random.doubles(500).toArray()))
                .isEmpty();
        assertThatThrownBy(() -> SensorFit.of(new double[0], noise)).hasMessageContaining("sensors");
        assertThatThrownBy(() -> BridgeSigns.of(0, noise)).hasMessageContaining("band");
    }
}
