package servowright.app.input;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import servowright.engine.worksheet.Case;
import servowright.engine.worksheet.CaseCheck;
import servowright.engine.worksheet.Worksheets;

/** Every worked case of the project, against the worksheets. Each case names its own source. */
class CasesTest {
    private static final CaseFolder FOLDER = CaseFolder.read(Path.of(System.getProperty("servowright.root"), "cases"));

    private static final int LEAST = 150;

    @Test
    void every_case_file_can_be_read() {
        assertThat(FOLDER.problems())
                .extracting(problem -> problem.place().text() + " " + problem.text())
                .isEmpty();
    }

    @TestFactory
    Stream<DynamicTest> every_case_comes_out_within_its_tolerance() {
        return FOLDER.cases().stream()
                .map(c -> dynamicTest(c.place().text() + " " + c.name(), () -> {
                    List<CaseCheck.Line> off = CaseCheck.of(c).lines().stream()
                            .filter(line -> !line.within())
                            .toList();
                    assertThat(off).extracting(CasesTest::words).isEmpty();
                }));
    }

    @Test
    void there_are_enough_cases_and_no_two_have_one_name() {
        assertThat(FOLDER.cases().size()).isGreaterThanOrEqualTo(LEAST);
        assertThat(FOLDER.cases().stream().map(c -> c.sheet() + " " + c.name())).doesNotHaveDuplicates();
    }

    @Test
    void every_worksheet_has_a_case() {
        Set<String> used = FOLDER.cases().stream().map(Case::sheet).collect(Collectors.toSet());
        assertThat(Worksheets.all()).extracting(w -> w.declaration().name()).allMatch(used::contains);
    }

    @Test
    void a_practice_case_says_that_it_has_no_source() {
        assertThat(FOLDER.cases())
                .filteredOn(c -> c.kind() == Case.Kind.PRACTICE)
                .allSatisfy(c -> assertThat(c.source()).startsWith("common practice, no source"));
    }

    private static String words(CaseCheck.Line line) {
        return line instanceof CaseCheck.Figure f
                ? "%s: theirs %s, ours %s SI, difference %.3g, tolerance %.3g"
                        .formatted(f.what(), f.theirs().text(), f.ours().si(), f.difference(), f.tolerance())
                : line.toString();
    }
}
