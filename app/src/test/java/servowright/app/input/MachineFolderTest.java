package servowright.app.input;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import servowright.engine.known.Origin;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.DriveFigure;
import servowright.engine.machine.Machine;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.SupplyFigure;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.VoltageBasis;

class MachineFolderTest {
    @Test
    void names_six_mistakes_at_once_with_their_lines() {
        assertThat(Folder.in(Folder.named("six-mistakes")).lines())
                .containsExactly(
                        "line 4, supply / battery / voltage: \"29.2..20.0 V\": a range runs from the lower to the upper value"
                                + " in one unit. Write it like 19.5..29.2 V.",
                        "line 10, motors / hub / resistence: this key is not known. Nearest: resistance.",
                        "line 11, motors / hub / speed_constant: [line peek] is not known in square brackets."
                                + " Nearest: line peak.",
                        "line 15, drives / palm / current / peak: 12 ohm: the unit does not fit motor current it gives briefly."
                                + " Write it like 12 A [q axis].",
                        "line 21, axes / tilt / drive: there is no drive \"plam\". Known: palm, plate.",
                        "line 22, axes / tilt / mount / gap: 1.4 m is far outside 0.1 mm to 10 mm. Did you mean 1.4 mm?");
    }

    @Test
    void reads_a_machine_as_people_write_it(@TempDir Path dir) throws Exception {
        String text = java.nio.file.Files.readString(Folder.named("orchard").resolve("machine.yaml"));
        MachineFolder.Loaded loaded = Folder.in(dir).with("machine.yaml", text).loaded();
        Machine m = loaded.machine();
        assertThat(m.name()).isEqualTo("Frost cart");
        var supply = m.supply().orElseThrow().figures();
        assertThat(supply.get(SupplyFigure.VOLTAGE)
                        .orElseThrow()
                        .stated()
                        .lower()
                        .si())
                .isEqualTo(20.0);
        assertThat(supply.get(SupplyFigure.FUSE).orElseThrow().si()).isEqualTo(30);
        assertThat(supply.get(SupplyFigure.CAPACITY).orElseThrow().si()).isEqualTo(72_000);
        var hub = part(m.motors(), "hub").figures();
        assertThat(hub.get(MotorFigure.MAGNETS).orElseThrow().si()).isEqualTo(20);
        var constant = hub.get(MotorFigure.SPEED_CONSTANT).orElseThrow();
        assertThat(constant.stated().voltageBasis()).contains(VoltageBasis.LINE_PEAK);
        assertThat(constant.known().origin()).isEqualTo(Origin.DATA_SHEET);
        assertThat(constant.place().text()).isEqualTo("machine.yaml:14");
        var palm = part(m.drives(), "palm").figures();
        var peak = palm.get(DriveFigure.PEAK_CURRENT).orElseThrow();
        assertThat(peak.si()).isEqualTo(12);
        assertThat(peak.stated().currentBasis()).contains(CurrentBasis.Q_AXIS);
        assertThat(palm.get(DriveFigure.VOLTAGE).orElseThrow().stated().upper().si())
                .isEqualTo(34);
        var wheel = part(m.axes(), "left wheel");
        assertThat(wheel.motor()).contains("hub");
        assertThat(wheel.figures()
                        .get(AxisFigure.GAP)
                        .orElseThrow()
                        .stated()
                        .lower()
                        .si())
                .isCloseTo(1.7e-3, within(1e-12));
        assertThat(wheel.figures()
                        .get(AxisFigure.MAGNET_REMANENCE)
                        .orElseThrow()
                        .si())
                .isEqualTo(1.2);
        assertThat(wheel.duties()).containsOnlyKeys("patrol");
        assertThat(loaded.sha256()).containsOnlyKeys("machine.yaml");
    }

    private static <T> T part(java.util.Map<String, T> parts, String name) {
        return java.util.Objects.requireNonNull(parts.get(name));
    }
}
