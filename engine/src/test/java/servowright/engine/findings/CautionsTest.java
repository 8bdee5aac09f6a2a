package servowright.engine.findings;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import servowright.engine.machine.AxisFigure;
import servowright.engine.prediction.Invented;

class CautionsTest {

    @Test
    void every_machine_carries_the_usual_cautions() {
        assertThat(Cautions.of(Invented.sound().machine()))
                .extracting(Caution::id)
                .containsExactly(
                        "first-spin",
                        "stop",
                        "stored-charge",
                        "hot-winding",
                        "battery-fault",
                        "falling-load",
                        "local-codes");
    }

    @Test
    void a_mains_supply_has_no_battery_fault() {
        assertThat(Cautions.of(Invented.sound().mains().machine()))
                .extracting(Caution::id)
                .doesNotContain("battery-fault");
    }

    @Test
    void a_load_that_friction_holds_does_not_fall() {
        assertThat(Cautions.of(
                        Invented.sound().arm(AxisFigure.LOAD_FRICTION, "2 N m").machine()))
                .extracting(Caution::id)
                .doesNotContain("falling-load");
    }

    @Test
    void each_caution_is_one_sentence() {
        assertThat(Cautions.of(Invented.sound().machine()))
                .allMatch(c -> c.sentence().template().matches("[A-Z][^.!?]*\\."));
    }
}
