package servowright.engine.prediction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.Candidate;
import servowright.engine.bench.MotorParameter;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.DriveFigure;
import servowright.engine.machine.DutyFigure;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.Profile;
import servowright.engine.machine.SupplyFigure;

class StudiesTest {

    private static DutyPrediction arm(Invented machine) {
        return machine.predictions().axes().get(0).duties().get(0);
    }

    private static <T> T answer(Outcome<T> outcome) {
        return outcome.found().orElseThrow();
    }

    /** The arm as in the worked example: 1 rad in thirds of 0.4 s, there and back with 0.2 s rests, 9 motor turns. */
    private static Invented workedExample() {
        return Invented.sound()
                .known(MotorParameter.ROTOR_INERTIA, 0.6, "kg cm2", 0)
                .lift(DutyFigure.TRAVEL, "1 rad")
                .lift(DutyFigure.SPEED, "3.75 rad/s")
                .lift(DutyFigure.ACCELERATION, "28.125 rad/s2")
                .lift(DutyFigure.REST, "0.2 s");
    }

    @Test
    void demand_agrees_with_the_worked_example_of_a_geared_arm() {
        // Recomputed outside this program: RMS 0.194427 N m, peak 0.350155 N m, 322.289 rpm.
        Demand demand = answer(arm(workedExample()).demand());
        assertThat(demand.rmsTorque().si()).isCloseTo(0.194427, within(1e-6));
        assertThat(demand.peakTorque().si()).isCloseTo(0.350155, within(1e-6));
        assertThat(demand.topSpeed().value().in("rpm")).isCloseTo(322.289, within(1e-3));
    }

    @Test
    void demand_names_all_that_is_missing_at_once() {
        Invented machine = Invented.sound()
                .without(MotorParameter.ROTOR_INERTIA)
                .without(AxisFigure.LOAD_INERTIA)
                .without(DutyFigure.SPEED);
        Missing<Demand> missing = (Missing<Demand>) arm(machine).demand();
        assertThat(missing.needs())
                .extracting(Outcome.Need::what)
                .containsExactly("rotor inertia of spinner", "load inertia of arm", "speed of arm / lift");
    }

    @Test
    void a_hold_needs_no_inertia() {
        Invented machine =
                Invented.sound().without(MotorParameter.ROTOR_INERTIA).lift(Profile.STEADY);
        machine.without(DutyFigure.SPEED).without(DutyFigure.ACCELERATION);
        Demand demand = answer(arm(machine).demand());
        assertThat(demand.atRest()).isTrue();
        // Weight over gear alone: at rest friction may hold or need help.
        assertThat(demand.rmsTorque().si()).isCloseTo(1.5 / 9, within(1e-12));
    }

    @Test
    void further_torque_of_a_duty_works_against_every_move() {
        Demand without = answer(arm(workedExample()).demand());
        Demand with =
                answer(arm(workedExample().lift(DutyFigure.TORQUE, "0.85 N m")).demand());
        assertThat(with.peakTorque().si() - without.peakTorque().si()).isCloseTo(0.85 / (9 * 0.85), within(1e-9));
    }

    @Test
    void friction_that_grows_with_speed_counts_at_top_speed() {
        Demand without = answer(arm(workedExample()).demand());
        Demand with = answer(arm(workedExample().arm(AxisFigure.LOAD_VISCOUS, "0.1 N m s/rad"))
                .demand());
        assertThat(with.peakTorque().si() - without.peakTorque().si()).isCloseTo(0.375 / (9 * 0.85), within(1e-9));
    }

    /** N08 of our collection: 24 V, 5 % reserve, 150 rpm/V line peak, 14 pole pairs, 0.1 ohm, 60 uH, 15 A. */
    @Test
    void speed_reach_agrees_with_a_collected_case() {
        double flux = 30 / Math.PI / (150 * Math.sqrt(3)) / 14;
        double torque = 1.5 * 14 * flux * 15;
        Invented machine = Invented.sound()
                .known(MotorParameter.POLE_PAIRS, 14, "", 0)
                .known(MotorParameter.FLUX_LINKAGE, flux, "Wb", 0)
                .known(MotorParameter.PHASE_RESISTANCE, 0.1, "ohm", 0)
                .known(MotorParameter.D_INDUCTANCE, 60, "uH", 0)
                .known(MotorParameter.Q_INDUCTANCE, 60, "uH", 0)
                .motor(MotorFigure.WINDING_LIMIT, "20 degC")
                .without(SupplyFigure.RESISTANCE)
                .supply(SupplyFigure.VOLTAGE, "24 V")
                .drive(DriveFigure.RESERVE, "5 %")
                .arm(AxisFigure.MOTOR_TURNS, "36")
                .arm(AxisFigure.GEAR_EFFICIENCY, "1")
                .arm(AxisFigure.LOAD_FRICTION, torque * 36 + " N m")
                .arm(AxisFigure.LOAD_TORQUE, "0 N m")
                .lift(Profile.STEADY)
                .lift(DutyFigure.SPEED, "60 rpm")
                .without(DutyFigure.ACCELERATION)
                .without(DutyFigure.TRAVEL)
                .without(DutyFigure.REST)
                .coldest("20 degC");
        Reach reach = answer(arm(machine).reach());
        assertThat(reach.noLoad().value().in("rpm")).isCloseTo(3420, within(0.5));
        assertThat(reach.reaches().value().in("rpm")).isCloseTo(2884, within(0.5));
    }

