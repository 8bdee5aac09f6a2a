package servowright.app.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import servowright.engine.machine.Axis;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Drive;
import servowright.engine.machine.Duty;
import servowright.engine.machine.Figures;
import servowright.engine.machine.Key;
import servowright.engine.machine.Machine;
import servowright.engine.machine.MagnetMaterial;
import servowright.engine.machine.Modulation;
import servowright.engine.machine.Motor;
import servowright.engine.machine.Sensor;
import servowright.engine.machine.SensorKind;

/** The machine as declared, part by part: every figure as it was written, with its place. */
final class MachineParts {
    private MachineParts() {}

    static List<PartView> of(Machine machine) {
        List<PartView> parts = new ArrayList<>();
        add(parts, PartView.Kind.SURROUNDINGS, "", rows(machine.surroundings()));
        machine.supply()
                .ifPresent(s -> add(parts, PartView.Kind.SUPPLY, s.kind().words(), rows(s.figures())));
        add(parts, PartView.Kind.BUS, "", rows(machine.bus().figures()));
        for (Motor m : machine.motors().values()) {
            parts.add(part(
                    PartView.Kind.MOTOR,
                    m.name(),
                    "magnets of",
                    m.magnetMaterial().map(MagnetMaterial::words),
                    m.figures()));
        }
        for (Drive d : machine.drives().values()) {
            parts.add(part(
                    PartView.Kind.DRIVE, d.name(), "modulation", d.modulation().map(Modulation::words), d.figures()));
        }
        for (Sensor s : machine.sensors().values()) {
            parts.add(part(PartView.Kind.SENSOR, s.name(), "kind", s.kind().map(SensorKind::words), s.figures()));
        }
        machine.axes().values().forEach(a -> axis(parts, a));
        return parts;
    }

    private static <K extends Enum<K> & Key.Named> PartView part(
            PartView.Kind kind, String name, String label, Optional<String> word, Figures<K> figures) {
        List<PartView.Row> rows = new ArrayList<>();
        named(rows, label, word);
        rows.addAll(rows(figures));
        return new PartView(kind, name, rows);
    }

    private static void axis(List<PartView> parts, Axis axis) {
        List<PartView.Row> rows = new ArrayList<>();
        named(rows, "motor", axis.motor());
        named(rows, "drive", axis.drive());
        named(rows, "sensor", axis.sensor());
        rows.addAll(rows(axis.figures()));
        parts.add(new PartView(PartView.Kind.AXIS, axis.name(), rows));
        for (Duty duty : axis.duties().values()) {
            List<PartView.Row> said = new ArrayList<>();
            said.add(new PartView.Row("profile", duty.profile().words(), duty.place()));
            said.addAll(rows(duty.figures()));
            parts.add(new PartView(PartView.Kind.DUTY, axis.name() + ", " + duty.name(), said));
        }
    }

    private static void named(List<PartView.Row> rows, String label, Optional<String> name) {
        name.ifPresent(n -> rows.add(new PartView.Row(label, n)));
    }

    private static void add(List<PartView> parts, PartView.Kind kind, String name, List<PartView.Row> rows) {
        if (!rows.isEmpty()) {
            parts.add(new PartView(kind, name, rows));
        }
    }

    /** Every declared figure as it was written. */
    static <K extends Enum<K> & Key.Named> List<PartView.Row> rows(Figures<K> figures) {
        List<PartView.Row> rows = new ArrayList<>();
        figures.values().forEach((key, values) -> {
            for (Declared value : values) {
                String label = key.key().path().replace('.', ' ').replace('_', ' ');
                rows.add(new PartView.Row(label, value.stated().text(), value.place()));
            }
        });
        return rows;
    }
}
