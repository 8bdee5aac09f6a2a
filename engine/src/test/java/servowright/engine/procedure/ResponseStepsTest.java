package servowright.engine.procedure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static servowright.engine.prediction.Invented.sound;
import static servowright.engine.procedure.Planned.expected;
import static servowright.engine.procedure.Planned.step;
import static servowright.engine.procedure.Planned.window;

import java.util.Objects;
import org.junit.jupiter.api.Test;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.RecorderParameter;
import servowright.engine.bench.ResponseParameter;
import servowright.engine.bench.ThermistorParameter;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.SensorFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.prediction.Invented;
import servowright.engine.procedure.Step.State;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** Steps for loops, loads, recorders and sensors: what they expect, by closed forms written out here, and their verdicts. */
class ResponseStepsTest {
    /** Seven pole pairs and 5 mWb: 35 mV s/rad; 0.1 ohm and 0.6 kg cm2 make 3.265 ms (recomputed). */
    private static final double EMF = 7 * 5e-3;

    private static final double TAU = 0.1 * 0.6e-4 / (1.5 * EMF * EMF);

    private static Known read(double si, Dimension dimension) {
        return Known.of(new Quantity(si, dimension), 0.001 * si, Source.of("run"), Origin.MEASURED, "bench");
    }

    private static Invented responded(double gain, Dimension dimension, double tau) {
        return sound().test(new Planned.Made(TestKind.RESPONSE_RUN)
                .gave(ResponseParameter.GAIN, read(gain, dimension))
                .gave(ResponseParameter.TIME_CONSTANT, read(tau, Dimension.TIME))
                .done());
    }

    @Test
    void a_shaft_on_a_voltage_follows_with_its_mechanical_time_constant() {
        assertThat(expected(sound(), TestKind.RESPONSE_RUN, "time constant")).isCloseTo(TAU, within(1e-9));
        assertThat(expected(sound(), TestKind.RESPONSE_RUN, "speed per volt")).isCloseTo(1 / EMF, within(1e-6));
        assertThat(expected(sound(), TestKind.SINE_RESPONSE, "frequency"))
                .isCloseTo(1 / (2 * Math.PI * TAU), within(1e-4));
    }

    /** At rest 0.1 ohm and the 12 A of the label take 1.2 V, a mark below is 1 V; five time constants are 16 ms. */
    @Test
    void suggests_an_amplitude_that_the_motor_stands_and_a_pace_that_shows_the_lag() {
        Step run = step(sound(), TestKind.RESPONSE_RUN);
        assertThat(figure(run.hookUp().get(0), "u")).isCloseTo(1.0, within(1e-12));
        assertThat(figure(run.hookUp().get(1), "t")).isCloseTo(0.015, within(1e-12));
        assertThat(run.state()).isEqualTo(State.SPARE);
        Step bare = step(sound().without(MotorParameter.ROTOR_INERTIA), TestKind.RESPONSE_RUN);
        assertThat(bare.hookUp()).allSatisfy(p -> assertThat(p.template()).doesNotContain("{t}"));
        assertThat(bare.expectations().get(0).window().found()).isEmpty();
    }

    private static double figure(Phrase phrase, String name) {
        return ((Phrase.Figure) Objects.requireNonNull(phrase.figures().get(name)))
                .value()
                .si();
    }

    @Test
    void holds_a_run_on_voltage_against_the_shaft() {
        Step fits = step(responded(1 / EMF, Dimension.SPEED_CONSTANT, TAU), TestKind.RESPONSE_RUN);
        assertThat(fits.state()).isEqualTo(State.AGREES);
        assertThat(fits.expectations()).hasSize(2);
        Step slow = step(responded(1 / EMF, Dimension.SPEED_CONSTANT, 3 * TAU), TestKind.RESPONSE_RUN);
        assertThat(slow.state()).isEqualTo(State.DIFFERS);
    }

