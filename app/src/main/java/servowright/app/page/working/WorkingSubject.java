package servowright.app.page.working;

import generated.servowright.working.JtepageGenerated;
import gg.jte.html.HtmlTemplateOutput;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.Optional;
import servowright.app.page.Desk;
import servowright.app.page.Subject;
import servowright.app.view.View;

/** The working of one figure: a page of its own, which scripts lay beside the number. */
public final class WorkingSubject implements Subject {
    @Override
    public String path() {
        return "/working";
    }

    @Override
    public String title() {
        return "Working";
    }

    @Override
    public void routes(RoutesConfig routes, Desk desk) {
        routes.get(
                path(),
                ctx -> desk.show(ctx, this, asked -> {
                    Worked worked = find(asked.view(), ctx)
                            .orElseThrow(() ->
                                    new NotFoundResponse("There is no such figure now; the files may have changed."));
                    Links links = Links.of(asked.view(), worked.lines());
                    return out -> JtepageGenerated.render((HtmlTemplateOutput) out, null, worked, links);
                }));
    }

    private static Optional<Worked> find(View view, Context ctx) {
        String finding = ctx.queryParam("finding");
        String motor = ctx.queryParam("motor");
        String test = ctx.queryParam("test");
        if (finding != null) {
            return Worked.finding(view, finding);
        }
        if (motor != null) {
            String number = Optional.ofNullable(ctx.queryParam("number")).orElse("");
            return number.matches("\\d{1,3}")
                    ? Worked.parameter(view, motor, given(ctx, "parameter"), Integer.parseInt(number))
                    : Optional.empty();
        }
        return test == null ? Optional.empty() : Worked.test(view, test, given(ctx, "value"));
    }

    private static String given(Context ctx, String name) {
        return Optional.ofNullable(ctx.queryParam(name)).orElse("");
    }
}
