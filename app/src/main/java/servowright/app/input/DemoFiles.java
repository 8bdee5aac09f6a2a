package servowright.app.input;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The invented machine that comes with the program, to be looked at and changed. */
public final class DemoFiles {
    private static final String ROOT = "/servowright/demo/";
    private static final Pattern RECORDING = Pattern.compile("recording: *(recordings/[\\w.-]+)");

    private DemoFiles() {}

    /** Puts it into a folder that holds none of its files yet; gives those that stand in the way, and writes nothing then. */
    public static List<String> into(Path folder) throws IOException {
        List<String> names = new ArrayList<>();
        Matcher recordings = RECORDING.matcher(new String(bytes(MachineFolder.BENCH), StandardCharsets.UTF_8));
        while (recordings.find()) {
            if (!names.contains(recordings.group(1))) {
                names.add(recordings.group(1));
            }
        }
        names.addAll(List.of(MachineFolder.BENCH, MachineFolder.MACHINE));
        List<String> there =
                names.stream().filter(n -> Files.exists(folder.resolve(n))).toList();
        if (there.isEmpty()) {
            Files.createDirectories(folder.resolve("recordings"));
            for (String name : names) {
                Files.write(folder.resolve(name), bytes(name), java.nio.file.StandardOpenOption.CREATE_NEW);
            }
        }
        return there;
    }

    private static byte[] bytes(String name) throws IOException {
        try (InputStream in = DemoFiles.class.getResourceAsStream(ROOT + name)) {
            if (in == null) {
                throw new FileNotFoundException(name);
            }
            return in.readAllBytes();
        }
    }
}
