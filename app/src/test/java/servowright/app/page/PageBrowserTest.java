package servowright.app.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import servowright.app.OpenPage;

/** The page as somebody at a bench uses it, in Debian's Chromium. */
class PageBrowserTest {
    @TempDir
    private static Path folder;

    private static OpenPage page;
    private static Browser browser;

    @BeforeAll
    static void open() throws IOException {
        page = OpenPage.demo(folder.resolve("cart"));
        browser = Browser.before(page);
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
        page.close();
    }

    @AfterEach
    void nothing_was_complained_of_and_nothing_asked_elsewhere() {
        assertThat(browser.complaints()).isEmpty();
    }

    private static String file(String name) throws IOException {
        return Files.readString(page.folder().resolve(name));
    }

    private static void takesBack(String name, String before) throws IOException {
        browser.click(".undo button");
        browser.says("#notice", "Taken back");
        assertThat(file(name)).isEqualTo(before);
    }

    @Test
    void shows_verdicts_with_their_figures_worst_first() {
        browser.go("/");
        browser.says("#lift-speed-reach", "asks 3200 rpm");
        assertThat(browser.text("#lift-speed-reach .verdict")).isEqualTo("fails");
        assertThat(browser.text("#flat-pole-pairs-disagree .verdict")).isEqualTo("fails");
        assertThat(browser.text("#lift-angle-lost .verdict")).isEqualTo("tight");
        assertThat(browser.text("#tally")).contains("fail").contains("tight").contains("hold");
    }

    @Test
    void opens_a_working_down_to_the_line_that_was_written() {
        browser.go("/findings?axis=lift");
        browser.click("#lift-speed-reach .rail-link");
        browser.says(".drawer", "voltage for control");
        assertThat(browser.text(".drawer")).contains("2526").contains("Source");
        WebElement place = browser.all(".drawer .with a").stream()
                .filter(a -> a.getText().startsWith("machine.yaml:"))
                .findFirst()
                .orElseThrow();
        String line = place.getText().substring("machine.yaml:".length());
        browser.script("arguments[0].click()", place);
        assertThat(browser.text("#line-" + line)).isNotBlank();
        assertThat(browser.driver().getCurrentUrl()).endsWith("/files/machine.yaml#line-" + line);
    }

    @Test
    void writes_a_reading_as_it_was_typed_and_takes_it_back() throws IOException {
        String before = file("bench.yaml");
        browser.go("/bench");
        browser.click("#resistance-hub-1 .deed");
        browser.type(".drawer [name=pair]", "A to B");
        browser.type(".drawer [name=current]", "1,5 A");
        browser.type(".drawer [name=voltage]", "0.3585 V");
        browser.click(".drawer button:not(.close)");
        browser.says("#notice", "is written to bench.yaml");
        assertThat(file("bench.yaml"))
                .isEqualTo(
                        before.replace(
                                "current: 2.004 A, voltage: 0.4795 V}",
                                "current: 2.004 A, voltage: 0.4795 V}\n      - {pair: A to B, current: '1,5 A', voltage: 0.3585 V}"));
        browser.says("#resistance-hub-1", "current 1,5 A, voltage 0.3585 V");
        takesBack("bench.yaml", before);
    }

    @Test
    void says_beside_the_field_what_is_wrong_with_it() throws IOException {
        String before = file("bench.yaml");
        browser.go("/bench/reading?test=resistance%20hub%201");
        browser.type("[name=current]", "1.5 V");
        browser.click("main form button");
        browser.says("#wrong-current", "1.5 V");
        assertThat(browser.one("[name=current]").getDomAttribute("aria-invalid"))
                .isEqualTo("true");
        assertThat(file("bench.yaml")).isEqualTo(before);
        assertThat(browser.complaints()).allMatch(c -> c.contains("409"));
    }