    @Test
    void needed_supply_is_the_one_that_reaches_the_asked_speed() {
        Invented machine = Invented.sound().without(SupplyFigure.RESISTANCE);
        Reach reach = answer(arm(machine).reach());
        double needed = reach.needed().si();
        Reach there =
                answer(arm(machine.supply(SupplyFigure.VOLTAGE, needed + " V")).reach());
        assertThat(there.reaches().si())
                .isCloseTo(reach.asked().si(), within(1e-9 * reach.asked().si()));
    }

    @Test
    void cold_magnets_and_sine_modulation_reach_less_speed() {
        double usual = answer(arm(Invented.sound()).reach()).noLoad().si();
        double cold = answer(arm(Invented.sound().coldest("-30 degC")).reach())
                .noLoad()
                .si();
        assertThat(cold).isLessThan(usual);
        // Neodymium -0.11 %/K (from memory): 0 degC against -30 degC.
        assertThat(usual / cold).isCloseTo(1.055 / 1.022, within(1e-9));
        double sine = answer(arm(Invented.sound().sine()).reach()).noLoad().si();
        assertThat(sine / usual).isCloseTo(Math.sqrt(3) / 2, within(2e-3));
    }

    /** A motor without gear that turns on and on at 500 rpm. */
    private static Invented turningAgainst(double torque) {
        return Invented.sound()
                .arm(AxisFigure.MOTOR_TURNS, "1")
                .arm(AxisFigure.GEAR_EFFICIENCY, "1")
                .arm(AxisFigure.LOAD_FRICTION, torque + " N m")
                .arm(AxisFigure.LOAD_TORQUE, "0 N m")
                .lift(Profile.STEADY)
                .lift(DutyFigure.SPEED, "500 rpm")
                .without(DutyFigure.ACCELERATION)
                .without(DutyFigure.TRAVEL)
                .without(DutyFigure.REST);
    }

    /** N07 of our collection: 75 A in 39 mohm at 270 rpm/V draw 13.71 A standing and 18.72 A at 500 rpm from 24 V. */
    @Test
    void supply_current_is_not_the_phase_current() {
        double flux = 30 / Math.PI / (270 * Math.sqrt(3)) / 7;
        double torque = 1.5 * 7 * flux * 75;
        Invented machine = turningAgainst(torque)
                .known(MotorParameter.FLUX_LINKAGE, flux, "Wb", 0)
                .known(MotorParameter.PHASE_RESISTANCE, 39, "mohm", 0)
                .motor(MotorFigure.WINDING_LIMIT, "20 degC")
                .coldest("20 degC")
                .without(SupplyFigure.RESISTANCE)
                .supply(SupplyFigure.VOLTAGE, "24 V");
        Draw draw = answer(arm(machine).draw());
        assertThat(draw.peakCurrent().si()).isCloseTo(18.72, within(0.005));
        assertThat(answer(arm(machine).current()).peak().si()).isCloseTo(75, within(1e-9));
    }

    /** 1000 rad/s without gear under a control of 12 kHz. */
    private static Invented fastOnTwelveKilohertz() {
        return Invented.sound()
                .drive(DriveFigure.LOOP_RATE, "12 kHz")
                .arm(AxisFigure.MOTOR_TURNS, "1")
                .lift(Profile.STEADY)
                .lift(DutyFigure.SPEED, "1000 rad/s")
                .without(DutyFigure.ACCELERATION);
    }

    @Test
    void control_steps_agree_with_a_collected_case() {
        // A field report: 12 kHz, 7 pole pairs, 1000 rad/s gives 1114 Hz and 10.8 steps.
        Invented machine = fastOnTwelveKilohertz();
        Commutation commutation = answer(arm(machine).commutation());
        assertThat(commutation.frequency().si()).isCloseTo(1114, within(0.1));
        assertThat(commutation.steps().si()).isCloseTo(10.8, within(0.03));
        assertThat(commutation.angleLost().value().in("deg")).isCloseTo(360 * 1114.08 * 1.5 / 12000, within(0.01));
    }

