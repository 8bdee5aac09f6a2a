package servowright.app.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two editors never overwrite one another silently. */
class MachineTextTest {
    private static final String TEXT = "machine: cart\nmotors:\n  hub: {slots: 18}\n";

    @TempDir
    private Path dir;

    @BeforeEach
    void write() throws IOException {
        Files.writeString(dir.resolve("machine.yaml"), TEXT);
    }

    private MachineText read(String file) {
        return MachineText.read(dir, file).orElseThrow();
    }

    @Test
    void writes_over_what_was_read() throws IOException {
        String mark = read("machine.yaml").mark();
        assertThat(MachineText.write(dir, "machine.yaml", mark, TEXT.replace("18", "24")))
                .isInstanceOf(MachineText.Written.class);
        assertThat(Files.readString(dir.resolve("machine.yaml"))).isEqualTo(TEXT.replace("18", "24"));
        assertThat(dir.toFile().list()).containsExactly("machine.yaml");
    }

    @Test
    void writes_nothing_over_what_somebody_else_wrote() throws IOException {
        String mark = read("machine.yaml").mark();
        Files.writeString(dir.resolve("machine.yaml"), TEXT.replace("cart", "barrow"));
        assertThat(MachineText.write(dir, "machine.yaml", mark, TEXT)).isInstanceOf(MachineText.ChangedMeanwhile.class);
        assertThat(Files.readString(dir.resolve("machine.yaml"))).contains("barrow");
    }

    @Test
    void writes_no_new_mistake_and_minds_no_old_one() throws IOException {
        String mark = read("machine.yaml").mark();
        assertThat(MachineText.write(dir, "machine.yaml", mark, TEXT.replace("18", "18 V")))
                .isInstanceOfSatisfying(
                        MachineText.NotAccepted.class,
                        refused -> assertThat(refused.problems().get(0).place().path())
                                .isEqualTo("motors / hub / slots"));
        assertThat(Files.readString(dir.resolve("machine.yaml"))).isEqualTo(TEXT);
        Files.writeString(dir.resolve("machine.yaml"), TEXT.replace("motors", "moters") + "about: a\n");
        assertThat(MachineText.write(
                        dir,
                        "machine.yaml",
                        read("machine.yaml").mark(),
                        TEXT.replace("motors", "moters") + "about: b\n"))
                .isInstanceOf(MachineText.Written.class);
    }

    @Test
    void keeps_line_ends_and_byte_order_mark() throws IOException {
        byte[] windows = ("\ufeff" + TEXT.replace("\n", "\r\n")).getBytes(StandardCharsets.UTF_8);
        Files.write(dir.resolve("machine.yaml"), windows);
        MachineText text = read("machine.yaml");
        MachineText.write(dir, "machine.yaml", text.mark(), text.source().text().replace("18", "24"));
        assertThat(Files.readString(dir.resolve("machine.yaml")))
                .isEqualTo("\ufeff" + TEXT.replace("18", "24").replace("\n", "\r\n"));
    }

    @Test
    void begins_a_file_and_takes_it_away_again() {
        MachineText none = read("bench.yaml");
        assertThat(none.exists()).isFalse();
        MachineText.Outcome written =
                MachineText.write(dir, "bench.yaml", none.mark(), "tests:\n  - {test: resistance, motor: hub}\n");
        assertThat(written).isInstanceOfSatisfying(MachineText.Written.class, w -> {
            assertThat(dir.resolve("bench.yaml")).exists();
            MachineText.restore(dir, "bench.yaml", w.now().mark(), Optional.empty());
        });
        assertThat(dir.resolve("bench.yaml")).doesNotExist();
    }

    @Test
    void knows_no_other_file() throws IOException {
        Files.writeString(dir.resolve("other.yaml"), "a: b");
        assertThat(MachineText.read(dir, "other.yaml")).isEmpty();
        assertThat(MachineText.read(dir, "../machine.yaml")).isEmpty();
    }
}
