package servowright.app.page;

import generated.servowright.JtelayoutGenerated;
import generated.servowright.JteproblemsGenerated;
import generated.servowright.JtestoppedGenerated;
import generated.servowright.JtewaitingGenerated;
import gg.jte.Content;
import gg.jte.html.HtmlInterceptor;
import gg.jte.html.HtmlTemplateOutput;
import gg.jte.html.OwaspHtmlTemplateOutput;
import gg.jte.output.StringOutput;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import servowright.app.input.MachineFolder;
import servowright.app.page.start.StartSubject;
import servowright.app.view.AxisView;
import servowright.app.view.DeclaredView;
import servowright.app.view.FindingView;
import servowright.app.view.View;
import servowright.engine.acceptance.Verdict;

/** What every subject works at: the machine's sight, what was changed, and the sheet that views are put on. */
public final class Desk {
    private final Watch watch;
    private final Changes changes;
    private final List<Subject> subjects;
    private final String version;
    private final AtomicReference<String> said = new AtomicReference<>("");
    private final ExecutorService calculations = Executors.newFixedThreadPool(4, work -> {
        Thread thread = new Thread(work, "calculation");
        thread.setDaemon(true);
        return thread;
    });

    Desk(Watch watch, List<Subject> subjects, String version) {
        this.watch = watch;
        this.changes = new Changes(watch);
        this.subjects = subjects;
        this.version = version;
    }

    public Watch watch() {
        return watch;
    }

    public Changes changes() {
        return changes;
    }

    public String version() {
        return version;
    }

    /** Says something on the next view that is shown. */
    public void say(String what) {
        said.set(what);
    }

    /** The sight of the machine, or nothing while it is being computed. */
    public Optional<Sight> sight() {
        return watch.now(Limits.PATIENCE);
    }

    /** A view of the assessment; what stands in its way is shown in its place. */
    public void show(Context ctx, Subject subject, Function<Asked, Content> content) {
        Watch.Glimpse glimpse = watch.glimpse(watch.seen() ? Limits.PATIENCE : Limits.FIRST_PATIENCE);
        Optional<Sight> sight = glimpse.sight();
        long state = glimpse.state();
        if (sight.isEmpty()) {
            Optional<DeclaredView> declared =
                    MachineFolder.declared(watch.folder()).map(DeclaredView::of);
            put(ctx, subject, out -> JtewaitingGenerated.render((OwaspHtmlTemplateOutput) out, null, declared), state);
        } else if (sight.get() instanceof Sight.Stopped stopped) {
            put(
                    ctx,
                    subject,
                    out -> JtestoppedGenerated.render((OwaspHtmlTemplateOutput) out, null, stopped.why()),
                    state);
        } else if (sight.get() instanceof Sight.Refused refused) {
            Content problems =
                    out -> JteproblemsGenerated.render((OwaspHtmlTemplateOutput) out, null, refused.problems());
            put(ctx, subject, StartSubject.instead(this).orElse(problems), state);
        } else {
            View view = ((Sight.Shown) sight.get()).view();
            put(ctx, subject, content.apply(new Asked(view, axis(ctx, view))), state);
        }
    }

    private static Optional<AxisView> axis(Context ctx, View view) {
        String name = ctx.queryParam("axis");
        return view.axes().stream().filter(a -> a.name().equals(name)).findFirst();
    }

    /** A template as it was compiled. */
    @FunctionalInterface
    public interface Template {
        void render(HtmlTemplateOutput out, @Nullable HtmlInterceptor interceptor, Asked asked);
    }

    /** Answers the subject's own address with a view of the assessment. */
    public void page(RoutesConfig routes, Subject subject, Template template) {
        routes.get(
                subject.path(),
                ctx -> show(ctx, subject, asked -> out -> template.render((HtmlTemplateOutput) out, null, asked)));
    }

    /** A view that needs no assessment. */
    public void put(Context ctx, Subject subject, Content content) {
        put(ctx, subject, content, watch.state());
    }

    private void put(Context ctx, Subject subject, Content content, long state) {
        StringOutput out = new StringOutput(1 << 14);
        JtelayoutGenerated.render(new OwaspHtmlTemplateOutput(out), null, frame(ctx, subject, state), content);
        ctx.html(out.toString());
    }

    private Frame frame(Context ctx, Subject subject, long state) {
        Optional<View> view =
                watch.now(Duration.ZERO).filter(Sight.Shown.class::isInstance).map(s -> ((Sight.Shown) s).view());
        Optional<AxisView> axis = view.flatMap(v -> axis(ctx, v));
        String suffix = axis.map(a -> "?axis=" + Asked.encoded(a.name())).orElse("");
        List<Frame.Link> strip = subjects.stream()
                .map(s -> new Frame.Link(s.title(), s.path() + suffix, s.path().equals(subject.path())))
                .toList();
        String machine = view.map(View::name)
                .orElseGet(() -> String.valueOf(
                        watch.folder().toAbsolutePath().normalize().getFileName()));
        boolean whole = subjects.stream().anyMatch(s -> s.path().equals(subject.path()));
        return new Frame(
                subject.title() + ", " + machine,
                machine,
                view.map(v -> v.counts().text()).orElse(""),
                strip,
                view.map(v -> marks(v, whole ? subject.path() : "/", axis)).orElse(List.of()),
                changes.next().orElse(""),
                seen(ctx) ? Optional.ofNullable(said.getAndSet("")).orElse("") : "",
                view.map(View::cautions).orElse(List.of()),
                state);
    }

    /** Whether somebody will see it: a script that looks for news is not told what was said. */
    private static boolean seen(Context ctx) {
        String wanted = ctx.header("Sec-Fetch-Dest");
        return wanted == null || wanted.equals("document");
    }

    private static List<Frame.Mark> marks(View view, String path, Optional<AxisView> here) {
        List<Frame.Mark> marks = new ArrayList<>();
        marks.add(new Frame.Mark(new Frame.Link("whole machine", path, here.isEmpty()), "", ""));
        for (AxisView axis : view.axes()) {
            Optional<Verdict> worst = view.findings().stream()
                    .filter(f -> axis.concerns(f.subject()))
                    .map(FindingView::verdict)
                    .min(Comparator.naturalOrder());
            marks.add(new Frame.Mark(
                    new Frame.Link(
                            axis.name(),
                            Asked.address(path, "axis", axis.name()),
                            here.filter(axis::equals).isPresent()),
                    worst.map(Desk::style).orElse(""),
                    worst.map(Verdict::words).orElse("")));
        }
        return marks;
    }

    /** Name of a verdict in the style sheet. */
    public static String style(Verdict verdict) {
        return verdict.words().replace(' ', '-');
    }

    /** Computes within the time allowed; empty when it takes longer, and the computing is given up. */
    public <T> Optional<T> timed(Callable<T> work) {
        Future<T> future = calculations.submit(work);
        try {
            return Optional.of(future.get(Limits.CALCULATION.toMillis(), TimeUnit.MILLISECONDS));
        } catch (TimeoutException e) {
            future.cancel(true);
            return Optional.empty();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return Optional.empty();
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException fault) {
                throw fault;
            }
            throw new IllegalStateException(e.getCause());
        }
    }

    void close() {
        calculations.shutdownNow();
    }
}
