package servowright.app.page.bus;

import generated.servowright.bus.JtehelperGenerated;
import generated.servowright.bus.JtepageGenerated;
import gg.jte.html.HtmlTemplateOutput;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.ServiceUnavailableResponse;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.app.page.Desk;
import servowright.app.page.Sight;
import servowright.app.page.Subject;
import servowright.app.page.sheets.Form;
import servowright.app.view.CaptureView;
import servowright.app.view.Plot;
import servowright.app.view.PlotJson;
import servowright.app.view.PlotSvg;
import servowright.app.view.View;
import servowright.engine.worksheet.Worksheets;

/** The network between the drives: its plan, captures held against it, and what helps to set it up. */
public final class BusSubject implements Subject {
    @Override
    public String path() {
        return "/bus";
    }

    @Override
    public String title() {
        return "Bus";
    }

    @Override
    public void routes(RoutesConfig routes, Desk desk) {
        routes.get(
                path(),
                ctx -> desk.show(ctx, this, asked -> {
                    List<Form> helpers = Prefilled.of(asked.view()).entrySet().stream()
                            .map(e -> form(desk, e.getKey(), e.getValue()))
                            .toList();
                    return out -> JtepageGenerated.render((HtmlTemplateOutput) out, null, asked, helpers);
                }));
        routes.get("/bus/plots.json", ctx -> ctx.contentType("application/json").result(PlotJson.of(plots(ctx, desk))));
        routes.get("/bus/plot.svg", ctx -> {
            List<Plot> plots = plots(ctx, desk);
            String number = Optional.ofNullable(ctx.queryParam("number")).orElse("0");
            int i = number.matches("\\d{1,3}") ? Integer.parseInt(number) : 0;
            if (i >= plots.size()) {
                throw new NotFoundResponse("There is no such plot.");
            }
            ctx.header("Content-Disposition", "attachment; filename=\"plot.svg\"");
            ctx.contentType("image/svg+xml").result(PlotSvg.of(plots.get(i)).end());
        });
        routes.get("/bus/{helper}", ctx -> {
            String name = ctx.pathParam("helper");
            if (!Prefilled.NAMES.contains(name)) {
                throw new NotFoundResponse("There is no such view of the bus.");
            }
            Form form = form(desk, name, ctx.queryParamMap());
            desk.put(ctx, this, out -> JtehelperGenerated.render((HtmlTemplateOutput) out, null, form));
        });
    }

    private static Form form(Desk desk, String sheet, Map<String, List<String>> typed) {
        return desk.timed(Form.filled(Worksheets.named(sheet).orElseThrow(), typed))
                .orElseThrow(() -> new ServiceUnavailableResponse("The worksheet took too long and was given up."));
    }

    /** Plots of one capture. */
    private static List<Plot> plots(Context ctx, Desk desk) {
        String file = ctx.queryParam("capture");
        View view = desk.sight()
                .filter(Sight.Shown.class::isInstance)
                .map(s -> ((Sight.Shown) s).view())
                .orElseThrow(() -> new NotFoundResponse("There is no assessment now."));
        return view.captures().stream()
                .filter(c -> c.file().equals(file))
                .findFirst()
                .map(CaptureView::plots)
                .orElseThrow(() -> new NotFoundResponse("There is no such capture now."));
    }
}
