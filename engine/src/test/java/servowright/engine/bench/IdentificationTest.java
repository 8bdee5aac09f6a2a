package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static servowright.engine.machine.MotorFigure.DETENTS;
import static servowright.engine.machine.MotorFigure.EMF_CONSTANT;
import static servowright.engine.machine.MotorFigure.INDUCTANCE;
import static servowright.engine.machine.MotorFigure.MAGNETS;
import static servowright.engine.machine.MotorFigure.POLE_PAIRS;
import static servowright.engine.machine.MotorFigure.RESISTANCE;
import static servowright.engine.machine.MotorFigure.SLOTS;
import static servowright.engine.machine.MotorFigure.SPEED_CONSTANT;
import static servowright.engine.machine.MotorFigure.TORQUE_CONSTANT;
import static servowright.engine.machine.ReadingFigure.CURRENT;
import static servowright.engine.machine.ReadingFigure.FREQUENCY;
import static servowright.engine.machine.ReadingFigure.SPEED;
import static servowright.engine.machine.ReadingFigure.VOLTAGE;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Motor;
import servowright.engine.machine.TestFigure;

class IdentificationTest {
    /** Golden example A: p = 7, 2.5 mWb, 50 mohm, 315.045 rpm per volt line peak, 445.541 line rms (recomputed). */
    private static final double FLUX = 2.5e-3;

    private static IdentifiedMotor identified(Motor motor, BenchTest... tests) {
        return Identification.identify(Given.machine(motor), List.of(tests), Map.of())
                .motor("hub")
                .orElseThrow();
    }

    private static Known best(IdentifiedMotor motor, MotorParameter what) {
        return motor.best(what).found().orElseThrow();
    }

    /** A spin of example A read with a good meter at 350 Hz and 3000 rpm. */
    private static BenchTest spin(String id, double scale) {
        double rms = scale * Math.sqrt(1.5) * FLUX * 2 * Math.PI * 350;
        return Given.spin(id)
                .with(TestFigure.MAGNETS_AT, "20 degC ± 1 K")
                .limits("voltage", "± 0.2 %")
                .reading(
                        "A to B",
                        VOLTAGE,
                        String.format(Locale.ROOT, "%.4f V", rms),
                        FREQUENCY,
                        "350.00 Hz",
                        SPEED,
                        "3000 rpm")
                .done();
    }

    private static BenchTest fourWire() {
        return Given.resistance("resistance hub 1")
                .with(TestFigure.WINDING_AT, "20 degC ± 1 K")
                .reading("A to B", CURRENT, "2.000 A", VOLTAGE, "0.2000 V")
                .reading("A to B", CURRENT, "4.000 A", VOLTAGE, "0.4000 V")
                .done();
    }

    @Test
    void answers_from_the_label_alone_with_wide_uncertainty() {
        IdentifiedMotor motor = identified(Given.motor(
                MAGNETS, "14",
                SPEED_CONSTANT, "315.045 rpm/V [line peak, label]",
                RESISTANCE, "0.1 ohm [two terminals, label]",
                INDUCTANCE, "60 uH [two terminals, label]"));
        assertThat(best(motor, MotorParameter.POLE_PAIRS).si()).isEqualTo(7);
        Known flux = best(motor, MotorParameter.FLUX_LINKAGE);
        assertThat(flux.si()).isCloseTo(FLUX, within(1e-8));
        assertThat(flux.origin()).isEqualTo(Origin.DATA_SHEET);
        assertThat(flux.relativeUncertainty()).isCloseTo(0.1 / Math.sqrt(3), within(1e-6));
        assertThat(best(motor, MotorParameter.PHASE_RESISTANCE).si()).isCloseTo(0.05, within(1e-12));
        assertThat(best(motor, MotorParameter.D_INDUCTANCE).si()).isCloseTo(30e-6, within(1e-12));
        assertThat(best(motor, MotorParameter.D_INDUCTANCE).origin()).isEqualTo(Origin.ASSUMED);
        assertThat(motor.contradictions()).isEmpty();
        assertThat(motor.best(MotorParameter.ROTOR_INERTIA).found()).isEmpty();
    }

    @Test
    void lets_a_measurement_beat_the_label() {
        IdentifiedMotor motor = identified(
                Given.motor(MAGNETS, "14", SPEED_CONSTANT, "318 rpm/V [line peak, label]"), spin("spin hub 1", 1));
        assertThat(best(motor, MotorParameter.FLUX_LINKAGE).origin()).isEqualTo(Origin.MEASURED);
        assertThat(best(motor, MotorParameter.FLUX_LINKAGE).si()).isCloseTo(FLUX, within(1e-6));
        assertThat(motor.contradictions()).isEmpty();
    }

