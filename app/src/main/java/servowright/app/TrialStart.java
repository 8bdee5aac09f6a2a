package servowright.app;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.net.CookieHandler;
import java.net.CookieManager;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import servowright.app.cli.PageDoor;
import servowright.app.cli.Screen;

/** Does once what people start most often, so that the launcher can note which classes that takes. Shows nothing. */
final class TrialStart {
    private static final String VERSION = "trial";
    private static final int WIDTH = 80;

    /** The dossier comes first: it alone is not shown before the assessment is there. */
    static final List<String> VIEWS =
            List.of("/dossier/dossier.html", "/own/page.js", "/findings", "/bench", "/mount", "/bus");

    private TrialStart() {}

    /** Starts on trial with the folder that is named first. */
    public static void main(String[] words) throws IOException {
        run(Path.of(words[0]));
        System.exit(0);
    }

    /** Assesses a folder, then serves it and asks for its first views; gives the views that were shown. */
    static List<String> run(Path folder) throws IOException {
        PrintStream nowhere = new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8);
        Main.program(VERSION).run(new Screen(nowhere, nowhere, WIDTH, false, false), "assess", folder.toString());
        CookieHandler before = CookieHandler.getDefault();
        CookieHandler.setDefault(new CookieManager());
        try (PageDoor.Served page = PageOpener.open(new MachineReader(VERSION), folder, 0, VERSION)) {
            URI address = URI.create(page.address());
            return Stream.concat(Stream.of(address), VIEWS.stream().map(address::resolve))
                    .filter(TrialStart::shown)
                    .map(URI::getPath)
                    .toList();
        } finally {
            CookieHandler.setDefault(before);
        }
    }

    private static boolean shown(URI address) {
        try (InputStream answer = address.toURL().openStream()) {
            return answer.readAllBytes().length > 0;
        } catch (IOException e) {
            return false; // its classes are not noted; the program works the same
        }
    }
}
