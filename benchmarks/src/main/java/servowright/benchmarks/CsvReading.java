package servowright.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import servowright.app.input.csv.ReadingHints;
import servowright.app.input.csv.RecordingReader;
import servowright.app.input.csv.SummaryResult;

/**
 * Rows, and smallest, largest and mean number of each channel, of a scope trace of 200 MB: our reader against DuckDB's, one
 * thread each, the same file, which lies in the page cache. Ours also finds the layout, judges the clock and hashes the file;
 * DuckDB is told the layout.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5)
@Measurement(iterations = 9)
@Fork(
        value = 1,
        jvmArgs = {"-Xmx256m"})
public class CsvReading {
    private static final long BYTES = 200_000_000;
    private static final String QUERY =
            "SELECT count(*), min(t), max(t), min(a), max(a), avg(a), min(b), max(b), avg(b),"
                    + " min(c), max(c), avg(c) FROM read_csv('%s', header = true, delim = ',', auto_detect = false,"
                    + " columns = {'t': 'DOUBLE', 'a': 'DOUBLE', 'b': 'DOUBLE', 'c': 'DOUBLE'})";

    private Path file = Path.of("");

    @Setup(Level.Trial)
    public void write() throws IOException {
        file = Files.createTempFile("trace", ".csv");
        TraceText.write(file, BYTES);
    }

    @TearDown(Level.Trial)
    public void remove() throws IOException {
        Files.delete(file);
    }

    @Benchmark
    public double servowright() {
        SummaryResult result = RecordingReader.summarise(file, "trace.csv", ReadingHints.none());
        return ((SummaryResult.Summed) result)
                .summary()
                .channels()
                .get(0)
                .spread()
                .mean();
    }

    @Benchmark
    public double duckDb() throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:duckdb:");
                Statement statement = connection.createStatement()) {
            statement.execute("SET threads = 1");
            try (ResultSet row = statement.executeQuery(String.format(QUERY, file))) {
                row.next();
                return row.getDouble(6);
            }
        }
    }
}
