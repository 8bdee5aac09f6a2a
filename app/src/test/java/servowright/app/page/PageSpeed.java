package servowright.app.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import servowright.app.OpenPage;

/**
 * How quick the page is in the browser: started by the launcher, measured by the browser's own clock, printed. No part of a
 * build, whose machine may be busy; docs/performance.md says how to run it and what came out.
 */
class PageSpeed {
    /** Resolves when what was drawn has been put on the screen. */
    private static final String PAINTED = "const painted = () => new Promise(r =>"
            + " requestAnimationFrame(() => { const c = new MessageChannel(); c.port1.onmessage = r; c.port2.postMessage(0); }));";

    private static final int STARTS = 11;
    private static final int STEPS = 40;
    private static final int LOOKS = 7;
    private static final int ROWS = 1_000_000;

    @TempDir
    private Path folder;

    @Test
    void from_the_command_to_the_first_findings() throws IOException {
        OpenPage.copyDemo(folder);
        double[] address = new double[STARTS];
        double[] paint = new double[STARTS];
        double[] findings = new double[STARTS];
        for (int i = 0; i < STARTS; i++) {
            try (Browser browser = Browser.empty("http://127.0.0.1")) {
                double begun = System.currentTimeMillis();
                try (ServedByLauncher page = ServedByLauncher.of(folder)) {
                    address[i] = System.currentTimeMillis() - begun;
                    browser.driver().get(page.address());
                    findings[i] =
                            browser.number(PAINTED + "const look = () => document.querySelector('#lift-speed-reach')"
                                            + " ? painted().then(() => done(performance.timeOrigin + performance.now()))"
                                            + " : setTimeout(look, 5); look();")
                                    - begun;
                    paint[i] = browser.number("const look = () => { const p = performance.getEntriesByName("
                                    + "'first-contentful-paint')[0]; if (p) done(performance.timeOrigin + p.startTime);"
                                    + " else setTimeout(look, 20); }; look();")
                            - begun;
                    browser.says("#lift-speed-reach", "asks 3200 rpm");
                }
            }
        }
        say("from the command to the address", address);
        say("from the command to the machine as declared", paint);
        say("from the command to the findings", findings);
    }

    @Test
    void from_a_moved_slider_to_field_and_errors() throws IOException {
        OpenPage.copyDemo(folder);
        try (ServedByLauncher page = ServedByLauncher.of(folder);
                Browser browser = Browser.empty(page.origin())) {
            browser.driver().get(page.address());
            browser.go("/mount/pan");
            browser.one("#result svg");
            String first = browser.text("#result");
            double[] took = new double[STEPS];
            for (int i = 0; i < STEPS; i++) {
                took[i] = browser.number(
                        PAINTED
                                + "const slider = document.getElementById('gap'), result = document.getElementById('result');"
                                + "const begun = performance.now();"
                                + "new MutationObserver((m, o) => { o.disconnect();"
                                + " painted().then(() => done(performance.now() - begun)); }).observe(result, {childList: true});"
                                + "slider.value = arguments[0]; slider.dispatchEvent(new Event('input', {bubbles: true}));",
                        String.format(Locale.ROOT, "%.2f", 1.0 + 0.05 * i));
            }
            assertThat(browser.text("#result")).isNotEqualTo(first);
            say("from a moved slider to the new picture, first " + STEPS / 4, Arrays.copyOf(took, STEPS / 4));
            say("the same, the others", Arrays.copyOfRange(took, STEPS / 4, STEPS));
        }
    }

    @Test
    void a_recording_of_a_million_points() throws IOException {
        OpenPage.copyDemo(folder);
        write(folder.resolve(name(0)));
        for (int i = 1; i < LOOKS; i++) {
            Files.copy(folder.resolve(name(0)), folder.resolve(name(i)));
        }
        try (ServedByLauncher page = ServedByLauncher.of(folder);
                Browser browser = Browser.empty(page.origin())) {
            browser.driver().get(page.address());
            browser.says("#lift-speed-reach", "asks");
            double[] shown = new double[LOOKS];
            double[] closer = new double[LOOKS];
            for (int i = 0; i < LOOKS; i++) {
                browser.go("/bench/recording?file=" + name(i)); // another each time: the last one is held in memory
                shown[i] = browser.number(PAINTED + "const look = () => document.querySelector('[data-took] canvas')"
                        + " ? painted().then(() => done(performance.now())) : setTimeout(look, 2); look();");
                browser.says("main", "1000000 rows");
                closer[i] = browser.number(PAINTED
                        + "const figure = document.querySelector('[data-took]'); const begun = performance.now();"
                        + "new MutationObserver((m, o) => { o.disconnect();"
                        + " painted().then(() => done(performance.now() - begun)); })"
                        + ".observe(figure, {attributeFilter: ['data-zoomed']});"
                        + "document.querySelector('[aria-label=\"Look closer\"]').click();");
            }
            say("from asking for a recording of a million rows to its plot", shown);
            say("from asking for a closer look to its plot", closer);
        }
    }

    private static String name(int i) {
        return "recordings/long-" + i + ".csv";
    }

    private static void write(Path file) throws IOException {
        try (BufferedWriter out = Files.newBufferedWriter(file)) {
            out.write("Time,CH1\ns,V\n");
            for (int i = 0; i < ROWS; i++) {
                out.write(String.format(Locale.ROOT, "%.6f,%.4f\n", i * 1e-6, 4 * Math.sin(i * 1e-4) + 0.1 * (i % 7)));
            }
        }
    }

    private static void say(String what, double... ms) {
        double[] sorted = Arrays.stream(ms).sorted().toArray();
        System.out.printf(
                Locale.ROOT,
                "%s: median %.0f ms, %.0f to %.0f ms, %d times%n",
                what,
                sorted[sorted.length / 2],
                sorted[0],
                sorted[sorted.length - 1],
                sorted.length);
    }
}
