package servowright.app.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import servowright.engine.known.Problem;

/** Whatever is done to a good file, it ends in a machine or in problems of the house form. */
class FuzzTest {
    private static final List<String> PIECES = List.of(
            "{",
            "}",
            "[",
            "]",
            ":",
            ": ",
            ",",
            "\n",
            "\n  ",
            "- ",
            "#",
            "\"",
            "'",
            "|",
            ">",
            "&a ",
            "*a",
            "!!x ",
            "---",
            "%",
            "@",
            "\t",
            "..",
            "\u00b1",
            "e999",
            "-",
            "1,200",
            "unknown",
            "ohm",
            " V",
            "[q axis]",
            "\\",
            "\u0000",
            "\ud83d\ude00",
            "motors:",
            "<<: ",
            "? ",
            "\u2028",
            "1e308",
            "999999999999999999999",
            "[2 degC, 3 degC]",
            "AWG 20");

    @TempDir
    private Path dir;

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4})
    void mutations_of_good_files_end_in_problems_and_never_in_an_exception(long seed) throws IOException {
        String machine = Files.readString(Folder.named("orchard").resolve("machine.yaml"));
        String bench = Files.readString(Folder.named("orchard").resolve("bench.yaml"));
        StringBuilder recording = new StringBuilder("Time (s),CH1 (V)\n");
        for (int i = 0; i < 40; i++) {
            recording.append(i * 1e-3).append(',').append(Math.sin(i)).append('\n');
        }
        Folder.in(dir).with("recordings/hub-spin-1.csv", recording.toString());
        Random random = new Random(seed);
        int good = 0;
        for (int i = 0; i < 600; i++) {
            boolean first = random.nextBoolean();
            Files.writeString(dir.resolve("machine.yaml"), first ? mutated(machine, random) : machine);
            Files.writeString(dir.resolve("bench.yaml"), first ? bench : mutated(bench, random));
            MachineFolder read = MachineFolder.read(dir);
            if (read instanceof MachineFolder.Refused refused) {
                assertThat(refused.problems()).isNotEmpty().allSatisfy(p -> houseForm(p, seed));
            } else {
                good++;
            }
        }
        assertThat(good).as("harmless mutations of seed " + seed).isBetween(20, 500);
    }

    private static String mutated(String text, Random random) {
        StringBuilder mutant = new StringBuilder(text);
        int changes = 1 + random.nextInt(4);
        for (int i = 0; i < changes; i++) {
            int at = random.nextInt(mutant.length());
            int end = Math.min(mutant.length(), at + random.nextInt(12));
            switch (random.nextInt(4)) {
                case 0 -> mutant.delete(at, end);
                case 1 -> mutant.insert(at, PIECES.get(random.nextInt(PIECES.size())));
                case 2 -> mutant.insert(random.nextInt(mutant.length()), mutant.substring(at, end));
                default -> mutant.setCharAt(at, (char) (32 + random.nextInt(95)));
            }
        }
        return mutant.toString();
    }

    private static void houseForm(Problem p, long seed) {
        String text = "seed " + seed + ": " + p.text();
        String own = (p.statement() + p.remedy()).replace(p.given(), "");
        assertThat(own)
                .as(text)
                .doesNotContain("null", "Exception", "java", "\n")
                .hasSizeLessThan(600);
        assertThat(own.contains("!")).as(text).isEqualTo(p.given().contains("!") && own.contains("!"));
        assertThat(p.statement()).as(text).isNotBlank();
        assertThat(p.remedy()).as(text).matches("(?s)[A-Z].*[.?]");
        assertThat(p.place().file()).as(text).isNotBlank();
        assertThat(p.given()).as(text).hasSizeLessThanOrEqualTo(60);
    }
}
