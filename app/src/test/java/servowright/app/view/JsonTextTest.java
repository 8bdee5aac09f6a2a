package servowright.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import servowright.app.FrostCart;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Checked by reading it back with a general JSON library. */
class JsonTextTest {
    private static JsonNode read(String json) {
        return JsonMapper.builder().build().readTree(json);
    }

    @Test
    void writes_what_a_json_library_reads_back() {
        Map<String, Object> value = new LinkedHashMap<>();
        value.put("hostile", "\"\\ \n\t\u0001\u2028 </script> \ud83d\ude00 \ud800");
        value.put("numbers", List.of(1.5, -0.0, 1e300, 1e-9, 3L, 7));
        value.put("nothing", Double.NaN);
        value.put("truth", true);
        value.put("empty", List.of(Map.of(), List.of()));
        JsonNode back = read(JsonText.of(value));
        assertThat(back.get("hostile").asString()).isEqualTo("\"\\ \n\t\u0001\u2028 </script> \ud83d\ude00 \ud800");
        assertThat(back.get("numbers").get(2).asDouble()).isEqualTo(1e300);
        assertThat(back.get("numbers").get(3).asDouble()).isEqualTo(1e-9);
        assertThat(back.get("nothing").isNull()).isTrue();
        assertThat(back.get("truth").asBoolean()).isTrue();
        assertThat(back.get("empty").size()).isEqualTo(2);
    }

    @Test
    void gives_the_same_bytes_for_the_same_assessment() {
        String one = AssessmentJson.of(View.present(FrostCart.assessment(), List.of()));
        String two = AssessmentJson.of(View.present(FrostCart.assessment(), List.of()));
        assertThat(one).isEqualTo(two);
    }

    @Test
    void holds_findings_motors_and_tests_with_plain_numbers_beside_the_texts() {
        JsonNode json = read(AssessmentJson.of(View.present(FrostCart.assessment(), List.of("a note"))));
        assertThat(json.get("format").asInt()).isEqualTo(1);
        JsonNode finding = json.get("findings").get(0);
        assertThat(finding.get("key").asString()).isEqualTo("lift/speed-reach");
        assertThat(finding.get("margin").get("value").get("si").asDouble()).isEqualTo(2690 * Math.PI / 30);
        JsonNode flux = json.get("motors").get(0).get("parameters").get("flux linkage");
        assertThat(flux.get("best").get("text").asString()).isEqualTo("13.100 ± 0.069 mWb");
        assertThat(flux.get("candidates").size()).isEqualTo(2);
        assertThat(json.get("tests").get(0).get("remarks").get(0).asString()).contains("left out");
        assertThat(json.get("files").get("machine.yaml").asString()).hasSize(64);
        assertThat(json.get("notes").get(0).asString()).isEqualTo("a note");
    }
}
