package servowright.app.page.findings;

import generated.servowright.findings.JtepageGenerated;
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
        desk.page(routes, this, JtepageGenerated::render);
    }
}