    /** The time constant of a loop is a choice of whoever tuned it: only its end is expected. */
    @Test
    void holds_a_run_of_a_loop_against_its_command_alone() {
        Step loop = step(responded(0.98, Dimension.NUMBER, 0.04), TestKind.RESPONSE_RUN);
        assertThat(loop.expectations()).singleElement().satisfies(e -> {
            assertThat(e.what()).startsWith("output over command");
            assertThat(e.agreement().orElseThrow().inside()).isTrue();
        });
        assertThat(loop.settles().get(1).now().orElseThrow().si()).isEqualTo(0.04);
        assertThat(step(responded(0.98, Dimension.NUMBER, 0.04), TestKind.SINE_RESPONSE)
                        .settles()
                        .get(1)
                        .now())
                .as("another test may have looked at something else")
                .isEmpty();
        assertThat(step(responded(0.8, Dimension.NUMBER, 0.04), TestKind.RESPONSE_RUN)
                        .state())
                .isEqualTo(State.DIFFERS);
    }

    /** Mean of the rectified line voltage, (3√3/π) · 35 mV s/rad, and the same in N m/A. */
    @Test
    void a_load_curve_begins_at_the_no_load_speed_and_falls_with_the_torque_constant() {
        double sixStep = 3 * Math.sqrt(3) / Math.PI * EMF;
        Invented loaded = sound().test(new Planned.Made(TestKind.LOAD_CURVE)
                .with(TestFigure.APPLIED_VOLTAGE, "2 V")
                .gave(MotorParameter.FLUX_LINKAGE, read(5e-3, Dimension.FLUX_LINKAGE))
                .said("Ke", 1.2 * sixStep, Dimension.EMF_CONSTANT)
                .done());
        assertThat(expected(sound(), TestKind.LOAD_CURVE, "torque per ampere")).isCloseTo(sixStep, within(1e-9));
        assertThat(expected(loaded, TestKind.LOAD_CURVE, "speed at which")).isCloseTo(2 / sixStep, within(1e-6));
        assertThat(step(loaded, TestKind.LOAD_CURVE).expectations().get(1).outside())
                .as("line meets zero current a sixth too early")
                .isTrue();
        Invented axis = sound().test(new Planned.Made(TestKind.LOAD_CURVE)
                .channel("i", "current, q axis")
                .gave(MotorParameter.FLUX_LINKAGE, read(5e-3, Dimension.FLUX_LINKAGE))
                .done());
        assertThat(expected(axis, TestKind.LOAD_CURVE, "torque per ampere")).isCloseTo(1.5 * EMF, within(1e-9));
    }

    /** R = R25 exp(β (1/T − 1/298.15 K)): 10 kohm and 3435 K give 28.7 kohm on ice and 2.98 kohm at 60 degC (recomputed). */
    @Test
    void a_thermistor_reads_what_its_declared_constants_say() {
        Invented sensed = sound().motor(MotorFigure.THERMISTOR_RESISTANCE, "10 kohm")
                .motor(MotorFigure.THERMISTOR_BETA, "3435 K");
        Step check = step(sensed, TestKind.THERMISTOR_CHECK);
        assertThat(check.state()).isEqualTo(State.WORTH);
        double[] water = {273.15, 298.15, 333.15};
        for (int i = 0; i < water.length; i++) {
            Window window = check.expectations().get(i).window().found().orElseThrow();
            double ohm = 10_000 * Math.exp(3435 * (1 / water[i] - 1 / 298.15));
            assertThat(window.expected().si()).isCloseTo(ohm, within(1e-6 * ohm));
        }
        sensed.test(new Planned.Made(TestKind.THERMISTOR_CHECK)
                .gave(ThermistorParameter.RESISTANCE_AT_25, read(10_000, Dimension.RESISTANCE))
                .gave(ThermistorParameter.BETA, read(3950, Dimension.TEMPERATURE))
                .done());
        assertThat(step(sensed, TestKind.THERMISTOR_CHECK).state()).isEqualTo(State.DIFFERS);
    }

    @Test
    void clocks_are_no_farther_apart_than_lets_their_recordings_overlap() {
        Step alone = step(sound().test(new Planned.Made(TestKind.SHARED_EVENT).done()), TestKind.SHARED_EVENT);
        assertThat(alone.state()).isEqualTo(State.REFUSED);
        assertThat(alone.expectations().get(0).window().found()).isEmpty();
        Step both = step(
                sound().test(new Planned.Made(TestKind.SHARED_EVENT)
                        .said("from", -0.5, Dimension.TIME)
                        .said("to", 2, Dimension.TIME)
                        .gave(RecorderParameter.CLOCK_OFFSET, read(0.3, Dimension.TIME))
                        .done()),
                TestKind.SHARED_EVENT);
        assertThat(both.state()).isEqualTo(State.AGREES);
        assertThat(both.expectations()
                        .get(0)
                        .window()
                        .found()
                        .orElseThrow()
                        .low()
                        .si())
                .isEqualTo(-0.5);
    }