    @Test
    void a_measured_delay_stands_above_a_computed_one() {
        // 425 us at 1114.08 Hz are 170.5 degrees; 20 us of a sensor and 1.5 steps of 12 kHz are 58.2 (by hand).
        Invented machine = fastOnTwelveKilohertz();
        Candidate reading = Invented.candidate(20, "us", 0.01, Origin.MEASURED, "beside a reference");
        Candidate whole = Invented.candidate(425, "us", 0.01, Origin.MEASURED, "offsets at two speeds");
        machine.sensed(Map.of(AxisParameter.ANGLE_DELAY, List.of(reading)));
        assertThat(lostDegrees(machine)).isCloseTo(360 * 1114.08 * (1.5 / 12000 + 20e-6), within(0.01));
        machine.sensed(
                Map.of(AxisParameter.ANGLE_DELAY, List.of(reading), AxisParameter.COMMUTATION_DELAY, List.of(whole)));
        assertThat(lostDegrees(machine)).isCloseTo(170.45, within(0.01));
        machine.sensed(Map.of(
                AxisParameter.COMMUTATION_DELAY,
                List.of(Invented.candidate(-425, "us", 0.01, Origin.MEASURED, "a drive that advances too far"))));
        assertThat(lostDegrees(machine)).isCloseTo(170.45, within(0.01));
    }

    private static double lostDegrees(Invented machine) {
        return answer(arm(machine).commutation()).angleLost().value().in("deg");
    }

    @Test
    void heat_counts_the_growing_resistance() {
        // Recomputed outside this program: 20 W at 20 degC, 3.2 K/W, 25 degC, alpha 0.00393 settle at 112.187 degC.
        double amp = Math.sqrt(20 / (1.5 * 0.1));
        double torque = 1.5 * 7 * 5e-3 * amp;
        Invented machine = turningAgainst(torque)
                .known(MotorParameter.FLUX_LINKAGE, 5, "mWb", 0)
                .motor(MotorFigure.WINDING_LIMIT, "20.001 degC")
                .motor(MotorFigure.THERMAL_RESISTANCE, "3.2 K/W [measured]")
                .warmest("25 degC");
        Heat heat = answer(arm(machine).heat());
        assertThat(heat.settled().orElseThrow().value().in("degC")).isCloseTo(112.187, within(0.02));
        assertThat(heat.has().si()).isZero();
    }

    @Test
    void a_data_sheet_thermal_resistance_is_taken_as_uncertain() {
        Heat measured = answer(arm(Invented.sound()).heat());
        Heat printed = answer(arm(Invented.sound().motor(MotorFigure.THERMAL_RESISTANCE, "2 K/W [data sheet]"))
                .heat());
        assertThat(printed.has().si()).isEqualTo(measured.has().si());
        assertThat(printed.has().standardUncertainty())
                .isGreaterThan(3 * measured.has().standardUncertainty());
    }

    @Test
    void released_magnets_make_the_line_peak() {
        Release release = answer(arm(Invented.sound()).release());
        double omega = 9 * 150 * Math.PI / 30;
        assertThat(release.openPeak().si()).isCloseTo(Math.sqrt(3) * 7 * 5e-3 * 1.022 * omega, within(1e-9));
        assertThat(release.driven()).isTrue();
    }

    @Test
    void capacitors_rise_by_the_moving_energy() {
        Returned returned = answer(arm(Invented.sound()).returned());
        double omega = 150 * Math.PI / 30;
        double energy = 0.5 * (0.02 + 81 * 0.6e-4) * omega * omega;
        assertThat(returned.energy().si()).isCloseTo(energy, within(1e-9));
        assertThat(returned.risesTo().orElseThrow().si())
                .isCloseTo(Math.sqrt(29 * 29 + 2 * energy / 2e-3), within(1e-9));
    }

    @Test
    void supply_total_takes_the_heaviest_duty_of_each_axis() {
        Invented machine = Invented.sound();
        SupplyTotal one = answer(machine.predictions().total());
        machine.duty("idle", Profile.STEADY, Map.of(DutyFigure.TIME, "1 s"));
        SupplyTotal same = answer(machine.predictions().total());
        assertThat(same.peak().si()).isEqualTo(one.peak().si());
        double parts = machine.predictions().axes().stream()
                .mapToDouble(a -> answer(a.duties().get(0).draw()).peakCurrent().si())
                .sum();
        assertThat(one.peak().si()).isCloseTo(parts, within(1e-12));
    }
}
