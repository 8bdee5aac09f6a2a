package servowright.engine.worksheet.encoder;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
        assertThat(EncoderSheets.all()).hasSize(19);
        for (Worksheet sheet : EncoderSheets.all()) {
            assertThat(Worksheets.named(sheet.declaration().name())).contains(sheet);
        }
    }

    @Test
    void every_result_has_a_line_and_every_line_only_declared_inputs() {
        for (Worksheet sheet : EncoderSheets.all()) {
            Declaration declaration = sheet.declaration();
            List<Line> lines = ((LineSheet) sheet).lines();
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
}
