package servowright.app.page;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import java.util.logging.Level;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.openqa.selenium.By;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import servowright.app.OpenPage;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Debian's Chromium before a page, with everything it complains of and asks for written down. */
final class Browser implements AutoCloseable {
    private static final JsonMapper JSON = new JsonMapper();
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    private final String origin;
    private final ChromeDriver driver;

    private Browser(String origin, ChromeDriver driver) {
        this.origin = origin;
        this.driver = driver;
    }

    static Browser before(OpenPage page) throws IOException {
        Browser browser = empty(page.origin());
        browser.driver.get(page.address());
        return browser;
    }

    /** One that has not opened anything yet, for the page at {@code origin}. */
    static Browser empty(String origin) throws IOException {
        String chromium = found("/usr/bin/chromium");
        ChromeOptions options = new ChromeOptions();
        options.setBinary(chromium);
        options.addArguments(
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--window-size=1280,1000",
                "about:blank",
                "--user-data-dir=" + Files.createTempDirectory("browser"));
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, Level.ALL);
        logs.enable(LogType.PERFORMANCE, Level.ALL);
        options.setCapability("goog:loggingPrefs", logs);
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(Path.of(found("/usr/bin/chromedriver")).toFile())
                .withSilent(true)
                .build();
        Browser browser = new Browser(origin, new ChromeDriver(service, options));
        browser.driver.manage().timeouts().scriptTimeout(Duration.ofMinutes(3));
        browser.complaints(); // those of the browser's own first page
        return browser;
    }

    private static String found(String program) {
        if (!Files.isExecutable(Path.of(program))) {
            throw new IllegalStateException(
                    program + " is not there. ./verify installs chromium and chromium-driver; by"
                            + " hand: sudo apt-get install chromium chromium-driver");
        }
        return program;
    }

    ChromeDriver driver() {
        return driver;
    }

    /** Goes to a path of the page. */
    void go(String path) {
        driver.get(origin + path);
    }

    WebElement one(String css) {
        return until(() -> driver.findElement(By.cssSelector(css)), css);
    }

    List<WebElement> all(String css) {
        return driver.findElements(By.cssSelector(css));
    }

    /** The visible text of the first element; waits until there is one. */
    String text(String css) {
        return until(() -> driver.findElement(By.cssSelector(css)).getText(), css);
    }

    /** Waits until an element says something. */
    void says(String css, String words) {
        until(() -> driver.findElement(By.cssSelector(css)).getText().contains(words), css + ": " + words);
    }

    void type(String css, String text) {
        WebElement field = one(css);
        field.clear();
        field.sendKeys(text);
    }

    /** Clicks where a finger would, after moving it into sight. */
    void click(String css) {
        until(
                () -> {
                    WebElement element = driver.findElement(By.cssSelector(css));
                    driver.executeScript(
                            "arguments[0].scrollIntoView({block: 'center', behavior: 'instant'})", element);
                    element.click();
                    return true;
                },
                css);
    }

    /** Looks until there is something, for as long as a person would wait on a busy machine. */
    <T> T until(Supplier<@Nullable T> look, String what) {
        long end = System.nanoTime() + PATIENCE.toNanos();
        WebDriverException last = new WebDriverException("nothing was seen yet");
        while (System.nanoTime() < end) {
            try {
                T seen = look.get();
                if (seen != null && !Boolean.FALSE.equals(seen)) {
                    return seen;
                }
                Thread.sleep(40);
            } catch (WebDriverException e) {
                last = e;
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                break;
            }
        }
        throw new AssertionError("not seen: " + what + "; the page shows: " + beginning(), last);
    }

    private String beginning() {
        String all = driver.findElement(By.tagName("body")).getText();
        return all.substring(0, Math.min(400, all.length()));
    }

    /** A number that a script hands to {@code done}. */
    double number(String script, Object... arguments) {
        Object number = driver.executeAsyncScript("const done = arguments[arguments.length - 1];" + script, arguments);
        if (number instanceof Number n) {
            return n.doubleValue();
        }
        throw new AssertionError("no number: " + number);
    }

    @Nullable
    Object script(String script, Object... arguments) {
        return driver.executeScript(script, arguments);
    }

    /** Complaints since they were last asked for: of the console, of answers, of requests to anywhere else. */
    List<String> complaints() {
        List<String> all = new ArrayList<>();
        for (LogEntry entry : driver.manage().logs().get(LogType.BROWSER)) {
            all.add(entry.getMessage());
        }
        for (LogEntry entry : driver.manage().logs().get(LogType.PERFORMANCE)) {
            JsonNode message = JSON.readTree(entry.getMessage()).path("message");
            JsonNode event = message.path("params");
            String asked = event.path("request").path("url").asString("");
            if (!asked.isEmpty() && !asked.matches("(" + Pattern.quote(origin) + "/|data:|blob:|about:|chrome:).*")) {
                all.add("asked for " + asked);
            }
            int status = event.path("response").path("status").asInt(0);
            if (message.path("method").asString("").equals("Network.responseReceived") && status >= 400) {
                all.add(status + " for " + event.path("response").path("url").asString(""));
            }
        }
        return all;
    }

    /** Serious and critical breaches of WCAG 2.2 A and AA in what is shown, by axe-core. */
    List<String> breaches() throws IOException {
        try (InputStream axe = Browser.class.getResourceAsStream("/axe.min.js")) {
            if (axe == null) {
                throw new IllegalStateException("axe.min.js is not on the class path");
            }
            driver.executeScript(new String(axe.readAllBytes(), StandardCharsets.UTF_8));
        }
        Object found = driver.executeAsyncScript("const done = arguments[0];"
                + "axe.run(document, {runOnly: ['wcag2a','wcag2aa','wcag21a','wcag21aa','wcag22aa','best-practice']})"
                + ".then(r => done(r.violations.filter(v => ['serious','critical'].includes(v.impact))"
                + ".map(v => v.id + ' (' + v.impact + '): ' + v.nodes.slice(0, 3).map(n => n.target.join(' ')).join('; '))))"
                + ".catch(e => done(['axe: ' + e]));");
        return found instanceof List<?> list
                ? list.stream().map(String::valueOf).toList()
                : List.of("axe said nothing");
    }

    /** Light or dark, as the system would say. */
    void scheme(String scheme) {
        driver.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
    }

    @Override
    public void close() {
        driver.quit();
    }

    static Stream<String> views() {
        return Stream.of(
                "/",
                "/findings",
                "/axes",
                "/axes?axis=lift",
                "/bench",
                "/bench/reading?test=resistance%20hub%201",
                "/bench/recording?file=recordings/hub-spin-3.csv",
                "/mount",
                "/mount/pan",
                "/mount/left%20wheel/drill",
                "/bus",
                "/bus/timing-search?clock=80%20MHz&rate=1%20Mbit/s",
                "/bus/bus-terminators?reading=120%20V",
                "/sheets",
                "/sheets/magnet-field?diameter=6%20mm&length=2.5%20mm&remanence=1.2%20T&gap=1%20mm",
                "/sheets/magnet-field?diameter=6%20V",
                "/files",
                "/files/machine.yaml",
                "/files/machine.yaml/edit",
                "/files/change?file=machine.yaml&path=axes%20%2F%20pan%20%2F%20mount%20%2F%20gap",
                "/tour",
                "/dossier",
                "/dossier/dossier.html",
                "/working?finding=lift/speed-reach");
    }
}
