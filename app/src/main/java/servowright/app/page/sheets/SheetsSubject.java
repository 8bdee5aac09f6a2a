package servowright.app.page.sheets;

import generated.servowright.sheets.JtelistGenerated;
import generated.servowright.sheets.JtesheetGenerated;
import gg.jte.html.HtmlTemplateOutput;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.ServiceUnavailableResponse;
import java.util.List;
import servowright.app.page.Desk;
import servowright.app.page.Limits;
import servowright.app.page.Subject;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Worksheet;
import servowright.engine.worksheet.Worksheets;

/** Every worksheet as a form made from its declaration; what is typed stands in the address, so it can be handed on. */
public final class SheetsSubject implements Subject {
    @Override
    public String path() {
        return "/sheets";
    }

    @Override
    public String title() {
        return "Worksheets";
    }

    @Override
    public void routes(RoutesConfig routes, Desk desk) {
        List<Declaration> all =
                Worksheets.all().stream().map(Worksheet::declaration).toList();
        routes.get(
                path(),
                ctx -> desk.put(ctx, this, out -> JtelistGenerated.render((HtmlTemplateOutput) out, null, all)));
        routes.get("/sheets/{name}", ctx -> sheet(ctx, desk));
    }

    private void sheet(Context ctx, Desk desk) {
        String name = ctx.pathParam("name");
        Worksheet worksheet = Worksheets.named(name)
                .orElseThrow(() -> new NotFoundResponse("There is no worksheet of that name. /sheets lists all."));
        Form form = desk.timed(Form.filled(worksheet, ctx.queryParamMap()))
                .orElseThrow(() -> new ServiceUnavailableResponse(
                        "The worksheet took longer than " + Limits.CALCULATION.toSeconds() + " s and was given up."));
        desk.put(ctx, this, out -> JtesheetGenerated.render((HtmlTemplateOutput) out, null, form));
    }
}
