package servowright.engine.worksheet.motor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Units;
import servowright.engine.quantity.VoltageBasis;
import servowright.engine.worksheet.Filled;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.Worksheet;

class MotorConstantsSheetTest {
    private static final Worksheet SHEET = new MotorConstantsSheet();

    private static Outcome.Answer<Results> answer(Map<String, List<String>> given) {
        Filled filled = Filled.of(SHEET, given);
        assertThat(filled).isInstanceOf(Filled.Ready.class);
        return (Outcome.Answer<Results>) SHEET.compute(((Filled.Ready) filled).inputs());
    }

    private static Known figure(Map<String, List<String>> given, String result) {
        return answer(given).value().figure(result).orElseThrow();
    }

    @Test
    void a_speed_constant_goes_to_a_torque_constant_and_back_on_every_pair_of_bases() {
        long seed = 20250301;
        Random random = new Random(seed);
        for (VoltageBasis volts : VoltageBasis.values()) {
            for (CurrentBasis amps : Bases.MOTOR_CURRENTS) {
                double kv = Math.exp(random.nextDouble() * 8);
                String torqueName = Bases.name("torque_constant_", amps.words());
                double kt = figure(Map.of("speed_constant", List.of(kv + " rpm/V [" + volts.words() + "]")), torqueName)
                        .si();
                String speedName = Bases.name("speed_constant_", volts.words());
                Known back =
                        figure(Map.of("torque_constant", List.of(kt + " N m/A [" + amps.words() + "]")), speedName);
                assertThat(back.value().in("rpm/V"))
                        .as("seed %d, %s, %s", seed, volts, amps)
                        .isCloseTo(kv, within(1e-12 * kv));
            }
        }
    }

    @Test
    void the_unit_a_figure_is_typed_in_does_not_change_the_answer() {
        double rpmPerVolt = 137.5;
        List<String> units = List.of("rpm/V", "rad/s/V", "turns/s/V", "krpm/V", "deg/s/mV");
        for (String unit : units) {
            double number = Units.named(unit).fromSi(Units.named("rpm/V").toSi(rpmPerVolt));
            String typed = number + " " + unit + " [line peak]";
            assertThat(figure(Map.of("speed_constant", List.of(typed)), "torque_constant_q_axis")
                            .si())
                    .as(typed)
                    .isCloseTo(8.269933 / rpmPerVolt, within(1e-8));
        }
    }

    @Test
    void the_relative_uncertainty_of_one_figure_is_that_of_every_constant() {
        Map<String, List<String>> given = Map.of("speed_constant", List.of("150 rpm/V ± 3 % [line peak]"));
        for (String name : List.of("torque_constant_six_step", "emf_constant_line_rms", "speed_constant_phase_rms")) {
            assertThat(figure(given, name).relativeUncertainty()).isCloseTo(0.03 / Math.sqrt(3), within(1e-6));
        }
    }

    @Test
    void two_independent_figures_of_one_motor_are_known_better_than_one() {
        Map<String, List<String>> both = Map.of(
                "speed_constant", List.of("150 rpm/V ± 3 % [line peak]"),
                "torque_constant", List.of("0.0552 N m/A ± 3 % [q axis]"));
        assertThat(figure(both, "torque_constant_q_axis").relativeUncertainty())
                .isCloseTo(0.03 / Math.sqrt(6), within(1e-4));
    }

    @Test
    void every_figure_has_a_line_with_formula_and_source() {
        Outcome.Answer<Results> answer = answer(Map.of(
                "speed_constant", List.of("150 rpm/V [line peak]"),
                "torque_constant", List.of("0.055 N m/A"),
                "magnets", List.of("14"),
                "resistance", List.of("0.2 ohm")));
        answer.value().values().values().stream()
                .filter(Phrase.Figure.class::isInstance)
                .map(part -> ((Phrase.Figure) part).value())
                .forEach(value -> assertThat(answer.working().steps()).anySatisfy(step -> {
                    assertThat(step.result().value()).isEqualTo(value);
                    assertThat(step.source()).isNotBlank();
                    assertThat(step.terms()).isNotEmpty();
                }));
    }

    @Test
    void refuses_more_figures_than_can_be_sorted_out_and_a_load_side_without_gear() {
        assertThat(Filled.of(SHEET, Map.of("speed_constant", java.util.Collections.nCopies(7, "100 rpm/V"))))
                .isInstanceOf(Filled.Refused.class);
        assertThat(Filled.of(SHEET, Map.of("torque_constant", List.of("1 N m/A [load side]"))))
                .isInstanceOf(Filled.Refused.class);
        assertThat(Filled.of(SHEET, Map.of("torque_constant", List.of("-1 N m/A"))))
                .isInstanceOf(Filled.Refused.class);
    }

    @Test
    void leaves_out_a_flux_linkage_that_gives_no_whole_number_of_pole_pairs() {
        Outcome.Answer<Results> answer = answer(
                Map.of("speed_constant", List.of("315.0451 rpm/V [line peak]"), "flux_linkage", List.of("2.7 mWb")));
        assertThat(answer.value().values()).doesNotContainKey("pole_pairs_implied");
        assertThat(answer.value().remarks()).extracting(Phrase::template).anyMatch(t -> t.contains("left out"));
    }
}
