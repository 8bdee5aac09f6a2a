package servowright.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import servowright.app.view.AssessmentJson;
import servowright.app.view.View;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class JsonDocumentationTest {
    /** Objects whose keys are names of the machine's own. */
    private static final Set<String> NAMED = Set.of("parameters", "values", "files", "uncertainty_from", "results");

    private static void keys(JsonNode node, boolean named, Set<String> all) {
        if (node.isArray()) {
            node.forEach(n -> keys(n, false, all));
        }
        node.properties().forEach(entry -> {
            if (!named) {
                all.add(entry.getKey());
            }
            keys(entry.getValue(), !named && NAMED.contains(entry.getKey()), all);
        });
    }

    @Test
    void every_key_of_an_assessment_is_described() throws IOException {
        String described = Files.readString(Path.of(System.getProperty("servowright.root"), "docs", "json.md"));
        View view = View.present(FrostCart.assessment(), List.of());
        Set<String> all = new TreeSet<>();
        keys(JsonMapper.builder().build().readTree(AssessmentJson.of(view)), false, all);
        assertThat(all)
                .hasSizeGreaterThan(40)
                .allSatisfy(key -> assertThat(described).contains("`" + key + "`"));
    }
}
