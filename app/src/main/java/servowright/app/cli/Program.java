package servowright.app.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import servowright.app.view.View;

/** The command line as a whole: finds the verb, runs it, and answers with an exit code whatever happens. */
public final class Program {
    private final Map<String, Verb> verbs = new LinkedHashMap<>();
    private final String version;

    private Program(String version, List<Verb> all) {
        this.version = version;
        all.forEach(v -> verbs.put(v.name(), v));
        verbs.put("completion", new CompletionVerb(this::commandLine));
    }

    /**
     * Every verb.
     *
     * @param source  reads and assesses a folder
     * @param dossier writes a view as HTML
     * @param page    serves a folder to the browser
     */
    public static Program of(MachineSource source, Function<View, String> dossier, PageDoor page, String version) {
        return new Program(
                version,
                List.of(
                        new AssessVerb(source),
                        new BenchVerb(source),
                        new PlanVerb(source),
                        new ExplainVerb(source),
                        new DossierVerb(source, dossier),
                        new PageVerb(page),
                        new BusVerb(source, version),
                        new TrafficVerb(source),
                        new SheetVerb(version),
                        new CasesVerb()));
    }

    /** Does what was typed. */
    public ExitCode run(Screen wide, String... typed) {
        Screen screen = List.of(typed).contains("--plain") ? wide.plain() : wide;
        try {
            return parsed(screen, typed);
        } catch (ParameterException e) {
            return ProblemText.show(Refusal.of(e, List.copyOf(verbs.keySet())), screen);
        } catch (OutOfMemoryError e) {
            return tooLarge(screen);
        } catch (RuntimeException | StackOverflowError e) {
            return broken(e, screen);
        }
    }

    private ExitCode parsed(Screen screen, String... typed) {
        CommandLine line = commandLine(screen, needed(typed));
        ParseResult asked = line.parseArgs(typed);
        if (asked.hasSubcommand()) {
            ParseResult verb = asked.subcommand();
            if (verb.isUsageHelpRequested()) {
                verb.commandSpec().commandLine().usage(screen.out());
                return ExitCode.FINE;
            }
            Verb chosen = verbs.get(verb.commandSpec().name());
            return chosen == null ? ExitCode.BROKEN : chosen.run(verb, screen);
        }
        if (Spec.has(asked, "--version")) {
            screen.line("servowright " + version);
            return ExitCode.FINE;
        }
        line.usage(screen.out());
        return asked.isUsageHelpRequested() ? ExitCode.FINE : ExitCode.REFUSED;
    }

    /** The verb that was typed, if one was: a start need not wait for the options of the others. */
    private Map<String, Verb> needed(String... typed) {
        for (String word : typed) {
            Verb verb = verbs.get(word);
            if (verb != null) {
                return Map.of(word, verb);
            }
            if (!word.equals("--plain")) {
                break;
            }
        }
        return verbs;
    }

    /** All verbs as picocli sees them. */
    CommandLine commandLine(Screen screen) {
        return commandLine(screen, verbs);
    }

    private static CommandLine commandLine(Screen screen, Map<String, Verb> some) {
        CommandSpec top = Spec.verb(
                        "servowright",
                        "From a box of parts to a machine whose axes are proven and documented.",
                        "servowright assess examples/frost-cart",
                        "servowright assess --help")
                .addOption(Spec.flag("--version", "Show the version."));
        some.forEach((name, verb) -> top.addSubcommand(name, Spec.line(plain(verb.spec()))));
        CommandLine line = Spec.line(plain(top));
        line.setExpandAtFiles(false);
        line.setUsageHelpWidth(Math.max(55, screen.width()));
        line.setColorScheme(CommandLine.Help.defaultColorScheme(screen.colours() ? Ansi.ON : Ansi.OFF));
        return line;
    }

    private static CommandSpec plain(CommandSpec spec) {
        return spec.addOption(OptionSpec.builder("--plain")
                .arity("0")
                .type(boolean.class)
                .description("No colours.")
                .build());
    }

    private static ExitCode broken(Throwable fault, Screen screen) {
        screen.err().println("servowright stopped: " + what(fault));
        ProblemText.show(
                "This is a fault of the program, not of your files. Please report it with the command you typed;"
                        + " SERVOWRIGHT_TRACE=1 shows where it happened.",
                screen);
        if (screen.trace()) {
            fault.printStackTrace(screen.err());
        }
        return ExitCode.BROKEN;
    }

    /** Recordings alone can be that large: each is held within bounds, but not all of them together. */
    private static ExitCode tooLarge(Screen screen) {
        long megabytes = Runtime.getRuntime().maxMemory() / 1_000_000;
        return ProblemText.show(
                "The files need more than the " + megabytes
                        + " MB of memory there are. Declare every: 10 for the longest"
                        + " recordings, or give more with SERVOWRIGHT_JAVA_OPTIONS=-Xmx2g.",
                screen);
    }

    private static String what(Throwable fault) {
        String message = fault.getMessage();
        String name = fault.getClass().getSimpleName();
        return Wrap.safe(message == null || message.isBlank() ? name : name + ", " + message);
    }
}
