package servowright.app.input.capture;

import java.io.IOException;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import servowright.engine.capture.CaptureSummary;
import servowright.engine.capture.Frame;
import servowright.engine.capture.FrameSink;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;

/** Reads a capture of CAN traffic of any size and hands its frames to a sink, in one pass and with one buffer. */
public final class CaptureReader {
    /** Frames by which the form of a text file and the kind of its stamps are judged. */
    private static final int JUDGED = 400;

    /** Bytes within which they must stand. */
    private static final int JUDGED_BYTES = 1 << 20;

    private final Path path;
    private final String file;

    private CaptureReader(Path path, String file) {
        this.path = path;
        this.file = file;
    }

    /**
     * Sends the frames of a file to {@code sink}.
     *
     * @param shown the file as the user knows it
     */
    public static CaptureResult read(Path path, String shown, FrameSink sink) {
        return new CaptureReader(path, shown).read(sink);
    }

    private CaptureResult read(FrameSink sink) {
        if (!Files.isRegularFile(path)) {
            return Files.exists(path)
                    ? refused("it is not a regular file", "Name a file.")
                    : new CaptureResult.Refused(List.of(new Problem(
                            Problem.Kind.MISSING_FILE,
                            new Place(file, 0, ""),
                            file,
                            "there is no such file",
                            "",
                            "Check the name.")));
        }
        try {
            byte[] head = new byte[24];
            int n = head(head);
            Optional<ByteOrder> pcap = PcapBody.order(head, n);
            if (pcap.isPresent() && !SocketRecord.known(PcapBody.linkType(head, pcap.get()))) {
                return refused(
                        "its packets are of link type " + PcapBody.linkType(head, pcap.get()) + ", not of CAN",
                        "Capture on the CAN interface (link type 227).");
            }
            BusNames names = new BusNames();
            if (pcap.isPresent()) {
                return pass(new PcapBody(names), names, sink, false);
            }
            boolean blocks = n >= 4 && head[0] == 0x0a && head[1] == 0x0d && head[2] == 0x0d && head[3] == 0x0a;
            return blocks ? pass(new PcapngBody(names), names, sink, false) : text(sink);
        } catch (IOException e) {
            return refused(
                    e instanceof ByteSource.TooTightlyPacked || ByteSource.damage(e)
                            ? "it cannot be unpacked: " + e.getMessage()
                            : "it cannot be read: " + e.getClass().getSimpleName(),
                    "Is it the right file?");
        }
    }

    private int head(byte[] head) throws IOException {
        try (ByteSource source = ByteSource.open(path)) {
            return source.fill(head, head.length);
        }
    }

    private CaptureResult text(FrameSink sink) throws IOException {
        List<Function<BusNames, LineForm>> forms = List.of(LogForm::new, ConsoleForm::new, AscForm::new, TrcForm::new);
        Judged best = new Judged();
        Function<BusNames, LineForm> form = forms.get(0);
        for (Function<BusNames, LineForm> candidate : forms) {
            Judged judged = new Judged();
            Counts counts = new Counts();
            try (ByteSource source = ByteSource.open(path)) {
                new TextBody(candidate.apply(new BusNames())).read(source.first(JUDGED_BYTES), judged, counts, JUDGED);
            }
            if (judged.frames > best.frames) {
                best = judged;
                form = candidate;
            }
            if (judged.frames >= JUDGED && counts.malformed() < JUDGED / 10) {
                break; // nothing but frames: no other form would read more of it
            }
        }
        if (best.frames == 0) {
            return refused("no CAN frames were found in it", "Is it a candump log, pcap or pcapng file?");
        }
        BusNames names = new BusNames();
        return pass(new TextBody(form.apply(names)), names, sink, best.differences());
    }

    private CaptureResult pass(CaptureBody body, BusNames names, FrameSink sink, boolean differences)
            throws IOException {
        Counts counts = new Counts();
        FrameSink target = differences ? new Summing(sink) : sink;
        String form = body.words();
        try (ByteSource source = ByteSource.open(path)) {
            form += source.packed() ? ", packed by gzip" : "";
            try {
                body.read(source, target, counts, Long.MAX_VALUE);
            } catch (IOException e) {
                if (!ByteSource.damage(e) || counts.frames() == 0) {
                    throw e;
                }
                counts.note("the packed file is cut off or damaged; frames up to there were read");
            }
        }
        if (differences) {
            counts.note("the stamps are differences from frame to frame and were added up");
        }
        CaptureSummary summary = counts.summary(form, names.names());
        return counts.frames() == 0
                ? refused("no CAN frames were found in it (" + form + ")", String.join("; ", summary.notes()))
                : new CaptureResult.Read(summary);
    }

    private CaptureResult.Refused refused(String statement, String remedy) {
        Place place = new Place(file, 0, "");
        return new CaptureResult.Refused(
                List.of(new Problem(Problem.Kind.UNREADABLE, place, "", statement, "", remedy)));
    }

    /** Looks at the first frames of a file: how many there are, and whether their stamps are differences. */
    private static final class Judged implements FrameSink {
        private long frames;
        private long timed;
        private long backward;
        private long lastNs = Long.MIN_VALUE;
        private long mostNs;

        @Override
        public void frame(Frame frame) {
            frames++;
            if (frame.timed()) {
                timed++;
                backward += frame.timeNs() < lastNs ? 1 : 0;
                lastNs = frame.timeNs();
                mostNs = Math.max(mostNs, lastNs);
            }
        }

        /** Differences go up and down all the time and stay small. */
        boolean differences() {
            return timed > 20 && backward > timed / 5 && mostNs < 1_000_000_000_000L;
        }
    }

    /** Adds up stamps that are differences. */
    private static final class Summing implements FrameSink {
        private final FrameSink sink;
        private long nowNs;

        Summing(FrameSink sink) {
            this.sink = sink;
        }

        @Override
        public void frame(Frame frame) {
            nowNs += frame.timed() ? Math.min(frame.timeNs(), 1_000_000_000_000_000L) : 0;
            sink.frame(frame.timed() ? frame.at(nowNs) : frame);
        }

        @Override
        public void lost(long frames) {
            sink.lost(frames);
        }
    }
}
