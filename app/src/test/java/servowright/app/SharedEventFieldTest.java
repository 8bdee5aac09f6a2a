package servowright.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import servowright.app.input.csv.ReadingHints;
import servowright.engine.bench.RecorderParameter;
import servowright.engine.bench.TestResult;
import servowright.engine.known.Known;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Recording;

/** One stroke of a servo axis, in the trace of its drive and in a data logger that measured the force. */
class SharedEventFieldTest {
    private static Recording file(String name) {
        return FieldReduction.read(FieldData.bench("m06-servo-trace-and-force").resolve(name), ReadingHints.none());
    }

    /** Torque of the trace against force of the logger: found outside with a shift of 7 ms, and 4 ms by those who measured. */
    @Test
    void finds_how_far_the_two_clocks_are_apart() {
        Map<String, Recording> both = new LinkedHashMap<>();
        both.put("trace", file("servo_trace.csv"));
        both.put("logger", file("force_logger_bom.csv"));
        assertThat(both.get("logger").count()).isEqualTo(1078);
        assertThat(both.get("logger").clock().intervalS()).isCloseTo(0.5e-3, within(1e-9));
        List<TestResult> results = FieldReduction.reduced(
                TestKind.SHARED_EVENT, both, Map.of("Torque", "event", "Force", "event"), Map.of());
        Known offset = results.get(1)
                .outcome(RecorderParameter.CLOCK_OFFSET)
                .found()
                .orElseThrow()
                .value();
        assertThat(FieldReduction.figure(results.get(1), "correlation", "r").si())
                .isCloseTo(0.984, within(0.005));
        assertThat(offset.si()).isCloseTo(7e-3, within(0.7e-3));
        assertThat(offset.si()).isCloseTo(4e-3, within(offset.expandedUncertainty() + 3e-3));
        assertThat(offset.standardUncertainty()).isBetween(1e-4, 3e-3);
    }
}
