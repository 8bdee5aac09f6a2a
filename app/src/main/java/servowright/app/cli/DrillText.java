package servowright.app.cli;

import java.util.List;
import java.util.Optional;
import servowright.app.view.DrillSvg;
import servowright.app.view.DrillView;
import servowright.app.view.View;

/** Writes the drill template of an axis as a drawing of its own. */
final class DrillText {
    private DrillText() {}

    /** The drawing; what to watch for when it is printed is said beside it, not in it. */
    static ExitCode show(View view, String axis, Screen screen) {
        Optional<DrillView> found =
                view.drills().stream().filter(d -> d.axis().equals(axis)).findFirst();
        if (found.isEmpty()) {
            List<String> known = view.drills().stream().map(DrillView::axis).toList();
            String rest = known.isEmpty()
                    ? "State holes: {count: 4, circle: 16 mm, diameter: 2.2 mm} with the mount of an axis."
                    : "There is one of " + String.join(", ", known) + ".";
            return ProblemText.show("There is no drill template of \"" + Wrap.safe(axis) + "\". " + rest, screen);
        }
        screen.out().println(DrillSvg.of(found.get()).end());
        DrillSvg.tooLarge(found.get()).ifPresent(screen.err()::println);
        screen.err().println(DrillSvg.CHECK);
        return ExitCode.FINE;
    }
}
