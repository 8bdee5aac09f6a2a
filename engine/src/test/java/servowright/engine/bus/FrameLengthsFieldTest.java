package servowright.engine.bus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** All frame lengths against a table kept outside the repository, made by an independent programme in another language. */
class FrameLengthsFieldTest {
    private static final Pattern ROW = Pattern.compile("\\[(\\d+(?:, \\d+)+)]");

    private static List<int[]> rows(String part) throws IOException {
        Path table = Path.of(System.getProperty("servowright.root"), "..", "shared", "reference", "data")
                .resolve("frame-lengths.json");
        assumeTrue(Files.exists(table), "the private table of frame lengths is not here");
        String text = Files.readString(table);
        int at = text.indexOf('"' + part + '"');
        Matcher m = ROW.matcher(text.substring(at, text.indexOf("]]", at) + 1));
        List<int[]> rows = new ArrayList<>();
        while (m.find()) {
            rows.add(Pattern.compile(", ")
                    .splitAsStream(m.group(1))
                    .mapToInt(Integer::parseInt)
                    .toArray());
        }
        return rows;
    }

    @Test
    void classical_rows_agree() throws IOException {
        List<int[]> rows = rows("classic");
        assertThat(rows).hasSize(9);
        for (int[] r : rows) {
            assertThat(ClassicalFrame.leastBits(IdLength.STANDARD, r[0])).isEqualTo(r[1]);
            assertThat(ClassicalFrame.mostBits(IdLength.STANDARD, r[0])).isEqualTo(r[2]);
            assertThat(ClassicalFrame.leastBits(IdLength.EXTENDED, r[0])).isEqualTo(r[4]);
            assertThat(ClassicalFrame.mostBits(IdLength.EXTENDED, r[0])).isEqualTo(r[5]);
            String free = fourBits(r[0]) + "x".repeat(8 * r[0] + 15);
            assertThat(r[1] + StuffBound.most("0" + "x".repeat(11) + "000" + free))
                    .isEqualTo(r[3]);
            assertThat(r[4] + StuffBound.most("0" + "x".repeat(11) + "11" + "x".repeat(18) + "000" + free))
                    .isEqualTo(r[6]);
        }
    }

    private static String fourBits(int code) {
        return Integer.toBinaryString(16 + code).substring(1);
    }

    @Test
    void fd_rows_agree() throws IOException {
        List<int[]> rows = rows("fd");
        assertThat(rows).hasSize(16);
        for (int[] r : rows) {
            assertThat(FdFrame.bytesOf(r[0])).isEqualTo(r[1]);
            assertThat(FdFrame.least(IdLength.STANDARD, r[0], true)).isEqualTo(new FdFrame(r[2], r[3]));
            assertThat(FdFrame.most(IdLength.STANDARD, r[0], true)).isEqualTo(new FdFrame(r[6], r[7]));
            assertThat(FdFrame.least(IdLength.EXTENDED, r[0], true)).isEqualTo(new FdFrame(r[12], r[13]));
            assertThat(FdFrame.most(IdLength.EXTENDED, r[0], true)).isEqualTo(new FdFrame(r[16], r[17]));
        }
    }

    /** Stuff bits alone: most at the slow rate, most in all, most at the fast rate, and most from a sender that is not error passive. */
    @Test
    void fd_stuff_bits_agree_row_by_row() throws IOException {
        String standard = "0" + "x".repeat(11) + "00" + "101";
        String extended = "0" + "x".repeat(11) + "11" + "x".repeat(18) + "0" + "101";
        for (int[] r : rows("fd")) {
            String data = fourBits(r[0]) + "x".repeat(8 * r[1]);
            stuffed(standard, data, r, 2);
            stuffed(extended, data, r, 12);
        }
    }

    private static void stuffed(String head, String data, int[] row, int at) {
        StuffBound.Split any = StuffBound.most(head + "x" + data, head.length(), false);
        StuffBound.Split all = StuffBound.most(head + "x" + data, head.length() + data.length() + 2, false);
        StuffBound.Split active = StuffBound.most(head + "0" + data, head.length(), false);
        assertThat(new int[] {any.before(), any.after(), all.total(), any.after(), active.before(), active.after()})
                .as("length code %d", row[0])
                .containsExactly(row[at + 2], row[at + 3], row[at + 6], row[at + 7], row[at + 8], row[at + 9]);
    }
}