    @Test
    void follows_a_changed_figure_from_verdict_to_verdict() throws IOException {
        String before = file("machine.yaml");
        browser.go("/axes?axis=lift");
        browser.says("#lift-speed-reach .verdict", "fails");
        browser.click("a[aria-label='Change speed of duty lift, raise']");
        browser.type(".drawer [name=value]", "90 rpm");
        browser.click(".drawer button:not(.close)");
        browser.says("#notice", "is now 90 rpm");
        assertThat(file("machine.yaml")).isEqualTo(before.replace("speed: 128 rpm", "speed: 90 rpm"));
        browser.go("/findings?axis=lift");
        browser.says("#lift-speed-reach .verdict", "holds");
        takesBack("machine.yaml", before);
    }

    @Test
    void shows_what_an_editor_wrote() throws IOException {
        Path machine = page.folder().resolve("machine.yaml");
        String before = Files.readString(machine);
        browser.go("/axes?axis=pan");
        browser.says("main", "0.05 N m");
        Files.writeString(machine, before.replace("friction: 0.05 N m", "friction: 0.06 N m"));
        browser.says("main", "0.06 N m");
        Files.writeString(machine, before);
        browser.says("main", "0.05 N m");
    }

    @Test
    void loses_nothing_when_two_write_at_once() throws IOException {
        Path machine = page.folder().resolve("machine.yaml");
        String before = Files.readString(machine);
        browser.go("/files/change?file=machine.yaml&path=axes%20%2F%20pan%20%2F%20mount%20%2F%20gap");
        browser.type("#value", "1,5 mm ± 0.1 mm");
        Files.writeString(machine, before.replace("fuse: 30 A", "fuse: 25 A   # by hand"));
        browser.click("main form button");
        browser.says("main [role=alert]", "changed elsewhere meanwhile");
        assertThat(Files.readString(machine)).isEqualTo(before.replace("fuse: 30 A", "fuse: 25 A   # by hand"));
        assertThat(browser.one("#value").getDomProperty("value")).isEqualTo("1,5 mm ± 0.1 mm");
        browser.click("main form button");
        browser.says("#notice", "is now 1,5 mm");
        assertThat(Files.readString(machine))
                .contains("fuse: 25 A   # by hand")
                .contains("gap: 1,5 mm ± 0.1 mm")
                .hasSameSizeAs(
                        before.replace("fuse: 30 A", "fuse: 25 A   # by hand").replace("gap: 1.4 mm", "gap: 1,5 mm"));
        Files.writeString(machine, before);
        assertThat(browser.complaints()).allMatch(c -> c.contains("409"));
    }

    private static String rows(String head, IntFunction<String> row) {
        return head + IntStream.range(0, 400).mapToObj(row).collect(Collectors.joining("\n", "", "\n"));
    }

    private static String number(String format, Object... numbers) {
        return String.format(Locale.ROOT, format, numbers);
    }

    private static double wave(int i) {
        return 4 * Math.sin(i * 0.09);
    }

    private void drop(String name, String content) throws IOException {
        Path file = Files.writeString(folder.resolve(name), content);
        browser.go("/bench");
        browser.until(
                () -> {
                    browser.one("#recording").sendKeys(file.toString());
                    return true;
                },
                "the field for a recording");
        browser.says("h1", name);
    }

    @Test
    void understands_recordings_that_are_dropped() throws IOException {
        drop(
                "names-over-units.csv",
                rows(
                        "X,CH1,CH2,\nSecond,Volt,Volt,\n",
                        i -> number("%.6e,%.3f,%.3f,", i * 2e-5, wave(i), wave(i + 9))));
        browser.says("main", "400 rows, 20 us apart");
        assertThat(browser.text("main table")).contains("CH1").contains("CH2").contains("V");
        drop(
                "comma.csv",
                rows(
                        "Zeit;Kanal 1\n(ms);(V)\n",
                        i -> number("%.4f;%.4f", i * 0.02, wave(i)).replace('.', ',')));
        browser.says("main", "400 rows, 20 us apart");
        drop(
                "trace.csv",
                rows(
                        "Wheel\nSampling time interval(ms),0.5\nTime,Analog 1,Analog 2\nms,Motor speed,Torque\n",
                        i -> number("%.6f,%.6f,%.6f", i * 0.5, wave(i), wave(i + 5))));
        browser.says("main", "Motor speed");
        assertThat(browser.one("canvas").isDisplayed()).isTrue();
    }

