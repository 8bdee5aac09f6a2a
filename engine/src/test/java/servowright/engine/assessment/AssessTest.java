package servowright.engine.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import servowright.engine.acceptance.Verdict;
import servowright.engine.bench.MotorParameter;
import servowright.engine.findings.Finding;
import servowright.engine.findings.Finding.Area;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.DutyFigure;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.SupplyFigure;
import servowright.engine.prediction.Invented;

class AssessTest {
    private static final AssessSettings WHOLE = AssessSettings.whole("test", Map.of("machine.yaml", "00"));

    private static Assessment assess(Invented machine) {
        return Assess.assess(machine.identified(), WHOLE);
    }

    @Test
    void a_sound_machine_holds_throughout() {
        assertThat(assess(Invented.sound()).findings()).isNotEmpty().allMatch(f -> f.verdict() == Verdict.HOLDS);
    }

    @Test
    void the_worst_stands_first_and_parts_follow_the_machine() {
        Invented machine = Invented.sound()
                .lift(DutyFigure.SPEED, "450 rpm")
                .lift(DutyFigure.TRAVEL, "20 turns")
                .motor(MotorFigure.MAGNETS, "13")
                .without(MotorFigure.THERMAL_RESISTANCE);
        List<Finding> findings = assess(machine).findings();
        assertThat(findings).extracting(Finding::verdict).isSorted();
        assertThat(findings.get(0).subject()).isEqualTo(Invented.ARM);
        assertThat(findings.stream().filter(f -> f.verdict() == Verdict.NOT_SHOWN))
                .extracting(Finding::key)
                .containsExactly("arm/torque-reserve", "roller/torque-reserve");
    }

    @Test
    void keys_stand_once() {
        assertThat(assess(Invented.sound()).findings()).extracting(Finding::key).doesNotHaveDuplicates();
    }

    @Test
    void same_input_gives_the_same_assessment() {
        Assessment once = assess(Invented.sound());
        Assessment again = assess(Invented.sound());
        assertThat(again.findings()).isEqualTo(once.findings());
        assertThat(again.toString()).isEqualTo(once.toString());
    }

    @Test
    void a_part_of_the_questions_gives_the_same_answers_as_the_whole() {
        Invented machine = Invented.sound().supply(SupplyFigure.FUSE, "1 A");
        List<Finding> supply = Assess.assess(
                        machine.identified(), new AssessSettings("test", Map.of(), Set.of(Area.SUPPLY)))
                .findings();
        assertThat(supply)
                .isNotEmpty()
                .isEqualTo(assess(machine).findings().stream()
                        .filter(f -> f.area() == Area.SUPPLY)
                        .toList());
    }

    @Test
    void a_machine_of_which_nothing_is_known_asks_and_does_not_fail() {
        Invented machine = Invented.sound();
        for (MotorParameter what : MotorParameter.values()) {
            machine.without(what);
        }
        for (AxisFigure key : AxisFigure.values()) {
            machine.without(key);
        }
        List<Finding> findings = assess(machine).findings();
        assertThat(findings).noneMatch(f -> f.verdict() == Verdict.FAILS);
        assertThat(findings)
                .filteredOn(f -> f.verdict() == Verdict.NOT_SHOWN)
                .allMatch(f -> !f.needs().isEmpty() && !f.remedy().template().isBlank());
    }

    @Test
    void carries_version_and_hashes() {
        Assessment assessment = assess(Invented.sound());
        assertThat(assessment.version()).isEqualTo("test");
        assertThat(assessment.inputs()).containsEntry("machine.yaml", "00");
    }
}
