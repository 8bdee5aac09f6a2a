package servowright.app.page.bench;

import generated.servowright.bench.JtedraftGenerated;
import generated.servowright.bench.JterecordingGenerated;
import gg.jte.html.HtmlTemplateOutput;
import io.javalin.config.RoutesConfig;
import io.javalin.http.BadRequestResponse;
import io.javalin.http.ContentTooLargeResponse;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.ServiceUnavailableResponse;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import servowright.app.input.MachineText;
import servowright.app.input.TestDraft;
import servowright.app.input.csv.ReadResult;
import servowright.app.page.Asked;
import servowright.app.page.Desk;
import servowright.app.page.Limits;
import servowright.app.page.Sight;
import servowright.app.page.Subject;
import servowright.app.view.PlotJson;
import servowright.app.view.PlotSvg;
import servowright.app.view.RecordingView;
import servowright.app.view.RecordingWindow;
import servowright.engine.known.Problem;
import servowright.engine.recording.Recording;

/** Recordings: dropped, previewed, asked about, kept, looked at closely, exported. */
final class RecordingRoutes {
    private static final int COLUMNS = 1_500;

    private final Subject subject;
    private final Desk desk;
    private final Incoming incoming = new Incoming(Limits.RECORDING_BYTES);
    private final Shelf shelf = new Shelf();

    RecordingRoutes(Subject subject, Desk desk) {
        this.subject = subject;
        this.desk = desk;
    }

    void on(RoutesConfig routes) {
        routes.post("/bench/incoming", this::take);
        routes.get("/bench/incoming/{id}", ctx -> preview(ctx, said(ctx.queryParamMap()), List.of()));
        routes.post("/bench/incoming/{id}", this::keep);
        routes.get("/bench/recording", this::show);
        routes.get(
                "/bench/recording/plots.json",
                ctx -> ctx.contentType("application/json")
                        .result(PlotJson.of(window(ctx).plots(COLUMNS))));
        routes.get("/bench/recording/plot.svg", this::svg);
        routes.get("/bench/recording/rows.csv", this::csv);
    }

    private void take(Context ctx) throws IOException {
        UploadedFile file = ctx.uploadedFile("recording");
        if (file == null || file.size() == 0) {
            throw new BadRequestResponse("No file came, or an empty one.");
        }
        try (InputStream in = file.content()) {
            Staged staged = incoming.take(file.filename(), in);
            ctx.redirect("/bench/incoming/" + staged.id(), HttpStatus.SEE_OTHER);
        } catch (Incoming.Refused e) {
            throw new ContentTooLargeResponse(String.valueOf(e.getMessage()));
        }
    }

    private Staged staged(String id) {
        return incoming.find(id)
                .orElseThrow(() -> new NotFoundResponse("That recording waits no longer. Drop it once more."));
    }

    private static Map<String, String> said(Map<String, List<String>> parameters) {
        Map<String, String> said = new LinkedHashMap<>();
        parameters.forEach((key, values) -> {
            if (key.matches("[a-z_]+(\\..{1,80})?") && !values.isEmpty() && !key.equals("back")) {
                said.put(key, values.get(0));
            }
        });
        return new TestDraft(said).said();
    }

    private void preview(Context ctx, Map<String, String> said, List<Problem> more) throws IOException {
        Staged staged = staged(ctx.pathParam("id"));
        ReadResult result = timed(() -> shelf.read(staged.file(), staged.name(), reading(said)));
        List<Problem> problems = new java.util.ArrayList<>(more);
        Optional<RecordingView> view = Optional.empty();
        if (result instanceof ReadResult.Read read) {
            view = Optional.of(RecordingView.of(read.recording()));
        } else {
            problems.addAll(((ReadResult.Refused) result).problems());
        }
        String plot = "/bench/recording/plots.json?incoming=" + staged.id() + query(reading(said));
        DraftForm form = new DraftForm(staged, said, view, problems, motors(), plot);
        desk.put(ctx, subject, out -> JtedraftGenerated.render((HtmlTemplateOutput) out, null, form));
    }

    /** What bears upon the reading of the file; names of channels are not renamed before the test is kept. */
    private static Map<String, String> reading(Map<String, String> said) {
        Map<String, String> some = new LinkedHashMap<>(said);
        some.keySet().removeIf(k -> k.startsWith("channels.") || k.equals("name"));
        return some;
    }

    private static String query(Map<String, String> said) {
        StringBuilder query = new StringBuilder();
        said.forEach(
                (k, v) -> query.append('&').append(Asked.encoded(k)).append('=').append(Asked.encoded(v)));
        return query.toString();
    }

    private List<String> motors() {
        return desk.sight()
                .filter(Sight.Shown.class::isInstance)
                .map(s -> ((Sight.Shown) s)
                        .view().motors().stream().map(m -> m.name()).toList())
                .orElse(List.of());
    }

