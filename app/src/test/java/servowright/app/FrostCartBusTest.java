package servowright.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import servowright.app.dossier.Dossier;
import servowright.app.input.MachineFolder;
import servowright.app.view.View;
import servowright.engine.assessment.Assess;
import servowright.engine.assessment.AssessSettings;
import servowright.engine.bus.traffic.LogText;
import servowright.engine.bus.traffic.Sender;
import servowright.engine.bus.traffic.Stream;
import servowright.engine.bus.traffic.Traffic;
import servowright.engine.bus.traffic.TrafficSimulation;
import servowright.engine.prediction.BusPlan;
import servowright.engine.prediction.BusStudy;
import servowright.engine.prediction.PlannedTraffic;

/** Logs that the simulation writes for the frost cart, read back and held against its plan. */
class FrostCartBusTest {
    private static final Path CART =
            Path.of(System.getProperty("servowright.root", ".")).resolve("examples/frost-cart");
    private static final long S = 1_000_000_000L;

    @TempDir
    Path folder;

    @BeforeEach
    void prepare() throws IOException {
        Files.copy(CART.resolve("machine.yaml"), folder.resolve("machine.yaml"));
        Files.writeString(folder.resolve("bench.yaml"), "captures:\n  - recording: bus.log\n    interface: can0\n");
        Files.writeString(folder.resolve("bus.log"), "(0.1) can0 123#11\n");
    }

    private BusPlan plan() {
        MachineFolder.Loaded cart = (MachineFolder.Loaded) MachineFolder.read(folder);
        return BusStudy.of(cart.machine()).found().orElseThrow();
    }

    private View after(UnaryOperator<Traffic> change) throws IOException {
        Traffic traffic = change.apply(PlannedTraffic.of(plan()));
        try (Writer out = Files.newBufferedWriter(folder.resolve("bus.log"))) {
            TrafficSimulation.run(
                    traffic, 3 * S, new SplittableRandom(20_260_302), new LogText(out, "can0", 1_770_000_000L * S));
        }
        MachineFolder.Loaded read = (MachineFolder.Loaded) MachineFolder.read(folder);
        return View.present(
                Assess.assess(
                        read.machine(),
                        read.tests(),
                        read.recordings(),
                        read.captures(),
                        AssessSettings.whole("0.1.0", read.sha256())),
                read.notes());
    }

    private static Traffic with(Traffic t, List<Sender> senders, List<Stream> streams) {
        return new Traffic(t.bitNs(), t.dataBitNs(), senders, streams, t.bitErrors(), t.queueDepth());
    }

    private static Traffic nodes(Traffic t, UnaryOperator<Sender> change) {
        return with(t, t.senders().stream().map(change).toList(), t.streams());
    }

    private static String finding(View view, String id) {
        return view.findings().stream()
                .filter(f -> f.id().equals(id))
                .map(f -> f.verdict().words() + ": " + f.statement().text() + "; "
                        + f.reason().text())
                .findFirst()
                .orElse("");
    }

    @Test
    void a_log_of_the_plan_meets_the_plan() throws IOException {
        View view = after(t -> t);
        assertThat(view.captures()).hasSize(1);
        assertThat(view.captures().get(0).plan())
                .hasSizeGreaterThan(15)
                .allMatch(m -> m.state().equals("comes"));
        assertThat(Dossier.html(view)).contains("The fullest 10 ms: ", " frames of 2", ">0x205</text>");
        for (String id : List.of(
                "bus-stamps",
                "bus-message-missing",
                "bus-message-period",
                "bus-arrival",
                "bus-not-planned",
                "bus-load-seen",
                "bus-two-senders",
                "bus-errors-seen",
                "bus-restart-seen",
                "bus-queue-let-go")) {
            assertThat(finding(view, id)).as(id).startsWith("holds");
        }
    }

    @Test
    void a_dead_node_is_named() throws IOException {
        View view = after(t -> nodes(t, s -> s.name().equals("pan") ? s.off(S, Long.MAX_VALUE) : s));
        assertThat(finding(view, "bus-message-missing")).startsWith("fails").contains("pan feedback", "sent by pan");
        assertThat(finding(view, "bus-message-missing")).doesNotContain("tilt", "lift");
    }

    @Test
    void a_second_node_with_the_same_identifiers_is_named() throws IOException {
        View view = after(t -> {
            List<Sender> senders = new ArrayList<>(t.senders());
            senders.add(Sender.good("second"));
            List<Stream> streams = new ArrayList<>(t.streams());
            t.streams().stream()
                    .filter(s -> s.name().equals("tilt heartbeat"))
                    .map(s -> new Stream(
                            "second", senders.size() - 1, s.id(), 1, false, s.periodNs(), 37_000_000, 0, s.fill()))
                    .forEach(streams::add);
            return with(t, senders, streams);
        });
        assertThat(finding(view, "bus-two-senders")).startsWith("fails").contains("0x705");
    }

    @Test
    void process_data_that_two_nodes_send_are_named() throws IOException {
        View view = after(t -> {
            List<Sender> senders = new ArrayList<>(t.senders());
            senders.add(Sender.good("second"));
            List<Stream> streams = new ArrayList<>(t.streams());
            t.streams().stream()
                    .filter(s -> s.name().equals("tilt feedback"))
                    .map(s -> new Stream(
                            "second",
                            senders.size() - 1,
                            s.id(),
                            s.bytes(),
                            false,
                            s.periodNs(),
                            s.offsetNs() + s.periodNs() * 2 / 5,
                            0,
                            s.fill()))
                    .forEach(streams::add);
            return with(t, senders, streams);
        });
        assertThat(finding(view, "bus-two-senders")).startsWith("fails").contains("0x185 comes in two series");
        assertThat(finding(view, "bus-two-senders")).doesNotContain("0x184", "0x186");
    }

    @Test
    void a_host_that_cannot_keep_up_is_named() throws IOException {
        View view = after(t -> with(
                t,
                t.senders(),
                t.streams().stream()
                        .map(s -> t.senders().get(s.node()).name().equals("host")
                                ? new Stream(
                                        s.name(),
                                        s.node(),
                                        s.id(),
                                        s.bytes(),
                                        s.fd(),
                                        s.periodNs() * 13 / 10,
                                        0,
                                        3_000_000,
                                        s.fill())
                                : s)
                        .toList()));
        assertThat(finding(view, "bus-message-period")).startsWith("fails").containsAnyOf("command", "sync");
        assertThat(finding(view, "bus-arrival")).startsWith("fails");
    }

    @Test
    void commands_let_go_after_a_stop_are_named() throws IOException {
        View view = after(t -> nodes(t, s -> s.name().equals("host") ? s : s.off(S, S + S / 5)));
        assertThat(finding(view, "bus-queue-let-go")).startsWith("fails").contains("a queue was let go");
        assertThat(finding(view, "bus-errors-seen")).startsWith("fails").contains("nobody acknowledged");
    }
}