    @Test
    void names_fourteen_magnets_taken_as_pole_pairs() {
        IdentifiedMotor motor = identified(Given.motor(POLE_PAIRS, "14 [label]"), spin("spin hub 1", 1));
        assertThat(best(motor, MotorParameter.POLE_PAIRS).si()).isEqualTo(7);
        Contradiction found = motor.contradictions().get(0);
        assertThat(found.ratio().si()).isEqualTo(0.5);
        assertThat(found.factor()).contains("1/2, magnets against pole pairs");
    }

    @Test
    void names_a_six_step_label_stated_as_line_peak() {
        // 330 rpm/V six-step is the 315 rpm/V line peak of example A times pi/3.
        IdentifiedMotor motor = identified(
                Given.motor(MAGNETS, "14", SPEED_CONSTANT, "329.914 rpm/V [line peak, label]"), spin("spin hub 1", 1));
        Contradiction found = motor.contradictions().get(0);
        assertThat(found.ratio().si()).isCloseTo(Math.PI / 3, within(1e-3));
        assertThat(found.factor()).hasValueSatisfying(f -> assertThat(f).startsWith("π/3, six-step against line peak"));
    }

    @Test
    void names_an_rms_reading_in_a_peak_formula() {
        IdentifiedMotor motor = identified(
                Given.motor(MAGNETS, "14", SPEED_CONSTANT, "445.541 rpm/V [line peak, label]"), spin("spin hub 1", 1));
        Contradiction found = motor.contradictions().get(0);
        assertThat(found.ratio().si()).isCloseTo(Math.sqrt(2), within(1e-3));
        assertThat(found.factor()).hasValueSatisfying(f -> assertThat(f).startsWith("√2, line rms against line peak"));
    }

    @Test
    void names_a_line_resistance_typed_as_phase() {
        IdentifiedMotor motor = identified(Given.motor(RESISTANCE, "0.1 ohm [phase, label]"), fourWire());
        assertThat(best(motor, MotorParameter.PHASE_RESISTANCE).si()).isCloseTo(0.05, within(1e-6));
        Contradiction found = motor.contradictions().get(0);
        assertThat(found.ratio().si()).isCloseTo(0.5, within(1e-3));
        assertThat(found.factor()).contains("1/2, two terminals stated as phase");
    }

    @Test
    void assumes_two_terminals_and_says_so_when_the_hook_up_is_not_stated() {
        IdentifiedMotor motor = identified(Given.motor(RESISTANCE, "0.1 ohm [label]"));
        Known ohm = best(motor, MotorParameter.PHASE_RESISTANCE);
        assertThat(ohm.si()).isCloseTo(0.05, within(1e-12));
        assertThat(ohm.origin()).isEqualTo(Origin.ASSUMED);
        assertThat(ohm.relativeUncertainty()).isGreaterThan(0.5);
    }

    @Test
    void reads_an_unstated_basis_as_the_one_that_closes_with_the_spin() {
        IdentifiedMotor motor =
                identified(Given.motor(MAGNETS, "14", SPEED_CONSTANT, "445 rpm/V"), spin("spin hub 1", 1));
        Candidate label = motor.candidates(MotorParameter.FLUX_LINKAGE).get(1);
        assertThat(label.value().si()).isCloseTo(FLUX, within(1e-5));
        assertThat(label.assumptions()).anyMatch(p -> p.template().contains("read as line rms"));
        assertThat(motor.contradictions()).isEmpty();
    }

    @Test
    void says_which_basis_it_took_when_nothing_tells() {
        IdentifiedMotor motor = identified(Given.motor(MAGNETS, "14", SPEED_CONSTANT, "315 rpm/V"));
        Known flux = best(motor, MotorParameter.FLUX_LINKAGE);
        assertThat(flux.origin()).isEqualTo(Origin.ASSUMED);
        assertThat(flux.relativeUncertainty()).isGreaterThan(0.15);
    }

    @Test
    void finds_labels_that_contradict_each_other() {
        // Teaching set with Ke 3.8 V line peak per krpm and Kt 0.034 N m/A: Kt fits six-step only, 8 % off per q-axis
        // ampere. Here stated per phase RMS ampere: 0.0444 would be right (recomputed).
        IdentifiedMotor motor = identified(Given.motor(
                POLE_PAIRS, "4",
                EMF_CONSTANT, "3.8 V/krpm ± 1 % [line peak, label]",
                TORQUE_CONSTANT, "0.034 N m/A ± 3 % [phase rms, label]"));
        assertThat(motor.contradictions()).hasSize(1);
        assertThat(motor.contradictions().get(0).factor())
                .hasValueSatisfying(f -> assertThat(f).contains("six-step against phase rms"));
    }

