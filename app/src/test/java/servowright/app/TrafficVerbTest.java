package servowright.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import servowright.app.cli.ExitCode;
import servowright.app.cli.PageDoor;
import servowright.app.cli.Program;
import servowright.app.cli.Screen;

/** The planned traffic of the frost cart, played by typed commands. */
class TrafficVerbTest {
    private static final Path CART =
            Path.of(System.getProperty("servowright.root", ".")).resolve("examples/frost-cart");

    @TempDir
    Path folder;

    private String out = "";
    private String err = "";

    @BeforeEach
    void prepare() throws IOException {
        Files.copy(CART.resolve("machine.yaml"), folder.resolve("machine.yaml"));
    }

    private ExitCode type(String... words) {
        ByteArrayOutputStream shown = new ByteArrayOutputStream();
        ByteArrayOutputStream wrong = new ByteArrayOutputStream();
        ExitCode code = Program.of(new MachineReader("0.1.0"), view -> "", TrafficVerbTest::noPage, "0.1.0")
                .run(
                        new Screen(
                                new PrintStream(shown, true, StandardCharsets.UTF_8),
                                new PrintStream(wrong, true, StandardCharsets.UTF_8),
                                110,
                                false,
                                false),
                        words);
        out = shown.toString(StandardCharsets.UTF_8).replaceAll("\\s+", " ");
        err = wrong.toString(StandardCharsets.UTF_8).replaceAll("\\s+", " ");
        return code;
    }

    private static PageDoor.Served noPage(Path folder, int port) {
        throw new IllegalStateException("no page of " + folder + " at " + port);
    }

    private String file(String name) {
        return folder.resolve(name).toString();
    }

    /** The battery speaks every 100 ms (machine.yaml): ten times in a second; the log read back says the same. */
    @Test
    void writes_a_log_that_reads_back_as_the_plan() {
        assertThat(type("traffic", folder.toString(), "--for", "1 s", "--write", file("bus.log")))
                .isEqualTo(ExitCode.FINE);
        assertThat(out)
                .contains("simulated traffic of 1 s")
                .contains("its clock starts at 0")
                .contains("battery 0x321 10 ");
        assertThat(type("bus", file("bus.log"), "--rate", "1 Mbit/s")).isEqualTo(ExitCode.FINE);
        assertThat(out).contains("log lines").containsPattern("0x321 10 6 (9\\d\\.\\d+|100) ms");
    }

    @Test
    void writes_packets_where_the_name_asks_for_them() throws IOException {
        type("traffic", folder.toString(), "--for", "300 ms", "--write", file("one.log"));
        type("traffic", folder.toString(), "--for", "300 ms", "--write", file("two.pcap"));
        long lines = Files.readString(folder.resolve("one.log")).lines().count();
        type("bus", file("two.pcap"));
        assertThat(out).contains("pcap, " + lines + " records");
    }

    @Test
    void shows_noise_and_a_node_without_power() {
        assertThat(type("traffic", folder.toString(), "--bit-errors", "1e-5", "--without", "pan", "--seed", "3"))
                .isEqualTo(ExitCode.FINE);
        assertThat(out).contains("broken off and sent again").contains("pan feedback 0x184 1000 1000 ");
    }

    @Test
    void says_what_cannot_be_done() throws IOException {
        assertThat(type("traffic", folder.toString(), "--for", "3 V")).isEqualTo(ExitCode.REFUSED);
        assertThat(err).contains("is no time from 1 ms to 1 h");
        type("traffic", folder.toString(), "--seed", "many");
        assertThat(err).contains("is no whole number");
        type("traffic", folder.toString(), "--bit-errors", "2");
        assertThat(err).contains("is no share of bits");
        type("traffic", folder.toString(), "--bit-errors", "few");
        assertThat(err).contains("is no share of bits");
        type("traffic", folder.toString(), "--without", "pam");
        assertThat(err).contains("There is no node \"pam\". Nearest: pan.");
        Files.writeString(folder.resolve("kept.log"), "mine");
        assertThat(type("traffic", folder.toString(), "--write", file("kept.log")))
                .isEqualTo(ExitCode.REFUSED);
        assertThat(err).contains("is there already and is not overwritten");
        assertThat(folder.resolve("kept.log")).hasContent("mine");
        type("traffic", folder.toString(), "--write", file("nowhere/bus.log"));
        assertThat(err).contains("cannot be written");
        Files.writeString(folder.resolve("machine.yaml"), "machine: Cart\n");
        assertThat(type("traffic", folder.toString())).isEqualTo(ExitCode.REFUSED);
        assertThat(err).contains("There is no plan of the bus yet");
    }

    /** What a computer tells of its interface, beside the controllers of the cart: host 75 %, lift 78.6 % (machine.yaml). */
    @Test
    void an_interface_is_held_against_the_plan() throws IOException {
        String link = """
                5: can0: <NOARP,UP,LOWER_UP,ECHO> mtu 16 qdisc pfifo_fast state UP qlen 10
                    link/can
                    can state ERROR-ACTIVE (berr-counter tx 0 rx 0) restart-ms 100
                      bitrate 1000000 sample-point 0.750
                      tq 25 prop-seg 14 phase-seg1 15 phase-seg2 10 sjw 4 brp 1
                      clock 40000000
                """;
        Files.writeString(folder.resolve("link.txt"), link);
        assertThat(type("bus", file("link.txt"), "--plan", folder.toString())).isEqualTo(ExitCode.FINE);
        assertThat(out)
                .contains("link.txt, interface can0")
                .contains("40 quanta of 25 ns: 1 + 14 + 15 + 10, jump 4")
                .contains("holds bit rate 1000 kbit/s, planned 1000 kbit/s")
                .containsPattern("tight samples at 75 % of a bit, lift at 78\\.5\\d* %");
        Files.writeString(folder.resolve("link.txt"), link.replace("prop-seg 14", "prop-seg 54"));
        type("bus", file("link.txt"), "--plan", folder.toString());
        assertThat(out)
                .contains("its segments give 500 kbit/s, not the 1000 kbit/s it states")
                .contains("fails bit rate 500");
        type("bus", file("link.txt"), "--json");
        assertThat(out).contains("\"interface\": \"can0\"").contains("\"checks\": []");
        Files.writeString(folder.resolve("link.txt"), link.replace("bitrate 1000000", "bitrate quick"));
        assertThat(type("bus", file("link.txt"))).isEqualTo(ExitCode.REFUSED);
        assertThat(err).contains("line 4: the value of bitrate");
    }

    /** The rates of the machine count for a capture when none is typed. */
    @Test
    void a_capture_takes_its_rate_from_the_plan() {
        type("traffic", folder.toString(), "--for", "300 ms", "--write", file("bus.log"));
        assertThat(type("bus", file("bus.log"), "--plan", folder.toString())).isEqualTo(ExitCode.FINE);
        assertThat(out).contains("load mean 2").doesNotContain("a load needs the bit rate");
    }
}
