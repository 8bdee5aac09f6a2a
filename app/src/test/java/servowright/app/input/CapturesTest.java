package servowright.app.input;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import servowright.engine.bench.CapturedBus;
import servowright.engine.known.Problem;

/** Captures of the bus as bench.yaml names them. */
class CapturesTest {
    @TempDir
    Path folder;

    private MachineFolder read(String bench) throws IOException {
        Files.writeString(folder.resolve("machine.yaml"), "machine: Cart\nbus: {rate: 500 kbit/s}\n");
        Files.writeString(folder.resolve("bench.yaml"), bench);
        StringBuilder log = new StringBuilder();
        for (int k = 0; k < 1000; k++) {
            double t = 0.01 * k;
            int angle = (int) Math.round(3000 * Math.sin(t));
            int speed = (int) Math.round(3000 * Math.cos(t) * 360.0 / 4096 / 6 * 10);
            log.append(String.format(
                    Locale.ROOT,
                    "(%.6f) can1 181#%02X%02X%02X%02X%n",
                    1000 + t,
                    angle & 0xff,
                    angle >> 8 & 0xff,
                    speed >> 8 & 0xff,
                    speed & 0xff));
        }
        log.append("(1010.0) can0 123#11\n");
        Files.writeString(folder.resolve("bus.log"), log);
        return MachineFolder.read(folder);
    }

    private CapturedBus captured(String bench) throws IOException {
        MachineFolder read = read(bench);
        assertThat(read).as("%s", read).isInstanceOf(MachineFolder.Loaded.class);
        return ((MachineFolder.Loaded) read).captures().get(0);
    }

    private String problems(String bench) throws IOException {
        MachineFolder read = read(bench);
        assertThat(read).isInstanceOf(MachineFolder.Refused.class);
        List<Problem> all = ((MachineFolder.Refused) read).problems();
        return all.stream().map(Problem::text).collect(Collectors.joining("\n"));
    }

    @Test
    void takes_the_bus_that_is_named_and_else_the_busiest() throws IOException {
        assertThat(captured("captures: [{recording: bus.log}]").name()).isEqualTo("can1");
        assertThat(captured("captures: [{recording: bus.log, interface: can0}]")
                        .traffic()
                        .frames())
                .isEqualTo(1);
        assertThat(captured("captures: [{recording: bus.log}]").traffic().meanLoad())
                .isBetween(0.015, 0.025); // 79 to 95 bits at 500 kbit/s every 10 ms
    }

    @Test
    void says_what_is_wrong_with_a_capture() throws IOException {
        assertThat(problems("captures: [{recording: bus.log, interface: can7}]"))
                .contains("the capture has no bus \"can7\"", "Known: can1, can0");
        assertThat(problems("captures: [{recording: bus.lgo}]"))
                .contains("there is no file \"bus.lgo\"", "Nearest: bus.log");
        assertThat(problems("captures: [{recording: machine.yaml}]")).contains("no CAN frames were found");
        assertThat(problems("captures: [{interface: can0}]")).contains("the key recording is missing");
    }

    private static String signals(String position, String speed) {
        return "captures:\n  - recording: bus.log\n    signals:\n      angle: {id: 0x181, start: 0, bits: 16, "
                + position + "}\n      speed: {id: 0x181, start: 16, bits: 16, order: high byte first, " + speed
                + "}\n";
    }

    @Test
    void holds_a_speed_against_the_rate_of_its_position() throws IOException {
        String bench = signals("scale: 0.087890625 deg", "scale: 0.1 rpm, rate_of: angle");
        assertThat(captured(bench).scales()).hasSize(1);
        assertThat(captured(bench).scales().get(0).ratio().si()).isCloseTo(1, within(0.005));
        String tenfold = signals("scale: 0.087890625 deg", "scale: 1 rpm, rate_of: angle");
        assertThat(captured(tenfold).scales().get(0).ratio().si()).isCloseTo(10, within(0.05));
    }

    @Test
    void says_what_is_wrong_with_a_signal() throws IOException {
        assertThat(problems(signals("scale: 0.1 deg", "scale: 0.1 rpm, rate_of: anlge")))
                .contains("there is no signal \"anlge\"", "Nearest: angle");
        assertThat(problems(signals("scale: 0.1 deg", "scale: 0.1 degC, rate_of: angle")))
                .contains("speed cannot be the rate of angle");
        assertThat(problems(signals("scale: a tenth", "scale: 0.1 rpm"))).contains("scale");
        assertThat(problems(signals("scale: 1 deg, offset: much", "scale: 0.1 rpm")))
                .contains("offset");
        assertThat(problems(signals("scale: 1 deg, sign: maybe", "scale: 0.1 rpm")))
                .contains("unsigned");
    }
}
