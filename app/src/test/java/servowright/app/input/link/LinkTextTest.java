package servowright.app.input.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import servowright.engine.bus.BitTiming;
import servowright.engine.capture.LinkRemarks;
import servowright.engine.capture.LinkReport;
import servowright.engine.known.Phrase;
import servowright.engine.known.Problem;

/** Pasted accounts of CAN interfaces; the form as in public kernel documentation and reports (seen), the figures invented. */
class LinkTextTest {
    private static final String PLAIN = """
            5: can0: <NOARP,UP,LOWER_UP,ECHO> mtu 16 qdisc pfifo_fast state UP mode DEFAULT group default qlen 10
                link/can  promiscuity 0 minmtu 0 maxmtu 0
                can <BERR-REPORTING> state ERROR-PASSIVE (berr-counter tx 0 rx 131) restart-ms 0
            \t  bitrate 1000000 sample-point 0.750
            \t  tq 25 prop-seg 14 phase-seg1 15 phase-seg2 10 sjw 1 brp 1
            \t  flexcan: tseg1 4..16 tseg2 2..8 sjw 1..4 brp 1..256 brp_inc 1
            \t  clock 40000000
            \t  re-started bus-errors arbit-lost error-warn error-pass bus-off
            \t  0          31         0          13         2          0         numtxqueues 1 numrxqueues 1
                RX:  bytes packets errors dropped  missed   mcast
                    145850   31032     31       7       0       0
                TX:  bytes packets errors dropped carrier collsns
                     62001   20667      0       4       0       0
            """;

    private static final String FD = """
            97: can1: <NOARP,UP,LOWER_UP,ECHO> mtu 72 qdisc pfifo_fast state UP mode DEFAULT group default qlen 10
                link/can  promiscuity 0 minmtu 0 maxmtu 0
                can <FD> state ERROR-ACTIVE (berr-counter tx 0 rx 0) restart-ms 100
                      bitrate 500000 sample-point 0.800
                      tq 12 prop-seg 95 phase-seg1 32 phase-seg2 32 sjw 32
                      dbitrate 2000000 dsample-point 0.800
                      dtq 12 dprop-seg 23 dphase-seg1 8 dphase-seg2 8 dsjw 8
                      tdco 32
                      clock 80000000
            """;

    @TempDir
    Path folder;

    private Path file(String text) throws IOException {
        return Files.writeString(folder.resolve("link.txt"), text);
    }

    private List<LinkReport> read(String text) throws IOException {
        Path path = file(text);
        assertThat(LinkText.in(path)).isTrue();
        LinkResult result = LinkText.read(path, "link.txt");
        assertThat(result).as("%s", result).isInstanceOf(LinkResult.Read.class);
        return ((LinkResult.Read) result).links();
    }

    private String problems(String text) throws IOException {
        LinkResult result = LinkText.read(file(text), "link.txt");
        assertThat(result).isInstanceOf(LinkResult.Refused.class);
        return ((LinkResult.Refused) result)
                .problems().stream().map(Problem::text).collect(Collectors.joining("\n"));
    }

    private static String remarks(LinkReport link) {
        return LinkRemarks.of(link).stream().map(Phrase::template).collect(Collectors.joining("\n"));
    }

    @Test
    void reads_state_timing_and_counters() throws IOException {
        LinkReport link = read(PLAIN).get(0);
        assertThat(link.name()).isEqualTo("can0");
        assertThat(link.state()).isEqualTo("ERROR-PASSIVE");
        assertThat(link.counters()).containsEntry("tx", 0L).containsEntry("rx", 131L);
        assertThat(link.restartMs()).contains(0L);
        BitTiming timing = link.nominal().flatMap(LinkReport.Phase::timing).orElseThrow();
        assertThat(timing).isEqualTo(new BitTiming(40_000_000, 1, 14, 15, 10, 1));
        assertThat(timing.bitsPerSecond()).isEqualTo(1e6);
        assertThat(link.counted())
                .containsEntry("bus-errors", 31L)
                .containsEntry("error-warn", 13L)
                .containsEntry("error-pass", 2L)
                .containsEntry("RX packets", 31032L)
                .containsEntry("RX overrun", 0L)
                .containsEntry("TX dropped", 4L);
        assertThat(link.data()).isEqualTo(Optional.empty());
        assertThat(remarks(link))
                .contains("what it hears is broken")
                .contains("stays off until somebody restarts it")
                .contains("error passive {count} times")
                .contains("found the queue full")
                .doesNotContain("segments give");
    }

