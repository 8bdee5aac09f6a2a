package servowright.app;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import servowright.app.cli.MachineSource;
import servowright.app.cli.PageDoor;

/** A copy of the demo machine, served as the program serves it. */
public final class OpenPage implements AutoCloseable {
    private static final Path DEMO = Path.of(System.getProperty("servowright.root", ".."), "examples", "frost-cart");

    private final Path folder;
    private final PageDoor.Served served;

    private OpenPage(Path folder) {
        this.folder = folder;
        this.served = PageOpener.open(new MachineReader("0.1.0"), folder, 0, "0.1.0");
    }

    /** The demo, copied into an empty folder. */
    public static OpenPage demo(Path folder) throws IOException {
        copyDemo(folder);
        return new OpenPage(folder);
    }

    /** The demo's files, put into an empty folder. */
    public static void copyDemo(Path folder) throws IOException {
        copy(DEMO, folder);
    }

    /** A folder as it is. */
    public static OpenPage of(Path folder) {
        return new OpenPage(folder);
    }

    private static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> all = Files.walk(from)) {
            all.forEach(p -> {
                try {
                    Path target = to.resolve(from.relativize(p).toString());
                    if (Files.isDirectory(p)) {
                        Files.createDirectories(target);
                    } else {
                        Files.copy(p, target);
                    }
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        }
    }

    /** The folder as the program reads it. */
    public MachineSource.Read read() {
        return new MachineReader("0.1.0").read(folder);
    }

    public Path folder() {
        return folder;
    }

    /** With the key of this run. */
    public String address() {
        return served.address();
    }

    /** Without path and key. */
    public String origin() {
        return address().substring(0, address().indexOf("/?"));
    }

    public String key() {
        return address().substring(address().indexOf("key=") + 4);
    }

    public int port() {
        return Integer.parseInt(origin().substring(origin().lastIndexOf(':') + 1));
    }

    @Override
    public void close() {
        served.close();
    }
}
