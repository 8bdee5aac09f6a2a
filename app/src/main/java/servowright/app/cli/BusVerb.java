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
import servowright.app.view.CaptureView;
import servowright.engine.capture.BitTimes;
import servowright.engine.capture.Traffic;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.QuantityText;
import servowright.engine.quantity.Stated;

/** {@code bus}: what captures of bus traffic show, without a machine. */
final class BusVerb implements Verb {
    private static final String RATE = "--rate";
    private static final String DATA_RATE = "--data-rate";

    private static final double LEAST_RATE = 1e3;
    private static final double MOST_RATE = 20e6;

    private final String version;

    BusVerb(String version) {
        this.version = version;
    }

    @Override
    public String name() {
        return "bus";
    }

    @Override
    public CommandSpec spec() {
        return Spec.verb(
                        name(),
                        "Reads captures of CAN traffic (candump, pcap, pcapng, packed or not) and says what they show: load,"
                                + " periods, gaps, errors, and whether the stamps can be believed.",
                        "servowright bus drive.log --rate \"1 Mbit/s\"")
                .addPositional(PositionalParamSpec.builder()
                        .index("0..*")
                        .arity("1..*")
                        .type(List.class)
                        .auxiliaryTypes(String.class)
                        .paramLabel("FILE")
                        .description("A capture.")
                        .build())
                .addOption(
                        Spec.option(new String[] {RATE}, "RATE", "Bit rate of the bus; without it there is no load."))
                .addOption(Spec.option(new String[] {DATA_RATE}, "RATE", "Bit rate of the data of FD frames."))
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
        Optional<BitTimes> times = rate.map(r -> BitTimes.ofRates(r, dataRate.orElse(r)));
        List<CaptureView> views = new ArrayList<>();
        List<Problem> problems = new ArrayList<>();
        files.forEach(file -> read(file, times, views, problems));
        if (Spec.has(asked, "--json")) {
            screen.out().print(CaptureView.json(views, version));
        } else {
            views.forEach(v -> BusScreen.show(v, screen));
        }
        return problems.isEmpty() ? ExitCode.FINE : ProblemText.show(problems, screen);
    }

    private static void read(String file, Optional<BitTimes> times, List<CaptureView> views, List<Problem> problems) {
        Traffic traffic = times.map(Traffic::at).orElseGet(Traffic::atUnknownRate);
        try {
            CaptureResult result = CaptureReader.read(Path.of(file), file, traffic);
            if (result instanceof CaptureResult.Read read) {
                views.add(CaptureView.of(file, read.summary(), traffic.seen()));
            } else {
                problems.addAll(((CaptureResult.Refused) result).problems());
            }
        } catch (InvalidPathException e) {
            problems.add(new Problem(
                    Problem.Kind.MISSING_FILE,
                    new Place(file, 0, ""),
                    file,
                    "this cannot be the name of a file",
                    "",
                    "Check the name."));
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
