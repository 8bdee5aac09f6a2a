package servowright.app.page.overview;

import generated.servowright.overview.JtepageGenerated;
import gg.jte.html.HtmlTemplateOutput;
import io.javalin.config.RoutesConfig;
import servowright.app.page.Desk;
import servowright.app.page.Subject;

/** The machine at a glance: what fails first, then its parts. */
public final class OverviewSubject implements Subject {
    @Override
    public String path() {
        return "/";
    }

    @Override
    public String title() {
        return "Overview";
    }

    @Override
    public void routes(RoutesConfig routes, Desk desk) {
        routes.get(
                path(),
                ctx -> desk.show(
                        ctx, this, asked -> out -> JtepageGenerated.render((HtmlTemplateOutput) out, null, asked)));
    }
}
