package servowright.app.input.capture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.Writer;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import servowright.engine.bus.ErrorState;
import servowright.engine.bus.traffic.LogText;
import servowright.engine.bus.traffic.PacketLog;
import servowright.engine.bus.traffic.Sender;
import servowright.engine.bus.traffic.Stream;
import servowright.engine.bus.traffic.Stream.Fill;
import servowright.engine.bus.traffic.Traffic;
import servowright.engine.bus.traffic.TrafficSimulation;
import servowright.engine.bus.traffic.Watcher;
import servowright.engine.capture.CaptureSummary;

/** The same simulated traffic in every form that a capture can have: each reader gives the same frames at the same times. */
class TwinCapturesTest {
    private static final long MS = 1_000_000;
    private static final long CLOCK = 1_770_000_000_000_000_000L;

    @TempDir
    Path folder;

    private Path log = Path.of("");
    private Path packets = Path.of("");

    /** Short, long, remote-free traffic of both identifier kinds and both formats with noise: more than 3800 frames. */
    private static Traffic traffic() {
        List<Sender> nodes = List.of(Sender.good("host").drifting(30e-6), Sender.good("drive"), Sender.good("mast"));
        List<Stream> streams = List.of(
                Stream.of("sync", 0, 0x080, 0, 2 * MS, 0),
                Stream.of("command", 0, 0x205, 8, 2 * MS, 100_000),
                Stream.of("feedback", 1, 0x185, 6, 2 * MS, 300_000).jittering(90_000),
                Stream.of("heartbeat", 1, 0x705, 1, 50 * MS, 7 * MS).filled(Fill.OPERATIONAL),
                Stream.of("weather", 2, 0x18eb_ff00, 3, 10 * MS, 0),
                new Stream("picture", 2, 0x340, 64, true, 4 * MS, 0, 0, Fill.RANDOM),
                new Stream("turned", 2, 0x0012_3456, 12, true, 8 * MS, 0, 0, Fill.COUNT));
        return new Traffic(1000, 250, nodes, streams, 4e-6, Traffic.USUAL_DEPTH);
    }

    /** Hands everything to two logs. */
    private record Both(Watcher one, Watcher two) implements Watcher {
        @Override
        public void frame(Stream stream, long eventNs, long startNs, long endNs, byte[] payload) {
            one.frame(stream, eventNs, startNs, endNs, payload);
            two.frame(stream, eventNs, startNs, endNs, payload);
        }

        @Override
        public void broken(Stream stream, Spoilt why, long startNs, long endNs, ErrorState state) {
            one.broken(stream, why, startNs, endNs, state);
            two.broken(stream, why, startNs, endNs, state);
        }
    }

    @BeforeEach
    void record() throws IOException {
        log = folder.resolve("bus.log");
        packets = folder.resolve("bus.pcap");
        try (Writer text = Files.newBufferedWriter(log);
                OutputStream bytes = Files.newOutputStream(packets)) {
            Watcher both = new Both(new LogText(text, "can0", CLOCK), new PacketLog(bytes, CLOCK));
            TrafficSimulation.run(traffic(), 2000 * MS, new SplittableRandom(3819), both);
        }
    }

    private void same(Path twin, Seen as) {
        Seen seen = new Seen();
        CaptureSummary summary = Seen.read(twin, seen);
        assertThat(seen.frames).isEqualTo(as.frames);
        assertThat(seen.timesNs).isEqualTo(as.timesNs);
        assertThat(summary.malformed() + summary.lost() + summary.others()).isZero();
    }

    @Test
    void a_log_and_packets_agree_frame_by_frame() {
        Seen text = Seen.in(log);
        assertThat(text.frames).hasSizeGreaterThan(3819);
        assertThat(text.frames).anyMatch(f -> f.contains(" e ")).anyMatch(f -> f.contains("xfb 12/9"));
        same(packets, text);
    }

