package servowright.engine.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Run-outs of a shaft with J = 4e-4 kg m², T_c = 0.01 N m, b = 2e-5 N m s from 500 rad/s (recomputed). */
class RunOutFitTest {
    private static RunOutFit fit(double quadratic, double inertia, boolean three) {
        CoastDown shaft = new CoastDown(inertia, 0.01, 2e-5, quadratic);
        int n = 4000;
        double[] seconds = new double[n];
        double[] speeds = new double[n];
        for (int i = 0; i < n; i++) {
            seconds[i] = i * 2.5e-3;
            speeds[i] = shaft.radPerS(500, seconds[i]);
        }
        return RunOutFit.of(seconds, speeds, three).orElseThrow();
    }

    @Test
    void finds_two_terms() {
        RunOutFit fit = fit(0, 4e-4, false);
        assertThat(fit.constantRadPerS2()).isCloseTo(25, within(1e-3));
        assertThat(fit.perSecond()).isCloseTo(0.05, within(1e-5));
        assertThat(fit.perRadian()).isZero();
    }

    @Test
    void finds_three_terms() {
        RunOutFit fit = fit(1e-8, 4e-4, true);
        assertThat(fit.constantRadPerS2()).isCloseTo(25, within(1e-2));
        assertThat(fit.perSecond()).isCloseTo(0.05, within(1e-4));
        assertThat(fit.perRadian()).isCloseTo(2.5e-5, within(2e-7));
    }

    @Test
    void tells_the_time_between_two_speeds() {
        // From 500 to 106.530660 rad/s in 10 s, to standstill in 20 ln 2 s (recomputed).
        RunOutFit fit = fit(0, 4e-4, false);
        assertThat(fit.secondsBetween(500, 106.530660)).isCloseTo(10, within(1e-3));
        assertThat(fit.secondsBetween(500, 0)).isCloseTo(13.862944, within(1e-3));
    }

    @Test
    void gives_the_inertia_when_a_known_one_is_added() {
        double own = fit(0, 4e-4, false).secondsBetween(400, 150);
        double with = fit(0, 6e-4, false).secondsBetween(400, 150);
        assertThat(CoastDown.inertiaKgM2(2e-4, own, with)).isCloseTo(4e-4, within(1e-7));
    }
}
