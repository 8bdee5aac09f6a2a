package servowright.app.input.capture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import servowright.engine.capture.CaptureSummary;

/** Packet files as written down byte by byte from the descriptions of their formats. */
class PacketFilesTest {
    private static final byte[] STANDARD = bytes("00000123 02 00 0000 1122");
    private static final byte[] EXTENDED = bytes("92345678 03 00 0000 AABBCC");
    private static final byte[] REMOTE = bytes("40000123 04 00 0000");
    private static final byte[] ERROR = bytes("20000004 08 00 0000 000C000000000000");
    private static final byte[] FD = bytes("00000123 0C 05 0000 000102030405060708090A0B");
    private static final byte[] XL = bytes("00000123 80 00 0800 00000000 1122334455667788");

    @TempDir
    Path folder;

    private static byte[] bytes(String hex) {
        return HexFormat.of().parseHex(hex.replace(" ", ""));
    }

    private Path file(byte[] bytes) throws IOException {
        return Files.write(folder.resolve("capture"), bytes);
    }

    /** A head and records one millisecond apart, in ticks of the magic number. */
    private static byte[] pcap(ByteOrder order, int magic, int linkType, byte[]... records) {
        ByteBuffer out = ByteBuffer.allocate(1 << 16).order(order);
        out.putInt(magic)
                .putShort((short) 2)
                .putShort((short) 4)
                .putLong(0)
                .putInt(262144)
                .putInt(linkType);
        int perMillisecond = magic == 0xa1b23c4d ? 1_000_000 : 1000;
        for (int k = 0; k < records.length; k++) {
            out.putInt(7).putInt(k * perMillisecond).putInt(records[k].length).putInt(records[k].length);
            out.put(records[k]);
        }
        return Arrays.copyOf(out.array(), out.position());
    }

    private static byte[] behind(String header, byte[] record) {
        byte[] head = bytes(header);
        byte[] both = Arrays.copyOf(head, head.length + record.length);
        System.arraycopy(record, 0, both, head.length, record.length);
        return both;
    }

    @ParameterizedTest
    @CsvSource({"true, true", "true, false", "false, true", "false, false"})
    void reads_every_kind_of_frame_in_both_byte_orders_and_resolutions(boolean big, boolean nano) throws IOException {
        ByteOrder order = big ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
        byte[] packets = pcap(order, nano ? 0xa1b23c4d : 0xa1b2c3d4, 227, STANDARD, EXTENDED, REMOTE, ERROR, FD, XL);
        Seen seen = new Seen();
        CaptureSummary summary = Seen.read(file(packets), seen);
        assertThat(seen.frames)
                .containsExactly(
                        "123 - 2/2 1122",
                        "12345678 x 3/3 AABBCC",
                        "123 r 4/4",
                        "4 e 8/8 000C000000000000",
                        "123 fb 12/9 000102030405060708090A0B");
        assertThat(seen.timesNs.get(4)).isEqualTo(7_004_000_000L);
        assertThat(summary.xl()).isEqualTo(1);
    }

    @Test
    void reads_cooked_headers_of_both_versions_and_leaves_other_protocols_out() throws IOException {
        String first = "0001 0118 0000 0000000000000000 ";
        String second = " 0000 00000003 0118 00 00 0000000000000000";
        Seen old = new Seen();
        Seen.read(
                file(pcap(
                        ByteOrder.LITTLE_ENDIAN,
                        0xa1b2c3d4,
                        113,
                        behind(first + "000C", STANDARD),
                        behind(first + "000D", FD),
                        behind(first + "0800", STANDARD))),
                old);
        assertThat(old.frames).containsExactly("123 - 2/2 1122", "123 fb 12/9 000102030405060708090A0B");
        Seen young = new Seen();
        CaptureSummary summary = Seen.read(
                file(pcap(
                        ByteOrder.LITTLE_ENDIAN,
                        0xa1b2c3d4,
                        276,
                        behind("000C" + second, EXTENDED),
                        behind("0800" + second, EXTENDED),
                        behind("000E" + second, XL))),
                young);
        assertThat(young.frames).containsExactly("12345678 x 3/3 AABBCC");
        assertThat(summary.others()).isEqualTo(1);
        assertThat(summary.xl()).isEqualTo(1);
    }