    @Test
    void combines_tests_that_agree_and_keeps_their_common_gain() {
        IdentifiedMotor one = identified(Given.motor(MAGNETS, "14"), spin("spin hub 1", 1));
        IdentifiedMotor two = identified(Given.motor(MAGNETS, "14"), spin("spin hub 1", 1), spin("spin hub 2", 1.0002));
        double alone = best(one, MotorParameter.FLUX_LINKAGE).relativeUncertainty();
        double both = best(two, MotorParameter.FLUX_LINKAGE).relativeUncertainty();
        assertThat(best(two, MotorParameter.FLUX_LINKAGE).si()).isCloseTo(1.0001 * FLUX, within(1e-7));
        assertThat(both).isLessThan(alone).isGreaterThan(0.002 / Math.sqrt(3));
        assertThat(two.candidates(MotorParameter.FLUX_LINKAGE).get(0).working().steps())
                .anyMatch(s -> s.label().contains("how well they agree"));
    }

    @Test
    void keeps_tests_apart_that_disagree() {
        IdentifiedMotor motor =
                identified(Given.motor(MAGNETS, "14"), spin("spin hub 1", 1), spin("spin hub 2", Math.sqrt(2)));
        assertThat(motor.contradictions()).hasSize(1);
        assertThat(motor.contradictions().get(0).factor())
                .hasValueSatisfying(f -> assertThat(f).startsWith("√2"));
        assertThat(best(motor, MotorParameter.FLUX_LINKAGE).relativeUncertainty())
                .isGreaterThan(0.15);
    }

    @Test
    void checks_pole_pairs_against_detents_and_slots() {
        // 12 slots and 14 magnets: least common multiple 84 (recomputed).
        IdentifiedMotor right = identified(Given.motor(MAGNETS, "14", SLOTS, "12", DETENTS, "84"));
        assertThat(right.contradictions()).isEmpty();
        assertThat(right.remarks()).anyMatch(p -> p.template().contains("agree"));
        IdentifiedMotor wrong = identified(Given.motor(POLE_PAIRS, "5", SLOTS, "12", DETENTS, "84"));
        assertThat(wrong.contradictions()).hasSize(1);
        assertThat(wrong.contradictions().get(0).first().value().si()).isEqualTo(7);
    }

    @Test
    void says_what_is_missing_for_a_motor_of_which_nothing_is_known() {
        IdentifiedMotor motor = identified(Given.motor());
        for (MotorParameter what : MotorParameter.values()) {
            assertThat(motor.best(what).found()).as(what.words()).isEmpty();
        }
    }

    @Test
    void refuses_an_odd_number_of_magnets() {
        IdentifiedMotor motor = identified(Given.motor(MAGNETS, "13"));
        assertThat(motor.best(MotorParameter.POLE_PAIRS).found()).isEmpty();
        assertThat(motor.remarks()).anyMatch(p -> p.template().contains("odd number"));
    }

    @Test
    void says_that_a_recording_is_absent() {
        BenchTest test = Given.spin("spin hub 1").recorded("nowhere.csv").done();
        IdentifiedMachine machine = Identification.identify(Given.machine(Given.motor()), List.of(test), Map.of());
        assertThat(machine.tests().get(0).outcome(MotorParameter.FLUX_LINKAGE).found())
                .isEmpty();
    }

    /** Every figure must lead back to what was stated or read: a working that ends in nothing explains nothing. */
    @Test
    void gives_every_candidate_a_working_with_sources() {
        IdentifiedMotor motor = identified(
                Given.motor(
                        MAGNETS,
                        "14",
                        SPEED_CONSTANT,
                        "318 rpm/V [line peak, label]",
                        RESISTANCE,
                        "0.1 ohm [two terminals]"),
                spin("spin hub 1", 1),
                fourWire());
        motor.parameters()
                .values()
                .forEach(p -> p.candidates().forEach(c -> {
                    assertThat(c.working().steps())
                            .as(p.what() + " " + c.from())
                            .isNotEmpty();
                    assertThat(c.working().steps())
                            .allMatch(s -> !s.source().isBlank() || !s.label().isBlank());
                }));
    }
}
