package servowright.app;

import java.util.Optional;
import servowright.app.cli.Console;
import servowright.app.cli.ExitCode;
import servowright.app.cli.Program;
import servowright.app.cli.Screen;
import servowright.app.dossier.Dossier;

/** Starts the program and joins its parts. */
public final class Main {
    private Main() {}

    public static void main(String[] words) {
        Screen screen = Console.screen(System.getenv());
        ExitCode code = program(version()).run(screen, words);
        screen.out().flush();
        screen.err().flush();
        System.exit(code.number());
    }

    static Program program(String version) {
        MachineReader reader = new MachineReader(version);
        return Program.of(
                reader, Dossier::html, (folder, port) -> PageOpener.open(reader, folder, port, version), version);
    }

    private static String version() {
        return Optional.ofNullable(Main.class.getPackage().getImplementationVersion())
                .orElse("unpacked");
    }
}