    /** 2.2 mm holes are those of M2: 0.1 mm of float on a circle of 8 mm radius turn a board by atan(1/80). */
    @Test
    void a_seating_moves_the_offset_by_the_play_of_the_screws() {
        Invented board = sound().arm(AxisFigure.HOLE_DIAMETER, "2.2 mm").arm(AxisFigure.HOLE_CIRCLE, "16 mm");
        Window play = window(board, TestKind.RESEATING, "largest distance");
        assertThat(play.high().si()).isCloseTo(2 * 7 * Math.atan(1.0 / 80), within(1e-9));
        Invented square = sound().arm(AxisFigure.HOLE_DIAMETER, "2.2 mm")
                .arm(AxisFigure.HOLE_WIDTH, "12 mm")
                .arm(AxisFigure.HOLE_HEIGHT, "9 mm");
        assertThat(window(square, TestKind.RESEATING, "largest distance").high().si())
                .isCloseTo(2 * 7 * Math.atan(0.1 / 7.5), within(1e-9));
        for (Invented untold : new Invented[] {sound(), board.arm(AxisFigure.HOLE_DIAMETER, "2.65 mm")}) {
            assertThat(step(untold, TestKind.RESEATING)
                            .expectations()
                            .get(0)
                            .window()
                            .found())
                    .isEmpty();
        }
    }

    @Test
    void a_reading_is_late_by_the_sensor_and_up_to_a_step() {
        Window late = window(sound().sensor(SensorFigure.DELAY, "40 us"), TestKind.REFERENCE_RUN, "delay");
        assertThat(late.low().si()).isCloseTo(36e-6, within(1e-12));
        assertThat(late.high().si()).isCloseTo(44e-6 + 1 / 20e3, within(1e-12));
        assertThat(step(sound(), TestKind.REFERENCE_RUN)
                        .expectations()
                        .get(1)
                        .window()
                        .found())
                .as("no delay declared")
                .isEmpty();
    }

    @Test
    void runs_free_where_few_pole_pairs_put_cogging_on_the_orders_of_the_sensor() {
        assertThat(step(sound(), TestKind.FREE_RUN).state()).isEqualTo(State.SPARE);
        assertThat(step(sound().known(MotorParameter.POLE_PAIRS, 2, "", 0), TestKind.FREE_RUN)
                        .state())
                .isEqualTo(State.WORTH);
    }

    /** 52.5 mN m/A at 2 A hold 0.105 N m; 0.5 N m through 9 turns are 0.0556 N m: asin 0.529. */
    @Test
    void judges_friction_at_the_current_that_the_test_states() {
        Invented dragged = sound().test(new Planned.Made(TestKind.SLOW_DRAG)
                .with(TestFigure.FIELD_CURRENT, "2 A")
                .gave(AxisParameter.FRICTION_LAG, read(Math.toRadians(40), Dimension.ANGLE))
                .done());
        Expectation lag = step(dragged, TestKind.SLOW_DRAG).expectations().get(0);
        assertThat(lag.window().found().orElseThrow().high().si()).isCloseTo(Math.asin(0.5 / 9 / 0.105), within(1e-9));
        assertThat(lag.outside()).isTrue();
        Invented unsaid = sound().test(new Planned.Made(TestKind.SLOW_DRAG)
                .gave(AxisParameter.FRICTION_LAG, read(0.1, Dimension.ANGLE))
                .done());
        assertThat(step(unsaid, TestKind.SLOW_DRAG).expectations().get(0).at().template())
                .contains("which the test does not state");
    }

    @Test
    void judges_the_field_that_a_turn_by_hand_read() {
        Window expected = window(sound(), TestKind.HAND_TURN, "field at the sensor");
        double twice = 2 * expected.high().si();
        for (double tesla : new double[] {expected.expected().si(), twice}) {
            Invented turned = sound().test(new Planned.Made(TestKind.HAND_TURN)
                    .gave(AxisParameter.SENSOR_FIELD, read(tesla, Dimension.FLUX_DENSITY))
                    .done());
            assertThat(step(turned, TestKind.HAND_TURN).expectations().get(0).outside())
                    .isEqualTo(tesla == twice);
        }
    }
}
