package servowright.app.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code page}: the machine in the browser, until it is stopped. */
final class PageVerb implements Verb {
    private static final int LAST_PORT = 65_535;

    private final PageDoor door;

    PageVerb(PageDoor door) {
        this.door = door;
    }

    @Override
    public String name() {
        return "page";
    }

    @Override
    public CommandSpec spec() {
        return Spec.verb(
                        name(),
                        "Shows the machine in the browser, to this computer alone and without any network, until you"
                                + " press Ctrl-C.",
                        "servowright page examples/frost-cart --open",
                        "servowright page --port 8123")
                .addPositional(Spec.word(0, "DIR", "Folder with machine.yaml; without it the one you are in."))
                .addOption(Spec.option(new String[] {"--port"}, "NUMBER", "Port to use; without it one that is free."))
                .addOption(Spec.flag("--open", "Open the browser too."));
    }

    @Override
    public ExitCode run(ParseResult asked, Screen screen) {
        String folder = Spec.positional(asked, 0, "");
        String port = asked.matchedOptionValue("--port", "0");
        if (!port.matches("\\d{1,5}") || Integer.parseInt(port) > LAST_PORT) {
            return ProblemText.show("\"" + Wrap.safe(port) + "\" is no port; 1024 to 65535 can be used.", screen);
        }
        Path path;
        try {
            path = Path.of(folder).toAbsolutePath().normalize();
        } catch (InvalidPathException e) {
            return ProblemText.show("\"" + Wrap.safe(folder) + "\" cannot be the name of a folder.", screen);
        }
        if (!Files.isDirectory(path)) {
            return ProblemText.show("There is no folder " + Wrap.safe(folder) + ".", screen);
        }
        try (PageDoor.Served page = door.serve(path, Integer.parseInt(port))) {
            screen.line(page.address());
            screen.out().flush();
            if (Spec.has(asked, "--open")) {
                open(page.address(), screen);
            }
            untilStopped();
        } catch (IllegalStateException e) {
            return ProblemText.show(
                    "The page cannot be served: " + e.getMessage() + ". Choose another --port.", screen);
        }
        return ExitCode.FINE;
    }

    private static void untilStopped() {
        try {
            new CountDownLatch(1).await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** The desktop knows the browser; where there is none the address stands on the screen. */
    private static void open(String address, Screen screen) {
        String system = System.getProperty("os.name", "").toLowerCase(java.util.Locale.ROOT);
        List<String> command = system.contains("mac")
                ? List.of("open", address)
                : system.contains("win")
                        ? List.of("rundll32", "url.dll,FileProtocolHandler", address)
                        : List.of("xdg-open", address);
        try {
            new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
        } catch (IOException e) {
            screen.err().println("No browser could be opened; open the address above.");
        }
    }
}
