package servowright.app.page.start;

import generated.servowright.start.JtepageGenerated;
import generated.servowright.start.JtetourGenerated;
import gg.jte.Content;
import gg.jte.html.HtmlTemplateOutput;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.app.input.DemoFiles;
import servowright.app.input.MachineText;
import servowright.app.input.NewMachine;
import servowright.app.page.Desk;
import servowright.app.page.Subject;
import servowright.engine.known.Problem;

/** A folder without a machine: the demo with a tour in three steps, or a machine of one's own from a few questions. */
public final class StartSubject implements Subject {
    private static final String MACHINE = "machine.yaml";

    @Override
    public String path() {
        return "/start";
    }

    @Override
    public String title() {
        return "Begin";
    }

    @Override
    public void routes(RoutesConfig routes, Desk desk) {
        routes.get("/tour", ctx -> desk.put(ctx, this, out -> JtetourGenerated.render((HtmlTemplateOutput) out, null)));
        routes.get(path(), ctx -> instead(desk).ifPresentOrElse(c -> desk.put(ctx, this, c), () -> ctx.redirect("/")));
        routes.post("/start/demo", ctx -> demo(ctx, desk));
        routes.post(path(), ctx -> begin(ctx, desk));
    }

    private static String folder(Desk desk) {
        return desk.watch().folder().toString();
    }

    /** What is shown in place of an assessment where there is no machine.yaml; empty where there is one. */
    public static Optional<Content> instead(Desk desk) {
        return MachineText.read(desk.watch().folder(), MACHINE)
                .filter(t -> !t.exists())
                .map(t -> content(new StartForm(folder(desk), Map.of(), List.of(), "")));
    }

    private static Content content(StartForm form) {
        return out -> JtepageGenerated.render((HtmlTemplateOutput) out, null, form);
    }

    private void put(Context ctx, Desk desk, StartForm form) {
        if (!form.problems().isEmpty() || !form.notice().isEmpty()) {
            ctx.status(HttpStatus.CONFLICT);
        }
        desk.put(ctx, this, content(form));
    }

    private void demo(Context ctx, Desk desk) throws IOException {
        List<String> there = DemoFiles.into(desk.watch().folder());
        if (!there.isEmpty()) {
            put(
                    ctx,
                    desk,
                    new StartForm(
                            folder(desk),
                            Map.of(),
                            List.of(),
                            "The folder holds " + String.join(", ", there) + " already; nothing was written."));
            return;
        }
        desk.watch().look();
        desk.say("The frost cart is in the folder. Change what you like: it is invented.");
        ctx.redirect("/tour", HttpStatus.SEE_OTHER);
    }

    private void begin(Context ctx, Desk desk) {
        Map<String, String> said = new LinkedHashMap<>();
        new StartForm("", Map.of(), List.of(), "")
                .fields()
                .forEach(f -> said.put(
                        f.key(),
                        Optional.ofNullable(ctx.formParam(f.key())).orElse("").strip()));
        said.put("feeds", Optional.ofNullable(ctx.formParam("feeds")).orElse("battery"));
        NewMachine machine = new NewMachine(said);
        if (machine.axes().isEmpty()) {
            put(ctx, desk, new StartForm(folder(desk), said, List.of(), "Name one axis at least."));
            return;
        }
        MachineText none = MachineText.read(desk.watch().folder(), MACHINE)
                .orElseThrow(() -> new NotFoundResponse("machine.yaml cannot be read as text."));
        if (none.exists()) {
            put(
                    ctx,
                    desk,
                    new StartForm(
                            folder(desk), said, List.of(), "There is a machine.yaml already; nothing was written."));
            return;
        }
        MachineText.Outcome outcome = desk.changes().write(none, machine.text(), "the new machine.yaml");
        if (outcome instanceof MachineText.Written) {
            desk.say(
                    "machine.yaml is written. What fails or is not shown yet stands first; everything declared below it"
                            + " can be changed.");
            ctx.redirect("/", HttpStatus.SEE_OTHER);
            return;
        }
        List<Problem> problems = outcome instanceof MachineText.NotAccepted refused ? refused.problems() : List.of();
        String notice = problems.isEmpty() ? "Somebody wrote machine.yaml meanwhile; nothing was written." : "";
        put(ctx, desk, new StartForm(folder(desk), said, problems, notice));
    }
}
