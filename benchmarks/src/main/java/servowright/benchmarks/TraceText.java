package servowright.benchmarks;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;

/** An invented scope trace as text: a time in microseconds and three noisy sine waves in thousandths, of any length. */
public final class TraceText {
    private static final long SEED = 7;

    private TraceText() {}

    /** Writes {@code args[1]} bytes to the file {@code args[0]}, for runs by hand. */
    public static void main(String[] args) throws IOException {
        write(Path.of(args[0]), Long.parseLong(args[1]));
    }

    /** Writes rows until the file has at least {@code bytes} bytes. */
    static void write(Path file, long bytes) throws IOException {
        Random noise = new Random(SEED);
        StringBuilder row = new StringBuilder("time (s),CH1 (V),CH2 (V),CH3 (A)\n");
        long written = 0;
        try (BufferedWriter out = Files.newBufferedWriter(file, StandardCharsets.US_ASCII)) {
            for (long i = 0; written < bytes; i++) {
                fixed(row, 2 * i, 1_000_000);
                for (int k = 0; k < 3; k++) {
                    long milli = Math.round(24_000 * Math.sin(0.0031 * i + 2.1 * k)) + noise.nextInt(201) - 100;
                    fixed(row.append(','), milli, 1000);
                }
                row.append('\n');
                out.append(row);
                written += row.length();
                row.setLength(0);
            }
        }
    }

    private static void fixed(StringBuilder text, long value, int scale) {
        long size = Math.abs(value);
        text.append(value < 0 ? "-" : "").append(size / scale).append('.');
        text.append(
                Long.toString(scale + size % scale), 1, Integer.toString(scale).length());
    }
}