    /** 80 MHz prints quanta of 12.5 ns as 12; segments of a controller manual's FD example (seen): 500 kbit/s, 2 Mbit/s, 80 %. */
    @Test
    void reads_both_phases_of_fd_although_the_quantum_is_rounded() throws IOException {
        LinkReport link = read(FD.replace("\n", "\r\n")).get(0);
        assertThat(link.nominal().orElseThrow().rate()).isEqualTo(500e3);
        assertThat(link.data().orElseThrow().rate()).isEqualTo(2e6);
        assertThat(link.data().flatMap(LinkReport.Phase::timing).orElseThrow().samplePoint())
                .isEqualTo(0.8);
        assertThat(link.restartMs()).contains(100L);
        assertThat(remarks(link)).doesNotContain("segments give", "state {state}");
    }

    @Test
    void reads_several_interfaces_quoted_and_passes_over_others() throws IOException {
        String other = "2: eth0: <UP> mtu 1500 qdisc mq state UP\n    link/ether 00:00:00:00:00:00\n";
        String pasted = "$ ip -details -statistics link show\n" + other + PLAIN + FD;
        List<LinkReport> links = read(pasted.lines().map(l -> "> " + l).collect(Collectors.joining("\n")));
        assertThat(links).extracting(LinkReport::name).containsExactly("can0", "can1");
    }

    /** An interface at rest states no rate. Segments of 16 quanta at 8 MHz are 500 kbit/s whatever the line above them says. */
    @Test
    void says_when_it_is_at_rest_and_when_segments_and_rate_disagree() throws IOException {
        LinkReport rest =
                read("3: can2: <NOARP,ECHO> mtu 16\n    link/can\n    can state STOPPED restart-ms 0\n\t  clock 8000000\n")
                        .get(0);
        assertThat(rest.nominal()).isEqualTo(Optional.empty());
        assertThat(remarks(rest)).isEqualTo("the interface is not up");
        LinkReport odd =
                read("3: can2: <UP> mtu 16\n link/can\n can <LOOPBACK> state BUS-OFF restart-ms 100\n bitrate 125000"
                                + " sample_point 0.875\n tq 125 prop-seg 6 phase-seg1 7 phase-seg2 2 sjw 1\n clock 8000000\n")
                        .get(0);
        assertThat(odd.nominal().orElseThrow().rate()).isEqualTo(500e3);
        assertThat(remarks(odd))
                .contains("its segments give {really}, not the {stated} it states")
                .contains("has left the bus")
                .contains("not an ordinary node");
    }

    @Test
    void says_what_cannot_be_read() throws IOException {
        assertThat(problems("1: can0: <UP> mtu 16\n link/can\n"))
                .contains("line 1: nothing is said of the state of can0");
        assertThat(problems(PLAIN.replace("1000000 sample", "fast sample")))
                .contains("line 4: the value of bitrate, \"fast\", is no number")
                .contains("ip -details -statistics link show can0");
        assertThat(problems(PLAIN.replace("31032 ", "many "))).contains("line 11: there is no number for RX packets");
        assertThat(problems("can state nowhere\n")).contains("it tells of no CAN interface");
        assertThat(problems(" ".repeat(2 << 20))).contains("longer than any such output");
        assertThat(LinkText.in(folder)).isFalse();
        assertThat(LinkText.in(folder.resolve("absent"))).isFalse();
        assertThat(LinkText.in(file("(1.0) can0 123#11\n"))).isFalse();
    }

    /** Broken at random: reading ends with a result. More of them by {@code -Dservowright.broken=100000}. */
    @Test
    void ends_with_a_result_whatever_is_broken() throws IOException {
        long seed = 20_262;
        Random random = new Random(seed);
        byte[] whole = (PLAIN + FD).getBytes(StandardCharsets.ISO_8859_1);
        Path path = folder.resolve("broken");
        for (int run = 0; run < Integer.getInteger("servowright.broken", 400); run++) {
            byte[] bytes = whole.clone();
            for (int k = random.nextInt(12); k >= 0; k--) {
                int at = random.nextInt(bytes.length);
                bytes[at] = random.nextInt(3) == 0 ? (byte) random.nextInt(256) : bytes[random.nextInt(bytes.length)];
            }
            LinkText.in(Files.write(path, bytes));
            LinkResult result = LinkText.read(path, "broken");
            assertThat(result).as("seed %d run %d", seed, run).isNotNull();
            if (result instanceof LinkResult.Read read) {
                read.links().forEach(LinkRemarks::of);
            }
        }
    }
}
