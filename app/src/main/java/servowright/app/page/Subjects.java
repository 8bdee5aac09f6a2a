package servowright.app.page;

import java.util.List;
import java.util.function.Function;
import servowright.app.page.axes.AxesSubject;
import servowright.app.page.bench.BenchSubject;
import servowright.app.page.bus.BusSubject;
import servowright.app.page.dossier.DossierSubject;
import servowright.app.page.files.FilesSubject;
import servowright.app.page.findings.FindingsSubject;
import servowright.app.page.mount.MountSubject;
import servowright.app.page.overview.OverviewSubject;
import servowright.app.page.sheets.SheetsSubject;
import servowright.app.page.start.StartSubject;
import servowright.app.page.working.WorkingSubject;
import servowright.app.view.View;

/** Every subject, in the order of the strip. */
final class Subjects {
    private Subjects() {}

    static List<Subject> shown(Function<View, String> dossier) {
        return List.of(
                new OverviewSubject(),
                new FindingsSubject(),
                new AxesSubject(),
                new BenchSubject(),
                new MountSubject(),
                new BusSubject(),
                new SheetsSubject(),
                new FilesSubject(),
                new DossierSubject(dossier));
    }

    /** What has addresses but no place in the strip. */
    static List<Subject> aside() {
        return List.of(new WorkingSubject(), new StartSubject());
    }
}
