package servowright.engine.procedure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static servowright.engine.prediction.Invented.candidate;
import static servowright.engine.prediction.Invented.sound;
import static servowright.engine.procedure.Planned.plan;
import static servowright.engine.procedure.Planned.step;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.Candidate;
import servowright.engine.bench.Identification;
import servowright.engine.bench.IdentifiedMachine;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.SensingParameter;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Place;
import servowright.engine.known.Source;
import servowright.engine.machine.Axis;
import servowright.engine.machine.Bus;
import servowright.engine.machine.Figures;
import servowright.engine.machine.Machine;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.SensorKind;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.prediction.Invented;
import servowright.engine.prediction.Predictions;
import servowright.engine.procedure.Step.State;
import servowright.engine.quantity.Quantity;

class BenchPlanTest {
    private static final Place NOWHERE = new Place("machine.yaml", 1, "");

    /** Label 5.0 mWb within a tenth, and a spin that says {@code milliweber}. */
    private static Invented spun(double milliweber) {
        Candidate label = candidate(5.0, "mWb", 0.1 / Math.sqrt(3), Origin.DATA_SHEET, "label, machine.yaml:7");
        Candidate spin = candidate(milliweber, "mWb", 0.005, Origin.MEASURED, "spin spinner 1");
        return sound().known(MotorParameter.FLUX_LINKAGE, milliweber, "mWb", 0.005 * milliweber)
                .candidates(MotorParameter.FLUX_LINKAGE, spin, label)
                .test(new Planned.Made(TestKind.SPIN)
                        .with(TestFigure.SPEED, "600 rpm")
                        .gave(MotorParameter.FLUX_LINKAGE, spin.value())
                        .done());
    }

    @Test
    void holds_a_reading_against_what_was_known_without_it() {
        Step spin = step(spun(5.2), TestKind.SPIN);
        Expectation voltage = spin.expectations().get(0);
        Window window = voltage.window().found().orElseThrow();
        assertThat(window.from()).isEqualTo("label, machine.yaml:7");
        // √3 · 7 · 5.0 mWb · 62.83 rad/s
        assertThat(window.expected().si()).isCloseTo(Math.sqrt(3) * 7 * 5e-3 * 20 * Math.PI, within(1e-6));
        assertThat(voltage.agreement().orElseThrow().inside()).isTrue();
        assertThat(voltage.agreement().orElseThrow().off().orElseThrow().si()).isCloseTo(0.04, within(1e-9));
        assertThat(spin.state()).isEqualTo(State.AGREES);
    }

    @ParameterizedTest
    @CsvSource({"8.66, √3", "2.887, 1/√3", "10.0, 2", "35.0, pole pairs (7)", "13.5, ''"})
    void names_the_factor_that_a_reading_outside_is_off_by(double milliweber, String factor) {
        Step spin = step(spun(milliweber), TestKind.SPIN);
        Agreement agreement = spin.expectations().get(0).agreement().orElseThrow();
        assertThat(agreement.inside()).isFalse();
        assertThat(spin.state()).isEqualTo(State.DIFFERS);
        assertThat(agreement.factor().orElse("")).startsWith(factor);
        assertThat(agreement.factor().isEmpty()).isEqualTo(factor.isEmpty());
    }

    @Test
    void says_that_nothing_is_known_and_what_the_reading_tells() {
        Machine bare = new Machine(
                "Bare",
                "",
                Figures.none(),
                Optional.empty(),
                Map.of("mill", new Motor("mill", NOWHERE, Figures.none(), Optional.empty())),
                Map.of(),
                Map.of(),
                Map.of(
                        "wheel",
                        new Axis(
                                "wheel",
                                NOWHERE,
                                Optional.of("mill"),
                                Optional.empty(),
                                Optional.empty(),
                                Figures.none(),
                                Map.of())),
                Bus.none());
        IdentifiedMachine identified = Identification.identify(bare, List.of(), Map.of());
        BenchPlan plan = BenchPlan.of(identified, Predictions.of(identified), List.of());
        assertThat(plan.chapters()).hasSize(1);
        assertThat(plan.steps()).isNotEmpty().allSatisfy(s -> {
            assertThat(s.hookUp()).isNotEmpty();
            assertThat(s.cautions()).isNotEmpty();
            assertThat(s.settles()).isNotEmpty();
        });
        assertThat(plan.steps())
                .extracting(Step::kind)
                .as("no bridge to make a voltage, no sensor of temperature, no recorder")
                .doesNotContain(
                        TestKind.RESPONSE_RUN,
                        TestKind.SINE_RESPONSE,
                        TestKind.THERMISTOR_CHECK,
                        TestKind.SHARED_EVENT);
        Step spin = plan.steps().get(2);
        assertThat(spin.kind()).isEqualTo(TestKind.SPIN);
        assertThat(spin.state()).isEqualTo(State.WORTH);
        assertThat(spin.expectations())
                .allSatisfy(e -> assertThat(e.window().found()).isEmpty());
        assertThat(spin.settles().get(0).now()).isEmpty();
    }

