package servowright.engine.worksheet.encoder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import servowright.engine.known.Outcome;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Filled;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Worksheet;
import servowright.engine.worksheet.Worksheets;

class EncoderSheetsTest {

    @Test
    void every_sheet_is_offered_under_its_name() {
        assertThat(EncoderSheets.all()).hasSize(22);
        for (Worksheet sheet : EncoderSheets.all()) {
            assertThat(Worksheets.named(sheet.declaration().name())).contains(sheet);
        }
    }

    @Test
    void every_result_has_a_line_and_every_line_only_declared_inputs() {
        List<LineSheet> sheets = EncoderSheets.all().stream()
                .filter(LineSheet.class::isInstance)
                .map(LineSheet.class::cast)
                .toList();
        assertThat(sheets).hasSizeGreaterThan(20);
        for (LineSheet sheet : sheets) {
            Declaration declaration = sheet.declaration();
            List<Line> lines = sheet.lines();
            assertThat(lines)
                    .extracting(Line::result)
                    .containsExactlyElementsOf(
                            declaration.results().stream().map(Result::name).toList());
            for (Line line : lines) {
                for (String input : line.inputs()) {
                    assertThat(declaration.input(input.substring(input.indexOf('=') + 1)))
                            .as(input)
                            .isPresent();
                    assertThat(line.formula()).contains("{" + input.substring(0, input.indexOf('=')) + "}");
                }
            }
        }
    }

    @Test
    void sheet_without_inputs_says_what_it_needs() {
        Worksheet sheet = Worksheets.named("magnet-field").orElseThrow();
        Outcome<?> outcome = sheet.compute(new Inputs(Map.of()));
        assertThat(outcome).isInstanceOf(Outcome.Missing.class);
        assertThat(((Outcome.Missing<?>) outcome).needs()).hasSize(1);
    }

    @Test
    void every_example_of_an_input_can_be_computed_with() {
        for (Worksheet sheet : EncoderSheets.all()) {
            Map<String, List<String>> examples = new LinkedHashMap<>();
            for (Input input : sheet.declaration().inputs()) {
                examples.put(input.name(), List.of(input.example()));
            }
            Filled filled = Filled.of(sheet, examples);
            assertThat(filled).as(sheet.declaration().name()).isInstanceOf(Filled.Ready.class);
            assertThat(sheet.compute(((Filled.Ready) filled).inputs())).isInstanceOf(Outcome.Answer.class);
        }
    }

    /** Whatever is within the range of every input must not stop the program; seeded. */
    @Test
    void no_line_stops_within_the_ranges_of_its_inputs() {
        Random random = new Random(20);
        for (Worksheet sheet : EncoderSheets.all()) {
            if (sheet instanceof LineSheet lines) {
                for (int draw = 0; draw < 300; draw++) {
                    for (Line line : lines.lines()) {
                        double[] drawn = line.inputs().stream()
                                .map(i -> i.substring(i.indexOf('=') + 1))
                                .mapToDouble(name ->
                                        drawn(sheet.declaration().input(name).orElseThrow(), random))
                                .toArray();
                        assertThatCode(() -> line.function().applyAsDouble(drawn))
                                .as("%s %s %s", sheet.declaration().name(), line.result(), Arrays.toString(drawn))
                                .doesNotThrowAnyException();
                    }
                }
            }
        }
    }

    private static double drawn(Input input, Random random) {
        Input.Range range = input.range().orElseThrow();
        double least = range.least().si();
        double most = range.most().si();
        if (random.nextInt(10) == 0) {
            return random.nextBoolean() ? least : most;
        }
        double from = least > 0 ? least : most * 1e-6;
        double value = from * Math.pow(most / from, random.nextDouble());
        return input.kind() == Input.Kind.WHOLE_NUMBER ? Math.rint(value) : value;
    }

    @Test
    void refuses_an_observer_faster_than_its_formula() {
        Worksheet sheet = Worksheets.named("tracking-observer").orElseThrow();
        Filled filled = Filled.of(
                sheet,
                Map.of(
                        "natural_frequency", List.of("500 Hz"),
                        "sample_time", List.of("100 us"),
                        "noise", List.of("0.05 deg")));
        assertThat(filled).isInstanceOf(Filled.Refused.class);
    }
}
