package servowright.app.page;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executors;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Function;
import java.util.stream.Stream;

/** Keeps the sight of a folder: reads it anew whenever a file in it changes, and tells who wants to know. */
public final class Watch implements AutoCloseable {
    private static final long LOOK_EVERY_MS = 400;

    private final Path folder;
    private final Function<Path, Sight> read;
    private final ScheduledExecutorService clock = Executors.newScheduledThreadPool(2, Watch::daemon);
    private final List<Runnable> listeners = new CopyOnWriteArrayList<>();
    private CompletableFuture<Sight> sight = new CompletableFuture<>();
    private ForkJoinPool work = new ForkJoinPool();
    private final ScheduledFuture<?> looking;
    private volatile boolean once;
    private long beginnings;
    private String seen;

    Watch(Path folder, Function<Path, Sight> read) {
        this.folder = folder;
        this.read = read;
        this.seen = fingerprint();
        this.looking = clock.scheduleWithFixedDelay(this::look, LOOK_EVERY_MS, LOOK_EVERY_MS, TimeUnit.MILLISECONDS);
    }

    /** Begins to read; the page is to be there first, so that what is declared can be looked at meanwhile. */
    synchronized void start() {
        if (beginnings == 0) {
            CompletableFuture<Sight> old = sight;
            sight = begin();
            follow(old, sight);
        }
    }

    private static Thread daemon(Runnable work) {
        Thread thread = new Thread(work, "folder");
        thread.setDaemon(true);
        return thread;
    }

    public Path folder() {
        return folder;
    }

    /**
     * What was seen at one moment.
     *
     * @param sight empty while it is being computed
     * @param state tells it from what was seen before and after
     */
    record Glimpse(Optional<Sight> sight, long state) {}

    /** The sight, after waiting for it as long as allowed. */
    public Optional<Sight> now(Duration patience) {
        return glimpse(patience).sight();
    }

    /** The same with its state. */
    Glimpse glimpse(Duration patience) {
        CompletableFuture<Sight> wanted;
        long begun;
        synchronized (this) {
            wanted = sight;
            begun = beginnings;
        }
        try {
            return new Glimpse(Optional.of(wanted.get(patience.toMillis(), TimeUnit.MILLISECONDS)), 2 * begun + 1);
        } catch (TimeoutException e) {
            return new Glimpse(Optional.empty(), 2 * begun);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return new Glimpse(Optional.empty(), 2 * begun);
        } catch (ExecutionException e) {
            throw new IllegalStateException("the machine could not be assessed", e.getCause());
        }
    }

    /** The state at this moment. */
    synchronized long state() {
        return 2 * beginnings + (sight.isDone() ? 1 : 0);
    }

    /** Whether there was a sight before. */
    boolean seen() {
        return once;
    }

    /** Looks at the folder at once, for those who have just written to it. */
    public void look() {
        synchronized (this) {
            String now = fingerprint();
            if (now.equals(seen)) {
                return;
            }
            seen = now;
            work.shutdownNow();
            CompletableFuture<Sight> old = sight;
            sight = begin();
            follow(old, sight);
        }
        tell();
    }

    /** Gives up the reading and computing under way. */
    public void stop() {
        CompletableFuture<Sight> running;
        synchronized (this) {
            running = sight;
        }
        running.complete(new Sight.Stopped("It was stopped. A change of the files starts it again."));
        tell();
    }

    /**
     * Reads and computes in threads of its own, so that all of them can be interrupted; they are as soon as there is an answer, be it
     * that somebody stopped it or that it took too long.
     */
    private CompletableFuture<Sight> begin() {
        beginnings++;
        CompletableFuture<Sight> future = new CompletableFuture<>();
        ForkJoinPool threads = new ForkJoinPool();
        threads.execute(() -> {
            try {
                Sight found = read.apply(folder);
                once = true;
                future.complete(found);
            } catch (RuntimeException | StackOverflowError e) {
                if (!threads.isShutdown()) {
                    future.completeExceptionally(e);
                }
            } catch (OutOfMemoryError e) {
                future.complete(new Sight.Stopped("The files need more memory than there is. Declare every: 10 for the"
                        + " longest recordings, or give more with SERVOWRIGHT_JAVA_OPTIONS=-Xmx2g."));
            }
            tell();
        });
        long s = Limits.ASSESSMENT.toSeconds();
        String why = "It took longer than " + s + " s and was given up. A change of the files starts it again.";
        future.completeOnTimeout(new Sight.Stopped(why), s, TimeUnit.SECONDS);
        work = threads;
        CompletableFuture<Sight> unused = future.whenComplete((sight, fault) -> threads.shutdownNow());
        return future;
    }

    /** Those who wait for what is out of date are given what takes its place. */
    private static void follow(CompletableFuture<Sight> old, CompletableFuture<Sight> fresh) {
        CompletableFuture<Sight> unused = fresh.whenComplete((sight, fault) -> {
            if (fault == null) {
                old.complete(sight);
            } else {
                old.completeExceptionally(fault);
            }
        });
    }

    /** Calls {@code listener} after every change; false when too many listen already. */
    boolean listen(Runnable listener) {
        return listeners.size() < Limits.LISTENERS && listeners.add(listener);
    }

    void forget(Runnable listener) {
        listeners.remove(listener);
    }

    private void tell() {
        for (Runnable listener : listeners) {
            clock.execute(listener);
        }
    }

    /** Names, sizes and times of the text files and recordings. */
    private String fingerprint() {
        StringBuilder all = new StringBuilder();
        try (Stream<Path> files = Files.walk(folder, 3)) {
            files.limit(5_000).sorted().forEach(p -> {
                String name = String.valueOf(p.getFileName());
                if (name.startsWith(".")) {
                    return;
                }
                try {
                    BasicFileAttributes a = Files.readAttributes(p, BasicFileAttributes.class);
                    if (a.isRegularFile()) {
                        all.append(p)
                                .append(a.size())
                                .append(a.lastModifiedTime())
                                .append(a.fileKey());
                    }
                } catch (IOException e) {
                    all.append(p).append('?');
                }
            });
        } catch (IOException | java.io.UncheckedIOException e) {
            return "unreadable";
        }
        return all.toString();
    }

    @Override
    public void close() {
        looking.cancel(false);
        clock.shutdownNow();
        synchronized (this) {
            work.shutdownNow();
        }
    }
}