    @Test
    void expects_a_voltage_from_a_speed_constant_alone() {
        Motor mill = new Motor(
                "mill",
                NOWHERE,
                Figures.<MotorFigure>none()
                        .with(
                                MotorFigure.SPEED_CONSTANT,
                                Invented.declared("100 rpm/V ± 5 % [line peak, label]", "motors / mill")),
                Optional.empty());
        Machine machine = new Machine(
                "One label",
                "",
                Figures.none(),
                Optional.empty(),
                Map.of("mill", mill),
                Map.of(),
                Map.of(),
                Map.of(),
                Bus.none());
        IdentifiedMachine identified = Identification.identify(machine, List.of(), Map.of());
        Step spin = BenchPlan.of(identified, Predictions.of(identified), List.of())
                .steps()
                .get(2);
        assertThat(spin.expectations()
                        .get(0)
                        .window()
                        .found()
                        .orElseThrow()
                        .expected()
                        .si())
                .isCloseTo(5, within(1e-6));
        assertThat(spin.expectations().get(1).window().found())
                .as("no pole pairs")
                .isEmpty();
    }

    @Test
    void goes_from_cold_to_warm_and_from_hand_to_power() {
        List<TestKind> kinds =
                plan(sound()).chapters().get(0).steps().stream().map(Step::kind).toList();
        assertThat(kinds)
                .containsSubsequence(
                        TestKind.RESISTANCE, TestKind.SPIN, TestKind.CURRENT_ZERO, TestKind.NO_LOAD, TestKind.HEATING);
        assertThat(kinds.get(kinds.size() - 1)).isEqualTo(TestKind.HEATING);
        assertThat(plan(sound()).steps().stream().map(Step::number).toList())
                .isSorted()
                .doesNotHaveDuplicates();
    }

    @Test
    void puts_first_what_a_finding_waits_for() {
        Stake waits = new Stake("spinner", MotorParameter.THERMAL_RESISTANCE, "arm/torque-reserve", 1, 1, true);
        Stake weighs = new Stake("spinner", MotorParameter.DRY_DRAG, "arm/speed-reach", 0.4, 0.2, true);
        Stake digits = new Stake("spinner", MotorParameter.COGGING_TORQUE, "arm/speed-reach", 0.4, 0.01, false);
        BenchPlan plan = plan(sound(), waits, weighs, digits);
        assertThat(plan.first())
                .extracting(Step::kind)
                .startsWith(TestKind.HEATING)
                .contains(TestKind.NO_LOAD);
        assertThat(plan.first()).extracting(Step::kind).doesNotContain(TestKind.HOLD_MAP);
    }

    @Test
    void does_not_ask_for_a_spin_that_was_made() {
        Stake weighs = new Stake("spinner", MotorParameter.FLUX_LINKAGE, "arm/speed-reach", 0.9, 0.9, true);
        assertThat(plan(spun(5.1), weighs).first()).extracting(Step::kind).doesNotContain(TestKind.SPIN);
        assertThat(step(spun(5.1), TestKind.SPIN, weighs).stakes()).containsExactly(weighs);
    }

    @Test
    void calls_a_test_without_a_result_one_that_gave_nothing() {
        Invented machine = sound().test(new Planned.Made(TestKind.HEATING).done());
        assertThat(step(machine, TestKind.HEATING).state()).isEqualTo(State.REFUSED);
    }

    @Test
    void sends_a_lever_where_two_figures_are_at_odds() {
        Candidate label = candidate(5.0, "mWb", 0.05, Origin.DATA_SHEET, "label");
        Candidate spin = candidate(8.7, "mWb", 0.01, Origin.MEASURED, "spin spinner 1");
        assertThat(step(sound(), TestKind.TORQUE_STAIRS).state()).isEqualTo(State.SPARE);
        assertThat(step(sound().contradiction(MotorParameter.FLUX_LINKAGE, label, spin, ""), TestKind.TORQUE_STAIRS)
                        .state())
                .isEqualTo(State.WORTH);
    }

