package servowright.engine.procedure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static servowright.engine.prediction.Invented.sound;
import static servowright.engine.procedure.Planned.expected;
import static servowright.engine.procedure.Planned.window;

import org.junit.jupiter.api.Test;
import servowright.engine.bench.MotorParameter;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.prediction.Invented;
import servowright.engine.quantity.Quantity;

/** Expected readings and their windows against published figures and closed forms; what is from memory says so. */
class ExpectedReadingsTest {
    /** Seven pole pairs, 2.5 mWb, 50 mohm: 315.0451 rpm/V line peak, 26.25 mN m/A (recomputed from the definitions). */
    private static Invented example() {
        return sound().known(MotorParameter.FLUX_LINKAGE, 2.5, "mWb", 0)
                .known(MotorParameter.PHASE_RESISTANCE, 50, "mohm", 0);
    }

    private static Known exact(double value, String unit) {
        return Known.exact(Quantity.of(value, unit), Origin.MEASURED, "bench");
    }

    @Test
    void a_spin_reads_the_speed_over_the_speed_constant() {
        // 500 rpm at 315.0451 rpm/V; the electrical frequency is 7 · 500 / 60 Hz.
        assertThat(expected(example(), TestKind.SPIN, "peak voltage")).isCloseTo(500 / 315.0451, within(1e-6));
        assertThat(expected(example(), TestKind.SPIN, "electrical frequency")).isCloseTo(58.33333, within(1e-4));
    }

    @Test
    void a_spin_of_warm_magnets_reads_less() {
        // Neodymium at 100 degC keeps 0.912 of the flux of 20 degC (handbook range, from memory).
        Invented warm = example()
                .test(new Planned.Made(TestKind.SPIN)
                        .with(TestFigure.SPEED, "3150.451 rpm")
                        .with(TestFigure.MAGNETS_AT, "100 degC ± 1 K")
                        .gave(MotorParameter.FLUX_LINKAGE, exact(2.5, "mWb"))
                        .done());
        assertThat(expected(warm, TestKind.SPIN, "peak voltage")).isCloseTo(9.12, within(1e-3));
    }

    @Test
    void a_winding_reads_twice_its_phase_and_grows_with_copper() {
        // Copper constant 234.5: 1.23576 at 80 degC (recomputed).
        Invented warm = example()
                .test(new Planned.Made(TestKind.RESISTANCE)
                        .with(TestFigure.WINDING_AT, "80 degC ± 1 K")
                        .gave(MotorParameter.PHASE_RESISTANCE, exact(50, "mohm"))
                        .done());
        assertThat(expected(example(), TestKind.RESISTANCE, "resistance")).isCloseTo(0.1, within(1e-12));
        assertThat(expected(warm, TestKind.RESISTANCE, "resistance")).isCloseTo(0.1 * 1.23576, within(1e-6));
    }

    /**
     * Published permanent-magnet machine (parameter record of the Modelica Standard Library): X = 0.4 ohm and 0.03 ohm at 50 Hz,
     * two pole pairs, 112.3 V RMS per phase; its symmetric short circuit is 279.96 A RMS (recomputed).
     */
    @Test
    void joined_terminals_carry_what_a_published_machine_carries() {
        Invented machine = sound().motor(MotorFigure.MAGNETS, "4")
                .known(MotorParameter.POLE_PAIRS, 2, "", 0)
                .known(MotorParameter.FLUX_LINKAGE, 505.528, "mWb", 0)
                .known(MotorParameter.PHASE_RESISTANCE, 30, "mohm", 0)
                .known(MotorParameter.D_INDUCTANCE, 0.4 / (100 * Math.PI) * 1e6, "uH", 0)
                .test(new Planned.Made(TestKind.SHORT_CIRCUIT)
                        .reading(ReadingFigure.SPEED, "1500 rpm")
                        .gave(MotorParameter.D_INDUCTANCE, exact(0.4 / (100 * Math.PI) * 1e6, "uH"))
                        .done());
        assertThat(expected(machine, TestKind.SHORT_CIRCUIT, "phase current")).isCloseTo(279.96, within(0.02));
    }

    @Test
    void a_joined_winding_brakes_at_most_by_its_flux_and_inductance() {
        // (3/2) p λ² / (2 L) with 40 uH: 0.8203 N m.
        assertThat(expected(
                        example().known(MotorParameter.D_INDUCTANCE, 40, "uH", 0), TestKind.SHORT_CIRCUIT, "largest"))
                .isCloseTo(1.5 * 7 * 2.5e-3 * 2.5e-3 / (2 * 40e-6), within(1e-9));
    }

    @Test
    void a_run_out_takes_the_time_of_its_closed_form() {
        // (J/b) ln(1 + b ω/Tc): 13.862944 s from 500 rad/s for J = 4e-4, Tc = 0.01, b = 2e-5, of which 20 ln(2/1.5) to
        // half.
        Invented machine = sound().without(servowright.engine.machine.SupplyFigure.VOLTAGE)
                .known(MotorParameter.ROTOR_INERTIA, 4, "kg cm2", 0)
                .known(MotorParameter.DRY_DRAG, 10, "mN m", 0)
                .known(MotorParameter.VISCOUS_DRAG, 20, "uN m s/rad", 0);
        double drill = 500 * 2 * Math.PI / 60;
        double half = 20 * Math.log((1 + 2e-3 * drill) / (1 + 1e-3 * drill));
        assertThat(expected(machine, TestKind.COAST_DOWN, "time")).isCloseTo(half, within(1e-9));
        // Kt = 1.5 · 7 · 5 mWb; drag at that speed 0.01 + 2e-5 · 52.36 N m.
        assertThat(expected(machine, TestKind.NO_LOAD, "q current"))
                .isCloseTo((0.01 + 2e-5 * drill) / 0.0525, within(1e-9));
    }

