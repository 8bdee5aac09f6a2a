package servowright.app.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import servowright.app.OpenPage;
import servowright.app.page.RawRequest.Answer;

/** A folder in which there is no machine yet. */
class FirstVisitTest {
    @TempDir
    private Path folder;

    private OpenPage page;
    private RawRequest raw;

    @BeforeEach
    void open() {
        page = OpenPage.of(folder);
        raw = new RawRequest(page);
    }

    @AfterEach
    void close() {
        page.close();
    }

    private Answer post(String path, Map<String, String> said) throws IOException {
        String body = said.entrySet().stream()
                .map(e -> e.getKey() + "=" + URLEncoder.encode(e.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
        return raw.send(raw.post(path, raw.cookie() + raw.origin() + RawRequest.form(body), body));
    }

    /** A view as soon as it says something, for as long as a person would wait on a busy machine. */
    private String shown(String path, String words) throws IOException {
        long end = System.nanoTime() + 20_000_000_000L;
        String text = raw.send(raw.get(path)).text();
        while (!text.contains(words) && System.nanoTime() < end) {
            text = raw.send(raw.get(path)).text();
        }
        assertThat(text).contains(words);
        return text;
    }

    private static Map<String, String> answers() {
        return new TreeMap<>(Map.of(
                "machine", "Seed drill: rear",
                "axes", "meter, fan",
                "feeds", "battery",
                "supply", "20..29,2 V",
                "motor", "disc",
                "magnets", "14",
                "speed_constant", "150 rpm/V [line peak, label]",
                "drive", "",
                "rate", "500 kbit/s"));
    }

    @Test
    void offers_the_demo_and_a_machine_of_ones_own() throws IOException {
        assertThat(raw.send(raw.get("/")).text())
                .contains("No machine here yet")
                .contains("Put the frost cart into this folder")
                .contains("Which axes does it have?");
        assertThat(raw.send(raw.get("/start")).text()).contains("No machine here yet");
        assertThat(raw.send(raw.get("/tour")).text()).contains("in three steps");
    }

    @Test
    void writes_a_machine_from_what_was_answered() throws IOException {
        assertThat(post("/start", answers()).status()).isEqualTo(303);
        assertThat(folder.resolve("machine.yaml")).hasContent("""
                machine: 'Seed drill: rear'
                supply:
                  battery: {voltage: '20..29,2 V'}
                motors:
                  disc:
                    magnets: 14    # counted; half of them are the pole pairs
                    speed_constant: '150 rpm/V [line peak, label]'
                drives:
                  drive: {}
                axes:
                  meter:
                    motor: disc
                    drive: drive
                  fan:
                    motor: disc
                    drive: drive
                bus: {rate: 500 kbit/s}
                """);
        assertThat(shown("/", "2 axes, 1 motor")).contains("<h1>Seed drill: rear</h1>");
    }

    @Test
    void says_beside_the_question_what_is_wrong_and_writes_nothing() throws IOException {
        Map<String, String> said = answers();
        said.put("supply", "24 mm");
        said.put("magnets", "thirteen");
        Answer answer = post("/start", said);
        assertThat(answer.status()).isEqualTo(409);
        String supply = answer.text().substring(answer.text().indexOf("own-supply"));
        assertThat(supply.substring(0, supply.indexOf("own-feeds"))).contains("class=\"problem\"");
        String magnets = answer.text().substring(answer.text().indexOf("how-magnets\">"));
        assertThat(magnets.substring(0, magnets.indexOf("own-speed_constant"))).contains("thirteen");
        assertThat(folder.resolve("machine.yaml")).doesNotExist();
    }

    @Test
    void writes_over_no_machine_that_is_there() throws IOException {
        Files.writeString(folder.resolve("machine.yaml"), "machine: Mine\n");
        Answer answer = post("/start", answers());
        assertThat(answer.status()).isEqualTo(409);
        assertThat(answer.text()).contains("There is a machine.yaml already");
        assertThat(post("/start/demo", Map.of()).text()).contains("holds machine.yaml already; nothing was written");
        assertThat(folder.resolve("machine.yaml")).hasContent("machine: Mine\n");
        assertThat(folder.toFile().list()).containsExactly("machine.yaml");
    }

    @Test
    void leads_from_an_empty_folder_to_the_demo_and_its_tour() throws IOException {
        try (Browser browser = Browser.before(page)) {
            browser.says("h1", "No machine here yet");
            assertThat(browser.breaches()).isEmpty();
            browser.click("form[action='/start/demo'] button");
            browser.says("h1", "in three steps");
            browser.click(".tour a[href='/#lift-speed-reach']");
            browser.says("#lift-speed-reach", "asks 3200 rpm");
            assertThat(browser.complaints()).isEmpty();
        }
    }

    @Test
    void puts_the_demo_into_the_folder() throws IOException {
        assertThat(post("/start/demo", Map.of()).status()).isEqualTo(303);
        Path demo = Path.of(System.getProperty("servowright.root", ".."), "examples", "frost-cart");
        for (String file : List.of("machine.yaml", "bench.yaml", "recordings/hub-spin-1.csv")) {
            assertThat(folder.resolve(file)).hasSameBinaryContentAs(demo.resolve(file));
        }
        assertThat(shown("/findings", "speed-reach")).contains("Frost cart");
    }
}