    @Test
    void heats_and_holds_with_no_more_than_the_motor_stands() {
        // 90 K over 2 K/W are 45 W; 1.5 · 0.1 ohm warm by 1.354 carries 14.9 A, more than the 12 A of the label.
        assertThat(step(sound(), TestKind.TORQUE_STAIRS)
                        .expectations()
                        .get(0)
                        .at()
                        .figures())
                .hasEntrySatisfying("i", i -> assertThat(ampere(i)).isEqualTo(10));
        Invented unrated = sound().without(MotorFigure.RATED_CURRENT).without(MotorFigure.THERMAL_RESISTANCE);
        assertThat(step(unrated, TestKind.TORQUE_STAIRS)
                        .expectations()
                        .get(0)
                        .at()
                        .figures())
                .as("a tenth of what the drive gives for good")
                .hasEntrySatisfying("i", i -> assertThat(ampere(i)).isEqualTo(1));
    }

    private static double ampere(servowright.engine.known.Phrase.Part part) {
        return ((servowright.engine.known.Phrase.Figure) part).value().si();
    }

    @Test
    void warns_of_a_load_that_falls() {
        Step turn = step(sound(), TestKind.HAND_TURN);
        assertThat(turn.subject()).isEqualTo(Invented.ARM);
        assertThat(turn.cautions().get(0).template()).startsWith("The load falls");
        Step roller = plan(sound()).steps().stream()
                .filter(s -> s.subject().equals(Invented.ROLLER))
                .findFirst()
                .orElseThrow();
        assertThat(roller.cautions()).noneMatch(c -> c.template().startsWith("The load falls"));
    }

    @Test
    void asks_of_a_sensor_what_its_kind_can_tell() {
        assertThat(plan(sound().sensor(SensorKind.HALL_TRIPLE)).steps())
                .extracting(Step::kind)
                .contains(TestKind.HAND_TURN)
                .doesNotContain(TestKind.SHIM_SERIES, TestKind.SLOW_DRAG, TestKind.ALIGNMENT);
        assertThat(Planned.expected(sound().sensor(SensorKind.HALL_TRIPLE), TestKind.HAND_TURN, "states"))
                .as("six states an electrical turn, seven pole pairs")
                .isEqualTo(42);
        assertThat(plan(sound().sensor(SensorKind.NONE)).chapters()).hasSize(1);
    }

    @Test
    void holds_an_angle_error_against_what_the_mount_explains() {
        Known error = Known.of(Quantity.of(3, "deg"), 0.001, Source.of("drag"), Origin.MEASURED, "bench");
        Invented machine = sound().test(new Planned.Made(TestKind.SLOW_DRAG)
                .gave(AxisParameter.ANGLE_ERROR, error)
                .done());
        Step drag = step(machine, TestKind.SLOW_DRAG);
        assertThat(drag.state()).isEqualTo(State.DIFFERS);
        Window window = drag.expectations().get(0).window().found().orElseThrow();
        assertThat(drag.expectations()
                        .get(0)
                        .agreement()
                        .orElseThrow()
                        .off()
                        .orElseThrow()
                        .si())
                .as("over the upper bound")
                .isCloseTo(Math.toRadians(3) / window.high().si() - 1, within(1e-9));
    }

    @Test
    void expects_nothing_of_a_sound_current_sensor() {
        Known offset = Known.of(Quantity.of(40, "mA"), 0.001, Source.of("zero"), Origin.MEASURED, "bench");
        Invented machine = sound().test(new Planned.Made(TestKind.CURRENT_ZERO)
                .gave(SensingParameter.OFFSET_A, offset)
                .done());
        Step zero = step(machine, TestKind.CURRENT_ZERO);
        assertThat(zero.state()).isEqualTo(State.AGREES);
        assertThat(zero.settles().get(0).now().orElseThrow().si()).isCloseTo(0.04, within(1e-12));
        assertThat(step(sound(), TestKind.CURRENT_SENSING)
                        .expectations()
                        .get(0)
                        .window()
                        .found()
                        .orElseThrow()
                        .expected()
                        .si())
                .isEqualTo(1);
    }
}
