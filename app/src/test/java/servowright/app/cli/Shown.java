package servowright.app.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import servowright.app.view.View;

/** What the terminal shows. */
public final class Shown {
    private static final int WIDE = 300;

    private Shown() {}

    /** Everything of the frost cart. */
    public static String everything() {
        StringBuilder all = new StringBuilder(Typed.type("assess", "--all").out());
        all.append(Typed.type("bench", "--working").out());
        for (String key : new String[] {"lift/speed-reach", "left wheel/torque-reserve", "tilt/heat"}) {
            all.append(Typed.type("explain", key).out());
        }
        return all.toString();
    }

    /** One finding of a machine that was read, with its working. */
    public static String explained(MachineSource.Read read, String key) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        PrintStream out = new PrintStream(bytes, true, StandardCharsets.UTF_8);
        PageDoor closed = (folder, port) -> {
            throw new IllegalStateException("no page was asked for");
        };
        Program.of(folder -> read, View::name, closed, "0.1.0")
                .run(new Screen(out, out, WIDE, false, false), "explain", key, "cart");
        return bytes.toString(StandardCharsets.UTF_8);
    }
}
