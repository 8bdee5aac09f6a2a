package servowright.app.page.bench;

import generated.servowright.bench.JtepageGenerated;
import generated.servowright.bench.JtereadingGenerated;
import gg.jte.html.HtmlTemplateOutput;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.app.input.MachineText;
import servowright.app.input.TestDraft;
import servowright.app.input.tree.TreeEdit;
import servowright.app.page.Asked;
import servowright.app.page.Desk;
import servowright.app.page.Sight;
import servowright.app.page.Subject;
import servowright.app.view.PlotJson;
import servowright.app.view.PlotSvg;
import servowright.app.view.TestView;
import servowright.app.view.View;
import servowright.engine.known.Problem;

/** What was measured: tests with their readings, recordings, fits and what came out; further readings are taken here. */
public final class BenchSubject implements Subject {
    @Override
    public String path() {
        return "/bench";
    }

    @Override
    public String title() {
        return "Bench";
    }

    @Override
    public void routes(RoutesConfig routes, Desk desk) {
        desk.page(routes, this, JtepageGenerated::render);
        routes.get(
                "/bench/plots.json",
                ctx -> ctx.contentType("application/json")
                        .result(PlotJson.of(test(ctx, desk).plots())));
        routes.get("/bench/plot.svg", ctx -> {
            TestView test = test(ctx, desk);
            String number = Optional.ofNullable(ctx.queryParam("number")).orElse("0");
            int i = number.matches("\\d{1,3}") ? Integer.parseInt(number) : 0;
            if (i >= test.plots().size()) {
                throw new NotFoundResponse("There is no such plot.");
            }
            ctx.header("Content-Disposition", "attachment; filename=\"plot.svg\"");
            ctx.contentType("image/svg+xml")
                    .result(PlotSvg.of(test.plots().get(i)).end());
        });
        routes.get("/bench/reading", ctx -> {
            MachineText bench = bench(desk);
            put(ctx, desk, new ReadingForm(test(ctx, desk), bench.mark(), Map.of(), List.of(), ""));
        });
        routes.post("/bench/reading", ctx -> reading(ctx, desk));
        new RecordingRoutes(this, desk).on(routes);
    }

    private static TestView test(Context ctx, Desk desk) {
        String id = Optional.ofNullable(ctx.queryParam("test")).orElseGet(() -> ctx.formParam("test"));
        return desk.sight()
                .filter(Sight.Shown.class::isInstance)
                .flatMap(s -> find(((Sight.Shown) s).view(), id))
                .orElseThrow(() -> new NotFoundResponse("There is no such test now; the files may have changed."));
    }

    private static Optional<TestView> find(View view, @org.jspecify.annotations.Nullable String id) {
        return view.tests().stream().filter(t -> t.id().equals(id)).findFirst();
    }

    private static MachineText bench(Desk desk) {
        return MachineText.read(desk.watch().folder(), "bench.yaml")
                .orElseThrow(() -> new NotFoundResponse("bench.yaml cannot be read as text."));
    }

    private void reading(Context ctx, Desk desk) {
        TestView test = test(ctx, desk);
        MachineText bench = bench(desk);
        Map<String, String> typed = new LinkedHashMap<>();
        new ReadingForm(test, "", Map.of(), List.of(), "").fields().forEach(f -> {
            String value =
                    Optional.ofNullable(ctx.formParam(f.key())).orElse("").strip();
            if (!value.isEmpty()) {
                typed.put(f.key(), value);
            }
        });
        ReadingForm form = new ReadingForm(test, bench.mark(), typed, List.of(), "");
        if (!bench.mark().equals(ctx.formParam("mark"))) {
            put(
                    ctx,
                    desk,
                    noted(
                            form,
                            "bench.yaml was changed elsewhere meanwhile, so nothing was written. Write once"
                                    + " more to add this reading to what it says now."));
            return;
        }
        if (typed.keySet().stream().allMatch("pair"::equals)) {
            put(ctx, desk, noted(form, "Nothing was read off yet: one figure at least."));
            return;
        }
        write(ctx, desk, form, bench);
    }

    private void write(Context ctx, Desk desk, ReadingForm form, MachineText bench) {
        TestView test = form.test();
        List<String> item = List.of(TestDraft.flow(form.typed()));
        Optional<TreeEdit> edit = TreeEdit.of(bench.source());
        Optional<String> text = edit.flatMap(e -> e.appended(test.path() + " / readings", item))
                .or(() -> edit.flatMap(e -> e.withList(test.path(), "readings", item)));
        if (text.isEmpty()) {
            put(
                    ctx,
                    desk,
                    noted(
                            form,
                            "The reading cannot be put there without touching what stands around it; change"
                                    + " the whole text of bench.yaml instead."));
            return;
        }
        MachineText.Outcome outcome = desk.changes().write(bench, text.get(), "a reading of " + test.id());
        if (outcome instanceof MachineText.Written) {
            desk.say("The reading of " + test.id() + " is written to bench.yaml.");
            ctx.redirect("/bench#" + Asked.id(test.id()), HttpStatus.SEE_OTHER);
        } else if (outcome instanceof MachineText.NotAccepted refused) {
            List<Problem> problems = refused.problems();
            put(ctx, desk, new ReadingForm(test, bench.mark(), form.typed(), problems, ""));
        } else {
            put(ctx, desk, noted(form, "bench.yaml was changed elsewhere meanwhile. Write once more."));
        }
    }

    private static ReadingForm noted(ReadingForm form, String notice) {
        return new ReadingForm(form.test(), form.mark(), form.typed(), form.problems(), notice);
    }

    private void put(Context ctx, Desk desk, ReadingForm form) {
        if (!form.problems().isEmpty() || !form.notice().isEmpty()) {
            ctx.status(HttpStatus.CONFLICT);
        }
        desk.put(ctx, this, out -> JtereadingGenerated.render((HtmlTemplateOutput) out, null, form));
    }
}