    @Test
    void line_ends_packing_and_identifiers_in_reverse_order_change_nothing() throws IOException {
        Seen text = Seen.in(log);
        String lines = Files.readString(log);
        same(Files.writeString(folder.resolve("crlf.log"), lines.replace("\n", "\r\n")), text);
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
            gzip.write(Files.readAllBytes(packets));
        }
        same(Files.write(folder.resolve("packed.pcap.gz"), packed.toByteArray()), text);
        Path reversed = Files.write(folder.resolve("reversed.pcap"), retold(227, 0, true));
        same(reversed, text);
        assertThat(Seen.read(reversed, new Seen()).notes()).anyMatch(n -> n.contains("reverse byte order"));
    }

    @Test
    void cooked_headers_of_both_versions_change_nothing() throws IOException {
        Seen text = Seen.in(log);
        same(Files.write(folder.resolve("cooked.pcap"), retold(113, 16, false)), text);
        same(Files.write(folder.resolve("cooked-2.pcap"), retold(276, 20, false)), text);
    }

    /** The records once more behind a cooked header that names the protocol, or with the identifiers turned round. */
    private byte[] retold(int linkType, int cooked, boolean reversed) throws IOException {
        ByteBuffer in = ByteBuffer.wrap(Files.readAllBytes(packets)).order(ByteOrder.LITTLE_ENDIAN);
        ByteBuffer out = ByteBuffer.allocate(4 * in.capacity()).order(ByteOrder.LITTLE_ENDIAN);
        byte[] head = new byte[20];
        in.get(head);
        in.getInt();
        out.put(head).putInt(linkType);
        while (in.hasRemaining()) {
            out.putInt(in.getInt()).putInt(in.getInt());
            int length = in.getInt();
            in.getInt();
            byte[] record = new byte[length];
            in.get(record);
            out.putInt(cooked + length).putInt(cooked + length);
            byte[] header = new byte[cooked];
            if (cooked > 0) {
                header[cooked == 16 ? 15 : 1] = (byte) (record[5] != 0 ? 0x0d : 0x0c);
            }
            int id = ByteBuffer.wrap(record).getInt();
            ByteBuffer.wrap(record).putInt(reversed ? Integer.reverseBytes(id) : id);
            out.put(header).put(record);
        }
        return Arrays.copyOf(out.array(), out.position());
    }

    /** Blocks of the newer file form: a section, an interface in nanoseconds, one block for each packet. */
    @Test
    void blocks_of_packets_change_nothing() throws IOException {
        Seen text = Seen.in(log);
        ByteBuffer in = ByteBuffer.wrap(Files.readAllBytes(packets)).order(ByteOrder.LITTLE_ENDIAN);
        ByteBuffer out = ByteBuffer.allocate(4 * in.capacity());
        out.putInt(0x0a0d0d0a).putInt(28).putInt(0x1a2b3c4d).putShort((short) 1).putShort((short) 0);
        out.putLong(-1).putInt(28);
        out.putInt(1).putInt(32).putShort((short) 227).putShort((short) 0).putInt(0);
        out.putShort((short) 9).putShort((short) 1).putInt(9 << 24).putInt(0).putInt(32);
        in.position(24);
        while (in.hasRemaining()) {
            long ns = in.getInt() * 1_000_000_000L + in.getInt() * 1000L;
            byte[] record = new byte[in.getInt()];
            in.getInt();
            in.get(record);
            int padded = (record.length + 3) / 4 * 4;
            out.putInt(6)
                    .putInt(32 + padded)
                    .putInt(0)
                    .putInt((int) (ns >>> 32))
                    .putInt((int) ns);
            out.putInt(record.length).putInt(record.length).put(record).put(new byte[padded - record.length]);
            out.putInt(32 + padded);
        }
        same(Files.write(folder.resolve("bus.pcapng"), Arrays.copyOf(out.array(), out.position())), text);
    }

    /** What a console shows of the same frames, stamps included; it tells nothing of the flags of FD unless asked. */
    @Test
    void console_lines_with_all_options_change_nothing() throws IOException {
        Seen text = Seen.in(log);
        StringBuilder console = new StringBuilder();
        for (int k = 0; k < text.frames.size(); k++) {
            String[] f = text.frames.get(k).split(" ", -1);
            long us = text.timesNs.get(k) / 1000;
            boolean error = f[1].contains("e");
            long id = Long.parseLong(f[0], 16) | (error ? 0x2000_0000 : 0);
            String bytes = f.length > 3 ? f[3].replaceAll("(..)", " $1") : "";
            console.append(String.format(
                    Locale.ROOT,
                    " (%d.%06d)  can0  RX %s -  %s  [%s] %s%s%n",
                    us / 1_000_000,
                    us % 1_000_000,
                    f[1].contains("b") ? "B" : "-",
                    String.format(f[1].matches(".*[xe].*") ? "%08X" : "%03X", id),
                    (f[1].contains("f") ? "%02d" : "%d").formatted(text.lengths.get(k)),
                    bytes,
                    error ? "   ERRORFRAME" : ""));
        }
        same(Files.write(folder.resolve("console.txt"), console.toString().getBytes(StandardCharsets.US_ASCII)), text);
    }
}
