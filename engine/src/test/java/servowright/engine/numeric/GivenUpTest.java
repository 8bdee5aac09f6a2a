package servowright.engine.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

class GivenUpTest {
    @Test
    void lets_a_computation_go_on_that_somebody_waits_for() {
        assertThatCode(GivenUp::check).doesNotThrowAnyException();
    }

    @Test
    void ends_a_search_that_would_go_on_for_hours() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        CompletableFuture<Throwable> ended = new CompletableFuture<>();
        Thread thread = new Thread(() -> {
            try {
                search(begun);
                ended.complete(new AssertionError("it came to an end by itself"));
            } catch (GivenUp e) {
                ended.complete(e);
            }
        });
        thread.setDaemon(true);
        thread.start();
        begun.await();
        thread.interrupt();
        assertThat(ended.get(20, TimeUnit.SECONDS)).isInstanceOf(GivenUp.class);
    }

    /** Trials that each take a moment, more than anybody would wait for. */
    private static void search(CountDownLatch begun) {
        MonteCarlo.outputs(
                x -> {
                    begun.countDown();
                    return slow(x[0]);
                },
                List.of(Distribution.single(java.util.random.RandomGenerator::nextGaussian)),
                20_000_000,
                new java.util.Random(7));
    }

    private static double slow(double x) {
        double y = x;
        for (int i = 0; i < 100_000; i++) {
            y = Math.sin(y + i);
        }
        return y;
    }
}
