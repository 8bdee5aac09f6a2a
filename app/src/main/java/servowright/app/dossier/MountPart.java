package servowright.app.dossier;

import java.util.List;
import servowright.app.view.Markup;
import servowright.app.view.MountSvg;
import servowright.app.view.MountView;

/** Every magnet before its sensor, drawn to scale. */
final class MountPart {
    private MountPart() {}

    static void write(List<MountView> mounts, Markup page) {
        if (mounts.isEmpty()) {
            return;
        }
        page.line().open("section", "id", "mounts").leaf("h2", "Magnets and sensors, to scale");
        for (MountView mount : mounts) {
            page.line().open("div", "class", "part").leaf("h3", mount.axis());
            page.add(MountSvg.of(mount)).close();
        }
        page.close();
    }
}
