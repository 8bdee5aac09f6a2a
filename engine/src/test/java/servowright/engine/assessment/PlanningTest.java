package servowright.engine.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import servowright.engine.bench.MotorParameter;
import servowright.engine.findings.Finding.Area;
import servowright.engine.machine.DutyFigure;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.prediction.Invented;
import servowright.engine.procedure.BenchPlan;
import servowright.engine.procedure.Stake;
import servowright.engine.procedure.Step;

class PlanningTest {
    private static BenchPlan plan(Invented machine, Area... areas) {
        AssessSettings settings = new AssessSettings("test", Map.of(), Set.of(areas));
        return Planning.of(Assess.assess(machine.identified(), settings));
    }

    private static Step step(BenchPlan plan, TestKind kind) {
        return plan.steps().stream().filter(s -> s.kind() == kind).findFirst().orElseThrow();
    }

    @Test
    void a_step_knows_the_findings_that_wait_for_it() {
        BenchPlan plan = plan(Invented.sound().without(MotorFigure.THERMAL_RESISTANCE));
        assertThat(step(plan, TestKind.HEATING).stakes())
                .extracting(Stake::finding)
                .contains("arm/torque-reserve", "roller/torque-reserve");
        assertThat(plan.first().get(0).kind()).isEqualTo(TestKind.HEATING);
    }

    @Test
    void a_step_knows_the_findings_that_it_would_narrow() {
        // 3.2 krpm at the arm's gear with a flux known to a tenth: the speed it reaches straddles what is asked.
        Invented machine = Invented.sound()
                .known(MotorParameter.FLUX_LINKAGE, 5.0, "mWb", 0.3)
                .lift(DutyFigure.SPEED, "230 rpm");
        Step spin = step(plan(machine), TestKind.SPIN);
        assertThat(spin.stakes()).isNotEmpty().allSatisfy(s -> {
            assertThat(s.what()).isIn(MotorParameter.FLUX_LINKAGE, MotorParameter.POLE_PAIRS);
            assertThat(s.share()).isBetween(0.05, 1.0);
        });
    }

    @Test
    void nothing_hangs_on_a_step_when_no_finding_was_asked_for() {
        assertThat(plan(Invented.sound(), Area.BUS).steps())
                .allSatisfy(s -> assertThat(s.stakes()).isEmpty());
    }
}
