package servowright.app.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.function.Function;
import servowright.app.view.View;
import servowright.engine.machine.Machine;

/** Reads and assesses the folder that a verb was asked about. */
final class Folder {
    private Folder() {}

    /** Shows the view, or says why there is none. */
    static ExitCode view(MachineSource source, String folder, Screen screen, Function<View, ExitCode> show) {
        return read(source, folder, screen, a -> show.apply(View.present(a.assessment(), a.notes())));
    }

    /** Does something with the machine alone, or says why there is none. */
    static ExitCode machine(MachineSource source, String folder, Screen screen, Function<Machine, ExitCode> use) {
        return read(source, folder, screen, a -> use.apply(a.assessment().machine()));
    }

    private static ExitCode read(
            MachineSource source, String folder, Screen screen, Function<MachineSource.Read.Assessed, ExitCode> use) {
        Path path;
        try {
            path = Path.of(folder);
        } catch (InvalidPathException e) {
            return ProblemText.show("\"" + Wrap.safe(folder) + "\" cannot be the name of a folder.", screen);
        }
        MachineSource.Read read = source.read(path);
        return read instanceof MachineSource.Read.Assessed assessed
                ? use.apply(assessed)
                : ProblemText.show(((MachineSource.Read.Refused) read).problems(), screen);
    }
}
