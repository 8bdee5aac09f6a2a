package servowright.app.input;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.app.input.capture.CaptureReader;
import servowright.app.input.capture.CaptureResult;
import servowright.app.input.tree.Problems;
import servowright.engine.bench.CapturedBus;
import servowright.engine.capture.BitTimes;
import servowright.engine.capture.BusTraffic;
import servowright.engine.capture.CaptureSummary;
import servowright.engine.capture.Traffic;
import servowright.engine.known.Known;
import servowright.engine.known.Problem;
import servowright.engine.machine.Bus;
import servowright.engine.machine.BusCapture;
import servowright.engine.machine.BusFigure;

/** Reads the captures of the bus that bench.yaml names. */
final class Captures {
    private final FolderFiles files;
    private final Problems problems;
    private final Map<String, String> sha256 = new LinkedHashMap<>();

    Captures(FolderFiles files, Problems problems) {
        this.files = files;
        this.problems = problems;
    }

    /** What each of them shows of the machine's bus. */
    List<CapturedBus> read(List<BusCapture> asked, Bus bus) {
        List<CapturedBus> all = new ArrayList<>();
        for (BusCapture capture : asked) {
            files.find(capture.recording(), capture.place())
                    .flatMap(path -> read(capture, path, bus))
                    .ifPresent(all::add);
        }
        return all;
    }

    /** The hash of each file, by its path. */
    Map<String, String> sha256() {
        return sha256;
    }

    private Optional<CapturedBus> read(BusCapture capture, Path path, Bus bus) {
        Traffic traffic = times(bus).map(Traffic::at).orElseGet(Traffic::atUnknownRate);
        Signals signals = Signals.of(capture, problems);
        CaptureResult result = CaptureReader.read(path, capture.recording(), signals.beside(traffic));
        if (result instanceof CaptureResult.Refused refused) {
            problems.addAll(refused.problems());
            return Optional.empty();
        }
        hash(path).ifPresent(h -> sha256.put(capture.recording(), h));
        CaptureSummary summary = ((CaptureResult.Read) result).summary();
        Optional<BusTraffic> one = chosen(capture, summary, traffic.seen());
        if (one.isEmpty()) {
            problems.add(
                    Problem.Kind.UNKNOWN_NAME,
                    capture.place(),
                    capture.networkInterface().orElse(""),
                    "the capture has no bus "
                            + Problems.quoted(capture.networkInterface().orElse("")),
                    String.join(", ", summary.buses()),
                    "Known: " + String.join(", ", summary.buses()) + ".");
        }
        return one.map(t -> new CapturedBus(capture, summary, summary.name(t), t, signals.scales()));
    }

    private static Optional<BitTimes> times(Bus bus) {
        Optional<Known> data = bus.figures().known(BusFigure.DATA_RATE);
        return bus.figures()
                .known(BusFigure.RATE)
                .map(rate -> BitTimes.ofRates(rate.si(), data.orElse(rate).si()));
    }

    private static Optional<BusTraffic> chosen(BusCapture capture, CaptureSummary summary, List<BusTraffic> buses) {
        return capture.networkInterface()
                .map(wanted -> buses.stream()
                        .filter(b -> summary.name(b).equals(wanted))
                        .findFirst())
                .orElseGet(() -> buses.stream().max(Comparator.comparingLong(BusTraffic::frames)));
    }

    private static Optional<String> hash(Path path) {
        try (InputStream in = Files.newInputStream(path)) {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            byte[] buffer = new byte[1 << 16];
            for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                digest.update(buffer, 0, n);
            }
            return Optional.of(HexFormat.of().formatHex(digest.digest()));
        } catch (IOException e) {
            return Optional.empty();
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
