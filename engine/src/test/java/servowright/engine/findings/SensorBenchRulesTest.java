package servowright.engine.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import servowright.engine.acceptance.Verdict;
import servowright.engine.bench.AngleEvidence;
import servowright.engine.bench.AxisParameter;
import servowright.engine.encoder.Calibration;
import servowright.engine.encoder.FreeRunFit;
import servowright.engine.encoder.HandTurn;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.SensorFigure;
import servowright.engine.machine.SensorKind;
import servowright.engine.prediction.Invented;

/** Verdicts of the rules about angle sensors on either side of their limits. */
class SensorBenchRulesTest {
    private static Finding only(String id, Invented machine) {
        List<Finding> findings = Rules.named(id).orElseThrow().examine(machine.predictions());
        assertThat(findings).hasSize(1);
        return findings.get(0);
    }

    private static Verdict verdict(String id, Invented machine) {
        return only(id, machine).verdict();
    }

    @Test
    void a_good_turn_by_hand_holds_even_if_it_runs_the_other_way() {
        HandTurn reversed = new HandTurn(-1, 1, 0.01, 0.01, Set.of(HandTurn.Fault.REVERSED));
        assertThat(verdict("hand-turn", SensorCases.saw(new AngleEvidence.Turned("hand turn arm 1", reversed))))
                .isEqualTo(Verdict.HOLDS);
    }

    @Test
    void every_fault_of_a_turn_by_hand_is_named() {
        HandTurn all = new HandTurn(0.7, 0.5, 0.2, 0.2, Set.of(HandTurn.Fault.values()));
        Finding finding = only("hand-turn", SensorCases.saw(new AngleEvidence.Turned("hand turn arm 1", all)));
        assertThat(finding.verdict()).isEqualTo(Verdict.FAILS);
        assertThat(finding.reason().template())
                .contains("along its axis", "pole pair", "slips", "code range", "swings")
                .doesNotContain("other way");
    }

    @Test
    void stops_without_a_trapped_one_hold() {
        assertThat(verdict(
                        "rotor-trapped",
                        SensorCases.saw(new AngleEvidence.Aligned("alignment arm 1", SensorCases.trapped()))))
                .isEqualTo(Verdict.HOLDS);
    }

    @Test
    void a_drag_that_does_not_follow_fails_and_one_without_travel_does_not_speak_of_it() {
        Calibration slipped = new Calibration.Refused(Calibration.Reason.DOES_NOT_FOLLOW, 1.14);
        assertThat(verdict("shaft-not-followed", SensorCases.saw(SensorCases.run("slow drag arm 1", slipped))))
                .isEqualTo(Verdict.FAILS);
        Calibration little = new Calibration.Refused(Calibration.Reason.TRAVEL_TOO_SMALL, 42);
        assertThat(Rules.named("shaft-not-followed")
                        .orElseThrow()
                        .examine(SensorCases.saw(SensorCases.run("slow drag arm 1", little))
                                .predictions()))
                .isEmpty();
    }

    @Test
    void a_free_run_with_enough_orders_holds() {
        double[] noisy = SensorCases.coasting();
        Random random = new Random(3);
        for (int i = 0; i < noisy.length; i++) {
            noisy[i] += 3e-4 * random.nextGaussian();
        }
        Calibration fit = FreeRunFit.of(SensorCases.times(), noisy, 4);
        assertThat(verdict("orders-missing", SensorCases.saw(SensorCases.run("free run arm 1", fit))))
                .isEqualTo(Verdict.HOLDS);
    }

    @Test
    void calibrations_that_agree_hold_and_the_worst_pair_speaks() {
        AngleEvidence[] alike = {
            SensorCases.run("reference run arm 1", SensorCases.beside(0.3)),
            SensorCases.run("reference run arm 2", SensorCases.beside(0.31))
        };
        assertThat(verdict("calibration-not-repeatable", SensorCases.saw(alike)))
                .isEqualTo(Verdict.HOLDS);
        AngleEvidence[] three = Arrays.copyOf(alike, 3);
        three[2] = SensorCases.run("reference run arm 3", SensorCases.beside(0.5));
        Finding finding = only("calibration-not-repeatable", SensorCases.saw(three));
        assertThat(finding.verdict()).isEqualTo(Verdict.TIGHT);
        assertThat(finding.statement().figures().toString()).contains("reference run arm 3");
    }

    @Test
    void offsets_on_either_side_of_half_a_turn_agree() {
        assertThat(verdict("offsets-disagree", SensorCases.found(AxisParameter.COMMUTATION_OFFSET, 179.5, 0.2, -179.5)))
                .isEqualTo(Verdict.HOLDS);
    }

    @Test
    void small_friction_spread_and_error_hold() {
        assertThat(verdict("friction-lag", SensorCases.found(AxisParameter.FRICTION_LAG, 4, 0.2)))
                .isEqualTo(Verdict.HOLDS);
        assertThat(verdict("offset-after-reseating", SensorCases.found(AxisParameter.RESEATING_SPREAD, 1, 0.2)))
                .isEqualTo(Verdict.HOLDS);
        assertThat(verdict("offset-after-reseating", SensorCases.found(AxisParameter.RESEATING_SPREAD, 6, 0.2)))
                .isEqualTo(Verdict.TIGHT);
        // Seven pole pairs: 0.3 degrees of the shaft are 2.1 electrical.
        assertThat(verdict("angle-error", SensorCases.found(AxisParameter.ANGLE_ERROR, 0.3, 0.01)))
                .isEqualTo(Verdict.HOLDS);
    }

    @Test
    void an_input_fast_enough_and_a_short_line_hold() {
        Invented quick = Invented.sound()
                .sensor(SensorKind.INCREMENTAL)
                .sensor(SensorFigure.RESOLUTION, "12 bit")
                .sensor(SensorFigure.LINE_EDGE_RATE, "1 MHz")
                .arm(AxisFigure.LOAD_TORQUE, "0 N m");
        assertThat(Rules.named("edge-rate").orElseThrow().examine(quick.predictions()))
                .isNotEmpty()
                .allMatch(f -> f.verdict() == Verdict.HOLDS);
        Invented near =
                Invented.sound().sensor(SensorFigure.LINE_LENGTH, "0.5 m").sensor(SensorFigure.LINE_CLOCK, "1 MHz");
        assertThat(verdict("line-clock", near)).isEqualTo(Verdict.HOLDS);
    }
}
