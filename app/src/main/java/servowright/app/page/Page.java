package servowright.app.page;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.config.RoutesConfig;
import io.javalin.config.SizeUnit;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.sse.SseClient;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import servowright.app.view.View;

/** The page of one machine, while it is served. */
public final class Page implements AutoCloseable {
    private final Watch watch;
    private final Desk desk;
    private final Gate gate;
    private final Javalin server;

    private Page(Path folder, Function<Path, Sight> read, Function<View, String> dossier, String version) {
        List<Subject> shown = Subjects.shown(dossier);
        this.watch = new Watch(folder, read);
        this.desk = new Desk(watch, shown, version);
        this.gate = new Gate(this::port);
        this.server = Javalin.create(config -> set(config, shown));
    }

    /**
     * Serves a folder to this computer alone.
     *
     * @param port    0 for one that is free
     * @param read    assesses the folder
     * @param dossier writes a view as HTML
     * @throws IllegalStateException if the port is taken
     */
    public static Page serve(
            Path folder, int port, Function<Path, Sight> read, Function<View, String> dossier, String version) {
        Page page = new Page(folder, read, dossier, version);
        try {
            page.server.start("127.0.0.1", port);
            page.watch.start();
        } catch (RuntimeException e) {
            page.close();
            throw new IllegalStateException("port " + port + " cannot be used", e);
        }
        return page;
    }

    /** The address to open, with the key of this run. */
    public String address() {
        return gate.address();
    }

    int port() {
        return server.port();
    }

    private void set(JavalinConfig config, List<Subject> shown) {
        config.startup.showJavalinBanner = false;
        config.startup.showOldJavalinVersionWarning = false;
        config.startup.startupWatcherEnabled = false;
        config.http.maxRequestSize = Limits.FORM_BYTES;
        config.jetty.multipartConfig.maxFileSize(Limits.RECORDING_BYTES, SizeUnit.BYTES);
        config.jetty.multipartConfig.maxTotalRequestSize(Limits.RECORDING_BYTES + 100_000, SizeUnit.BYTES);
        config.jetty.multipartConfig.maxInMemoryFileSize(1, SizeUnit.MB);
        QueuedThreadPool threads = new QueuedThreadPool(Limits.THREADS, 4);
        threads.setDaemon(true);
        threads.setName("page");
        config.jetty.threadPool = threads;
        RoutesConfig routes = config.routes;
        routes.before(gate::check);
        routes.before(Page::size);
        Stream.concat(shown.stream(), Subjects.aside().stream()).forEach(s -> s.routes(routes, desk));
        Resources.routes(routes);
        routes.sse("/changes", this::changes);
        routes.post("/undo", this::undo);
        routes.post("/stop", ctx -> {
            watch.stop();
            back(ctx);
        });
        routes.error(404, ctx -> plain(ctx, "There is no such view. The first one is at /."));
        routes.exception(HttpResponseException.class, (e, ctx) -> {
            ctx.status(e.getStatus());
            plain(ctx, String.valueOf(e.getMessage()));
        });
        routes.exception(Exception.class, (e, ctx) -> {
            ctx.status(500);
            plain(
                    ctx,
                    "This is a fault of the program, not of your files: "
                            + e.getClass().getSimpleName() + ". Please report it with the address above.");
            if (!System.getenv().getOrDefault("SERVOWRIGHT_TRACE", "").isEmpty()) {
                e.printStackTrace();
            }
        });
    }

    /** What is too large is refused by what it says of itself, before any of it is read. */
    private static void size(Context ctx) {
        long length = ctx.req().getContentLengthLong();
        boolean recording = ctx.path().equals("/bench/incoming");
        if (length > (recording ? Limits.RECORDING_BYTES : Limits.FORM_BYTES)) {
            ctx.status(413);
            plain(
                    ctx,
                    "That is larger than " + (recording ? Limits.RECORDING_BYTES : Limits.FORM_BYTES) / 1_000_000
                            + " MB. Put a long recording into the folder yourself and name it in bench.yaml.");
            ctx.header("Connection", "close");
            ctx.skipRemainingHandlers();
        } else if (ctx.header("Content-Encoding") != null) {
            ctx.status(415);
            plain(ctx, "Packed requests are not unpacked.");
            ctx.skipRemainingHandlers();
        }
    }

    private static void plain(Context ctx, String text) {
        if (ctx.result() == null || ctx.result().isEmpty() || ctx.status().getCode() == 500) {
            ctx.contentType("text/plain; charset=utf-8").result(text + "\n");
        }
    }

    private void undo(Context ctx) {
        desk.say(desk.changes().undo());
        back(ctx);
    }

    /** To where the request came from, as its form says; only to a view of this page. */
    public static void back(Context ctx) {
        String to = ctx.formParam("back");
        boolean ours = to != null && to.startsWith("/") && !to.startsWith("//") && !to.contains("\\");
        ctx.redirect(ours ? to : "/", io.javalin.http.HttpStatus.SEE_OTHER);
    }

    private void changes(SseClient client) {
        Runnable tell = () -> client.sendEvent("change", "now"); // browsers pass no event on that has no data
        if (!watch.listen(tell)) {
            client.close();
            return;
        }
        client.onClose(() -> watch.forget(tell));
        client.keepAlive();
        client.sendEvent("state", String.valueOf(watch.state()));
    }

    @Override
    public void close() {
        server.stop();
        watch.close();
        desk.close();
    }
}
