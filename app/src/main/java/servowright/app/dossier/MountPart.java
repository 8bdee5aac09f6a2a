package servowright.app.dossier;

import java.util.List;
import servowright.app.view.DrillSvg;
import servowright.app.view.DrillView;
import servowright.app.view.Markup;
import servowright.app.view.MountSvg;
import servowright.app.view.MountView;

/** Every magnet before its sensor, drawn to scale. */
final class MountPart {
    private MountPart() {}

    static void write(List<MountView> mounts, List<DrillView> drills, Markup page) {
        if (mounts.isEmpty() && drills.isEmpty()) {
            return;
        }
        page.line().open("section", "id", "mounts").leaf("h2", "Magnets and sensors, to scale");
        for (MountView mount : mounts) {
            page.line().open("div", "class", "part").leaf("h3", mount.axis());
            page.add(MountSvg.of(mount)).close();
        }
        for (DrillView drill : drills) {
            page.line().open("div", "class", "part").leaf("h3", drill.axis() + ", drill template 1:1");
            page.leaf("p", DrillSvg.CHECK);
            DrillSvg.tooLarge(drill).ifPresent(words -> page.leaf("p", words, "class", "caution"));
            page.add(DrillSvg.of(drill)).close();
        }
        page.close();
    }
}
