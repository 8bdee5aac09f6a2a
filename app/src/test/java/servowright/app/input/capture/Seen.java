package servowright.app.input.capture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import servowright.engine.capture.CaptureSummary;
import servowright.engine.capture.Frame;
import servowright.engine.capture.FrameSink;

/** Frames that a reader handed out, each as a line of text. */
final class Seen implements FrameSink {
    final List<String> frames = new ArrayList<>();
    final List<Long> timesNs = new ArrayList<>();
    final List<Integer> lengths = new ArrayList<>();
    long lost;

    @Override
    public void frame(Frame f) {
        timesNs.add(f.timeNs());
        lengths.add(f.length());
        frames.add(line(f));
    }

    @Override
    public void lost(long n) {
        lost += n;
    }

    /** Identifier, the letters of its flags, length, length code and bytes; without time and interface. */
    private static String line(Frame f) {
        String flags = (f.is(Frame.EXTENDED) ? "x" : "")
                + (f.is(Frame.REMOTE) ? "r" : "")
                + (f.is(Frame.ERROR) ? "e" : "")
                + (f.is(Frame.FD) ? "f" : "")
                + (f.is(Frame.RATE_SWITCH) ? "b" : "")
                + (f.is(Frame.SENDER_PASSIVE) ? "p" : "")
                + (f.is(Frame.OWN) ? "o" : "");
        String bytes = HexFormat.of().withUpperCase().formatHex(f.payload());
        return String.format(
                        "%X %s %d/%d %s", f.identifier(), flags.isEmpty() ? "-" : flags, f.length(), f.code(), bytes)
                .strip();
    }

    static Seen in(Path file) {
        Seen seen = new Seen();
        read(file, seen);
        return seen;
    }

    static CaptureSummary read(Path file, FrameSink sink) {
        CaptureResult result = CaptureReader.read(file, "capture", sink);
        assertThat(result).as("%s", result).isInstanceOf(CaptureResult.Read.class);
        return ((CaptureResult.Read) result).summary();
    }

    static String refusal(Path file) {
        CaptureResult result = CaptureReader.read(file, "capture", frame -> {});
        assertThat(result).isInstanceOf(CaptureResult.Refused.class);
        return ((CaptureResult.Refused) result).problems().get(0).statement();
    }
}
