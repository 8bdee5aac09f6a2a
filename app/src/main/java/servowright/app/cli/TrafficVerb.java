package servowright.app.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;
import servowright.app.input.WholeFile;
import servowright.engine.assessment.Rehearsal;
import servowright.engine.known.Outcome;
import servowright.engine.machine.Machine;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.QuantityText;
import servowright.engine.quantity.Spelling;
import servowright.engine.quantity.Stated;

/** {@code traffic}: plays the planned traffic of a machine's bus and writes it as a log. */
final class TrafficVerb implements Verb {
    private static final String LENGTH = "--for";
    private static final String FILE = "--write";
    private static final String SEED = "--seed";
    private static final String NOISE = "--bit-errors";
    private static final String WITHOUT = "--without";
    private static final double LONGEST_S = 3600;

    private final MachineSource source;

    TrafficVerb(MachineSource source) {
        this.source = source;
    }

    @Override
    public String name() {
        return "traffic";
    }

    @Override
    public CommandSpec spec() {
        return Spec.verb(
                        name(),
                        "Plays the planned traffic of a machine's bus and says how late each message came. With --write the"
                                + " log is kept, as a recording computer would have written it; it is simulated, not measured.",
                        "servowright traffic examples/frost-cart --for \"10 s\" --write bus.log",
                        "servowright traffic examples/frost-cart --without pan --write dead-pan.pcap")
                .addPositional(Spec.word(0, "DIR", "Folder with machine.yaml; without it the one you are in."))
                .addOption(Spec.option(new String[] {LENGTH}, "TIME", "How long, up to 1 h; without it 10 s."))
                .addOption(Spec.option(
                        new String[] {FILE},
                        "FILE",
                        "Where to: a new file; packets if it ends in .pcap, else log lines."))
                .addOption(Spec.option(
                        new String[] {SEED}, "N", "Another number gives other payloads and jitter; without it 1."))
                .addOption(Spec.option(
                        new String[] {NOISE}, "SHARE", "Share of bits that noise turns over, 1e-6 for example."))
                .addOption(Spec.option(new String[] {WITHOUT}, "NODE", "A node that loses power half way."));
    }

    @Override
    public ExitCode run(ParseResult asked, Screen screen) {
        Rehearsal.Wish wish;
        try {
            wish = new Rehearsal.Wish(
                    Math.round(1e9 * seconds(asked.matchedOptionValue(LENGTH, "10 s"))),
                    whole(asked.matchedOptionValue(SEED, "1")),
                    share(asked.matchedOptionValue(NOISE, "0")),
                    Optional.ofNullable(asked.matchedOptionValue(WITHOUT, (String) null)));
        } catch (IllegalArgumentException e) {
            return ProblemText.show(Wrap.safe(String.valueOf(e.getMessage())), screen);
        }
        Optional<String> file = Optional.ofNullable(asked.matchedOptionValue(FILE, (String) null));
        return Folder.machine(source, Spec.positional(asked, 0, ""), screen, m -> play(m, wish, file, screen));
    }

    private static ExitCode play(Machine machine, Rehearsal.Wish wish, Optional<String> file, Screen screen) {
        List<String> nodes = Rehearsal.nodes(machine);
        String without = wish.without().orElse("");
        if (!nodes.isEmpty() && !without.isEmpty() && !nodes.contains(without)) {
            String nearest = Spelling.nearest(without, nodes)
                    .map(n -> "Nearest: " + n + ".")
                    .orElse("Known: " + String.join(", ", nodes) + ".");
            return ProblemText.show("There is no node \"" + Wrap.safe(without) + "\". " + nearest, screen);
        }
        Rehearsal.Form form =
                file.filter(f -> f.endsWith(".pcap")).isPresent() ? Rehearsal.Form.PACKETS : Rehearsal.Form.LINES;
        String name = file.map(Wrap::safe).orElse("");
        try {
            Outcome<Rehearsal> played = nodes.isEmpty() || file.isEmpty()
                    ? Rehearsal.play(machine, wish, form, OutputStream.nullOutputStream())
                    : WholeFile.fresh(Path.of(file.get()), out -> Rehearsal.play(machine, wish, form, out));
            if (file.isPresent() && played.found().isEmpty()) {
                Files.deleteIfExists(Path.of(file.get())); // made just now, with nothing in it
            }
            return played.fold(
                    a -> TrafficScreen.show(a, wish, name, screen), m -> TrafficScreen.missing(m.needs(), screen));
        } catch (FileAlreadyExistsException e) {
            return ProblemText.show(name + " is there already and is not overwritten. Name a new file.", screen);
        } catch (IOException | UncheckedIOException | InvalidPathException e) {
            return ProblemText.show(name + " cannot be written. Is there such a folder, and room in it?", screen);
        }
    }

    private static double seconds(String typed) {
        if (QuantityText.parse(typed) instanceof Stated stated
                && stated.dimension().equals(Dimension.TIME)
                && stated.nominal().si() >= 1e-3
                && stated.nominal().si() <= LONGEST_S) {
            return stated.nominal().si();
        }
        throw new IllegalArgumentException("\"" + typed + "\" is no time from 1 ms to 1 h. Write one like \"10 s\".");
    }

    private static long whole(String typed) {
        if (typed.matches("[0-9]{1,18}")) {
            return Long.parseLong(typed);
        }
        throw new IllegalArgumentException("\"" + typed + "\" is no whole number. Write one like 7.");
    }

    private static double share(String typed) {
        try {
            double share = Double.parseDouble(typed);
            if (share >= 0 && share <= 0.01) {
                return share;
            }
        } catch (NumberFormatException e) {
            // said below
        }
        throw new IllegalArgumentException(
                "\"" + typed + "\" is no share of bits from 0 to 0.01. Write one like 1e-6.");
    }
}
