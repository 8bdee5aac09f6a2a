package servowright.app.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;
import servowright.app.input.capture.CaptureReader;
import servowright.app.input.capture.CaptureResult;
import servowright.app.input.link.LinkResult;
import servowright.app.input.link.LinkText;
import servowright.app.view.CaptureView;
import servowright.app.view.LinkView;
import servowright.engine.capture.BitTimes;
import servowright.engine.capture.Traffic;
import servowright.engine.known.Known;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;
import servowright.engine.machine.BusFigure;
import servowright.engine.machine.Machine;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.QuantityText;
import servowright.engine.quantity.Stated;

/** {@code bus}: what captures of bus traffic show, and what a computer tells of its CAN interfaces. */
final class BusVerb implements Verb {
    private static final String RATE = "--rate";
    private static final String DATA_RATE = "--data-rate";

    private static final double LEAST_RATE = 1e3;
    private static final double MOST_RATE = 20e6;

    private static final String PLAN = "--plan";

    private final MachineSource source;
    private final String version;

    BusVerb(MachineSource source, String version) {
        this.source = source;
        this.version = version;
    }

    /** What is asked of every file, and what became of them. */
    private record Reading(
            Optional<BitTimes> times,
            Optional<Machine> machine,
            List<CaptureView> captures,
            List<LinkView> links,
            List<Problem> problems) {}

    @Override
    public String name() {
        return "bus";
    }

    @Override
    public CommandSpec spec() {
        return Spec.verb(
                        name(),
                        "Reads captures of CAN traffic (candump, pcap, pcapng, packed or not) and says what they show: load,"
                                + " periods, gaps, errors, and whether the stamps can be believed. Reads the pasted output of"
                                + " ip -details -statistics link show too: timing, state and counters of an interface.",
                        "servowright bus drive.log --rate \"1 Mbit/s\"",
                        "servowright bus link.txt --plan examples/frost-cart")
                .addPositional(PositionalParamSpec.builder()
                        .index("0..*")
                        .arity("1..*")
                        .type(List.class)
                        .auxiliaryTypes(String.class)
                        .paramLabel("FILE")
                        .description("A capture, or what was pasted.")
                        .build())
                .addOption(
                        Spec.option(new String[] {RATE}, "RATE", "Bit rate of the bus; without it there is no load."))
                .addOption(Spec.option(new String[] {DATA_RATE}, "RATE", "Bit rate of the data of FD frames."))
                .addOption(Spec.option(
                        new String[] {PLAN},
                        "DIR",
                        "Folder of the machine: its rates count where none is given, and interfaces are held against its"
                                + " controllers."))
                .addOption(Spec.flag("--json", "As JSON, described in docs/json.md."));
    }

    @Override
    public ExitCode run(ParseResult asked, Screen screen) {
        Optional<Double> rate;
        Optional<Double> dataRate;
        try {
            rate = rate(asked, RATE);
            dataRate = rate(asked, DATA_RATE);
        } catch (IllegalArgumentException e) {
            return ProblemText.show(Wrap.safe(String.valueOf(e.getMessage())), screen);
        }
        List<String> files = asked.matchedPositionals().stream()
                .flatMap(p -> p.originalStringValues().stream())
                .toList();
        if (files.isEmpty()) {
            return ProblemText.show("Name one capture or more: servowright bus FILE.", screen);
        }
        if (!asked.hasMatchedOption(PLAN)) {
            return read(files, rate, dataRate, Optional.empty(), asked, screen);
        }
        return Folder.machine(
                source,
                asked.matchedOptionValue(PLAN, ""),
                screen,
                m -> read(
                        files,
                        rate.or(() -> planned(m, BusFigure.RATE)),
                        dataRate.or(() -> planned(m, BusFigure.DATA_RATE)),
                        Optional.of(m),
                        asked,
                        screen));
    }

    private static Optional<Double> planned(Machine machine, BusFigure rate) {
        return machine.bus().figures().known(rate).map(Known::si);
    }

    private ExitCode read(
            List<String> files,
            Optional<Double> rate,
            Optional<Double> dataRate,
            Optional<Machine> machine,
            ParseResult asked,
            Screen screen) {
        Reading reading = new Reading(
                rate.map(r -> BitTimes.ofRates(r, dataRate.orElse(r))),
                machine,
                new ArrayList<>(),
                new ArrayList<>(),
                new ArrayList<>());
        files.forEach(file -> read(file, reading));
        if (Spec.has(asked, "--json")) {
            screen.out().print(CaptureView.json(reading.captures(), reading.links(), version));
        } else {
            reading.captures().forEach(v -> BusScreen.show(v, screen));
            reading.links().forEach(v -> LinkScreen.show(v, screen));
        }
        return reading.problems().isEmpty() ? ExitCode.FINE : ProblemText.show(reading.problems(), screen);
    }

    private static void read(String file, Reading reading) {
        try {
            Path path = Path.of(file);
            if (LinkText.in(path)) {
                link(path, file, reading);
            } else {
                capture(path, file, reading);
            }
        } catch (InvalidPathException e) {
            reading.problems()
                    .add(new Problem(
                            Problem.Kind.MISSING_FILE,
                            new Place(file, 0, ""),
                            file,
                            "this cannot be the name of a file",
                            "",
                            "Check the name."));
        }
    }

    private static void capture(Path path, String file, Reading reading) {
        Traffic traffic = reading.times().map(Traffic::at).orElseGet(Traffic::atUnknownRate);
        CaptureResult result = CaptureReader.read(path, file, traffic);
        if (result instanceof CaptureResult.Read read) {
            reading.captures().add(CaptureView.of(file, read.summary(), traffic.seen()));
        } else {
            reading.problems().addAll(((CaptureResult.Refused) result).problems());
        }
    }

    private static void link(Path path, String file, Reading reading) {
        LinkResult result = LinkText.read(path, file);
        if (result instanceof LinkResult.Read read) {
            read.links().forEach(l -> reading.links().add(LinkView.of(file, l, reading.machine())));
        } else {
            reading.problems().addAll(((LinkResult.Refused) result).problems());
        }
    }

    /** The rate that was typed, bit/s. */
    private static Optional<Double> rate(ParseResult asked, String option) {
        if (!asked.hasMatchedOption(option)) {
            return Optional.empty();
        }
        String typed = asked.matchedOptionValue(option, "");
        if (QuantityText.parse(typed) instanceof Stated stated
                && stated.dimension().equals(Dimension.DATA_RATE)
                && stated.nominal().si() >= LEAST_RATE
                && stated.nominal().si() <= MOST_RATE) {
            return Optional.of(stated.nominal().si());
        }
        throw new IllegalArgumentException(
                "\"" + typed + "\" is no bit rate. Write one like \"500 kbit/s\" or \"1 Mbit/s\".");
    }
}
