package servowright.app.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import servowright.app.OpenPage;
import servowright.app.page.RawRequest.Answer;
import servowright.app.page.bench.IncomingProbe;

/** Who may come in, and how far. */
class PageSecurityTest {
    @TempDir
    private static Path folder;

    private static OpenPage page;
    private static RawRequest raw;

    @BeforeAll
    static void open() throws IOException {
        page = OpenPage.demo(folder.resolve("cart"));
        Files.writeString(folder.resolve("secret.csv"), "time,private\n0,1\n1,2\n");
        raw = new RawRequest(page);
    }

    @AfterAll
    static void close() {
        page.close();
    }

    @Test
    void lets_in_who_has_the_key_of_this_run() throws IOException {
        assertThat(raw.send(raw.get("/")).status()).isEqualTo(200);
        Answer first = raw.send(raw.get("/findings?axis=lift&key=" + page.key()).replace(raw.cookie(), ""));
        assertThat(first.status()).isEqualTo(302);
        assertThat(first.text())
                .contains("Location: /findings?axis=lift")
                .contains("HttpOnly")
                .contains("SameSite=Strict");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"/", "/files/machine.yaml", "/bench/recording/rows.csv?file=recordings/hub-step.csv", "/changes"
            })
    void shows_nothing_without_the_key(String path) throws IOException {
        for (String request : List.of(
                raw.get(path).replace(raw.cookie(), ""),
                raw.get(path).replace(page.key(), "x".repeat(page.key().length())),
                raw.get(path + (path.contains("?") ? "&" : "?") + "key=wrong").replace(raw.cookie(), ""))) {
            Answer answer = raw.send(request);
            assertThat(answer.status()).isEqualTo(403);
            assertThat(answer.text()).doesNotContain("Frost").doesNotContain("hub");
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"orchard.example", "orchard.example:8123", "127.0.0.1", "127.0.0.1:1", "[::1]:80", "localhost"})
    void answers_to_no_other_name(String host) throws IOException {
        Answer answer = raw.send(raw.get("/").replace("127.0.0.1:" + page.port() + "\r\nC", host + "\r\nC"));
        assertThat(answer.status()).isIn(421, 400);
        assertThat(answer.text()).doesNotContain("Frost");
    }

    @Test
    void takes_nothing_from_another_page() throws IOException {
        String body = "back=/";
        String ours = raw.cookie() + raw.origin() + RawRequest.form(body);
        assertThat(raw.send(raw.post("/undo", ours, body)).status()).isEqualTo(303);
        for (String origin : List.of(
                "", "Origin: null\r\n", "Origin: http://orchard.example\r\n", "Origin: http://127.0.0.1:1\r\n")) {
            String headers = raw.cookie() + origin + RawRequest.form(body);
            assertThat(raw.send(raw.post("/undo", headers, body)).status())
                    .as(origin)
                    .isEqualTo(403);
        }
        String foreign = raw.get("/").replace("Connection", "Origin: http://orchard.example\r\nConnection");
        assertThat(raw.send(foreign).status()).isEqualTo(403);
    }

    @Test
    void sends_people_nowhere_else() throws IOException {
        for (String back : List.of("https://orchard.example", "//orchard.example", "/%5Corchard.example")) {
            String body = "back=" + back;
            String headers = raw.cookie() + raw.origin() + RawRequest.form(body);
            assertThat(raw.send(raw.post("/undo", headers, body)).text()).contains("Location: /\r\n");
        }
    }

    @Test
    void forbids_scripts_that_are_not_its_own() throws IOException {
        Answer answer = raw.send(raw.get("/"));
        assertThat(answer.text())
                .contains("script-src 'self';")
                .contains("default-src 'none'")
                .contains("frame-ancestors 'none'")
                .contains("nosniff")
                .doesNotContain("unsafe-inline")
                .doesNotContainPattern("<script(?![^>]*src=\"/own/)")
                .doesNotContainPattern("\\son[a-z]+=\"")
                .doesNotContainPattern("(src|href)=\"(https?:)?//");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/files/..%2f..%2fsecret.csv",
                "/files/%2e%2e/secret.csv",
                "/files/../../secret.csv",
                "/own/../page.css",
                "/bench/recording?file=../secret.csv",
                "/bench/recording?file=recordings/../../secret.csv",
                "/bench/recording?file=%2e%2e%2fsecret.csv",
                "/bench/recording/rows.csv?file=../secret.csv",
                "/bench/recording/rows.csv?file=/etc/passwd",
                "/bench/recording/rows.csv?file=recordings%00.csv",
                "/files/change?file=../secret.csv&path=a",
                "/files/bench.yaml%00"
            })
    void reaches_nothing_outside_the_folder(String path) throws IOException {
        Answer answer = raw.send(raw.get(path));
        assertThat(answer.status()).isIn(400, 404);
        assertThat(answer.text()).doesNotContain("private").doesNotContain("root:");
    }

    @Test
    void follows_no_link_out_of_the_folder() throws IOException {
        Path link = page.folder().resolve("recordings/link.csv");
        Files.createSymbolicLink(link, folder.resolve("secret.csv"));
        try {
            Answer answer = raw.send(raw.get("/bench/recording/rows.csv?file=recordings/link.csv"));
            assertThat(answer.status()).isEqualTo(404);
            assertThat(answer.text()).doesNotContain("private");
        } finally {
            Files.delete(link);
        }
    }

    @Test
    void refuses_a_large_upload_before_it_is_read() throws IOException {
        for (String path : List.of("/bench/incoming", "/files/machine.yaml/edit")) {
            String headers = raw.cookie() + raw.origin()
                    + "Content-Type: multipart/form-data; boundary=x\r\nContent-Length: 5000000000\r\n";
            Answer answer = raw.send(raw.post(path, headers, "--x\r\n"));
            assertThat(answer.status()).isEqualTo(413);
            assertThat(answer.text()).contains("larger than");
        }
    }

    @Test
    void stops_a_long_form_that_hides_its_length() throws IOException {
        StringBuilder body = new StringBuilder();
        String block = "text=" + "x".repeat(1 << 20);
        for (int i = 0; i < 8; i++) {
            body.append(Integer.toHexString(block.length()))
                    .append("\r\n")
                    .append(block)
                    .append("\r\n");
        }
        String headers = raw.cookie() + raw.origin()
                + "Content-Type: application/x-www-form-urlencoded\r\nTransfer-Encoding: chunked\r\n";
        Answer answer = raw.send(raw.post("/files/machine.yaml/edit", headers, body + "0\r\n\r\n"));
        assertThat(answer.status()).isIn(0, 400, 413);
        assertThat(Files.size(page.folder().resolve("machine.yaml"))).isLessThan(20_000);
    }

    @Test
    void unpacks_only_so_much() throws Exception {
        byte[] bomb = packed(3_000_000);
        assertThat(bomb.length).isLessThan(10_000);
        assertThat(IncomingProbe.refusal(1_000_000, bomb)).contains("larger than 1 MB");
        assertThat(IncomingProbe.refusal(1_000_000, packed(900_000))).isEmpty();
    }

    private static byte[] packed(int length) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(out)) {
            gzip.write(new byte[length]);
        }
        return out.toByteArray();
    }

    @Test
    void unpacks_no_packed_request() throws IOException {
        String headers = raw.cookie() + raw.origin() + "Content-Encoding: gzip\r\n" + RawRequest.form("x");
        assertThat(raw.send(raw.post("/files/machine.yaml/edit", headers, "x")).status())
                .isEqualTo(415);
    }

    @Test
    void serves_a_thousand_requests_at_once() throws Exception {
        ExecutorService senders = Executors.newFixedThreadPool(100);
        List<Future<Integer>> answers = new ArrayList<>();
        for (int i = 0; i < 1000; i++) {
            String path = List.of("/dossier", "/axes?axis=pan", "/sheets/magnet-field?diameter=6%20mm", "/own/page.css")
                    .get(i % 4);
            answers.add(senders.submit(() -> raw.send(raw.get(path)).status()));
        }
        List<Integer> statuses = new ArrayList<>();
        for (Future<Integer> answer : answers) {
            statuses.add(answer.get());
        }
        senders.shutdown();
        assertThat(statuses).hasSize(1000).containsOnly(200);
        assertThat(Thread.getAllStackTraces().keySet().stream()
                        .filter(t -> t.getName().startsWith("page"))
                        .count())
                .isLessThanOrEqualTo(Limits.THREADS);
    }

    @Test
    void tells_no_more_pages_of_changes_than_it_can() throws Exception {
        ExecutorService senders = Executors.newFixedThreadPool(60);
        List<Future<Boolean>> ended = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            ended.add(senders.submit(() -> {
                try (java.net.Socket socket =
                        new java.net.Socket(java.net.InetAddress.getLoopbackAddress(), page.port())) {
                    socket.setSoTimeout(1500);
                    socket.getOutputStream()
                            .write(raw.get("/changes")
                                    .replace("Connection: close", "Accept: text/event-stream")
                                    .getBytes(StandardCharsets.UTF_8));
                    socket.getInputStream().readAllBytes();
                    return true;
                } catch (java.net.SocketTimeoutException held) {
                    return false;
                }
            }));
        }
        int closed = 0;
        for (Future<Boolean> end : ended) {
            closed += end.get() ? 1 : 0;
        }
        senders.shutdown();
        assertThat(closed).isEqualTo(60 - Limits.LISTENERS);
        assertThat(raw.send(raw.get("/")).status()).isEqualTo(200);
    }
}
