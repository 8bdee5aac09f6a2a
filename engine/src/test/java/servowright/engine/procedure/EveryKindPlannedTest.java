package servowright.engine.procedure;

import static org.assertj.core.api.Assertions.assertThat;
import static servowright.engine.prediction.Invented.sound;
import static servowright.engine.procedure.Planned.plan;

import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.SensorKind;
import servowright.engine.machine.TestKind;
import servowright.engine.prediction.Invented;

/** No kind of test is left without a step, unless a reason stands here. */
class EveryKindPlannedTest {
    private static final Map<TestKind, String> WITHOUT_A_STEP = Map.of(
            TestKind.CHANNEL_TURN,
            "only a sine-cosine sensor or a resolver gives out raw channels: the step comes with one",
            TestKind.COGGING_RUN,
            "tells what the hold map tells: one step, made by either",
            TestKind.SHARED_EVENT,
            "settles nothing until a recorder is named: the step comes with the first such test");

    private static Set<TestKind> planned(Invented machine) {
        Set<TestKind> kinds = EnumSet.noneOf(TestKind.class);
        plan(machine).steps().forEach(s -> kinds.add(s.kind()));
        return kinds;
    }

    @Test
    void every_kind_has_a_step_or_a_reason() {
        Set<TestKind> planned = planned(sound().motor(MotorFigure.THERMISTOR_RESISTANCE, "10 kohm")
                .motor(MotorFigure.THERMISTOR_BETA, "3435 K"));
        for (TestKind kind : TestKind.values()) {
            assertThat(planned.contains(kind))
                    .as(kind.words() + ": either a step or a reason, never both")
                    .isNotEqualTo(WITHOUT_A_STEP.containsKey(kind));
        }
    }

    @Test
    void the_reasons_hold() {
        Invented cogging = sound().test(new Planned.Made(TestKind.COGGING_RUN).done());
        assertThat(Planned.step(cogging, TestKind.HOLD_MAP).tests()).containsExactly("cogging run spinner 1");
        Invented one = sound().test(new Planned.Made(TestKind.SHARED_EVENT).done());
        assertThat(planned(one)).contains(TestKind.SHARED_EVENT);
        assertThat(planned(sound().sensor(SensorKind.RESOLVER))).contains(TestKind.CHANNEL_TURN);
        Step channels = Planned.step(sound().sensor(SensorKind.SINE_COSINE), TestKind.CHANNEL_TURN);
        assertThat(channels.expectations()).hasSize(2);
        assertThat(channels.settles()).hasSize(3);
    }

    @Test
    void no_step_settles_nothing() {
        assertThat(planned(sound())).doesNotContain(TestKind.THERMISTOR_CHECK, TestKind.SHARED_EVENT);
        assertThat(plan(sound()).steps()).allSatisfy(s -> {
            assertThat(s.settles()).as(s.kind().words()).isNotEmpty();
            assertThat(s.hookUp()).as(s.kind().words()).isNotEmpty();
            assertThat(s.cautions()).as(s.kind().words()).isNotEmpty();
        });
    }
}
