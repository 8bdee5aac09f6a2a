package servowright.engine.worksheet.encoder;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import servowright.engine.worksheet.Filled;

class StartAngleSheetTest {
    private static Filled filled(String reading, String lowest, String highest) {
        return Filled.of(
                new StartAngleSheet(),
                Map.of(
                        "reading", List.of(reading),
                        "lowest", List.of(lowest),
                        "highest", List.of(highest)));
    }

    private static String computed(String reading) {
        Filled.Ready ready = (Filled.Ready) filled(reading, "-10 deg", "230 deg");
        return new StartAngleSheet().compute(ready.inputs()).fold(a -> a.value().toString(), m -> "missing");
    }

    @Test
    void refuses_to_start_where_a_reading_fits_nowhere() {
        // A field report, recomputed: travel from -10 to 230 degrees.
        assertThat(computed("-150 deg")).contains("knows its place");
        assertThat(computed("-40 deg")).contains("refuse: outside its travel");
    }

    @Test
    void refuses_a_travel_that_ends_before_it_begins() {
        assertThat(filled("0 deg", "20 deg", "10 deg")).isInstanceOf(Filled.Refused.class);
    }
}
