package servowright.app.page.axes;

import generated.servowright.axes.JtepageGenerated;
import io.javalin.config.RoutesConfig;
import servowright.app.page.Desk;
import servowright.app.page.Subject;

/** Axes with motor, drive, sensor, load and duties: what is declared, what is known, what is judged. */
public final class AxesSubject implements Subject {
    @Override
    public String path() {
        return "/axes";
    }

    @Override
    public String title() {
        return "Axes";
    }

    @Override
    public void routes(RoutesConfig routes, Desk desk) {
        desk.page(routes, this, JtepageGenerated::render);
    }
}