    private void keep(Context ctx) throws IOException {
        Staged staged = staged(ctx.pathParam("id"));
        Map<String, String> said = new LinkedHashMap<>(said(ctx.formParamMap()));
        said.remove("name");
        Path folder = desk.watch().folder();
        String name = free(folder, staged.name());
        Map<String, String> whole = new LinkedHashMap<>();
        List.of("test", "motor").forEach(k -> whole.put(k, said.getOrDefault(k, "")));
        whole.put("recording", name);
        said.forEach(whole::putIfAbsent);
        TestDraft draft = new TestDraft(whole);
        MachineText bench = MachineText.read(folder, "bench.yaml")
                .orElseThrow(() -> new NotFoundResponse("bench.yaml cannot be read as text."));
        Optional<String> text = draft.added(bench);
        if (text.isEmpty()) {
            preview(
                    ctx,
                    said,
                    List.of(problem(
                            "bench.yaml does not end in a list of tests", "Mend it under Files, then keep this.")));
            return;
        }
        Path target = folder.resolve(name);
        Files.createDirectories(folder.resolve("recordings"));
        Files.copy(staged.file(), target);
        MachineText.Outcome outcome = desk.changes().write(bench, text.get(), "the test with " + name);
        if (outcome instanceof MachineText.Written) {
            incoming.done(staged);
            desk.say(staged.name() + " is kept as " + name + ", and bench.yaml has a test for it.");
            ctx.redirect("/bench", HttpStatus.SEE_OTHER);
            return;
        }
        Files.deleteIfExists(target);
        List<Problem> problems = outcome instanceof MachineText.NotAccepted refused
                ? refused.problems()
                : List.of(problem("bench.yaml was changed elsewhere meanwhile", "Keep it once more."));
        ctx.status(HttpStatus.CONFLICT);
        preview(ctx, said, problems);
    }

    private static Problem problem(String statement, String remedy) {
        return new Problem(
                Problem.Kind.CONTRADICTION,
                new servowright.engine.known.Place("bench.yaml", 0, ""),
                "",
                statement,
                "",
                remedy);
    }

    /** A name that is not taken. */
    private static String free(Path folder, String name) {
        int dot = name.lastIndexOf('.') > 0 ? name.lastIndexOf('.') : name.length();
        String free = "recordings/" + name;
        for (int i = 2; Files.exists(folder.resolve(free)); i++) {
            free = "recordings/" + name.substring(0, dot) + "-" + i + name.substring(dot);
        }
        return free;
    }

    private void show(Context ctx) {
        String file = Optional.ofNullable(ctx.queryParam("file")).orElse("");
        Recording recording = recording(ctx);
        RecordingView view = RecordingView.of(recording);
        String query = "?file=" + Asked.encoded(file) + query(said(without(ctx)));
        desk.put(ctx, subject, out -> JterecordingGenerated.render((HtmlTemplateOutput) out, null, file, view, query));
    }

    private static Map<String, List<String>> without(Context ctx) {
        Map<String, List<String>> some = new LinkedHashMap<>(ctx.queryParamMap());
        List.of("file", "incoming", "first", "last", "number").forEach(some::remove);
        return some;
    }

    private Recording recording(Context ctx) {
        String id = ctx.queryParam("incoming");
        String name = Optional.ofNullable(ctx.queryParam("file")).orElse("");
        Path file = id != null
                ? staged(id).file()
                : TestDraft.within(desk.watch().folder(), name)
                        .orElseThrow(() -> new NotFoundResponse("There is no such recording in the folder."));
        String shown = id != null ? staged(id).name() : name;
        ReadResult result = timed(() -> shelf.read(file, shown, said(without(ctx))));
        if (result instanceof ReadResult.Read read) {
            return read.recording();
        }
        throw new BadRequestResponse(
                ((ReadResult.Refused) result).problems().get(0).text());
    }

    private RecordingWindow window(Context ctx) {
        Recording recording = recording(ctx);
        try {
            String first = ctx.queryParam("first");
            String last = ctx.queryParam("last");
            return first == null || last == null
                    ? RecordingWindow.whole(recording)
                    : RecordingWindow.of(recording, Double.parseDouble(first), Double.parseDouble(last));
        } catch (NumberFormatException e) {
            throw new BadRequestResponse("first and last are numbers.");
        }
    }

    private void svg(Context ctx) {
        String number = Optional.ofNullable(ctx.queryParam("number")).orElse("0");
        var plots = window(ctx).plots(COLUMNS);
        int i = number.matches("\\d{1,3}") ? Integer.parseInt(number) : 0;
        ctx.header("Content-Disposition", "attachment; filename=\"plot.svg\"");
        ctx.contentType("image/svg+xml")
                .result(PlotSvg.of(plots.get(Math.min(i, plots.size() - 1))).end());
    }

    private void csv(Context ctx) throws IOException {
        ctx.header("Content-Disposition", "attachment; filename=\"rows.csv\"");
        ctx.contentType("text/csv; charset=utf-8");
        RecordingWindow window = window(ctx);
        try (Writer out = new OutputStreamWriter(ctx.outputStream(), StandardCharsets.UTF_8)) {
            window.csv(out);
        }
    }

    private <T> T timed(Callable<T> work) {
        return desk.timed(work)
                .orElseThrow(() -> new ServiceUnavailableResponse(
                        "Reading took longer than " + Limits.CALCULATION.toSeconds() + " s and was given up."));
    }
}
