package servowright.app.page.bus;

import generated.servowright.bus.JtepageGenerated;
import io.javalin.config.RoutesConfig;
import servowright.app.page.Desk;
import servowright.app.page.Subject;

/** The machine at a glance: what fails first, then its parts. */
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
        desk.page(routes, this, JtepageGenerated::render);
    }
}
