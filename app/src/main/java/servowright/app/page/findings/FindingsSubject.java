package servowright.app.page.findings;

import generated.servowright.findings.JtepageGenerated;
import gg.jte.html.HtmlTemplateOutput;
import io.javalin.config.RoutesConfig;
import servowright.app.page.Desk;
import servowright.app.page.Subject;

/** Every finding, worst first. */
public final class FindingsSubject implements Subject {
    @Override
    public String path() {
        return "/findings";
    }

    @Override
    public String title() {
        return "Findings";
    }

    @Override
    public void routes(RoutesConfig routes, Desk desk) {
        routes.get(
                path(),
                ctx -> desk.show(
                        ctx, this, asked -> out -> JtepageGenerated.render((HtmlTemplateOutput) out, null, asked)));
    }
}
