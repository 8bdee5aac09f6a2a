package servowright.app.page.files;

import generated.servowright.files.JtelistGenerated;
import generated.servowright.files.JtetextGenerated;
import generated.servowright.files.JtetextformGenerated;
import generated.servowright.files.JtevalueformGenerated;
import gg.jte.html.HtmlTemplateOutput;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Optional;
import servowright.app.input.MachineText;
import servowright.app.input.tree.TreeEdit;
import servowright.app.page.Desk;
import servowright.app.page.Page;
import servowright.app.page.Sight;
import servowright.app.page.Subject;
import servowright.app.view.View;
import servowright.engine.known.Problem;

/** The files themselves: read line by line, changed value by value or whole. */
public final class FilesSubject implements Subject {
    @Override
    public String path() {
        return "/files";
    }

    @Override
    public String title() {
        return "Files";
    }

    @Override
    public void routes(RoutesConfig routes, Desk desk) {
        routes.get("/files", ctx -> list(ctx, desk));
        routes.get("/files/change", ctx -> value(ctx, desk));
        routes.post("/files/change", ctx -> change(ctx, desk));
        routes.get("/files/{name}", ctx -> {
            MachineText text = text(desk, ctx.pathParam("name"));
            List<String> lines = List.of(text.source().text().split("\n", -1));
            desk.put(
                    ctx,
                    this,
                    out -> JtetextGenerated.render(
                            (HtmlTemplateOutput) out, null, text.source().file(), lines, text.exists()));
        });
        routes.get("/files/{name}/edit", ctx -> {
            MachineText text = text(desk, ctx.pathParam("name"));
            put(ctx, desk, new TextForm(text.source().file(), text.source().text(), text.mark(), "", List.of()));
        });
        routes.post("/files/{name}/edit", ctx -> write(ctx, desk));
    }

    private static MachineText text(Desk desk, String name) {
        return MachineText.read(desk.watch().folder(), name)
                .orElseThrow(() -> new NotFoundResponse(
                        "Only machine.yaml and bench.yaml are shown here, as far as they" + " can be read as text."));
    }

    private void list(Context ctx, Desk desk) {
        List<View.FileView> files = desk.sight()
                .filter(Sight.Shown.class::isInstance)
                .map(s -> ((Sight.Shown) s).view().files())
                .orElse(List.of());
        desk.put(
                ctx,
                this,
                out -> JtelistGenerated.render(
                        (HtmlTemplateOutput) out, null, desk.watch().folder().toString(), MachineText.FILES, files));
    }

    private void value(Context ctx, Desk desk) {
        String path = Optional.ofNullable(ctx.queryParam("path")).orElse("");
        MachineText text =
                text(desk, Optional.ofNullable(ctx.queryParam("file")).orElse(""));
        String now = TreeEdit.of(text.source())
                .flatMap(e -> e.value(path))
                .orElseThrow(() -> new NotFoundResponse(
                        "There is no single value at " + path + " now. The whole text can be changed at /files/"
                                + text.source().file() + "/edit."));
        String back = Optional.ofNullable(ctx.queryParam("back")).orElse("/");
        put(ctx, desk, new ValueForm(text.source().file(), path, now, now, text.mark(), List.of(), "", back));
    }

    private void change(Context ctx, Desk desk) {
        String path = given(ctx, "path");
        String value = given(ctx, "value").strip();
        String mark = given(ctx, "mark");
        MachineText text = text(desk, given(ctx, "file"));
        String file = text.source().file();
        Optional<TreeEdit> edit = TreeEdit.of(text.source());
        String now = edit.flatMap(e -> e.value(path)).orElse("");
        ValueForm form = new ValueForm(file, path, now, value, text.mark(), List.of(), "", given(ctx, "back"));
        if (!text.mark().equals(mark)) {
            put(
                    ctx,
                    desk,
                    noted(
                            form,
                            file + " was changed elsewhere meanwhile, so nothing was written. It now says "
                                    + (now.isEmpty() ? "nothing here" : now)
                                    + ". Write once more to put yours there."));
            return;
        }
        Optional<String> fresh = edit.flatMap(e -> e.replaced(path, value));
        if (fresh.isEmpty()) {
            put(
                    ctx,
                    desk,
                    noted(
                            form,
                            "This value cannot be put there without touching what stands around it; change"
                                    + " the whole text instead."));
            return;
        }
        put(
                ctx,
                desk,
                form,
                desk.changes()
                        .write(text, fresh.get(), form.label() + " of " + form.of() + ", " + now + " to " + value));
    }

    private void put(Context ctx, Desk desk, ValueForm form, MachineText.Outcome outcome) {
        String file = form.file();
        String path = form.path();
        String now = form.now();
        String value = form.value();
        if (outcome instanceof MachineText.NotAccepted refused) {
            put(ctx, desk, new ValueForm(file, path, now, value, form.mark(), refused.problems(), "", form.back()));
        } else if (outcome instanceof MachineText.ChangedMeanwhile meanwhile) {
            put(
                    ctx,
                    desk,
                    noted(
                            new ValueForm(
                                    file, path, now, value, meanwhile.now().mark(), List.of(), "", form.back()),
                            file
                                    + " was changed elsewhere meanwhile, so nothing was written. Write once more to put yours"
                                    + " there."));
        } else {
            desk.say(form.label() + " of " + form.of() + " is now " + value + ", in " + file + ".");
            Page.back(ctx);
        }
    }

    private static ValueForm noted(ValueForm f, String notice) {
        return new ValueForm(f.file(), f.path(), f.now(), f.value(), f.mark(), f.problems(), notice, f.back());
    }

    private void write(Context ctx, Desk desk) {
        MachineText text = text(desk, ctx.pathParam("name"));
        String file = text.source().file();
        String typed = given(ctx, "text").replace("\r\n", "\n");
        String mark = given(ctx, "mark");
        if (!text.mark().equals(mark)) {
            put(ctx, desk, new TextForm(file, typed, text.mark(), text.source().text(), List.of()));
            return;
        }
        MachineText.Outcome outcome = desk.changes().write(text, typed, "the text of " + file);
        if (outcome instanceof MachineText.NotAccepted refused) {
            put(ctx, desk, new TextForm(file, typed, mark, "", refused.problems()));
        } else if (outcome instanceof MachineText.ChangedMeanwhile meanwhile) {
            MachineText now = meanwhile.now();
            put(ctx, desk, new TextForm(file, typed, now.mark(), now.source().text(), List.of()));
        } else {
            desk.say(file + " is written.");
            ctx.redirect("/files/" + file, HttpStatus.SEE_OTHER);
        }
    }

    private void put(Context ctx, Desk desk, ValueForm form) {
        refused(ctx, form.problems().isEmpty() && form.notice().isEmpty());
        desk.put(ctx, this, out -> JtevalueformGenerated.render((HtmlTemplateOutput) out, null, form));
    }

    private void put(Context ctx, Desk desk, TextForm form) {
        refused(ctx, form.problems().isEmpty() && form.now().isEmpty());
        desk.put(ctx, this, out -> JtetextformGenerated.render((HtmlTemplateOutput) out, null, form));
    }

    private static void refused(Context ctx, boolean fine) {
        if (!fine) {
            ctx.status(HttpStatus.CONFLICT);
        }
    }

    private static String given(Context ctx, String name) {
        return Optional.ofNullable(ctx.formParam(name)).orElse("");
    }

    /** Problems as the templates show them. */
    public static String sentence(Problem problem) {
        return problem.statement() + "." + (problem.remedy().isEmpty() ? "" : " " + problem.remedy());
    }
}
