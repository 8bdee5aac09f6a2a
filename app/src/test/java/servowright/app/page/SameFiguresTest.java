package servowright.app.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import servowright.app.OpenPage;
import servowright.app.cli.MachineSource;
import servowright.app.cli.Shown;
import servowright.app.dossier.Dossier;
import servowright.app.view.AssessmentJson;
import servowright.app.view.FindingView;
import servowright.app.view.View;
import servowright.app.view.WorkingText;

/** One figure is one string, wherever it is shown: 200 of the demo at random on the page, in a terminal, dossier and JSON. */
class SameFiguresTest {
    private static final int FIGURES = 200;

    /** A figure of the working of a finding. */
    private record Figure(String finding, String text) {}

    private static List<Figure> figures(View view) {
        List<Figure> all = new ArrayList<>();
        for (FindingView finding : view.findings()) {
            finding.margin()
                    .ifPresent(m ->
                            Stream.of(m.value(), m.limit()).forEach(f -> all.add(new Figure(finding.key(), f.text()))));
            for (WorkingText line : finding.working()) {
                all.add(new Figure(finding.key(), line.result().text()));
                line.terms()
                        .forEach(t ->
                                all.add(new Figure(finding.key(), t.figure().text())));
            }
        }
        return all;
    }

    /** What a reader sees: marks taken off, any white space a blank. */
    private static String words(String text) {
        return text.replaceAll("<[^>]*>", "")
                .replace("&amp;", "&")
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replaceAll("\\s+", " ");
    }

    @Test
    void page_terminal_dossier_and_json_show_the_same_strings(@TempDir Path folder) throws IOException {
        try (OpenPage page = OpenPage.demo(folder.resolve("cart"))) {
            RawRequest raw = new RawRequest(page);
            MachineSource.Read read = page.read();
            View view = View.present(((MachineSource.Read.Assessed) read).assessment(), List.of());
            List<Figure> all = figures(view);
            assertThat(all).hasSizeGreaterThan(3 * FIGURES);
            Collections.shuffle(all, new Random(20));
            String json = words(AssessmentJson.of(view));
            String dossier = words(Dossier.html(view));
            Map<String, String> pages = new HashMap<>();
            Map<String, String> terminals = new HashMap<>();
            for (Figure figure : all.subList(0, FIGURES)) {
                String key = figure.finding();
                if (!pages.containsKey(key)) {
                    String address = "/working?finding=" + URLEncoder.encode(key, StandardCharsets.UTF_8);
                    pages.put(key, words(raw.send(raw.get(address)).text()));
                    terminals.put(key, words(Shown.explained(read, key)));
                }
                assertThat(pages.get(key)).as("page, %s", key).contains(figure.text());
                assertThat(terminals.get(key)).as("terminal, %s", key).contains(figure.text());
                assertThat(dossier).as("dossier, %s", key).contains(figure.text());
                assertThat(json).as("JSON, %s", key).contains(figure.text());
            }
        }
    }
}
