package servowright.app.page;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Path;

/** The page as the launcher starts it, in a process of its own. */
final class ServedByLauncher implements AutoCloseable {
    private static final Path LAUNCHER = Path.of(System.getProperty("servowright.root", ".."), "servowright");

    private final Process process;
    private final String address;

    private ServedByLauncher(Process process, String address) {
        this.process = process;
        this.address = address;
    }

    static ServedByLauncher of(Path folder) throws IOException {
        Process process = new ProcessBuilder(LAUNCHER.toString(), "page", folder.toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        BufferedReader said = process.inputReader();
        String address = said.readLine();
        if (address == null) {
            throw new IOException("the launcher printed no address");
        }
        return new ServedByLauncher(process, address);
    }

    String address() {
        return address;
    }

    String origin() {
        return address.substring(0, address.indexOf("/?"));
    }

    @Override
    public void close() {
        process.destroy();
    }
}
