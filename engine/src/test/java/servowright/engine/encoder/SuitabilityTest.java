package servowright.engine.encoder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Answers that follow from what each way of sensing can tell; figures from the formulas they come from. */
class SuitabilityTest {
    private static Suitability.Demand demand(double step, double delay, double slowest, double ratio, double travel) {
        return new Suitability.Demand(
                7, step, delay, 1e-3, 300, slowest, Math.toRadians(0.2), ratio, Math.toRadians(travel));
    }

    private static final Suitability.Demand FINE = demand(Math.toRadians(0.022), 50e-6, 10, 1, 300);

    @ParameterizedTest
    @CsvSource({
        "ON_AXIS_MAGNETIC, YES",
        "INCREMENTAL, NO",
        "INCREMENTAL_WITH_INDEX, NO",
        "HALL_TRIPLE, WITH_CONDITIONS",
        "SINE_COSINE, YES",
        "RESOLVER, YES",
        "NONE, NO"
    })
    void start_from_rest_needs_an_angle_at_once(AngleSource source, Suitability.Grade grade) {
        assertThat(Suitability.of(source, Suitability.Use.START_WITHOUT_MOTION, FINE)
                        .grade())
                .isEqualTo(grade);
    }

    @Test
    void start_names_how_far_the_rotor_moves_and_what_torque_is_left() {
        assertThat(Suitability.of(AngleSource.INCREMENTAL, Suitability.Use.START_WITHOUT_MOTION, FINE)
                        .figure())
                .isCloseTo(180.0 / 7, within(1e-9));
        assertThat(Suitability.of(AngleSource.HALL_TRIPLE, Suitability.Use.START_WITHOUT_MOTION, FINE)
                        .figure())
                .isCloseTo(86.6, within(0.05));
    }

    @Test
    void low_speed_depends_on_the_steps_per_reading() {
        Suitability.Use use = Suitability.Use.LOW_SPEED;
        assertThat(Suitability.of(AngleSource.ON_AXIS_MAGNETIC, use, FINE).grade())
                .isEqualTo(Suitability.Grade.YES);
        Suitability.Demand slow = demand(Math.toRadians(0.022), 50e-6, 0.1, 1, 300);
        assertThat(Suitability.of(AngleSource.ON_AXIS_MAGNETIC, use, slow).grade())
                .isEqualTo(Suitability.Grade.WITH_CONDITIONS);
        assertThat(Suitability.of(AngleSource.HALL_TRIPLE, use, slow).grade()).isEqualTo(Suitability.Grade.NO);
        assertThat(Suitability.of(AngleSource.NONE, use, slow).grade()).isEqualTo(Suitability.Grade.NO);
    }

    @ParameterizedTest
    @CsvSource({"0.022, YES", "0.1, WITH_CONDITIONS", "0.5, NO"})
    void hold_depends_on_the_steps_within_it(double stepDegree, Suitability.Grade grade) {
        Suitability.Demand demand = demand(Math.toRadians(stepDegree), 0, 10, 1, 300);
        assertThat(Suitability.of(AngleSource.RESOLVER, Suitability.Use.POSITION_HOLD, demand)
                        .grade())
                .isEqualTo(grade);
        assertThat(Suitability.of(AngleSource.NONE, Suitability.Use.POSITION_HOLD, demand)
                        .grade())
                .isEqualTo(Suitability.Grade.NO);
    }

    @ParameterizedTest
    // 7 pole pairs at 300 rad/s: 120.3 degrees per millisecond.
    @CsvSource({"50e-6, YES", "200e-6, WITH_CONDITIONS", "1e-3, NO"})
    void high_frequency_depends_on_the_delay(double delay, Suitability.Grade grade) {
        Suitability.Demand demand = demand(1e-3, delay, 10, 1, 300);
        Suitability answer = Suitability.of(AngleSource.SINE_COSINE, Suitability.Use.HIGH_ELECTRICAL_FREQUENCY, demand);
        assertThat(answer.grade()).isEqualTo(grade);
        assertThat(answer.figure()).isCloseTo(Math.toDegrees(2100 * delay), within(1e-9));
    }

    @Test
    void continuous_rotation_asks_for_a_renewed_angle() {
        Suitability.Use use = Suitability.Use.CONTINUOUS_ROTATION;
        assertThat(Suitability.of(AngleSource.INCREMENTAL, use, FINE).grade())
                .isEqualTo(Suitability.Grade.WITH_CONDITIONS);
        assertThat(Suitability.of(AngleSource.INCREMENTAL_WITH_INDEX, use, FINE).grade())
                .isEqualTo(Suitability.Grade.YES);
    }

    @Test
    void output_position_through_a_gear_is_one_of_several() {
        Suitability.Use use = Suitability.Use.OUTPUT_POSITION;
        assertThat(Suitability.of(AngleSource.ON_AXIS_MAGNETIC, use, FINE).grade())
                .isEqualTo(Suitability.Grade.YES);
        Suitability geared = Suitability.of(AngleSource.ON_AXIS_MAGNETIC, use, demand(1e-3, 0, 10, 10, 270));
        assertThat(geared.grade()).isEqualTo(Suitability.Grade.WITH_CONDITIONS);
        assertThat(geared.figure()).isEqualTo(8);
        Suitability.Demand endless = demand(1e-3, 0, 10, 10, Double.POSITIVE_INFINITY);
        assertThat(Suitability.of(AngleSource.INCREMENTAL, use, endless).grade())
                .isEqualTo(Suitability.Grade.NO);
        assertThat(Suitability.of(AngleSource.INCREMENTAL, use, endless).figure())
                .isEqualTo(10);
    }
}
