package servowright.app.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import servowright.app.FrostCart;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;

/** What a typed command printed and answered. */
record Typed(ExitCode code, String out, String err) {
    /** A folder of this name is refused, one of that name breaks the program; any other holds the frost cart. */
    private static final MachineSource SOURCE = folder -> switch (folder.toString()) {
        case "refused" ->
            new MachineSource.Read.Refused(List.of(
                    new Problem(
                            Problem.Kind.OUT_OF_RANGE,
                            new Place("machine.yaml", 41, "axes / tilt / mount / gap"),
                            "1.4 m",
                            "1.4 m is far outside 0.1 mm to 10 mm",
                            "0.1 mm to 10 mm",
                            "Did you mean 1.4 mm?"),
                    new Problem(
                            Problem.Kind.UNKNOWN_KEY,
                            new Place("machine.yaml", 33, "motors / hub / resistence"),
                            "resistence",
                            "this key is not known",
                            "",
                            "Nearest: resistance.")));
        case "broken" -> throw new IllegalStateException("a \u001b[31mfault");
        default ->
            new MachineSource.Read.Assessed(
                    FrostCart.assessment(), List.of("There is no bench.yaml: nothing was measured yet."));
    };

    static Typed type(String... words) {
        return at(Map.of(), false, words);
    }

    static Typed wide(int columns, String... words) {
        return at(Map.of("COLUMNS", String.valueOf(columns)), false, words);
    }

    static Typed at(Map<String, String> environment, boolean terminal, String... words) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Map<String, String> sized = new HashMap<>(Map.of("COLUMNS", "80"));
        sized.putAll(environment);
        Screen screen = Console.screen(
                sized,
                terminal,
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
        ExitCode code = Program.of(
                        SOURCE,
                        view -> "<html>" + view.name() + "</html>",
                        (folder, port) -> {
                            throw new IllegalStateException("port " + port + " cannot be used");
                        },
                        "0.1.0")
                .run(screen, words);
        return new Typed(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }
}