    @Test
    void refuses_packets_of_another_network_with_their_link_type() throws IOException {
        Path file = file(pcap(ByteOrder.LITTLE_ENDIAN, 0xa1b2c3d4, 1, STANDARD));
        assertThat(Seen.refusal(file)).contains("link type 1");
    }

    @Test
    void reads_blocks_with_a_clock_of_nanoseconds_and_an_offset() throws IOException {
        for (ByteOrder order : new ByteOrder[] {ByteOrder.BIG_ENDIAN, ByteOrder.LITTLE_ENDIAN}) {
            Seen seen = new Seen();
            CaptureSummary summary = Seen.read(file(blocks(order)), seen);
            assertThat(seen.frames).containsExactly("123 - 2/2 1122", "12345678 x 3/3 AABBCC");
            assertThat(seen.timesNs.get(0)).isEqualTo(100_000_000_000L + (5L << 32) + 6);
            assertThat(seen.timesNs.get(1)).isEqualTo(Long.MIN_VALUE);
            assertThat(summary.buses()).containsExactly("can7");
        }
    }

    private static byte[] blocks(ByteOrder order) {
        ByteBuffer out = ByteBuffer.allocate(4096).order(order);
        block(
                out,
                0x0a0d0d0a,
                bytes(order == ByteOrder.BIG_ENDIAN ? "1A2B3C4D 0001 0000" : "4D3C2B1A 0100 0000"),
                -1,
                -1);
        ByteBuffer about = ByteBuffer.allocate(44).order(order);
        about.putShort((short) 227).putShort((short) 0).putInt(0);
        about.putShort((short) 2).putShort((short) 4).put(new byte[] {'c', 'a', 'n', '7'});
        about.putShort((short) 9).putShort((short) 1).put(new byte[] {9, 0, 0, 0});
        about.putShort((short) 14).putShort((short) 8).putLong(100);
        about.putInt(0);
        block(out, 1, about.array());
        block(out, 5, new byte[8]); // a block of statistics, which holds no frame
        ByteBuffer packet = ByteBuffer.allocate(20 + 12).order(order);
        packet.putInt(0).putInt(5).putInt(6).putInt(10).putInt(10).put(STANDARD);
        block(out, 6, packet.array());
        ByteBuffer simple = ByteBuffer.allocate(4 + 12).order(order);
        simple.putInt(11).put(EXTENDED);
        block(out, 3, simple.array());
        return Arrays.copyOf(out.array(), out.position());
    }

    private static void block(ByteBuffer out, int type, byte[] body, int... section) {
        ByteBuffer whole = ByteBuffer.wrap(body);
        int length = 12 + body.length + 4 * section.length;
        out.putInt(type).putInt(length).put(whole);
        for (int part : section) {
            out.putInt(part);
        }
        out.putInt(length);
    }

    @Test
    void reads_packed_captures_and_says_so() throws IOException {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
            gzip.write(pcap(ByteOrder.LITTLE_ENDIAN, 0xa1b2c3d4, 227, STANDARD, EXTENDED));
        }
        CaptureSummary summary = Seen.read(file(packed.toByteArray()), new Seen());
        assertThat(summary.form()).isEqualTo("pcap, packed by gzip");
        assertThat(summary.frames()).isEqualTo(2);
    }

    @Test
    void stops_unpacking_what_no_capture_shrinks_to() throws IOException {
        Path bomb = folder.resolve("bomb.gz");
        byte[] line = "(1.0) can0 123#11\n".repeat(60_000).getBytes(StandardCharsets.US_ASCII);
        try (GZIPOutputStream gzip = new GZIPOutputStream(Files.newOutputStream(bomb))) {
            for (int k = 0; k < 300; k++) {
                gzip.write(line);
            }
        }
        assertThat(Seen.refusal(bomb)).contains("unpacks to more than 200 times its size");
    }

    @Test
    void keeps_the_frames_before_a_cut() throws IOException {
        byte[] packets = pcap(ByteOrder.LITTLE_ENDIAN, 0xa1b2c3d4, 227, STANDARD, EXTENDED);
        CaptureSummary summary = Seen.read(file(Arrays.copyOf(packets, packets.length - 2)), new Seen());
        assertThat(summary.frames()).isEqualTo(1);
        assertThat(summary.notes()).containsExactly("the file ends within a record");
    }
}
