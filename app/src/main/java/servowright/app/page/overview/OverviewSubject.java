package servowright.app.page.overview;

import generated.servowright.overview.JtepageGenerated;
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
        desk.page(routes, this, JtepageGenerated::render);
    }
}
