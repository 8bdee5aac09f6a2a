package servowright.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import servowright.app.cli.Shown;
import servowright.app.dossier.Dossier;
import servowright.app.view.AssessmentJson;
import servowright.app.view.FigureText;
import servowright.app.view.FindingView;
import servowright.app.view.Sentence;
import servowright.app.view.View;

class SameStringsTest {
    private static String words(String text) {
        return text.replaceAll("<[^>]*>", "")
                .replace("&amp;", "&")
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&quot;", "\"")
                .replaceAll("\\s+", " ");
    }

    /** Every sentence and figure of the view. */
    private static List<String> strings(View view) {
        List<String> all = new ArrayList<>();
        for (FindingView finding : view.findings()) {
            Stream.of(finding.statement(), finding.reason(), finding.remedy())
                    .map(Sentence::text)
                    .filter(t -> !t.isEmpty())
                    .forEach(all::add);
            finding.margin().ifPresent(m -> all.add(m.value().text()));
            finding.working().forEach(w -> all.add(w.result().text()));
        }
        view.motors().forEach(m -> {
            m.parameters().forEach(p -> p.best().map(FigureText::text).ifPresent(all::add));
            m.contradictions().forEach(c -> all.add(c.text()));
        });
        view.tests()
                .forEach(t -> Stream.concat(t.details().stream(), t.remarks().stream())
                        .map(Sentence::text)
                        .forEach(all::add));
        view.cautions().forEach(all::add);
        return all;
    }

    @Test
    void terminal_json_and_dossier_show_the_same_strings() {
        View view = View.present(FrostCart.assessment(), List.of());
        String terminal = words(Shown.everything());
        String json = words(AssessmentJson.of(view));
        String dossier = words(Dossier.html(view));
        assertThat(strings(view)).hasSizeGreaterThan(15).allSatisfy(text -> {
            assertThat(terminal).contains(text);
            assertThat(json).contains(text);
            assertThat(dossier).contains(text);
        });
    }
}
