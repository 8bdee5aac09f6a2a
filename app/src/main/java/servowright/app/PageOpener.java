package servowright.app;

import java.nio.file.Path;
import servowright.app.cli.MachineSource;
import servowright.app.cli.PageDoor;
import servowright.app.dossier.Dossier;
import servowright.app.page.Page;
import servowright.app.page.Sight;
import servowright.app.view.View;

/** Joins the page to the rest; a class of its own, so that nothing of the page is loaded before it is asked for. */
final class PageOpener {
    private PageOpener() {}

    static PageDoor.Served open(MachineSource source, Path folder, int port, String version) {
        Page page = Page.serve(folder, port, dir -> sight(source.read(dir)), Dossier::html, version);
        return new PageDoor.Served() {
            @Override
            public String address() {
                return page.address();
            }

            @Override
            public void close() {
                page.close();
            }
        };
    }

    private static Sight sight(MachineSource.Read read) {
        return read instanceof MachineSource.Read.Assessed assessed
                ? new Sight.Shown(View.present(assessed.assessment(), assessed.notes()))
                : new Sight.Refused(((MachineSource.Read.Refused) read).problems());
    }
}
