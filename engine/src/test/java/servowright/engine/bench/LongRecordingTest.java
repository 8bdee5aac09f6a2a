package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import servowright.engine.machine.TestFigure;
import servowright.engine.motion.CoastDown;

class LongRecordingTest {
    /** Shaft of 4e-4 kg m² with 0.01 N m and 2e-5 N m s, 200 000 samples: means of neighbours change nothing. */
    @Test
    void a_long_run_out_gives_what_a_short_one_does() {
        CoastDown shaft = new CoastDown(4e-4, 0.01, 2e-5, 0);
        double[] speeds = Given.noisy(
                Given.sampled(200_000, 7e-5, t -> t < 0.3 ? 500 : shaft.radPerS(500, t - 0.3)), 0.3, new Random(5));
        TestResult result = Given.reduced(
                Given.motor(),
                Given.coastDown("coast-down hub 1")
                        .recorded("a.csv")
                        .channel("n", "speed")
                        .with(TestFigure.INERTIA, "4 kg cm2")
                        .done(),
                Given.recording("a.csv", 7e-5, Given.channel("n", "rad/s", speeds)));
        assertThat(Given.value(result, MotorParameter.DRY_DRAG).si()).isCloseTo(0.01, within(1e-5));
        assertThat(Given.value(result, MotorParameter.VISCOUS_DRAG).si()).isCloseTo(2e-5, within(1e-7));
    }
}
