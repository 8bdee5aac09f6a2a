package servowright.engine.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import servowright.engine.acceptance.Verdict;
import servowright.engine.prediction.Invented;

class RulesTest {
    private static final Path PAGES = Path.of(System.getProperty("servowright.root"), "docs", "findings");

    static Stream<String> ids() {
        return Rules.all().stream().map(Rule::id);
    }

    private static List<Finding> examine(String id, Invented machine) {
        return Rules.named(id).orElseThrow().examine(machine.predictions());
    }

    @ParameterizedTest
    @MethodSource("ids")
    void fires_where_something_is_wrong(String id) {
        assertThat(examine(id, RuleCases.firingFor(id))).anyMatch(f -> f.verdict() != Verdict.HOLDS);
    }

    @ParameterizedTest
    @MethodSource("ids")
    void keeps_silent_where_nothing_is_wrong(String id) {
        assertThat(examine(id, Invented.sound())).allMatch(f -> f.verdict() == Verdict.HOLDS);
    }

    @ParameterizedTest
    @MethodSource("ids")
    void has_a_source_and_a_page(String id) throws IOException {
        assertThat(Rules.named(id).orElseThrow().source()).isNotBlank();
        String page = Files.readString(PAGES.resolve(id + ".md"));
        assertThat(page).startsWith("# " + id + "\n").contains("## Says", "## Threshold", "## Source", "## What to do");
    }

    @Test
    void every_page_belongs_to_a_rule() throws IOException {
        try (Stream<Path> pages = Files.list(PAGES)) {
            Set<String> names = pages.map(p -> p.getFileName().toString())
                    .filter(n -> !n.equals("README.md"))
                    .map(n -> n.replace(".md", ""))
                    .collect(Collectors.toCollection(TreeSet::new));
            assertThat(names).isEqualTo(ids().collect(Collectors.toCollection(TreeSet::new)));
        }
    }

    @Test
    void ids_are_plain_words_and_each_stands_once() {
        assertThat(ids()).allMatch(id -> id.matches("[a-z]+(-[a-z]+)*")).doesNotHaveDuplicates();
        assertThat(RuleCases.firing().keySet()).containsExactlyInAnyOrderElementsOf(ids().toList());
    }

    @ParameterizedTest
    @MethodSource("ids")
    void says_what_to_do_when_it_does_not_hold(String id) {
        for (Finding finding : examine(id, RuleCases.firingFor(id))) {
            assertThat(finding.statement().template()).isNotBlank();
            if (finding.verdict() == Verdict.FAILS || finding.verdict() == Verdict.TIGHT) {
                assertThat(finding.remedy().template()).isNotBlank();
            }
            if (finding.verdict() == Verdict.NOT_SHOWN) {
                assertThat(finding.needs()).isNotEmpty();
            }
        }
    }
}