    @Test
    void a_lever_presses_with_torque_over_arm() {
        // 26.25 mN m/A, 12 A rated rounded to a mark of 10 A, arm 150 mm.
        assertThat(expected(example(), TestKind.TORQUE_STAIRS, "force")).isCloseTo(0.02625 * 10 / 0.15, within(1e-9));
    }

    /** Copper whose loss grows as it warms, 3.2 K/W, 25 degC air, 20 W at 20 degC: 112.187 degC with 0.00393 (recomputed). */
    @Test
    void a_heating_run_settles_where_copper_feeds_back() {
        Invented machine = sound().known(MotorParameter.THERMAL_RESISTANCE, 3.2, "K/W", 0)
                .known(MotorParameter.PHASE_RESISTANCE, 100, "mohm", 0)
                .test(new Planned.Made(TestKind.HEATING)
                        .with(TestFigure.HEATING_CURRENT, "10 A ± 0.001 A")
                        .with(TestFigure.AIR_AT, "25 degC ± 0.01 K")
                        .gave(MotorParameter.THERMAL_RESISTANCE, exact(3.2, "K/W"))
                        .done());
        double celsius = expected(machine, TestKind.HEATING, "winding temperature") - 273.15;
        assertThat(celsius).isCloseTo(112.187, within(0.05));
    }

    /** Limits as rectangles, joined in quadrature, twice the standard uncertainty: JCGM 100:2008, 4.3.7, 5.1.2, 6.3.3. */
    @Test
    void the_window_joins_what_is_known_with_the_instrument() {
        Invented machine = sound().known(MotorParameter.PHASE_RESISTANCE, 100, "mohm", 10 / Math.sqrt(3))
                .test(new Planned.Made(TestKind.RESISTANCE)
                        .with(TestFigure.WINDING_AT, "20 degC ± 0.0001 K")
                        .limits("resistance", "± 2 %")
                        .gave(MotorParameter.PHASE_RESISTANCE, exact(104, "mohm"))
                        .done());
        Window window = window(machine, TestKind.RESISTANCE, "resistance");
        double u = 0.2 * Math.hypot(0.10, 0.02) / Math.sqrt(3);
        assertThat(window.ends()).isEqualTo(Window.Ends.TWICE);
        assertThat(window.low().si()).isCloseTo(0.2 - 2 * u, within(1e-6));
        assertThat(window.high().si()).isCloseTo(0.2 + 2 * u, within(1e-6));
    }

    /** τ = L/R with both within a half: the ends are those of a quotient, not of a straight line. */
    @Test
    void a_window_is_drawn_where_the_function_bends() {
        Invented machine = sound().known(MotorParameter.PHASE_INDUCTANCE, 100, "uH", 20)
                .known(MotorParameter.PHASE_RESISTANCE, 100, "mohm", 50 / Math.sqrt(3));
        Window window = window(machine, TestKind.INDUCTANCE_STEP, "time constant");
        assertThat(window.ends()).isEqualTo(Window.Ends.DRAWN);
        double middle = (window.low().si() + window.high().si()) / 2;
        assertThat(middle).isGreaterThan(window.expected().si() * 1.1);
    }

    @Test
    void a_turn_finds_as_many_detents_as_slots_and_poles_have_in_common() {
        // 12 slots, 14 poles: lcm 84 (table of slot and pole combinations, recomputed).
        assertThat(expected(sound(), TestKind.HOLD_MAP, "detents")).isEqualTo(84);
    }

    @Test
    void a_standing_field_is_missed_by_friction_over_holding_torque() {
        // Kt = 52.5 mN m/A at half of 10 A: 0.2625 N m hold; 0.5 N m through 9 turns add to no drag of its own.
        Window lag = window(sound(), TestKind.ALIGNMENT, "electrical angle");
        assertThat(lag.low().si()).isZero();
        assertThat(lag.high().si()).isCloseTo(Math.asin(0.5 / 9 / 0.2625), within(1e-9));
    }

    @Test
    void a_voltage_reads_late_by_the_sensor_and_one_and_a_half_steps() {
        Window late = window(sound(), TestKind.OFFSET_AT_SPEEDS, "delay");
        assertThat(late.high().si()).isCloseTo(1.5 / 20e3, within(1e-12));
        assertThat(late.low().si()).isZero();
    }

    /** On-axis field of a disc, u(s) = s/√(R² + s²): its logarithm by the difference of two gaps. */
    @Test
    void shims_weaken_the_field_as_the_disc_does() {
        double near = disc(2.25e-3 - 1e-7);
        double far = disc(2.25e-3 + 1e-7);
        Invented machine = sound().arm(AxisFigure.GAP, "1.9 mm ± 0.001 mm");
        assertThat(expected(machine, TestKind.SHIM_SERIES, "change"))
                .isCloseTo(Math.log(far / near) / 2e-7, within(0.05));
    }

    private static double disc(double gap) {
        double r = 4e-3;
        return (gap + 3e-3) / Math.hypot(r, gap + 3e-3) - gap / Math.hypot(r, gap);
    }
}
