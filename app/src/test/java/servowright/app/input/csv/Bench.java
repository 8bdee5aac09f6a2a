package servowright.app.input.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.IntFunction;
import servowright.engine.known.Problem;
import servowright.engine.recording.Recording;
import servowright.engine.recording.Remark;

/** An invented bench signal and the files it is written to: two sine waves of 400 samples, 20 us apart, from -4 ms on. */
final class Bench {
    static final int COUNT = 400;
    static final double INTERVAL_S = 20e-6;
    static final double START_S = -4e-3;

    private final Path folder;

    Bench(Path folder) {
        this.folder = folder;
    }

    /** First channel, on a grid of 1 mV so that three decimals print it exactly. */
    static double a(int i) {
        return Math.rint(3200 * Math.sin(0.031 * i + 0.4)) / 1000;
    }

    /** Second channel. */
    static double b(int i) {
        return Math.rint(1700 * Math.sin(0.031 * i + 2.5)) / 1000;
    }

    static double t(int i) {
        return START_S + i * INTERVAL_S;
    }

    static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }

    /** Lines, each with that end. */
    static String lines(String end, String... lines) {
        return String.join(end, lines) + end;
    }

    /** {@code COUNT} rows after a head, each ended by {@code end}. */
    static String rows(String head, String end, IntFunction<String> row) {
        StringBuilder text = new StringBuilder(head);
        for (int i = 0; i < COUNT; i++) {
            text.append(row.apply(i)).append(end);
        }
        return text.toString();
    }

    Path file(String text) {
        return file(text, StandardCharsets.UTF_8);
    }

    Path file(String text, Charset charset) {
        return file(text.getBytes(charset));
    }

    Path file(byte[] bytes) {
        try {
            Path path = folder.resolve("bench.csv");
            return Files.write(path, bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Recording read(Path file) {
        return read(file, ReadingHints.none());
    }

    static Recording read(Path file, ReadingHints hints) {
        ReadResult result = RecordingReader.read(file, hints);
        assertThat(result).as("%s", result).isInstanceOf(ReadResult.Read.class);
        return ((ReadResult.Read) result).recording();
    }

    static List<Problem> refused(Path file) {
        return refused(file, ReadingHints.none());
    }

    static List<Problem> refused(Path file, ReadingHints hints) {
        ReadResult result = RecordingReader.read(file, hints);
        assertThat(result).isInstanceOf(ReadResult.Refused.class);
        return ((ReadResult.Refused) result).problems();
    }

    /** The one key that is asked for. */
    static String asked(Path file) {
        List<Problem> problems = refused(file);
        assertThat(problems).hasSize(1);
        return problems.get(0).place().path();
    }

    static boolean remarked(Recording recording, Remark.Kind kind) {
        return recording.remarks().stream().anyMatch(r -> r.kind() == kind);
    }

    /** Checks clock and first channel against the signal. */
    static void holdsSignal(Recording recording, String channel) {
        assertThat(recording.count()).isEqualTo(COUNT);
        assertThat(recording.clock().timeS(0)).isCloseTo(START_S, within(1e-12));
        assertThat(recording.clock().intervalS()).isCloseTo(INTERVAL_S, within(1e-12));
        holdsSamples(recording, channel);
    }

    static void holdsSamples(Recording recording, String channel) {
        double[] samples = recording.channel(channel).orElseThrow().samples();
        for (int i = 0; i < COUNT; i++) {
            assertThat(samples[i]).as("row %d", i).isCloseTo(a(i), within(1e-12));
        }
    }

    static String unit(Recording recording, String channel) {
        return recording.channel(channel).orElseThrow().unit().orElseThrow().symbol();
    }
}
