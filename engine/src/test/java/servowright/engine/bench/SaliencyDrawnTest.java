package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import servowright.engine.known.Known;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Motor;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.motor.Saliency;
import servowright.engine.motor.Saliency.TerminalPair;

/** d and q from three pairs that hardly differ, on a meter of few digits: the root in the formula bends at nothing. */
class SaliencyDrawnTest {
    private static final Motor MOTOR = Given.motor();

    /** A meter that shows {@code decimals} of a microhenry, on a motor at some position. */
    private static IdentifiedMotor read(Saliency motor, double position, int decimals) {
        BenchTest test = Given.step("inductance step hub 1")
                .limits("inductance", "± 0.01 %")
                .reading("A to B", ReadingFigure.INDUCTANCE, shown(motor, TerminalPair.AB, position, decimals))
                .reading("B to C", ReadingFigure.INDUCTANCE, shown(motor, TerminalPair.BC, position, decimals))
                .reading("C to A", ReadingFigure.INDUCTANCE, shown(motor, TerminalPair.CA, position, decimals))
                .done();
        return Identification.identify(Given.machine(MOTOR), List.of(test), Map.of())
                .motor("hub")
                .orElseThrow();
    }

    private static String shown(Saliency motor, TerminalPair pair, double position, int decimals) {
        return Given.text(1e6 * motor.betweenTerminalsHenry(pair, position), decimals, "uH");
    }

    private static Known best(IdentifiedMotor motor, MotorParameter what) {
        return motor.best(what).found().orElseThrow();
    }

    /** Three equal readings of whole microhenries: their slope is nothing, but the axes may lie a digit apart. */
    @Test
    void does_not_claim_that_equal_readings_have_equal_axes() {
        IdentifiedMotor motor = read(new Saliency(60e-6, 60e-6, 0), 0.3, 0);
        Known d = best(motor, MotorParameter.D_INDUCTANCE);
        assertThat(d.si()).isCloseTo(60e-6, within(1e-12));
        assertThat(d.expandedUncertainty()).isBetween(0.3e-6, 0.8e-6);
        assertThat(motor.candidates(MotorParameter.D_INDUCTANCE).get(0).assumptions())
                .anyMatch(a -> a.template().contains("shortest interval of draws"));
    }

    @Test
    void leaves_readings_that_differ_well_to_first_order() {
        IdentifiedMotor motor = read(new Saliency(60e-6, 75e-6, 0), 0.3, 2);
        assertThat(motor.candidates(MotorParameter.D_INDUCTANCE).get(0).assumptions())
                .noneMatch(a -> a.template().contains("draws"));
    }

    /** Motors between round and salient at any position: at least 95 % of the intervals hold the true axes. */
    @Test
    void holds_the_true_axes_of_motors_that_are_nearly_round() {
        double share = Given.share("d inductance of nearly round motors", 4711, random -> {
            double d = 60e-6 + 1e-6 * random.nextDouble();
            Saliency motor = new Saliency(d, d + 1.5e-6 * random.nextDouble(), 0);
            double position = Math.PI * random.nextDouble();
            return Given.holds(best(read(motor, position, 0), MotorParameter.D_INDUCTANCE), motor.dHenry());
        });
        assertThat(share).isGreaterThanOrEqualTo(0.95);
    }

    /**
     * The same where the unequal part of the inductance is spread evenly over a disc, as the last digits of three readings suppose: only then may a
     * share of 95 % be expected. Above, motors that are nearly round are drawn more often, and are held more often.
     */
    @Test
    void holds_axes_that_are_spread_as_digits_suppose_in_95_of_100() {
        double share = Given.share("d inductance over a disc", 4712, random -> {
            double mean = 62e-6 + 1e-6 * random.nextDouble();
            double half = 3e-6 * Math.sqrt(random.nextDouble());
            Saliency motor = new Saliency(mean - half, mean + half, 0);
            double position = Math.PI * random.nextDouble();
            return Given.holds(best(read(motor, position, 0), MotorParameter.D_INDUCTANCE), motor.dHenry());
        });
        assertThat(share).isBetween(0.92, 0.98);
    }
}
