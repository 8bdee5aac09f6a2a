package servowright.app.input.schema;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.dataformat.yaml.YAMLMapper;

/** The schemas are judged by an independent validator (json-schema-validator, draft 2020-12). */
class SchemaTest {
    private static final Path ROOT = Path.of(System.getProperty("servowright.root", ".."));

    private static Schema schema(String file) {
        JsonNode node = JsonMapper.shared().readTree(SchemaFiles.all().get("docs/schema/" + file + ".schema.json"));
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(node);
    }

    /** What the validator says of YAML in which values with brackets stand in quotes, as editors want them. */
    private static List<String> says(String file, String yaml) {
        return schema(file).validate(YAMLMapper.shared().readTree(yaml)).stream()
                .map(Object::toString)
                .toList();
    }

    @ParameterizedTest
    @ValueSource(strings = {"docs/schema/machine.schema.json", "docs/schema/bench.schema.json", "docs/files.md"})
    void the_files_in_the_repository_are_up_to_date(String file) throws IOException {
        assertThat(Files.readString(ROOT.resolve(file)))
                .as(
                        "%s; to make it anew: java -cp 'app/target/servowright.jar:app/target/lib/*'"
                                + " servowright.app.input.schema.SchemaFiles .",
                        file)
                .isEqualTo(SchemaFiles.all().get(file));
    }

    @ParameterizedTest
    @ValueSource(strings = {"machine.schema.json", "bench.schema.json"})
    void the_program_carries_the_schemas(String file) throws IOException {
        try (InputStream in = SchemaFiles.class.getResourceAsStream("/servowright/schema/" + file)) {
            assertThat(in).isNotNull();
            assertThat(new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8))
                    .isEqualTo(SchemaFiles.all().get("docs/schema/" + file));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"machine", "bench"})
    void accepts_what_people_write(String file) throws IOException {
        String text = Files.readString(Path.of("src/test/resources/servowright/app/input/orchard", file + ".yaml"))
                .replace(
                        "continuous: 6 A [q axis], peak: 12 A [q axis]",
                        "continuous: '6 A [q axis]', peak: '12 A [q axis]'");
        assertThat(says(file, text)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "{motors: {hub: {resistence: 1 ohm}}}|resistence",
                "{motors: {hub: {resistance: about 1 ohm}}}|resistance",
                "{motors: {hub: {resistance: 0.24}}}|resistance",
                "{motors: {hub: {slots: [12, 18]}}}|slots",
                "{motors: {hub: {slots: 12.5}}}|slots",
                "{motors: {hub: {slots: 1200}}}|slots",
                "{motors: {hub: {magnet_material: wood}}}|magnet_material",
                "{motors: [hub]}|motors",
                "{motor: {hub: {}}}|motor",
                "{axes: {tilt: {duties: {nod: {travel: 90 deg}}}}}|profile",
            })
    void rejects_a_broken_machine_and_says_where(String yaml, String where) {
        assertThat(says("machine", yaml)).isNotEmpty().anyMatch(t -> t.contains(where));
    }

    @Test
    void rejects_a_broken_bench_file() {
        assertThat(says("bench", "tests: [{test: spinn, motor: hub}]")).anyMatch(t -> t.contains("test"));
        assertThat(says("bench", "tests: [{test: spin}]")).anyMatch(t -> t.contains("motor"));
        assertThat(says("bench", "tests: [{test: resistance, motor: hub, readings: [{pair: A to X}]}]"))
                .anyMatch(t -> t.contains("pair"));
    }

    @Test
    void accepts_unknown_everywhere_and_lists_where_several_may_stand() {
        assertThat(says(
                        "machine",
                        "motors: {hub: {slots: unknown, resistance: [1 ohm, 2 ohm], magnet_material: unknown}}"))
                .isEmpty();
        assertThat(says("machine", "motors: {hub: }\nsupply:\n")).isEmpty();
    }
}