    @Test
    void takes_a_file_that_is_dropped_on_the_box() {
        browser.go("/bench");
        browser.one("form.drop");
        browser.script("const rows = ['time,CH1', 's,V'];"
                + "for (let i = 0; i < 300; i++) rows.push((i * 1e-4).toFixed(4) + ',' + Math.sin(i / 9).toFixed(4));"
                + "const data = new DataTransfer();"
                + "data.items.add(new File([rows.join('\\n') + '\\n'], 'dropped.csv', {type: 'text/csv'}));"
                + "const box = document.querySelector('form.drop');"
                + "for (const type of ['dragenter', 'dragover', 'drop'])"
                + " box.dispatchEvent(new DragEvent(type, {bubbles: true, cancelable: true, dataTransfer: data}));");
        browser.says("h1", "dropped.csv");
        browser.says("main", "300 rows, 100 us apart");
    }

    @Test
    void asks_what_a_file_does_not_say_and_keeps_it_as_a_test() throws IOException {
        String before = file("bench.yaml");
        drop("bare.csv", rows("", i -> number("%.6f,%.6f", wave(i), wave(i + 9))));
        browser.says("main", "To be answered");
        browser.type("[name=sample_interval]", "20 us");
        browser.click("main form[method=get] button");
        browser.says("main", "400 rows, 20 us apart");
        browser.script("arguments[0].value = 'slim'", browser.one("[name=motor]"));
        browser.type("[name='channels.column 1']", "A to B");
        browser.type("[name='channels.column 2']", "unused");
        browser.type("main form[method=post] [name=speed]", "690 rpm");
        browser.click("main form[method=post] button");
        browser.says("#notice", "is kept as recordings/bare.csv");
        assertThat(file("bench.yaml"))
                .startsWith(before)
                .contains("sample_interval: 20 us")
                .contains("motor: slim");
        assertThat(page.folder().resolve("recordings/bare.csv")).exists();
        browser.says("#spin-slim-1", "690 rpm");
        takesBack("bench.yaml", before);
    }

    @Test
    void works_a_sheet_from_its_address_and_follows_what_is_typed() {
        browser.go("/sheets/magnet-field?diameter=6%20mm&length=2.5%20mm&remanence=1.2%20T&gap=1%20mm");
        String first = browser.text(".results");
        assertThat(first).contains("mT");
        browser.type("#gap", "1,2 mm");
        browser.one("#result");
        browser.says(".results", "mT");
        browser.until(() -> String.valueOf(browser.driver().getCurrentUrl()).contains("gap=1%2C2+mm"), "new address");
        assertThat(browser.text(".results")).isNotEqualTo(first);
    }

    @Test
    void moves_a_mount_and_field_and_errors_follow() {
        browser.go("/mount/pan");
        String first = browser.text("#result");
        browser.one("#gap").sendKeys(Keys.ARROW_RIGHT, Keys.ARROW_RIGHT);
        browser.until(() -> !browser.text("#result").equals(first), "another result");
        assertThat(browser.text("#gap-now")).isEqualTo("1.5 mm");
        assertThat(browser.text("#result")).contains("gap 1.5 mm");
    }

