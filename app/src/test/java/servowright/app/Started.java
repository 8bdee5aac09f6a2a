package servowright.app;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * The program as a process of its own, after it ended.
 *
 * @param code its exit code
 * @param out  what it wrote to its output
 * @param err  what it wrote to its error output
 */
record Started(int code, String out, String err) {
    /** Runs the program in the heap that recordings of any size must get by with. */
    static Started with(Path scratch, String... words) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home", ""), "bin", "java").toString(),
                "-Xmx256m",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-Dstderr.encoding=UTF-8",
                "-Dfile.encoding=UTF-8",
                "-cp",
                System.getProperty("java.class.path", ""),
                Main.class.getName()));
        command.addAll(List.of(words));
        Path out = scratch.resolve("out.txt");
        Path err = scratch.resolve("err.txt");
        ProcessBuilder builder =
                new ProcessBuilder(command).redirectOutput(out.toFile()).redirectError(err.toFile());
        builder.environment().put("COLUMNS", "300");
        Process process = builder.start();
        if (!process.waitFor(2, TimeUnit.MINUTES)) {
            process.destroyForcibly();
            throw new IllegalStateException("did not end within 2 minutes");
        }
        return new Started(process.exitValue(), text(out), text(err));
    }

    private static String text(Path file) throws IOException {
        return Files.readString(file, StandardCharsets.UTF_8);
    }

    /** The lines of its error output, blanks at both ends taken off. */
    List<String> complaints() {
        return err.lines().map(String::strip).filter(l -> !l.isEmpty()).toList();
    }
}
