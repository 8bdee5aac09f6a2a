package servowright.app.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import servowright.app.OpenPage;

/** What is shown while an assessment takes its time, and how it is given up. */
class PatienceTest {
    @TempDir
    private Path folder;

    private final CountDownLatch begun = new CountDownLatch(1);
    private final CountDownLatch interrupted = new CountDownLatch(1);

    private Sight never(Path any) {
        begun.countDown();
        try {
            new CountDownLatch(1).await();
        } catch (InterruptedException e) {
            interrupted.countDown();
        }
        return new Sight.Refused(List.of());
    }

    @Test
    void shows_what_is_declared_while_the_rest_is_computed() throws IOException {
        OpenPage.copyDemo(folder);
        try (Page page = Page.serve(folder, 0, this::never, view -> "", "0.1.0")) {
            RawRequest raw = new RawRequest(page.address());
            assertThat(raw.send(raw.get("/")).text())
                    .contains("<h1>Frost cart</h1>")
                    .contains("This view follows by itself")
                    .contains("42 rpm/V [line peak, label]");
        }
    }

    @Test
    void stops_a_computation_that_is_under_way() throws IOException, InterruptedException {
        try (Page page = Page.serve(folder, 0, this::never, view -> "", "0.1.0")) {
            RawRequest raw = new RawRequest(page.address());
            assertThat(raw.send(raw.get("/")).text()).contains("Reading and computing");
            assertThat(begun.await(10, TimeUnit.SECONDS)).isTrue();
            String stop = raw.post("/stop", raw.cookie() + raw.origin() + RawRequest.form("back=/"), "back=/");
            assertThat(raw.send(stop).status()).isEqualTo(303);
            assertThat(interrupted.await(10, TimeUnit.SECONDS)).isTrue();
            assertThat(raw.send(raw.get("/")).text()).contains("Not computed").contains("It was stopped");
        }
    }
}
