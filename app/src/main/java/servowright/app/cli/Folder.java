package servowright.app.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.function.Function;
import servowright.app.view.View;

/** Reads and assesses the folder that a verb was asked about. */
final class Folder {
    private Folder() {}

    /** Shows the view, or says why there is none. */
    static ExitCode view(MachineSource source, String folder, Screen screen, Function<View, ExitCode> show) {
        Path path;
        try {
            path = Path.of(folder);
        } catch (InvalidPathException e) {
            return ProblemText.show("\"" + Wrap.safe(folder) + "\" cannot be the name of a folder.", screen);
        }
        MachineSource.Read read = source.read(path);
        return read instanceof MachineSource.Read.Assessed assessed
                ? show.apply(View.present(assessed.assessment(), assessed.notes()))
                : ProblemText.show(((MachineSource.Read.Refused) read).problems(), screen);
    }
}
