package servowright.app.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import servowright.app.input.CaseFolder;
import servowright.engine.worksheet.Case;
import servowright.engine.worksheet.Worksheet;
import servowright.engine.worksheet.Worksheets;

class ReferencePagesTest {
    private static final Path ROOT = Path.of(System.getProperty("servowright.root"));
    private static final List<Case> CASES =
            CaseFolder.read(ROOT.resolve("cases")).cases();
    private static final ReferencePages PAGES = ReferencePages.of(CASES);

    private static Map<String, String> written(Path docs) throws IOException {
        Map<String, String> found = new TreeMap<>();
        for (String folder : ReferencePages.FOLDERS) {
            try (Stream<Path> files = Files.list(docs.resolve(folder))) {
                for (Path file : files.toList()) {
                    found.put(folder + "/" + file.getFileName(), Files.readString(file));
                }
            }
        }
        return found;
    }

    @Test
    void the_pages_in_docs_are_those_that_worksheets_and_cases_give_now() throws IOException {
        assertThat(written(ROOT.resolve("docs")))
                .as("docs/formulas and docs/validation; the head of each page says how to write it anew")
                .isEqualTo(PAGES.pages());
    }

    @Test
    void writing_takes_away_a_page_whose_worksheet_is_gone(@TempDir Path root) throws IOException {
        Files.createDirectories(root.resolve("cases"));
        Files.writeString(root.resolve("cases/one.yaml"), """
                case: a count
                sheet: pole-pairs
                given: {magnets: 14}
                expect: {pole_pairs: 7 ± 0}
                kind: derived
                source: definition of pole pairs
                """);
        Files.createDirectories(root.resolve("docs/formulas"));
        Files.writeString(root.resolve("docs/formulas/gone.md"), "old");
        ReferencePages.main(new String[] {root.toString()});
        assertThat(written(root.resolve("docs")))
                .doesNotContainKey("formulas/gone.md")
                .containsKey("formulas/pole-pairs.md")
                .hasEntrySatisfying(
                        "validation/README.md",
                        page -> assertThat(page).contains("1 case, 1 value, 0 outside tolerance."));
    }

    @Test
    void a_value_outside_its_tolerance_is_counted_and_marked() {
        List<Case> wrong = CASES.stream()
                .filter(c -> c.sheet().equals("star-delta"))
                .map(c -> new Case(
                        c.name(), "pole-pairs", c.given(), c.expected(), c.kind(), c.source(), c.note(), c.place()))
                .toList();
        ReferencePages pages = ReferencePages.of(wrong);
        assertThat(pages.pages().get("validation/pole-pairs.md"))
                .contains("OUTSIDE")
                .doesNotContain(" 0 outside tolerance");
    }

    @Test
    void every_worksheet_shows_a_formula_with_its_source_and_symbols() {
        for (Worksheet sheet : Worksheets.all()) {
            String name = sheet.declaration().name();
            List<Case> own = CASES.stream().filter(c -> c.sheet().equals(name)).toList();
            Formulas formulas = Formulas.of(sheet, own);
            assertThat(formulas.lines()).as(name).isNotEmpty().allSatisfy(line -> {
                assertThat(line.source()).as(line.label()).isNotBlank();
                assertThat(line.formula()).as(line.label()).isNotBlank().doesNotContain("{");
            });
            assertThat(formulas.symbols().values())
                    .as(name)
                    .allSatisfy(s -> assertThat(s.meaning()).isNotBlank());
            assertThat(sheet.declaration().sources()).as(name).isNotEmpty();
        }
    }

    @Test
    void the_rule_of_the_trade_stands_beside_its_figure() {
        assertThat(PAGES.pages().get("validation/motor-constants.md"))
                .containsPattern(
                        Pattern.quote("| torque_constant_q_axis | 0.05513289 N m/A | ± 5e-9 | 0.0551328895 N m/A | "))
                .contains("practice: common practice, no source");
    }
}
