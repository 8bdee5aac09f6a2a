package servowright.app.input.csv;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A file four times the size of the heap is read to its end: what is held does not grow with the file. */
class SmallHeapTest {
    private static final int ROWS = 2_400_000;

    @TempDir
    Path folder;

    @Test
    void reads_a_file_of_80_megabytes_within_a_heap_of_20() throws IOException, InterruptedException {
        Path file = folder.resolve("long.csv");
        try (BufferedWriter out = Files.newBufferedWriter(file, StandardCharsets.US_ASCII)) {
            out.write("time (ms),CH1 (V),CH2 (V)\n");
            for (int i = 0; i < ROWS; i++) {
                out.write(i + ".000,-0.250," + (i % 1000) + ".125000000000000\n");
            }
        }
        assertThat(Files.size(file)).isGreaterThan(80_000_000);
        assertThat(child("-Xmx20m", file)).startsWith(ROWS + " rows, 2399 blocks");
    }

    private String child(String heap, Path file) throws IOException, InterruptedException {
        Path said = folder.resolve("said.txt");
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        List<String> command = List.of(
                java,
                heap,
                "-cp",
                System.getProperty("java.class.path"),
                SmallHeapTest.class.getName(),
                file.toString());
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(said.toFile())
                .start();
        assertThat(process.waitFor(5, TimeUnit.MINUTES)).isTrue();
        return Files.readString(said);
    }

    /** Runs in the child: the totals of all rows, and the rows from 1 s on as means of 1000. */
    public static void main(String[] args) {
        Path file = Path.of(args[0]);
        SummaryResult summary = RecordingReader.summarise(file, "long.csv", ReadingHints.none());
        ReadingHints thinned = ReadingHints.declare().from(1).every(1000).build();
        ReadResult read = RecordingReader.read(file, thinned);
        long rows = ((SummaryResult.Summed) summary).summary().rows();
        int blocks = ((ReadResult.Read) read).recording().count();
        System.out.println(rows + " rows, " + blocks + " blocks");
    }
}