    @Test
    void shows_the_plan_of_the_bus_and_searches_a_bit_timing() {
        browser.go("/bus");
        browser.says(".plan", "lift feedback");
        assertThat(browser.all(".plan tbody tr").get(0).getText()).startsWith("sync host 0x080");
        assertThat(browser.text(".plan")).contains("0x183").contains("in time");
        assertThat(browser.text("#timing-search-result")).contains("prescaler");
        String first = browser.text("#timing-search-result");
        browser.type("#timing-search-rate", "500 kbit/s");
        browser.until(() -> !browser.text("#timing-search-result").equals(first), "another timing");
        assertThat(browser.driver().getCurrentUrl()).endsWith("/bus");
        assertThat(browser.text("#bus-terminators-result")).contains("59.2885 ohm");
    }

    @Test
    void expects_what_the_label_says_beside_what_was_read() {
        browser.go("/bench");
        browser.says("#spin-hub-1 .gave", "13.1 ± 1.5 mWb label");
    }

    @Test
    void draws_the_harmonics_of_a_moved_sensor() {
        browser.go("/mount/pan?sensor_offset=0.3");
        assertThat(browser.one("svg.harmonics").getText())
                .contains("twice per turn")
                .contains("mount 0.1");
    }

    @Test
    void exports_a_plot_as_picture_and_as_rows() {
        browser.go("/bench/recording?file=recordings/hub-spin-3.csv");
        browser.one("canvas");
        browser.click("[aria-label='Look closer']");
        List<String> texts = new ArrayList<>();
        for (String name : List.of("SVG", "CSV")) {
            Object address = browser.until(
                    () -> browser.script(
                            "const link = [...document.querySelectorAll('.plot-deeds a')].find(a => a.textContent === arguments[0]);"
                                    + " return link ? link.href : null;",
                            name),
                    name);
            texts.add(String.valueOf(browser.driver()
                    .executeAsyncScript(
                            "const done = arguments[1]; fetch(arguments[0]).then(r => r.text()).then(done, e => done('' + e));",
                            address)));
        }
        assertThat(texts.get(0)).startsWith("<svg").contains("voltage in V");
        assertThat(texts.get(1)).startsWith("time in s,").contains("CH3");
        assertThat(texts.get(1).lines().count()).isGreaterThan(100);
    }

    @Test
    void needs_no_mouse() {
        browser.go("/");
        browser.says("#lift-speed-reach", "asks");
        WebElement focus = press(Keys.TAB);
        assertThat(focus.getText()).isEqualTo("Skip to the content");
        focus.sendKeys(Keys.ENTER);
        for (int i = 0; i < 5; i++) {
            focus = press(Keys.TAB);
            if ("rail-link".equals(focus.getDomAttribute("class"))) {
                break;
            }
        }
        String label = String.valueOf(focus.getDomAttribute("aria-label"));
        assertThat(label).startsWith("Working of lift/");
        focus.sendKeys(Keys.ENTER);
        browser.says(".drawer", "Close");
        assertThat(browser.driver().switchTo().activeElement().getText()).isEqualTo("Close");
        browser.driver().switchTo().activeElement().sendKeys(Keys.ESCAPE);
        assertThat(browser.driver().switchTo().activeElement().getDomAttribute("aria-label"))
                .isEqualTo(label);
    }

    private static WebElement press(Keys key) {
        browser.driver().switchTo().activeElement().sendKeys(key);
        return browser.driver().switchTo().activeElement();
    }

    @Test
    void bars_nobody_by_the_measure_of_axe() throws IOException {
        List<String> all = new ArrayList<>();
        for (String view : Browser.views().toList()) {
            browser.go(view);
            browser.one("h1");
            for (String breach : browser.breaches()) {
                all.add(view + " " + breach);
            }
        }
        browser.scheme("dark");
        for (String view : List.of("/", "/bench", "/mount/pan", "/sheets/magnet-field?diameter=6%20V")) {
            browser.go(view);
            for (String breach : browser.breaches()) {
                all.add("dark " + view + " " + breach);
            }
        }
        browser.scheme("light");
        assertThat(all).isEmpty();
    }
}
