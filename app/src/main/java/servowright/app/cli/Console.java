package servowright.app.cli;

import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** Finds out what the program writes to. */
public final class Console {
    private static final int USUAL_WIDTH = 80;
    private static final int LEAST_WIDTH = 30;
    private static final int MOST_WIDTH = 160;

    private Console() {}

    /** The screen that the program was started at. */
    public static Screen screen(Map<String, String> environment) {
        boolean terminal = interactive() && !"dumb".equals(environment.get("TERM"));
        return screen(environment, terminal, standard(FileDescriptor.out), standard(FileDescriptor.err));
    }

    /**
     * A screen.
     *
     * @param terminal whether somebody sits before it
     */
    static Screen screen(Map<String, String> environment, boolean terminal, PrintStream out, PrintStream err) {
        boolean colours = terminal && environment.getOrDefault("NO_COLOR", "").isEmpty();
        boolean trace = !environment.getOrDefault("SERVOWRIGHT_TRACE", "").isEmpty();
        return new Screen(out, err, width(environment, terminal), colours, trace);
    }

    /** From Java 22 on there is always a console, and it knows itself whether somebody sits before it. */
    @SuppressWarnings("SystemConsoleNull")
    private static boolean interactive() {
        java.io.Console console = System.console();
        if (console == null) {
            return false;
        }
        try {
            return Boolean.TRUE.equals(
                    java.io.Console.class.getMethod("isTerminal").invoke(console));
        } catch (NoSuchMethodException e) {
            return true;
        } catch (ReflectiveOperationException e) {
            return false;
        }
    }

    private static int width(Map<String, String> environment, boolean terminal) {
        String columns = environment.getOrDefault("COLUMNS", "");
        int width = number(columns);
        if (width == 0 && terminal) {
            width = ofTerminal();
        }
        return width == 0 ? USUAL_WIDTH : Math.max(LEAST_WIDTH, Math.min(MOST_WIDTH, width));
    }

    private static int number(String text) {
        return text.matches("[1-9]\\d{0,4}") ? Integer.parseInt(text) : 0;
    }

    /** Asks the terminal; 0 when it does not say. */
    private static int ofTerminal() {
        try {
            Process stty = new ProcessBuilder("stty", "size")
                    .redirectInput(ProcessBuilder.Redirect.INHERIT)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            String[] size = new String(stty.getInputStream().readAllBytes(), StandardCharsets.US_ASCII)
                    .strip()
                    .split(" ");
            return stty.waitFor(1, TimeUnit.SECONDS) && size.length == 2 ? number(size[1]) : 0;
        } catch (IOException e) {
            return 0;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return 0;
        }
    }

    /** UTF-8 whatever the locale says: a figure without its ± is another figure. */
    private static PrintStream standard(FileDescriptor where) {
        return new PrintStream(
                new BufferedOutputStream(new FileOutputStream(where), 1 << 14), false, StandardCharsets.UTF_8);
    }
}
