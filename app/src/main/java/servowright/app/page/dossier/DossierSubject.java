package servowright.app.page.dossier;

import generated.servowright.dossier.JtepageGenerated;
import io.javalin.config.RoutesConfig;
import io.javalin.http.ConflictResponse;
import io.javalin.http.Context;
import java.util.function.Function;
import servowright.app.page.Desk;
import servowright.app.page.Sight;
import servowright.app.page.Subject;
import servowright.app.view.View;

/** The written record, made from what is shown now: to read here or to take along. */
public final class DossierSubject implements Subject {
    private final Function<View, String> dossier;

    /**
     * @param dossier writes a view as one HTML file
     */
    public DossierSubject(Function<View, String> dossier) {
        this.dossier = dossier;
    }

    @Override
    public String path() {
        return "/dossier";
    }

    @Override
    public String title() {
        return "Dossier";
    }

    @Override
    public void routes(RoutesConfig routes, Desk desk) {
        desk.page(routes, this, (out, interceptor, asked) -> JtepageGenerated.render(out, interceptor, asked.view()));
        routes.get("/dossier/dossier.html", ctx -> send(ctx, desk));
    }

    /** The record brings its own style sheet and policy; it has no script. */
    private void send(Context ctx, Desk desk) {
        View view = desk.sight()
                .filter(Sight.Shown.class::isInstance)
                .map(s -> ((Sight.Shown) s).view())
                .orElseThrow(() -> new ConflictResponse("There is no assessment to record now."));
        ctx.header("Content-Security-Policy", "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'");
        if (ctx.queryParam("save") != null) {
            ctx.header("Content-Disposition", "attachment; filename=\"dossier.html\"");
        }
        ctx.html(dossier.apply(view));
    }
}
