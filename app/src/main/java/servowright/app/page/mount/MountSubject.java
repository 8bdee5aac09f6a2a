package servowright.app.page.mount;

import generated.servowright.mount.JtedrillGenerated;
import generated.servowright.mount.JtepageGenerated;
import generated.servowright.mount.JtestackGenerated;
import gg.jte.html.HtmlTemplateOutput;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.ServiceUnavailableResponse;
import servowright.app.page.Asked;
import servowright.app.page.Desk;
import servowright.app.page.Sight;
import servowright.app.page.Subject;
import servowright.app.view.DrillSvg;
import servowright.app.view.DrillView;
import servowright.app.view.MountView;

/** How each magnet sits before its sensor: drawn to scale, judged, and moved by hand to see what follows. */
public final class MountSubject implements Subject {
    @Override
    public String path() {
        return "/mount";
    }

    @Override
    public String title() {
        return "Mount";
    }

    @Override
    public void routes(RoutesConfig routes, Desk desk) {
        desk.page(routes, this, JtepageGenerated::render);
        routes.get(
                "/mount/{axis}",
                ctx -> desk.show(ctx, this, asked -> {
                    Stack stack = stack(ctx, desk, asked);
                    return out -> JtestackGenerated.render((HtmlTemplateOutput) out, null, stack, asked);
                }));
        routes.get("/mount/{axis}/drill", ctx -> {
            DrillView drill = drill(ctx, desk);
            desk.put(ctx, this, out -> JtedrillGenerated.render((HtmlTemplateOutput) out, null, drill));
        });
        routes.get("/mount/{axis}/drill.svg", ctx -> {
            DrillView drill = drill(ctx, desk);
            if (ctx.queryParam("save") != null) {
                ctx.header("Content-Disposition", "attachment; filename=\"drill.svg\"");
            }
            ctx.contentType("image/svg+xml").result(DrillSvg.of(drill).end());
        });
    }

    private static DrillView drill(Context ctx, Desk desk) {
        return desk.sight()
                .filter(Sight.Shown.class::isInstance)
                .flatMap(s -> ((Sight.Shown) s)
                        .view().drills().stream()
                                .filter(d -> d.axis().equals(ctx.pathParam("axis")))
                                .findFirst())
                .orElseThrow(() -> new NotFoundResponse("That axis states no holes to drill."));
    }

    private static Stack stack(Context ctx, Desk desk, Asked asked) {
        MountView mount = asked.view().mounts().stream()
                .filter(m -> m.axis().equals(ctx.pathParam("axis")))
                .findFirst()
                .orElseThrow(() -> new NotFoundResponse("That axis states no magnet and gap."));
        return desk.timed(() -> Stack.of(asked.view(), mount, ctx.queryParamMap()))
                .orElseThrow(() -> new ServiceUnavailableResponse("The field took too long and was given up."));
    }
}
