package servowright.app.page.mount;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.app.page.sheets.Form;
import servowright.app.view.CorrectionView;
import servowright.app.view.HarmonicsView;
import servowright.app.view.MountView;
import servowright.app.view.PartView;
import servowright.app.view.View;
import servowright.engine.worksheet.Worksheet;
import servowright.engine.worksheet.Worksheets;

/**
 * A magnet before its sensor with the gap and offsets that somebody moves, and what two worksheets say to it.
 *
 * @param mount  with the gap as moved
 * @param moved  numbers of the sliders, by name
 * @param field  worksheet of the field
 * @param errors worksheet of the angle errors
 * @param found  harmonics that a bench test found on this axis
 */
public record Stack(
        MountView mount, Map<String, String> moved, Form field, Form errors, Optional<CorrectionView> found) {
    /**
     * Something that can be moved.
     *
     * @param unit counted in
     */
    public record Slider(String name, String label, String unit, String least, String most, String step) {}

    private static final List<Slider> SLIDERS = List.of(
            new Slider("gap", "gap, magnet to package", "mm", "0.1", "6", "0.05"),
            new Slider("sensor_offset", "sensor off the axis", "mm", "0", "2", "0.05"),
            new Slider("magnet_offset", "magnet off the axis", "mm", "0", "2", "0.05"),
            new Slider("sensor_tilt", "tilt of the sensor", "deg", "0", "10", "0.5"),
            new Slider("magnet_tilt_along", "tilt of the magnet", "deg", "0", "10", "0.5"));

    public List<Slider> sliders() {
        return SLIDERS;
    }

    /** Number of a slider. */
    public String at(Slider slider) {
        return moved.getOrDefault(slider.name(), slider.least());
    }

    /** With what was typed or moved; where nothing was, with what is declared. */
    static Stack of(View view, MountView declared, Map<String, List<String>> typed) throws Exception {
        Map<String, String> moved = new LinkedHashMap<>();
        for (Slider slider : SLIDERS) {
            String number = typed.getOrDefault(slider.name(), List.of("")).get(0);
            if (number.matches("\\d{1,3}(\\.\\d{1,6})?")
                    && Double.parseDouble(number) >= Double.parseDouble(slider.least())
                    && Double.parseDouble(number) <= Double.parseDouble(slider.most())) {
                moved.put(slider.name(), number);
            }
        }
        moved.putIfAbsent("gap", MountView.plain(declared.gap().nominal()));
        stated(view, declared.axis(), "sensor_offset")
                .map(t -> t.replaceAll("^([\\d.]+) mm.*$", "$1"))
                .filter(t -> t.matches("[\\d.]+"))
                .ifPresent(t -> moved.putIfAbsent("sensor_offset", t));
        MountView mount = declared.at(Double.parseDouble(moved.getOrDefault("gap", "1")));
        return new Stack(mount, moved, field(view, mount), errors(mount, moved), found(view, mount.axis()));
    }

    private static Optional<CorrectionView> found(View view, String axis) {
        return view.corrections().stream().filter(c -> c.axis().equals(axis)).findFirst();
    }

    /** Harmonics that this mount gives beside those that were measured. */
    public HarmonicsView harmonics() {
        return HarmonicsView.of(errors.result(), found);
    }

    /** Whether a bench test found any. */
    public boolean measured() {
        return found.isPresent();
    }

    private static Form field(View view, MountView mount) throws Exception {
        Map<String, List<String>> given = magnet(mount);
        stated(view, mount.axis(), "remanence").ifPresent(t -> given.put("remanence", List.of(t)));
        return Form.filled(sheet("magnet-field"), given).call();
    }

    private static Form errors(MountView mount, Map<String, String> moved) throws Exception {
        Map<String, List<String>> given = magnet(mount);
        SLIDERS.stream()
                .filter(s -> !s.name().equals("gap") && moved.containsKey(s.name()))
                .forEach(s -> given.put(s.name(), List.of(moved.get(s.name()) + " " + s.unit())));
        return Form.filled(sheet("magnet-misplacement"), given).call();
    }

    private static Map<String, List<String>> magnet(MountView mount) {
        Map<String, List<String>> given = new LinkedHashMap<>();
        given.put("diameter", List.of(MountView.plain(mount.diameter()) + " mm"));
        given.put("length", List.of(MountView.plain(mount.length()) + " mm"));
        given.put("gap", List.of(MountView.plain(mount.elementGap()) + " mm"));
        return given;
    }

    private static Worksheet sheet(String name) {
        return Worksheets.named(name).orElseThrow(() -> new IllegalStateException("there is no worksheet " + name));
    }

    /** What machine.yaml says of the mount of an axis. */
    private static Optional<String> stated(View view, String axis, String key) {
        List<PartView.Row> rows = new ArrayList<>();
        view.parts().stream()
                .filter(p -> p.kind() == PartView.Kind.AXIS && p.name().equals(axis))
                .forEach(p -> rows.addAll(p.rows()));
        return rows.stream()
                .filter(r -> r.path().contains("/ mount /") && r.path().endsWith("/ " + key))
                .map(PartView.Row::text)
                .findFirst();
    }
}
