package servowright.app.cli;

import java.util.List;
import java.util.Optional;
import servowright.app.view.CorrectionView;
import servowright.app.view.View;

/** Writes the correction of an angle sensor for a drive to read. */
final class CorrectionText {
    private static final int FEWEST = 4;
    private static final int MOST = 65_536;

    private CorrectionText() {}

    /** The harmonics, or with a number of entries a table; what the table leaves is said beside it, not in it. */
    static ExitCode show(View view, String axis, String entries, Screen screen) {
        Optional<CorrectionView> found =
                view.corrections().stream().filter(c -> c.axis().equals(axis)).findFirst();
        if (found.isEmpty()) {
            List<String> known =
                    view.corrections().stream().map(CorrectionView::axis).toList();
            String rest = known.isEmpty()
                    ? "A slow drag both ways, a free run or a reference run gives one."
                    : "There is one of " + String.join(", ", known) + ".";
            return ProblemText.show(
                    "There is no correction of the angle of \"" + Wrap.safe(axis) + "\". " + rest, screen);
        }
        if (entries.isEmpty()) {
            screen.out().print(found.get().harmonicsCsv());
            return ExitCode.FINE;
        }
        if (!entries.matches("[0-9]{1,5}") || Integer.parseInt(entries) < FEWEST || Integer.parseInt(entries) > MOST) {
            return ProblemText.show(
                    "\"" + Wrap.safe(entries) + "\" cannot be the length of a table: " + FEWEST + " to " + MOST
                            + " entries.",
                    screen);
        }
        int length = Integer.parseInt(entries);
        screen.out().print(found.get().tableCsv(length));
        screen.err().println(found.get().residueText(length));
        return ExitCode.FINE;
    }
}
